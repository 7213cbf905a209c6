import { InputError } from '../calculation/input-error.ts';
import type { CalculationResult, Flag } from '../calculation/result.ts';
import type { Lab } from '../colour/lab.ts';
import type { BenchReadings, CellValue } from '../method/method.ts';
import { runOnBench } from '../method/run-on-bench.ts';
import { limitOn, numberIn, textIn } from '../method/sheet.ts';
import { exposureOfRow } from './exposure-of-row.ts';
import { lightExposureCalculation } from './light-exposure.calculation.ts';
import { plannedExposures } from './planned-exposures.ts';

const conditionOf: Record<string, string> = {
  'endpoint.retentionPct': 'endpointRetentionPct',
  'endpoint.deltaE00': 'endpointDeltaE00',
};
const labKeys = ['L', 'a', 'b'] as const;

/**
 * Retention, colour change, grey scale and the exposure to the endpoint from a light-exposure sheet, of one colour or of
 * several ranked. Rows in which neither density nor colour was read yet do not count.
 * @throws InputError for a row with a reading but no exposure or half a colour, a plan that cannot be read, and as the
 *   calculation `light-exposure`.
 */
export function evaluateLightExposure(bench: BenchReadings): CalculationResult {
  const read = bench.rows
    .map((row, index) => ({ index, values: row.values, density: numberIn(row.values, 'density'), lab: labIn(row.values, index) }))
    .filter(({ density, lab }) => density !== undefined || lab !== undefined);
  const { conditions } = bench;
  plannedExposures(textIn(conditions, 'readAt') ?? '');
  const readings = read.map(({ index, values, density, lab }) => {
    const exposure = exposureOfRow(values, conditions);
    if (exposure === undefined) {
      const orDay = textIn(conditions, 'exposureUnit') === 'd' ? ', or the day of the reading and, above, the first day of exposure' : '';
      throw new InputError(`rows[${index}].exposure`, null, `This reading has no exposure; enter 0 for the unexposed reference${orDay}.`);
    }
    if (exposure < 0) throw new InputError(`rows[${index}].readOn`, textIn(values, 'readOn'), 'This day lies before the first day of exposure; enter exposure 0 for the unexposed reference.');
    return { colour: textIn(values, 'colour'), series: textIn(values, 'series'), blueWool: numberIn(values, 'blueWool'), exposure, density, lab };
  });
  if (readings.length < 2) {
    throw new InputError(`rows[${readings.length}].density`, null, 'Enter the unexposed reading of a patch and at least one reading after exposure.');
  }
  const input = {
    readings,
    exposureUnit: textIn(conditions, 'exposureUnit'),
    irradianceWPerM2: numberIn(conditions, 'irradianceWPerM2'),
    densityBasis: textIn(conditions, 'densityBasis'),
    paperDensity: numberIn(conditions, 'paperDensity'),
    endpointOn: textIn(conditions, 'endpointOn'),
    endpoint: { retentionPct: numberIn(conditions, 'endpointRetentionPct'), deltaE00: numberIn(conditions, 'endpointDeltaE00') },
  };
  const toCell = (field: string) => {
    const reading = /^readings\[(\d+)\](?:\.(\w+)(?:\[(\d)\])?)?/.exec(field);
    if (!reading) return field === 'readings' ? '' : `conditions.${conditionOf[field] ?? field}`;
    const [, place, key, coordinate] = reading;
    return `rows[${read[Number(place)]!.index}].${key === 'lab' ? labKeys[Number(coordinate ?? 0)] : (key ?? 'exposure')}`;
  };
  const result = runOnBench(lightExposureCalculation, input, toCell);
  const flags = result.flags.map((flag) => (flag.where.startsWith('readings[') ? { ...flag, where: toCell(flag.where) } : flag));
  return { ...result, flags: [...flags, ...limitFlags(bench), ...dateFlags(read.map(({ index, values }, place) => ({ index, on: textIn(values, 'readOn'), exposure: readings[place]!.exposure })))] };
}

/** Limits are set in hours, and the last ones of the product are taken over: in a test that counts in another unit they mean something else. */
function limitFlags(bench: BenchReadings): Flag[] {
  const unit = textIn(bench.conditions, 'exposureUnit') ?? 'h';
  if (unit === 'h' || !limitOn(bench, 'exposureToLimit')) return [];
  return [{ code: 'limit-in-other-unit', where: 'exposureToLimit', text: `The limit on the exposure to the endpoint counts in ${unit}, the unit of this test, and not in hours; check that it was meant so.` }];
}

/** Light adds up: read later, exposed at least as long. */
function dateFlags(readings: { index: number; on: string | undefined; exposure: number }[]): Flag[] {
  const dated = readings.flatMap(({ on, ...reading }) => (on === undefined ? [] : [{ ...reading, on }]));
  return dated.flatMap(({ index, on, exposure }): Flag[] => {
    const earlier = dated.find((other) => other.on < on && other.exposure > exposure && exposure > 0);
    if (!earlier) return [];
    return [{ code: 'dates-out-of-order', where: `rows[${index}].readOn`, text: `Read on ${on} at ${exposure}, while ${earlier.exposure} was read on ${earlier.on} before; one of the days or exposures is wrong.` }];
  });
}

/** The three coordinates of a row, `undefined` when none is read. */
function labIn(values: Record<string, CellValue>, index: number): Lab | undefined {
  const coordinates = labKeys.map((key) => numberIn(values, key));
  if (coordinates.every((coordinate) => coordinate === undefined)) return undefined;
  const missing = labKeys.find((_, place) => coordinates[place] === undefined);
  if (missing) {
    throw new InputError(`rows[${index}].${missing}`, null, 'A colour needs L*, a* and b* together.');
  }
  return coordinates as [number, number, number];
}
