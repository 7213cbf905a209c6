/**
 * Ranks from 1, equal values sharing the mean of their ranks.
 * @returns `ties`: Σ(t³ − t) over the sets of equal values.
 */
export function midranks(values: readonly number[]): { ranks: number[]; ties: number } {
  const order = values.map((_, index) => index).sort((a, b) => values[a]! - values[b]!);
  const ranks = values.map(() => 0);
  let ties = 0;
  for (let first = 0; first < order.length; ) {
    let next = first + 1;
    while (next < order.length && values[order[next]!] === values[order[first]!]) next++;
    for (let i = first; i < next; i++) ranks[order[i]!] = (first + next + 1) / 2;
    ties += (next - first) ** 3 - (next - first);
    first = next;
  }
  return { ranks, ties };
}
