import { InputError } from '../calculation/input-error.ts';
import type { CalculationResult } from '../calculation/result.ts';
import type { BenchReadings } from '../method/method.ts';
import { runOnBench } from '../method/run-on-bench.ts';
import { numberIn, textIn } from '../method/sheet.ts';
import { residualSolventCalculation } from './residual-solvent.calculation.ts';

const CM2_PER_M2 = 10_000;

/** A peak of the run: one row of the sheet. */
interface Peak {
  /** Of the row on the sheet. */
  index: number;
  solvent: string;
  vial: string;
  specimen: string;
  amountUg: number | undefined;
  area: number;
  limitMgM2: number | undefined;
}

/** Where each part of the calculation's input came from: `calibration[2]` of a solvent → the row. */
type Places = Record<string, number[]>;

/**
 * Residual solvents from a run typed peak by peak.
 * @throws InputError as the calculation `residual-solvent`, and for a standard without its amount or two limits for one solvent
 */
export function evaluateResidualSolvent(bench: BenchReadings): CalculationResult {
  const { conditions } = bench;
  const headspace = textIn(conditions, 'quantification') === 'headspace';
  const peaks = bench.rows.flatMap(({ values }, index): Peak[] => {
    const [solvent, vial, area] = [textIn(values, 'solvent'), textIn(values, 'vial'), numberIn(values, 'area')];
    if (solvent === undefined || vial === undefined || area === undefined) return [];
    return [{ index, solvent, vial, specimen: textIn(values, 'specimen') ?? '1', amountUg: numberIn(values, 'amountUg'), area, limitMgM2: numberIn(values, 'limitMgM2') }];
  });
  if (peaks.length === 0) throw new InputError('rows[0].solvent', null, 'No peak has been entered yet: solvent, kind of vial and area of each.');
  const areaCm2 = numberIn(conditions, 'areaCm2');
  if (areaCm2 === undefined) throw new InputError('conditions.areaCm2', null, 'The area of each specimen is missing; the amount is per area.');
  const names = [...new Set(peaks.map(({ solvent }) => solvent))];
  const specimens = [...new Set(peaks.filter(({ vial }) => vial === 'specimen').map(({ specimen }) => specimen))];
  const built = names.map((name) => {
    const own = peaks.filter(({ solvent }) => solvent === name);
    return headspace ? bySteps(name, own, areaCm2 / CM2_PER_M2) : byStandards(name, own, specimens, areaCm2 / CM2_PER_M2);
  });
  const input = {
    solvents: built.map(({ solvent }) => solvent),
    amountUnit: 'µg',
    weighting: textIn(conditions, 'weighting'),
    sigma: textIn(conditions, 'sigma'),
  };
  const toCell = (field: string) => cellOf(field, built.map(({ places }) => places), peaks);
  const result = runOnBench(residualSolventCalculation, input, toCell);
  return { ...result, flags: result.flags.map((flag) => ({ ...flag, where: toCell(flag.where) })) };
}

/** @param numbers of the specimens of the run, all of which have a peak of every solvent */
function byStandards(name: string, peaks: Peak[], numbers: string[], areaM2: number) {
  const of = (vial: string) => peaks.filter((peak) => peak.vial === vial);
  const standards = of('standard');
  if (standards.length === 0) throw new InputError(`rows[${peaks[0]!.index}].vial`, null, `${name} has no standard yet; enter the peaks of its standards, each with its amount.`);
  if (numbers.length === 0) throw new InputError(`rows[${peaks[0]!.index}].vial`, null, 'There is no specimen yet; enter its peaks, area 0 where there is none.');
  const specimens = numbers.map((number) => {
    const injections = of('specimen').filter(({ specimen }) => specimen === number);
    if (injections.length === 0) throw new InputError(`rows[${peaks[0]!.index}].specimen`, null, `${name} has no peak of specimen ${number} yet; enter area 0 where there is none.`);
    return injections;
  });
  return {
    solvent: {
      name,
      limitMgM2: limitOf(name, peaks),
      calibration: standards.map((peak) => ({ amount: amountOf(peak), area: peak.area })),
      specimens: specimens.map((injections) => ({ areas: injections.map(({ area }) => area), areaM2 })),
      blanks: of('blank').map(({ area }) => area),
    },
    places: {
      calibration: standards.map(({ index }) => index),
      specimens: specimens.map(([first]) => first!.index),
      blanks: of('blank').map(({ index }) => index),
      limitMgM2: peaks.filter(({ limitMgM2 }) => limitMgM2 !== undefined).map(({ index }) => index),
    } as Places,
  };
}

