/**
 * Median (mean of the two middle values for an even count) by Hoare's selection: one copy, no full sort, so that a long
 * trace costs a few passes.
 * @param values at least one finite number; left as they are.
 * Source: C. A. R. Hoare, "Algorithm 65: Find", Commun. ACM 4 (1961) 321.
 */
export function median(values: Float64Array): number {
  const copy = Float64Array.from(values);
  const middle = copy.length >> 1;
  const upper = select(copy, middle);
  if (copy.length % 2 === 1) return upper;
  let lower = -Infinity;
  for (let index = 0; index < middle; index += 1) lower = Math.max(lower, copy[index]!);
  return lower + (upper - lower) / 2;
}

/** Reorders `values` so that the one of rank `rank` stands there, none above it before, none below it after. */
function select(values: Float64Array, rank: number): number {
  let left = 0;
  let right = values.length - 1;
  while (left < right) {
    const pivot = middleOfThree(values[left]!, values[(left + right) >> 1]!, values[right]!);
    let i = left;
    let j = right;
    while (i <= j) {
      while (values[i]! < pivot) i += 1;
      while (pivot < values[j]!) j -= 1;
      if (i <= j) {
        const held = values[i]!;
        values[i] = values[j]!;
        values[j] = held;
        i += 1;
        j -= 1;
      }
    }
    if (j < rank) left = i;
    if (rank < i) right = j;
  }
  return values[rank]!;
}

function middleOfThree(a: number, b: number, c: number): number {
  return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
}
