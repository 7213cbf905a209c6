/** A curve through values at equal steps as SVG path data, filling a box of `width` × `height` but for half a line's width. */
export function curvePath(values: readonly number[], width: number, height: number): string {
  const low = Math.min(...values, 0);
  const span = Math.max(...values) - low || 1;
  const at = (value: number, index: number) => `${((index / (values.length - 1)) * width).toFixed(1)} ${(height - 1 - ((value - low) / span) * (height - 2)).toFixed(1)}`;
  return `M${values.map(at).join('L')}`;
}
