import { z } from 'zod';
import { defineCalculation, type TableColumn } from '../calculation/calculation.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import type { Figure } from '../figure/figure.ts';
import { formatValue } from '../quantity/format.ts';
import { STANDARD_GRAVITY } from '../quantity/units.ts';
import { fitCensoredNormal } from '../statistics/censored-normal.ts';
import { summarise } from '../statistics/summarise.ts';

const LEVEL = 0.95;
/** ASTM D3354: 100 cm², up to 200 g. */
const STANDARD_AREA_CM2 = 100;
const STANDARD_LIMIT_G = 200;

const input = z.strictObject({
  specimens: z.array(z.strictObject({ loadG: z.number().min(0), separated: z.boolean().default(true) })).min(1).max(1000),
  areaCm2: z.number().positive().default(STANDARD_AREA_CM2),
  limitG: z.number().positive().optional(),
});
type Input = z.output<typeof input>;

const columns: TableColumn[] = [
  { key: 'specimen', title: 'Specimen', decimals: 0 },
  { key: 'loadG', title: 'Load', unit: 'g' },
  { key: 'pressurePa', title: 'Pressure', unit: 'Pa' },
  { key: 'separated', title: 'Separated' },
];

/** Load that pulls two blocked layers of film apart. Layers still together at the last load are lower bounds. */
export const blockingLoadCalculation = defineCalculation({
  id: 'blocking-load',
  version: '1',
  title: 'Blocking load',
  input,
  compute: (values) => {
    const { specimens, areaCm2, limitG } = values;
    const load = meanLoad(values);
    const highest = Math.max(...specimens.map(({ loadG }) => loadG));
    const together = specimens.filter(({ separated }) => !separated).length;
    const maximum: ResultValue = { value: highest, unit: 'g', low: together > 0 ? highest : null, high: null, level: null, n: specimens.length, bound: together > 0 ? 'at-least' : 'exact' };
    return {
      results: { load, pressure: inPascal(load, areaCm2), maximum },
      table: specimens.map(({ loadG, separated }, index) => ({ specimen: index + 1, loadG, pressurePa: pascal(loadG, areaCm2), separated })),
      flags: flags(values),
      notes: [
        together === 0
          ? 'Every specimen separated: ordinary mean with t interval.'
          : load.bound === 'exact'
            ? `${together} of ${specimens.length} specimens did not separate and count as lower bounds: mean by maximum likelihood, profile-likelihood interval.`
            : `${together} of ${specimens.length} specimens did not separate, too many to estimate the spread: the mean is at least the mean of the loads.`,
        'It measures the blocking that is there, not the tendency to block later.',
      ],
      figures: [figure(values, load, limitG)],
    };
  },
  columns,
  cautions: [],
  sources: ['ASTM D3354-21 (load in grams over 100 cm², limit 200 g); similar to ISO 11502 method B, not equivalent', '1 g over 100 cm² = 0.980665 Pa'],
});

/** Pressure of a load in grams on an area in cm². */
function pascal(loadG: number, areaCm2: number): number {
  return (loadG * STANDARD_GRAVITY * 10) / areaCm2;
}

function inPascal(load: ResultValue, areaCm2: number): ResultValue {
  const convert = (value: number | null) => (value === null ? null : pascal(value, areaCm2));
  return { ...load, unit: 'Pa', value: convert(load.value), low: convert(load.low), high: convert(load.high) };
}

function meanLoad({ specimens }: Input): ResultValue {
  const n = specimens.length;
  const fit = fitCensoredNormal(specimens.map(({ loadG, separated }) => ({ low: loadG, high: separated ? loadG : null })), LEVEL);
  if (fit.status === 'estimated') {
    return { value: fit.mean, unit: 'g', low: fit.low, high: fit.high, level: fit.low === null && fit.high === null ? null : LEVEL, n, bound: 'exact' };
  }
  const { mean } = summarise(specimens.map(({ loadG }) => loadG), LEVEL);
  return { value: mean, unit: 'g', low: mean, high: null, level: null, n, bound: 'at-least' };
}

function flags({ specimens, areaCm2, limitG }: Input): Flag[] {
  const found: Flag[] = [];
  if (areaCm2 !== STANDARD_AREA_CM2) {
    found.push({ code: 'area', where: 'areaCm2', text: `The plates have ${areaCm2} cm²; ASTM D3354 asks for ${STANDARD_AREA_CM2} cm²: compare pressures, not grams.` });
  }
  specimens.forEach(({ loadG, separated }, index) => {
    const where = `specimens[${index}].loadG`;
    if (separated && loadG > STANDARD_LIMIT_G) {
      found.push({ code: 'beyond-limit', where, text: `Specimen ${index + 1} separated at ${loadG} g, beyond the ${STANDARD_LIMIT_G} g to which ASTM D3354 goes.` });
    }
    if (!separated && limitG !== undefined && loadG < limitG) {
      found.push({ code: 'stopped-early', where, text: `Specimen ${index + 1} was still together at ${loadG} g, but the load was to go to ${limitG} g.` });
    }
  });
  return found;
}

function figure({ specimens }: Input, load: ResultValue, limitG: number | undefined): Figure {
  const { text, intervalText } = formatValue(load);
  return {
    id: 'loads',
    title: 'Blocking load of the specimens',
    finding: `Mean of ${specimens.length} specimens ${text}${intervalText ? ` (${intervalText})` : ''}.`,
    x: { title: 'Specimen', scale: 'category', categories: specimens.map((_, index) => String(index + 1)) },
    y: { title: 'Load', unit: 'g', scale: 'linear', min: 0 },
    series: [
      { name: 'load', kind: 'points', role: 'reading', points: specimens.map(({ loadG, separated }, x) => ({ x, y: loadG, ...(!separated && { open: 'up' as const }) })) },
    ],
    lines: limitG === undefined ? [] : [{ name: 'limit', axis: 'y', value: limitG, role: 'limit' }],
  };
}
