import type { Flag, ResultValue } from '../calculation/result.ts';
import { headspaceSeries } from './headspace-series.ts';
import { halfWidthOfSum } from './interval-of-sum.ts';
import type { SolventAmount } from './solvent-amount.ts';

export interface Headspace {
  sampleAreas: readonly number[];
  standardAreas: readonly number[];
  standardUg: number;
}

/**
 * Mass of one solvent in the vial by multiple headspace extraction, ΣA of the specimen over ΣA of the standard times the
 * standard's mass. Sums are those of the fitted lines, and so is the interval, by error propagation of ln ΣA.
 * Source: B. Kolb, L. S. Ettre, Static Headspace–Gas Chromatography (multiple extraction), from memory.
 * @returns µg, and mg/m² where the area of the print is known
 * @throws InputError as `headspaceSeries`
 */
export function headspaceAmount(name: string, { sampleAreas, standardAreas, standardUg }: Headspace, areaM2: number | undefined, level: number, where: string, flags: Flag[]): { mass: ResultValue; quotients: { sample: number; standard: number }; perSquareMetre: SolventAmount | null } {
  const sample = headspaceSeries(sampleAreas, `${where}.sampleAreas`, flags);
  const standard = headspaceSeries(standardAreas, `${where}.standardAreas`, flags);
  const value = (sample.total / standard.total) * standardUg;
  const parts = [sample.logVariance, standard.logVariance];
  // Two steps fix their line: of such a series nobody knows the scatter.
  const known = parts.every((part) => part !== null) ? parts.map((part) => part!) : [];
  const reach = halfWidthOfSum(known, level);
  const scaled = (factor: number, unit: string): ResultValue => ({
    value: value * factor,
    unit,
    low: reach === null ? null : value * factor * Math.exp(-reach),
    high: reach === null ? null : value * factor * Math.exp(reach),
    level: reach === null ? null : level,
    n: 1,
    bound: 'exact',
  });
  const quotients = { sample: sample.quotient, standard: standard.quotient };
  if (areaM2 === undefined) return { mass: scaled(1, 'µg'), quotients, perSquareMetre: null };
  const result = scaled(1 / (1000 * areaM2), 'mg/m²');
  const variances = known.map(({ variance, degreesOfFreedom }) => ({ variance: variance * result.value! ** 2, degreesOfFreedom }));
  return { mass: scaled(1, 'µg'), quotients, perSquareMetre: { name, specimens: [{ perSquareMetre: result.value!, below: false, amount: value }], result, variances } };
}
