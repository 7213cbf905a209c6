/** Reading over coat weight (g/m²), two parameters each, with its inverse; `null` where no coat weight gives the reading. */
export interface CoatWeightModel {
  name: 'linear' | 'saturating';
  formula: string;
  value: (coatWeight: number, parameters: readonly number[]) => number;
  inverse: (reading: number, parameters: readonly number[]) => number | null;
}

/** A straight line: strength by K/S, and density over a narrow range. */
export const linearModel: CoatWeightModel = {
  name: 'linear',
  formula: 'reading = b1 + b2·coat weight',
  value: (x, [b1, b2]) => b1! + b2! * x,
  inverse: (y, [b1, b2]) => (b2 === 0 ? null : (y - b1!) / b2!),
};

/** Density that nears that of an ink layer without end (Tollenaar & Ernst 1962, from memory). */
export const saturatingModel: CoatWeightModel = {
  name: 'saturating',
  formula: 'reading = b1·(1 − e^(−b2·coat weight))',
  value: (x, [b1, b2]) => -b1! * Math.expm1(-b2! * x),
  inverse: (y, [b1, b2]) => (b2! > 0 && y / b1! < 1 ? -Math.log1p(-y / b1!) / b2! : null),
};
