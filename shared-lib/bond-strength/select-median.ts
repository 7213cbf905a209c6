const BINS = 1024;

/**
 * Median (mean of the two middle values for an even count) without sorting: the values are counted in bins of equal width,
 * and only the bins that hold the middle are sorted, so that a long trace costs three passes and hardly any memory.
 * @param values at least one finite number; left as they are.
 */
export function median(values: Float64Array): number {
  const count = values.length;
  const { low, high } = extremes(values);
  if (low === high) return low;
  const scale = (BINS - 1) / (high - low);
  const counts = new Uint32Array(BINS);
  for (let index = 0; index < count; index += 1) counts[((values[index]! - low) * scale) | 0]! += 1;

  const lowerRank = (count - 1) >> 1;
  const upperRank = count >> 1;
  let first = 0;
  let before = 0;
  while (before + counts[first]! <= lowerRank) before += counts[first++]!;
  let last = first;
  let upTo = before + counts[first]!;
  while (upTo <= upperRank) upTo += counts[++last]!;

  const middle = new Float64Array(upTo - before);
  for (let index = 0, taken = 0; taken < middle.length; index += 1) {
    const bin = ((values[index]! - low) * scale) | 0;
    if (bin >= first && bin <= last) middle[taken++] = values[index]!;
  }
  middle.sort();
  const lower = middle[lowerRank - before]!;
  return lower + (middle[upperRank - before]! - lower) / 2;
}

function extremes(values: Float64Array): { low: number; high: number } {
  let low = values[0]!;
  let high = low;
  for (let index = 1; index < values.length; index += 1) {
    const value = values[index]!;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return { low, high };
}
