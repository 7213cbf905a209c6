/**
 * A key for what is called `label`: 'Tape pull, N' becomes `tapePullN`. What has no letters or digits of the alphabet takes
 * `otherwise`; a number is added where the key is taken.
 */
export function keyFromLabel(label: string, taken: readonly string[], otherwise: string): string {
  const words = label
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .split(/[^A-Za-z0-9]+/)
    .filter(Boolean);
  const joined = words.map((word, index) => (index === 0 ? word.charAt(0).toLowerCase() : word.charAt(0).toUpperCase()) + word.slice(1)).join('');
  const key = /^[a-z]/.test(joined) ? joined.slice(0, 34) : otherwise;
  let free = key;
  for (let number = 2; taken.includes(free); number += 1) free = `${key}${number}`;
  return free;
}
