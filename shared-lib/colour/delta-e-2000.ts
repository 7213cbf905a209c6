import { hueDeg, type Lab } from './lab.ts';

const radians = Math.PI / 180;
const pow25to7 = 25 ** 7;
/** Opposite hues tie at 180°; rounding in the arc tangent must not decide between them. */
const opposite = 180 + 1e-9;

/**
 * ΔE00 with kL = kC = kH = 1 (ISO/CIE 11664-6; formulas and test pairs: Sharma, Wu & Dalal 2005,
 * Color Res. Appl. 30, 21–30). Symmetric.
 */
export function deltaE2000(reference: Lab, sample: Lab): number {
  const [L1, a1, b1] = reference;
  const [L2, a2, b2] = sample;
  const meanC7 = ((Math.sqrt(a1 * a1 + b1 * b1) + Math.sqrt(a2 * a2 + b2 * b2)) / 2) ** 7;
  const stretch = 1.5 - 0.5 * Math.sqrt(meanC7 / (meanC7 + pow25to7));
  const ap1 = a1 * stretch;
  const ap2 = a2 * stretch;
  const C1 = Math.sqrt(ap1 * ap1 + b1 * b1);
  const C2 = Math.sqrt(ap2 * ap2 + b2 * b2);
  const h1 = hueDeg(ap1, b1);
  const h2 = hueDeg(ap2, b2);
  const neutral = C1 * C2 === 0;

  const dL = L2 - L1;
  const dC = C2 - C1;
  const dH = neutral ? 0 : 2 * Math.sqrt(C1 * C2) * Math.sin((hueStep(h1, h2) / 2) * radians);

  const L = (L1 + L2) / 2;
  const C = (C1 + C2) / 2;
  const h = neutral ? h1 + h2 : meanHue(h1, h2);
  const T =
    1 -
    0.17 * Math.cos((h - 30) * radians) +
    0.24 * Math.cos(2 * h * radians) +
    0.32 * Math.cos((3 * h + 6) * radians) -
    0.2 * Math.cos((4 * h - 63) * radians);
  const L50 = (L - 50) * (L - 50);
  const SL = 1 + (0.015 * L50) / Math.sqrt(20 + L50);
  const SC = 1 + 0.045 * C;
  const SH = 1 + 0.015 * C * T;
  const C7 = C ** 7;
  const turn = (h - 275) / 25;
  const rotation = -2 * Math.sqrt(C7 / (C7 + pow25to7)) * Math.sin(60 * Math.exp(-turn * turn) * radians);

  const l = dL / SL;
  const c = dC / SC;
  const hue = dH / SH;
  return Math.sqrt(Math.max(0, l * l + c * c + hue * hue + rotation * c * hue));
}

/** h2 − h1 the short way round, degrees. */
function hueStep(h1: number, h2: number): number {
  const step = h2 - h1;
  if (step > opposite) return step - 360;
  return step < -opposite ? step + 360 : step;
}

function meanHue(h1: number, h2: number): number {
  const sum = h1 + h2;
  if (Math.abs(h1 - h2) <= opposite) return sum / 2;
  return sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2;
}
