/** An integration at every nanometre that shares no code with the program: natural cubic splines through all tables. */

/** Values at each nanometre of a natural cubic spline through points at equal steps; level beyond the ends. */
export function splined(values: ArrayLike<number>, startNm: number, stepNm: number, fromNm: number, toNm: number): number[] {
  const n = values.length;
  // Second derivatives by the tridiagonal system of a natural spline.
  const diagonal = new Array<number>(n).fill(4);
  const right = Array.from({ length: n }, (_, i) => (i === 0 || i === n - 1 ? 0 : (6 / stepNm ** 2) * (values[i - 1]! - 2 * values[i]! + values[i + 1]!)));
  for (let i = 2; i < n - 1; i++) {
    const factor = 1 / diagonal[i - 1]!;
    diagonal[i]! -= factor;
    right[i]! -= factor * right[i - 1]!;
  }
  const curvature = new Array<number>(n).fill(0);
  for (let i = n - 2; i >= 1; i--) curvature[i] = (right[i]! - curvature[i + 1]!) / diagonal[i]!;
  return Array.from({ length: toNm - fromNm + 1 }, (_, k) => {
    const at = (fromNm + k - startNm) / stepNm;
    if (at <= 0) return values[0]!;
    if (at >= n - 1) return values[n - 1]!;
    const i = Math.floor(at);
    const t = at - i;
    const u = 1 - t;
    return u * values[i]! + t * values[i + 1]! + (stepNm ** 2 / 6) * ((u ** 3 - u) * curvature[i]! + (t ** 3 - t) * curvature[i + 1]!);
  });
}

/** Values at each nanometre on straight lines between points at 5 nm from 380 nm. */
export function linearFrom380(values: ArrayLike<number>): number[] {
  return Array.from({ length: 401 }, (_, k) => {
    const i = Math.min(Math.floor(k / 5), values.length - 2);
    return values[i]! + (k / 5 - i) * (values[i + 1]! - values[i]!);
  });
}

/** CIELAB of a reflectance by plain sums over power and colour-matching functions, all on one grid. */
export function labBySums(reflectance: ArrayLike<number>, power: ArrayLike<number>, [x, y, z]: [ArrayLike<number>, ArrayLike<number>, ArrayLike<number>]): [number, number, number] {
  const ratio = (functions: ArrayLike<number>) => {
    let reflected = 0;
    let white = 0;
    for (let i = 0; i < power.length; i++) {
      reflected += reflectance[i]! * power[i]! * functions[i]!;
      white += power[i]! * functions[i]!;
    }
    return reflected / white;
  };
  const f = (t: number) => (t > (24 / 116) ** 3 ? t ** (1 / 3) : (841 / 108) * t + 16 / 116);
  const [fx, fy, fz] = [f(ratio(x)), f(ratio(y)), f(ratio(z))];
  return [116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)];
}
