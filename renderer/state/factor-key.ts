/** A key for a new factor, from its label: letters and digits, unlike those that are there. */
export function factorKey(label: string, others: { key: string }[]): string {
  const base = label.toLowerCase().normalize('NFKD').replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '').slice(0, 50) || 'factor';
  let key = base;
  for (let number = 2; others.some((other) => other.key === key); number++) key = `${base}-${number}`;
  return key;
}
