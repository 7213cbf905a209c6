import { LEVELS, STEPS, type Levels } from './levels.ts';
import { twoSides } from './two-sides.ts';

/** The middle settles within a few rounds; some pictures go to and fro by a quarter of a grey. */
const MOST_ROUNDS = 8;

/**
 * Grey from which a person begins to move the threshold: Otsu's, then brought half way between the greys of the two sides.
 * Source: N. Otsu, IEEE Trans. Syst. Man Cybern. 9 (1979) 62; T. W. Ridler, S. Calvard, ibid. 8 (1978) 630.
 */
export function startThreshold(levels: Levels): number {
  let threshold = otsuThreshold(levels.histogram);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const { darker, lighter } = twoSides(levels, threshold);
    if (!darker.grey || !lighter.grey) return threshold;
    const next = Math.round(halfWay(darker.grey.median, lighter.grey.median).middle * STEPS) / STEPS;
    if (next === threshold) break;
    threshold = next;
  }
  return threshold;
}

/**
 * Where a pixel that is half print and half bare lies between the two greys. That depends on how the camera coded the light,
 * which a picture does not tell: half way in the coded grey or half way in the light itself.
 * @returns both ends and their middle
 */
export function halfWay(dark: number, light: number): { low: number; high: number; middle: number } {
  const low = (dark + light) / 2;
  const high = Math.max(low, coded((linear(dark) + linear(light)) / 2));
  return { low, high, middle: (low + high) / 2 };
}

/** The threshold, in grey, between two classes with the greatest variance between them; in the middle of the gap where there is one, and at the grey itself where there is only one. */
function otsuThreshold(histogram: Uint32Array): number {
  let count = 0;
  let sum = 0;
  for (let quarter = 0; quarter < LEVELS; quarter++) {
    count += histogram[quarter]!;
    sum += quarter * histogram[quarter]!;
  }
  let [below, sumBelow, greatest, first, last] = [0, 0, -1, sum / count, sum / count];
  for (let quarter = 0; quarter < LEVELS; quarter++) {
    below += histogram[quarter]!;
    sumBelow += quarter * histogram[quarter]!;
    const above = count - below;
    if (below === 0 || above === 0) continue;
    const between = below * above * ((sum - sumBelow) / above - sumBelow / below) ** 2;
    if (between > greatest) [greatest, first] = [between, quarter];
    if (between === greatest) last = quarter;
  }
  return (first + last) / 2 / STEPS;
}

/** sRGB, IEC 61966-2-1: grey 0–255 ↔ light 0–1. Greys above 255 go on by the same formula. */
function linear(grey: number): number {
  const part = grey / 255;
  return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
}

function coded(light: number): number {
  return 255 * (light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055);
}
