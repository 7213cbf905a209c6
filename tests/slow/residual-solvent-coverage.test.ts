import { describe, it } from 'vitest';
import { runCalculation } from '../../shared-lib/calculation/calculation.ts';
import { residualSolventCalculation } from '../../shared-lib/release/residual-solvent.calculation.ts';
import { seededRandom, type Random } from '../../shared-lib/statistics/random.ts';
import { Coverage } from './simulate.ts';

const RUNS = 600;
const AMOUNTS = [2, 5, 10, 20, 40];
const AREA_M2 = 0.01;

/** Scatter of an injection, in µg; of the print about its mean, as a share. */
interface Scatter {
  injection: number;
  print: number;
}

function solvent(random: Random, name: string, meanUg: number, pieces: number, { injection, print }: Scatter, common: number[]) {
  const area = (ug: number) => 100 + 50 * (ug + injection * random.normal());
  return {
    name,
    calibration: AMOUNTS.map((amount) => ({ amount, area: area(amount) })),
    specimens: Array.from({ length: pieces }, (_, piece) => ({ areas: [area(meanUg * (1 + print * common[piece]!))], areaM2: AREA_M2 })),
  };
}

/** µg on 0.01 m² are tenths of mg/m². */
const mgPerM2 = (ug: number) => ug / (1000 * AREA_M2);

describe('residual solvents', () => {
  it.each([
    { pieces: 1, scatter: { injection: 0.4, print: 0 } },
    { pieces: 3, scatter: { injection: 0.4, print: 0.08 } },
    { pieces: 3, scatter: { injection: 0.8, print: 0.01 } },
    { pieces: 6, scatter: { injection: 0.2, print: 0.1 } },
  ])('one solvent and the total of two, $pieces pieces, $scatter', ({ pieces, scatter }) => {
    const random = seededRandom(77);
    const one = new Coverage(`residual-solvent, ${pieces} pieces, ${JSON.stringify(scatter)}`);
    const total = new Coverage(`its total with another`);
    for (let run = 0; run < RUNS; run++) {
      // Pieces that hold more of the one hold more of the other.
      const common = Array.from({ length: pieces }, () => random.normal());
      const solvents = [solvent(random, 'a', 15, pieces, scatter, common), solvent(random, 'b', 25, pieces, scatter, common)];
      const { calibration, specimens } = solvents[0]!;
      one.add(runCalculation(residualSolventCalculation, { calibration, specimens }).results.perSquareMetre!, mgPerM2(15));
      total.add(runCalculation(residualSolventCalculation, { solvents }).results.total!, mgPerM2(40));
    }
    one.judge();
    total.judge();
  });
});
