import { InputError } from '../calculation/input-error.ts';
import type { CalculationResult } from '../calculation/result.ts';
import type { Lab } from '../colour/lab.ts';
import type { BenchReadings, CellValue } from '../method/method.ts';
import { runOnBench } from '../method/run-on-bench.ts';
import { numberIn, textIn } from '../method/sheet.ts';
import { lightExposureCalculation } from './light-exposure.calculation.ts';

const conditionOf: Record<string, string> = {
  'endpoint.retentionPct': 'endpointRetentionPct',
  'endpoint.deltaE00': 'endpointDeltaE00',
};
const labKeys = ['L', 'a', 'b'] as const;

/**
 * Retention, colour change, grey scale and the exposure to the endpoint from a light-exposure sheet. Rows in which
 * neither density nor colour was read yet do not count.
 * @throws InputError for a row with a reading but no exposure or half a colour, and as the calculation `light-exposure`.
 */
export function evaluateLightExposure(bench: BenchReadings): CalculationResult {
  const read = bench.rows
    .map((row, index) => ({ index, values: row.values, density: numberIn(row.values, 'density'), lab: labIn(row.values, index) }))
    .filter(({ density, lab }) => density !== undefined || lab !== undefined);
  const readings = read.map(({ index, values, density, lab }) => {
    const exposure = numberIn(values, 'exposure');
    if (exposure === undefined) {
      throw new InputError(`rows[${index}].exposure`, null, 'This reading has no exposure; enter 0 for the unexposed reference.');
    }
    return { series: textIn(values, 'series'), exposure, density, lab };
  });
  if (readings.length < 2) {
    throw new InputError(`rows[${readings.length}].density`, null, 'Enter the unexposed reading of a patch and at least one reading after exposure.');
  }
  const { conditions } = bench;
  const input = {
    readings,
    exposureUnit: textIn(conditions, 'exposureUnit'),
    irradianceWPerM2: numberIn(conditions, 'irradianceWPerM2'),
    densityBasis: textIn(conditions, 'densityBasis'),
    paperDensity: numberIn(conditions, 'paperDensity'),
    endpointOn: textIn(conditions, 'endpointOn'),
    endpoint: { retentionPct: numberIn(conditions, 'endpointRetentionPct'), deltaE00: numberIn(conditions, 'endpointDeltaE00') },
  };
  return runOnBench(lightExposureCalculation, input, (field) => {
    const reading = /^readings\[(\d+)\](?:\.(\w+)(?:\[(\d)\])?)?/.exec(field);
    if (!reading) return field === 'readings' ? '' : `conditions.${conditionOf[field] ?? field}`;
    const [, place, key, coordinate] = reading;
    return `rows[${read[Number(place)]!.index}].${key === 'lab' ? labKeys[Number(coordinate ?? 0)] : (key ?? 'exposure')}`;
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
