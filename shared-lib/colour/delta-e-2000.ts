import { hueDifference, neutralProduct } from './lab-difference.ts';
import { hueDeg, type Lab } from './lab.ts';

const radians = Math.PI / 180;
const pow25to7 = 25 ** 7;
/** Below this share of its length the bisector of two hues has no direction left: they are opposite. */
const noDirection = 1e-6;
/** Opposite hues tie at 180°; rounding in the arc tangent must not decide between them. */
const opposite = 180 + 1e-9;

const [cos30, sin30] = [Math.cos(30 * radians), Math.sin(30 * radians)];
const [cos6, sin6] = [Math.cos(6 * radians), Math.sin(6 * radians)];
const [cos63, sin63] = [Math.cos(63 * radians), Math.sin(63 * radians)];
const [cos275, sin275] = [Math.cos(275 * radians), Math.sin(275 * radians)];

/**
 * ΔE00 with kL = kC = kH = 1 (ISO/CIE 11664-6; formulas and test pairs: Sharma, Wu & Dalal 2005,
 * Color Res. Appl. 30, 21–30). Symmetric.
 *
 * Written without angles: the mean hue is the bisector of the two hue vectors, its multiples follow from its cosine and
 * sine. That leaves one arc tangent, and none for the hues far from blue.
 */
export function deltaE2000(reference: Lab, sample: Lab): number {
  const a1 = reference[1];
  const b1 = reference[2];
  const a2 = sample[1];
  const b2 = sample[2];
  const stretch = 1.5 - 0.5 * saturation((Math.sqrt(a1 * a1 + b1 * b1) + Math.sqrt(a2 * a2 + b2 * b2)) / 2);
  const ap1 = a1 * stretch;
  const ap2 = a2 * stretch;
  const C1 = Math.sqrt(ap1 * ap1 + b1 * b1);
  const C2 = Math.sqrt(ap2 * ap2 + b2 * b2);
  const product = C1 * C2;

  let cos = 1;
  let sin = 0;
  let dH = 0;
  if (product < neutralProduct) {
    const C = C1 + C2;
    if (C > 0) {
      cos = (ap1 + ap2) / C;
      sin = (b1 + b2) / C;
    }
  } else {
    const u = ap1 * C2 + ap2 * C1;
    const v = b1 * C2 + b2 * C1;
    const size = Math.sqrt(u * u + v * v);
    if (size > noDirection * product) {
      cos = u / size;
      sin = v / size;
      dH = hueDifference(ap1, b1, ap2, b2, product);
    } else {
      const h1 = hueDeg(ap1, b1);
      const h2 = hueDeg(ap2, b2);
      const turned = Math.abs(h2 - h1) > opposite;
      const mean = (turned ? (h1 + h2 + 360) / 2 : (h1 + h2) / 2) * radians;
      cos = Math.cos(mean);
      sin = Math.sin(mean);
      dH = 2 * Math.sqrt(product) * (h2 > h1 !== turned ? 1 : -1);
    }
  }

  const C = (C1 + C2) / 2;
  const fromMiddle = (reference[0] + sample[0]) / 2 - 50;
  const L50 = fromMiddle * fromMiddle;
  const l = (sample[0] - reference[0]) / (1 + (0.015 * L50) / Math.sqrt(20 + L50));
  const c = (C2 - C1) / (1 + 0.045 * C);
  const h = dH / (1 + 0.015 * C * hueWeight(cos, sin));
  return Math.sqrt(Math.max(0, l * l + c * c + h * h + rotation(cos, sin, C) * c * h));
}

/** √(C⁷/(C⁷ + 25⁷)). */
function saturation(C: number): number {
  const C2 = C * C;
  const C7 = C2 * C2 * C2 * C;
  return Math.sqrt(C7 / (C7 + pow25to7));
}

/** T = 1 − 0.17 cos(h − 30°) + 0.24 cos 2h + 0.32 cos(3h + 6°) − 0.20 cos(4h − 63°). */
function hueWeight(cos: number, sin: number): number {
  const cos2 = 2 * cos * cos - 1;
  const sin2 = 2 * sin * cos;
  const cos3 = cos * (4 * cos * cos - 3);
  const sin3 = sin * (3 - 4 * sin * sin);
  const cos4 = 2 * cos2 * cos2 - 1;
  const sin4 = 2 * sin2 * cos2;
  return (
    1 -
    0.17 * (cos * cos30 + sin * sin30) +
    0.24 * cos2 +
    0.32 * (cos3 * cos6 - sin3 * sin6) -
    0.2 * (cos4 * cos63 + sin4 * sin63)
  );
}

/** RT = −sin(60°·e^−((h − 275°)/25°)²) · 2√(C⁷/(C⁷ + 25⁷)); below 1e-12 for hues from 0° to 143°. */
function rotation(cos: number, sin: number, C: number): number {
  if (sin >= 0 && cos > -0.8) return 0;
  const turn = Math.atan2(sin * cos275 - cos * sin275, cos * cos275 + sin * sin275) / (25 * radians);
  return -2 * saturation(C) * Math.sin(60 * radians * Math.exp(-turn * turn));
}
