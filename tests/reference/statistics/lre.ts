/** Correct digits: −log10 of the relative error (of the absolute error where the expected value is zero), at most 16. */
export function lre(found: number | null | undefined, expected: number): number {
  if (found === null || found === undefined || !Number.isFinite(found)) return -1;
  if (found === expected) return 16;
  const error = Math.abs(found - expected) / (expected === 0 ? 1 : Math.abs(expected));
  return Math.min(16, -Math.log10(error));
}

/** The fewest correct digits among pairs of numbers. */
export function worstLre(found: readonly (number | null)[], expected: readonly number[]): number {
  if (found.length !== expected.length) throw new Error(`compared ${found.length} numbers with ${expected.length}`);
  return Math.min(...expected.map((value, i) => lre(found[i], value)));
}

/** Prints one table of correct digits, so that a run shows how far each figure is from its tolerance. */
export function printDigits(title: string, rows: Record<string, string | number>[]): void {
  const round = (value: string | number) => (typeof value === 'number' ? Number(value.toFixed(1)) : value);
  process.stdout.write(`${title}: correct digits\n${rows.map((row) => Object.entries(row).map(([key, value]) => `${key} ${round(value)}`).join('  ')).join('\n')}\n`);
}
