/** Where a place between equal steps draws its value from: the first point and the coefficients of it and the next ones. */
export interface LagrangeStencil {
  first: number;
  coefficients: number[];
}

/**
 * Lagrange interpolation at `position` (0 = first point) among `count` points at equal steps: cubic over four points,
 * quadratic over three in the first and last interval; at a point the point itself; outside the nearest end.
 * Source: ASTM E2022 (the interpolation of its weighting tables); CIE 015, 7.2.3.
 */
export function lagrangeStencil(position: number, count: number): LagrangeStencil {
  if (position <= 0) return { first: 0, coefficients: [1] };
  if (position >= count - 1) return { first: count - 1, coefficients: [1] };
  const below = Math.floor(position);
  if (position - below < 1e-9) return { first: below, coefficients: [1] };
  const first = Math.max(0, below - 1);
  const last = Math.min(count - 1, below + 2);
  const points = Array.from({ length: last - first + 1 }, (_, index) => first + index);
  const coefficients = points.map((point) => points.reduce((product, other) => (other === point ? product : (product * (position - other)) / (point - other)), 1));
  return { first, coefficients };
}
