/**
 * The smallest n, from `least` to `most`, whose power reaches `wanted`; `null` where none does. Power rises with n.
 */
export function smallestCount(powerOf: (n: number) => number, wanted: number, least: number, most: number): number | null {
  if (powerOf(least) >= wanted) return least;
  let low = least;
  let high = least;
  do {
    if (high === most) return null;
    low = high;
    high = Math.min(2 * high, most);
  } while (powerOf(high) < wanted);
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (powerOf(middle) >= wanted) high = middle;
    else low = middle;
  }
  return high;
}
