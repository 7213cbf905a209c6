import type { Observer } from './observers.ts';
import type { Xyz } from './xyz.ts';

export type WhitenessIlluminant = 'C' | 'D65';

/** Coefficients Cx, Cz of yellowness and the chromaticity of the white point. Sources: ASTM E313; white points CIE 015. */
export const whitenessConstants: Record<WhitenessIlluminant, Record<Observer, { Cx: number; Cz: number; white: readonly [number, number] }>> = {
  C: { 2: { Cx: 1.2769, Cz: 1.0592, white: [0.3101, 0.3161] }, 10: { Cx: 1.2871, Cz: 1.0781, white: [0.3104, 0.3191] } },
  D65: { 2: { Cx: 1.2985, Cz: 1.1335, white: [0.3127, 0.329] }, 10: { Cx: 1.3013, Cz: 1.1498, white: [0.3138, 0.331] } },
};

/** Yellowness 100(Cx·X − Cz·Z)/Y (ASTM E313). */
export function yellownessE313([X, Y, Z]: Xyz, illuminant: WhitenessIlluminant, observer: Observer): number {
  const { Cx, Cz } = whitenessConstants[illuminant][observer];
  return (100 * (Cx * X - Cz * Z)) / Y;
}

/** Yellowness 100(1.28X − 1.06Z)/Y for illuminant C, 2° (ASTM D1925, withdrawn). */
export function yellownessD1925([X, Y, Z]: Xyz): number {
  return (100 * (1.28 * X - 1.06 * Z)) / Y;
}

/** Whiteness 3.388Z − 3Y for illuminant C, 2° (ASTM E313 before 1996). */
export function whitenessOld([, Y, Z]: Xyz): number {
  return 3.388 * Z - 3 * Y;
}

/** Whiteness Y + 800(xn − x) + 1700(yn − y) and tint (CIE 015; ASTM E313). Tint: positive greenish, negative reddish. */
export function cieWhiteness([X, Y, Z]: Xyz, observer: Observer, [xn, yn]: readonly [number, number]): { whiteness: number; tint: number } {
  const total = X + Y + Z;
  const dx = xn - X / total;
  const dy = yn - Y / total;
  return { whiteness: Y + 800 * dx + 1700 * dy, tint: (observer === 10 ? 900 : 1000) * dx - 650 * dy };
}
