import { conditionNumber } from './condition-number.ts';
import type { ProbeLiquid } from './probe-liquids.ts';
import { rootRegression } from './root-regression.ts';
import type { WettingModel } from './wetting-model.ts';

/**
 * Owens–Wendt geometric mean: γL(1 + cos θ) = 2√(γSd γLd) + 2√(γSp γLp). Two liquids exactly; more by the straight line
 * through γL(1 + cos θ) / 2√γLd against √(γLp/γLd), whose intercept is √γSd and slope √γSp.
 * Sources: Owens & Wendt, J. Appl. Polym. Sci. 13 (1969) 1741; the line: Kaelble, J. Adhesion 2 (1970) 66; Rabel, Farbe und
 * Lack 77 (1971) 997.
 *
 * @param liquids with a dispersive part above 0, mN/m
 */
export function owensWendt(liquids: readonly ProbeLiquid[]): WettingModel {
  const dispersive = liquids.map((liquid) => liquid.dispersiveMNm!);
  const polar = liquids.map((liquid) => liquid.polarMNm!);
  const total = liquids.map((liquid) => liquid.totalMNm);
  const regression = rootRegression(liquids.map((_, i) => [1, Math.sqrt(polar[i]! / dispersive[i]!)]));
  const steepness = Float64Array.from(liquids, (_, i) => owensWendtOrdinate(total[i]!, dispersive[i]!, 0));
  const ordinates = new Float64Array(liquids.length);
  const roots = new Float64Array(2);

  const plot = (cosines: Float64Array) => {
    for (let i = 0; i < ordinates.length; i++) ordinates[i] = steepness[i]! * (1 + cosines[i]!);
  };
  return {
    outputs: [
      { key: 'total', unit: 'mN/m' },
      { key: 'dispersive', unit: 'mN/m' },
      { key: 'polar', unit: 'mN/m' },
    ],
    parameters: 2,
    condition: conditionNumber(liquids.map((_, i) => [Math.sqrt(dispersive[i]!), Math.sqrt(polar[i]!)])),
    solve: (cosines, out) => {
      plot(cosines);
      regression.fit(ordinates, roots);
      out[1] = roots[0]! ** 2;
      out[2] = roots[1]! ** 2;
      out[0] = out[1] + out[2];
      return true;
    },
    predict: (out, i) => (2 * (Math.sqrt(out[1]! * dispersive[i]!) + Math.sqrt(out[2]! * polar[i]!))) / total[i]! - 1,
    negativeRoots: (cosines) => {
      plot(cosines);
      regression.fitUnconstrained(ordinates, roots);
      return ['dispersive', 'polar'].filter((_, index) => roots[index]! < 0);
    },
  };
}

/** Ordinate of the Owens–Wendt plot, √(mN/m). */
export function owensWendtOrdinate(totalMNm: number, dispersiveMNm: number, cosine: number): number {
  return (totalMNm * (1 + cosine)) / (2 * Math.sqrt(dispersiveMNm));
}
