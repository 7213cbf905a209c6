const BINS = 1024;

/**
 * Quantile of type 7 (linear between the two nearest ranks; the median is the mean of the two middle values for an even
 * count) without sorting: the values are counted in bins of equal width, and only the bins that hold the two ranks are
 * sorted, so that many values cost three passes and hardly any memory.
 * @param values at least one finite number; left as they are.
 * @param p 0–1.
 * Source: R. J. Hyndman, Y. Fan, Am. Stat. 50 (1996) 361, definition 7.
 */
export function quantile(values: Float64Array, p: number): number {
  const { low, high } = extremes(values);
  if (low === high) return low;
  const at = (values.length - 1) * p;
  const lowerRank = Math.floor(at);
  const upperRank = Math.ceil(at);

  const scale = (BINS - 1) / (high - low);
  const counts = countInBins(values, low, scale);
  let first = 0;
  let before = 0;
  while (before + counts[first]! <= lowerRank) before += counts[first++]!;
  let last = first;
  let upTo = before + counts[first]!;
  while (upTo <= upperRank) upTo += counts[++last]!;

  const near = new Float64Array(upTo - before);
  for (let index = 0, taken = 0; taken < near.length; index += 1) {
    const bin = ((values[index]! - low) * scale) | 0;
    if (bin >= first && bin <= last) near[taken++] = values[index]!;
  }
  near.sort();
  const lower = near[lowerRank - before]!;
  return lower + (at - lowerRank) * (near[upperRank - before]! - lower);
}

/** @param values at least one finite number; left as they are. */
export function median(values: Float64Array): number {
  return quantile(values, 0.5);
}

function countInBins(values: Float64Array, low: number, scale: number): Uint32Array {
  const counts = new Uint32Array(BINS);
  // eslint-disable-next-line @typescript-eslint/prefer-for-of -- for-of puts every number of a typed array on the heap
  for (let index = 0; index < values.length; index += 1) counts[((values[index]! - low) * scale) | 0]! += 1;
  return counts;
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
