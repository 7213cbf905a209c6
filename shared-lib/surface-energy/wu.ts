import { conditionNumber } from './condition-number.ts';
import type { ProbeLiquid } from './probe-liquids.ts';
import type { WettingModel } from './wetting-model.ts';
import { wuPair, wuQuarterWork, type WuSolution } from './wu-pair.ts';

/**
 * Wu's harmonic mean. Two liquids exactly, where a physical solution exists; more by least squares of cos θ.
 * Source: Wu, J. Polym. Sci. C 34 (1971) 19; Wu, Polymer Interface and Adhesion, 1982.
 *
 * @param liquids with dispersive and polar parts, mN/m
 */
export function wu(liquids: readonly ProbeLiquid[]): WettingModel {
  const predict = (dispersive: number, polar: number, i: number) => {
    const liquid = liquids[i]!;
    return (4 * wuQuarterWork(dispersive, polar, liquid.dispersiveMNm!, liquid.polarMNm!)) / liquid.totalMNm - 1;
  };
  const [mostPolar, leastPolar] = extremes(liquids);
  const solution = (cosines: Float64Array): WuSolution | undefined => {
    const pair = wuPair(liquids[leastPolar]!, liquids[mostPolar]!, cosines[leastPolar]!, cosines[mostPolar]!)[0];
    return liquids.length === 2 ? pair : fitBySquares(liquids, cosines, pair ?? { dispersive: 25, polar: 5 });
  };
  return {
    outputs: [
      { key: 'total', unit: 'mN/m' },
      { key: 'dispersive', unit: 'mN/m' },
      { key: 'polar', unit: 'mN/m' },
    ],
    parameters: 2,
    condition: conditionNumber(liquids.map((liquid) => [Math.sqrt(liquid.dispersiveMNm!), Math.sqrt(liquid.polarMNm!)])),
    solve: (cosines, out) => {
      const found = solution(cosines);
      if (!found) return false;
      out[0] = found.dispersive + found.polar;
      out[1] = found.dispersive;
      out[2] = found.polar;
      return true;
    },
    predict: (out, i) => predict(out[1]!, out[2]!, i),
    negativeRoots: (cosines) => (liquids.length > 2 && solution(cosines)?.polar === 0 ? ['polar'] : []),
  };
}

/** Wu's own way with several liquids: every pair solved, then the mean of the pairs that have a physical solution. */
export function wuPairwiseMean(
  liquids: readonly ProbeLiquid[],
  cosines: Float64Array,
): { pairs: number; solved: number; mean: WuSolution | null } {
  const solutions: WuSolution[] = [];
  let pairs = 0;
  for (let i = 0; i < liquids.length; i++) {
    for (let j = i + 1; j < liquids.length; j++) {
      pairs++;
      const solution = wuPair(liquids[i]!, liquids[j]!, cosines[i]!, cosines[j]!)[0];
      if (solution) solutions.push(solution);
    }
  }
  const mean = (key: keyof WuSolution) => solutions.reduce((sum, solution) => sum + solution[key], 0) / solutions.length;
  return {
    pairs,
    solved: solutions.length,
    mean: solutions.length === 0 ? null : { dispersive: mean('dispersive'), polar: mean('polar') },
  };
}

/** Indices of the liquids with the largest and the smallest polar share. */
function extremes(liquids: readonly ProbeLiquid[]): [number, number] {
  const share = liquids.map((liquid) => liquid.polarMNm! / liquid.totalMNm);
  return [share.indexOf(Math.max(...share)), share.lastIndexOf(Math.min(...share))];
}

/** Damped Gauss–Newton on cos θ, held to dispersive > 0 and polar ≥ 0. */
function fitBySquares(liquids: readonly ProbeLiquid[], cosines: Float64Array, start: WuSolution): WuSolution {
  let { dispersive: x, polar: y } = start;
  let squares = squaresAt(liquids, cosines, x, y);
  let damping = 1e-4;
  for (let step = 0; step < 200 && damping < 1e12; step++) {
    let xx = 0;
    let xy = 0;
    let yy = 0;
    let gx = 0;
    let gy = 0;
    for (let i = 0; i < liquids.length; i++) {
      const { dispersiveMNm, polarMNm, totalMNm } = liquids[i]!;
      const scale = 4 / totalMNm;
      const jx = scale * slope(x, dispersiveMNm!);
      const jy = scale * slope(y, polarMNm!);
      const residual = cosines[i]! + 1 - scale * wuQuarterWork(x, y, dispersiveMNm!, polarMNm!);
      xx += jx * jx;
      xy += jx * jy;
      yy += jy * jy;
      gx += jx * residual;
      gy += jy * residual;
    }
    const held = y === 0 && gy <= 0;
    const determinant = xx * yy * (1 + damping) ** 2 - xy * xy;
    const dx = held ? gx / (xx * (1 + damping)) : (gx * yy * (1 + damping) - gy * xy) / determinant;
    const dy = held ? 0 : (gy * xx * (1 + damping) - gx * xy) / determinant;
    const nextX = Math.max(x + dx, x / 10);
    const nextY = Math.max(y + dy, 0);
    const next = squaresAt(liquids, cosines, nextX, nextY);
    if (next > squares) {
      damping *= 10;
      continue;
    }
    const moved = Math.abs(nextX - x) + Math.abs(nextY - y);
    [x, y, squares] = [nextX, nextY, next];
    damping = Math.max(damping / 10, 1e-12);
    if (moved < 1e-9) break;
  }
  return { dispersive: x, polar: y };
}

/** Derivative of s·l/(s + l) by s. */
function slope(solid: number, liquid: number): number {
  return solid + liquid === 0 ? 0 : (liquid / (solid + liquid)) ** 2;
}

function squaresAt(liquids: readonly ProbeLiquid[], cosines: Float64Array, x: number, y: number): number {
  let squares = 0;
  for (let i = 0; i < liquids.length; i++) {
    const { dispersiveMNm, polarMNm, totalMNm } = liquids[i]!;
    squares += (cosines[i]! + 1 - (4 * wuQuarterWork(x, y, dispersiveMNm!, polarMNm!)) / totalMNm) ** 2;
  }
  return squares;
}