function bySteps(name: string, peaks: Peak[], areaM2: number) {
  const sample = peaks.filter(({ vial }) => vial === 'specimen');
  const standard = peaks.filter(({ vial }) => vial === 'standard');
  const other = sample.find(({ specimen }) => specimen !== sample[0]!.specimen);
  if (other) throw new InputError(`rows[${other.index}].specimen`, other.specimen, 'Multiple extraction takes one specimen in each test; start another test for the next.');
  if (sample.length < 2 || standard.length < 2) {
    throw new InputError(`rows[${peaks[0]!.index}].vial`, null, `${name} needs at least two steps of the specimen and two of the standard, in the order of extraction.`);
  }
  const standardUg = amountOf(standard[0]!);
  const unlike = standard.find((peak) => peak.amountUg !== undefined && peak.amountUg !== standardUg);
  if (unlike) throw new InputError(`rows[${unlike.index}].amountUg`, unlike.amountUg, `All steps of the standard are from one vial with ${standardUg} µg.`);
  return {
    solvent: { name, limitMgM2: limitOf(name, peaks), headspace: { sampleAreas: sample.map(({ area }) => area), standardAreas: standard.map(({ area }) => area), standardUg, areaM2 } },
    places: { sampleAreas: sample.map(({ index }) => index), standardAreas: standard.map(({ index }) => index), standardUg: [standard[0]!.index] } as Places,
  };
}

function amountOf({ amountUg, index, solvent }: Peak): number {
  if (amountUg === undefined) throw new InputError(`rows[${index}].amountUg`, null, `This standard of ${solvent} needs its amount in µg.`);
  return amountUg;
}

/** The limit stands in any row of the solvent; it may be repeated, not changed. */
function limitOf(name: string, peaks: Peak[]): number | undefined {
  const stated = peaks.filter(({ limitMgM2 }) => limitMgM2 !== undefined);
  const other = stated.find(({ limitMgM2 }) => limitMgM2 !== stated[0]!.limitMgM2);
  if (other) throw new InputError(`rows[${other.index}].limitMgM2`, other.limitMgM2, `${name} has a limit of ${stated[0]!.limitMgM2} mg/m² further up; a solvent has one limit.`);
  return stated[0]?.limitMgM2;
}

const COLUMN_OF: Record<string, string> = { limitMgM2: 'limitMgM2', standardUg: 'amountUg' };

/** `solvents[1].calibration[0].amount` → the cell it was typed in. */
function cellOf(field: string, places: Places[], peaks: Peak[]): string {
  const [, solvent, rest = ''] = /^solvents\[(\d+)\]\.?(.*)$/.exec(field) ?? [];
  if (solvent === undefined) return ['weighting', 'sigma'].includes(field) ? `conditions.${field}` : '';
  const [, list, place = '0', key] = /^(?:headspace\.)?(\w+)(?:\[(\d+)\])?(?:\.(\w+))?/.exec(rest) ?? [];
  const index = list === undefined ? undefined : places[Number(solvent)]?.[list]?.[Number(place)];
  if (list === undefined || index === undefined) return `rows[${peaks[0]!.index}].solvent`;
  return `rows[${index}].${COLUMN_OF[list] ?? (key === 'amount' ? 'amountUg' : 'area')}`;
}
