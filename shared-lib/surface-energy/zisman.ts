import type { ProbeLiquid } from './probe-liquids.ts';
import type { WettingModel } from './wetting-model.ts';

/** Our own choice: tensions that span 2 mN/m count as alike (10), 0.2 mN/m as the same (100). */
const usefulRangeMNm = 20;

/**
 * Zisman's critical surface tension: the straight line of cos θ on γL, carried on to cos θ = 1. It is no surface energy but
 * the tension of the liquid that would just spread.
 * Source: Fox & Zisman, J. Colloid Sci. 5 (1950) 514; cos θ regressed on γL, not the other way round.
 */
export function zisman(liquids: readonly ProbeLiquid[]): WettingModel {
  const tension = liquids.map((liquid) => liquid.totalMNm);
  const meanTension = tension.reduce((sum, value) => sum + value, 0) / tension.length;
  const deviation = tension.map((value) => value - meanTension);
  const squares = deviation.reduce((sum, value) => sum + value * value, 0);
  return {
    outputs: [
      { key: 'critical', unit: 'mN/m' },
      { key: 'slope', unit: 'm/mN' },
    ],
    parameters: 2,
    condition: usefulRangeMNm / (Math.max(...tension) - Math.min(...tension)),
    solve: (cosines, out) => {
      let slope = 0;
      let meanCosine = 0;
      for (let i = 0; i < deviation.length; i++) {
        slope += deviation[i]! * cosines[i]!;
        meanCosine += cosines[i]!;
      }
      slope /= squares;
      meanCosine /= deviation.length;
      if (!(slope < 0)) return false;
      out[0] = meanTension + (1 - meanCosine) / slope;
      out[1] = slope;
      return out[0] > 0;
    },
    predict: (out, i) => 1 + out[1]! * (tension[i]! - out[0]!),
    negativeRoots: () => [],
  };
}
