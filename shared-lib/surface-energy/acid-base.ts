import { conditionNumber } from './condition-number.ts';
import type { ProbeLiquid } from './probe-liquids.ts';
import { rootRegression } from './root-regression.ts';
import type { WettingModel } from './wetting-model.ts';

/**
 * van Oss–Chaudhury–Good: γL(1 + cos θ) = 2[√(γSLW γLLW) + √(γS+ γL−) + √(γS− γL+)], total = LW + 2√(γS+ γS−). Three liquids
 * exactly, more by least squares.
 * Sources: van Oss, Chaudhury & Good, Chem. Rev. 88 (1988) 927; van Oss, Interfacial Forces in Aqueous Media.
 *
 * @param liquids with Lifshitz–van der Waals, acid and base parts, mN/m
 */
export function acidBase(liquids: readonly ProbeLiquid[]): WettingModel {
  const total = liquids.map((liquid) => liquid.totalMNm);
  const design = liquids.map((liquid) => [
    Math.sqrt(liquid.lifshitzMNm!),
    Math.sqrt(liquid.baseMNm!),
    Math.sqrt(liquid.acidMNm!),
  ]);
  const regression = rootRegression(design);
  const ordinates = new Float64Array(liquids.length);
  const roots = new Float64Array(3);

  const halfWork = (cosines: Float64Array) => {
    for (let i = 0; i < ordinates.length; i++) ordinates[i] = (total[i]! * (1 + cosines[i]!)) / 2;
  };
  return {
    outputs: ['total', 'lifshitz', 'acid', 'base', 'acidBase'].map((key) => ({ key, unit: 'mN/m' })),
    parameters: 3,
    condition: conditionNumber(design),
    solve: (cosines, out) => {
      halfWork(cosines);
      regression.fit(ordinates, roots);
      out[1] = roots[0]! ** 2;
      out[2] = roots[1]! ** 2;
      out[3] = roots[2]! ** 2;
      out[4] = 2 * roots[1]! * roots[2]!;
      out[0] = out[1] + out[4];
      return true;
    },
    predict: (out, i) => {
      const [lifshitz, base, acid] = design[i] as [number, number, number];
      return (2 * (Math.sqrt(out[1]!) * lifshitz + Math.sqrt(out[2]!) * base + Math.sqrt(out[3]!) * acid)) / total[i]! - 1;
    },
    negativeRoots: (cosines) => {
      halfWork(cosines);
      regression.fitUnconstrained(ordinates, roots);
      return ['lifshitz', 'acid', 'base'].filter((_, index) => roots[index]! < 0);
    },
  };
}
