import type { Xyz } from './xyz.ts';

/** The linear Bradford transform to cone-like responses. Source: ICC.1:2022 (ISO 15076-1), annex E. */
const toCones = [
  [0.8951, 0.2664, -0.1614],
  [-0.7502, 1.7135, 0.0367],
  [0.0389, -0.0685, 1.0296],
] as const;
/** Its inverse, to 7 digits. */
const fromCones = [
  [0.9869929, -0.1470543, 0.1599627],
  [0.4323053, 0.5183603, 0.0492912],
  [-0.0085287, 0.0400428, 0.9684867],
] as const;

/** What a colour under one white looks like under another, by the linear Bradford transform of ISO 15076-1, annex E. */
export function adapted(xyz: Xyz, from: Xyz, to: Xyz): Xyz {
  const cones = times(toCones, xyz);
  const before = times(toCones, from);
  const after = times(toCones, to);
  return times(fromCones, [(cones[0] * after[0]) / before[0], (cones[1] * after[1]) / before[1], (cones[2] * after[2]) / before[2]]);
}

function times(matrix: readonly (readonly [number, number, number])[], [x, y, z]: Xyz): Xyz {
  const row = (index: number) => matrix[index]![0] * x + matrix[index]![1] * y + matrix[index]![2] * z;
  return [row(0), row(1), row(2)];
}
