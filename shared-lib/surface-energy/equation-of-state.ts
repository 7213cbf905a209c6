import type { ProbeLiquid } from './probe-liquids.ts';
import type { WettingModel } from './wetting-model.ts';

/** β of the exponential form, (m²/mJ)². */
const equationOfStateBeta = 0.0001247;

/**
 * Equation of state, exponential form: cos θ = −1 + 2 √(γS/γL) exp(−β (γL − γS)²). Each liquid gives γS; several give their
 * mean. The linear form (β₁ = 0.0001057) of the same authors differs by up to about 0.65 mN/m.
 * Sources: Li & Neumann, J. Colloid Interface Sci. 137 (1990) 304; Kwok & Neumann, Adv. Colloid Interface Sci. 81 (1999) 167.
 */
export function equationOfState(liquids: readonly ProbeLiquid[]): WettingModel {
  const tension = liquids.map((liquid) => liquid.totalMNm);
  return {
    outputs: [{ key: 'total', unit: 'mN/m' }],
    parameters: 1,
    condition: null,
    solve: (cosines, out) => {
      let sum = 0;
      for (let i = 0; i < tension.length; i++) sum += solidFromEquationOfState(tension[i]!, cosines[i]!);
      out[0] = sum / tension.length;
      return true;
    },
    predict: (out, i) => cosineFromEquationOfState(tension[i]!, out[0]!),
    negativeRoots: () => [],
  };
}

/** cos θ of a liquid on a solid, both by their tension in mN/m. */
export function cosineFromEquationOfState(liquidMNm: number, solidMNm: number): number {
  return -1 + 2 * Math.sqrt(solidMNm / liquidMNm) * Math.exp(-equationOfStateBeta * (liquidMNm - solidMNm) ** 2);
}

/** γS between 0 and γL, mN/m, from cos θ in [−1, 1]: Newton's steps on a rising function, kept within a shrinking bracket. */
function solidFromEquationOfState(liquidMNm: number, cosine: number): number {
  if (cosine >= 1) return liquidMNm;
  if (cosine <= -1) return 0;
  let low = 0;
  let high = liquidMNm;
  let solid = liquidMNm * ((1 + cosine) / 2);
  for (let step = 0; step < 100; step++) {
    const found = cosineFromEquationOfState(liquidMNm, solid);
    if (found < cosine) low = solid;
    else high = solid;
    const slope = (found + 1) * (1 / (2 * solid) + 2 * equationOfStateBeta * (liquidMNm - solid));
    let next = solid + (cosine - found) / slope;
    if (!(next > low && next < high)) next = (low + high) / 2;
    if (Math.abs(next - solid) < 1e-11 * liquidMNm) return next;
    solid = next;
  }
  return solid;
}
