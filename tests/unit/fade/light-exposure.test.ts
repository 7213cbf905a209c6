import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import { lightExposureCalculation } from '../../../shared-lib/fade/light-exposure.calculation.ts';
import { lightExposureMethod } from '../../../shared-lib/fade/light-exposure.method.ts';
import type { BenchReadings, CellValue } from '../../../shared-lib/method/method.ts';

const run = (input: unknown) => runCalculation(lightExposureCalculation, input);

const exposures = [0, 50, 100, 150, 200, 250];
/** Three patches of first-order fading with a little scatter, the third read in colour as well. */
const densities: Record<string, number[]> = {
  A: [1.4, 1.27, 1.16, 1.03, 0.95, 0.86],
  B: [1.42, 1.3, 1.16, 1.07, 0.96, 0.88],
  C: [1.38, 1.25, 1.15, 1.03, 0.93, 0.85],
};
const readings = Object.entries(densities).flatMap(([series, values]) => values.map((density, i) => ({ series, exposure: exposures[i]!, density })));
const withColour = readings.map((reading, i) => (reading.series === 'C' ? { ...reading, lab: [50 + 1.5 * (i % 6), 60 - 2 * (i % 6), 5] } : reading));

describe('light-exposure', () => {
  it('compares each reading with the unexposed one of its patch', () => {
    const { table } = run({ readings, densityBasis: 'minus-paper' });
    expect(table).toHaveLength(18);
    expect(table[0]).toMatchObject({ series: 'A', exposure: 0, retentionPct: 100 });
    expect(table[5]!.retentionPct).toBeCloseTo((100 * 0.86) / 1.4, 10);
    expect(table[11]!.retentionPct).toBeCloseTo((100 * 0.88) / 1.42, 10);
  });

  it('gives the means at the last exposure with n and interval', () => {
    const { results, notes } = run({ readings, densityBasis: 'minus-paper' });
    const left = [0.86 / 1.4, 0.88 / 1.42, 0.85 / 1.38].map((share) => share * 100);
    expect(results.retentionPct!.value).toBeCloseTo(left.reduce((a, b) => a + b) / 3, 10);
    expect(results.retentionPct).toMatchObject({ n: 3, level: 0.95, unit: '%' });
    expect(results.deltaE00!.value).toBeNull();
    expect(notes.join(' ')).toContain('250 h');
  });

  it('gives the exposure to the endpoint over the patches', () => {
    const { results, figures, notes } = run({ readings, densityBasis: 'minus-paper', irradianceWPerM2: 42 });
    expect(results.exposureToLimit).toMatchObject({ n: 3, unit: 'h', bound: 'exact' });
    expect(results.exposureToLimit!.value!).toBeGreaterThan(150);
    expect(results.exposureToLimit!.value!).toBeLessThan(200);
    expect(results.radiantExposureToLimit!.value! / results.exposureToLimit!.value!).toBeCloseTo(42 * 3.6, 8);
    expect(figures.map(({ id }) => id)).toEqual(['fade-life', 'retention-at-last-exposure']);
    expect(notes.join(' ')).toContain('ΔAICc of the models: zero order');
  });

  it('subtracts the paper from absolute densities', () => {
    const absolute = readings.map((reading) => ({ ...reading, density: reading.density + 0.1 }));
    const plain = run({ readings, densityBasis: 'minus-paper' }).results.exposureToLimit!.value!;
    const subtracted = run({ readings: absolute, densityBasis: 'absolute', paperDensity: 0.1 });
    expect(subtracted.results.exposureToLimit!.value!).toBeCloseTo(plain, 6);
    expect(run({ readings: absolute, densityBasis: 'absolute' }).flags.map(({ code }) => code)).toContain('paper-not-subtracted');
  });

  it('takes the endpoint on ΔE00', () => {
    const { results, table } = run({ readings: withColour.filter(({ series }) => series === 'C'), densityBasis: 'minus-paper', endpointOn: 'deltaE00', endpoint: { deltaE00: 5 } });
    expect(results.deltaE00!.value).toBeGreaterThan(5);
    expect(results.greyScale!.value).toBeLessThan(4);
    expect(results.exposureToLimit!.value!).toBeGreaterThan(100);
    expect(table[0]).toMatchObject({ deltaE00: 0, greyScale: '5' });
  });

  it('gives retention before there are enough readings for a curve', () => {
    const { results, notes, figures } = run({ readings: [{ exposure: 0, density: 1 }, { exposure: 100, density: 0.9 }], densityBasis: 'minus-paper' });
    expect(results.retentionPct!.value).toBeCloseTo(90, 10);
    expect(results.exposureToLimit!.value).toBeNull();
    expect(notes.join(' ')).toContain('No exposure to the limit yet');
    expect(figures.map(({ id }) => id)).toEqual(['retention-at-last-exposure']);
  });

  it('flags a patch that stops early', () => {
    const early = readings.filter(({ series, exposure }) => series !== 'B' || exposure < 250);
    const { flags, results } = run({ readings: early, densityBasis: 'minus-paper' });
    expect(flags.map(({ code }) => code)).toContain('patch-stops-early');
    expect(results.retentionPct!.n).toBe(2);
  });

  it.each([
    ['a patch that does not start at 0', { readings: readings.slice(1, 4) }, 'readings[0].exposure'],
    ['a reading of nothing', { readings: [{ exposure: 0, density: 1 }, { exposure: 1 }] }, 'readings[1].density'],
    ['only unexposed readings', { readings: [{ exposure: 0, density: 1 }, { series: 'B', exposure: 0, density: 1 }] }, 'readings'],
    ['density without its reference', { readings: [{ exposure: 0, lab: [50, 0, 0] }, { exposure: 1, density: 1 }] }, 'readings[0].density'],
    ['colour without its reference', { readings: [{ exposure: 0, density: 1 }, { exposure: 1, lab: [50, 0, 0] }] }, 'readings[0].lab'],
    ['a start no darker than the paper', { readings: [{ exposure: 0, density: 0.1 }, { exposure: 1, density: 0.1 }], paperDensity: 0.1 }, 'readings[0].density'],
    ['a density that doubled', { readings: [{ exposure: 0, density: 1 }, { exposure: 1, density: 2 }] }, 'readings[1].density'],
    ['paper with densities minus paper', { readings, densityBasis: 'minus-paper', paperDensity: 0.1 }, 'paperDensity'],
    ['ΔE00 without its endpoint', { readings: withColour, endpointOn: 'deltaE00' }, 'endpoint.deltaE00'],
    ['an unknown unit', { readings, exposureUnit: 'days' }, 'exposureUnit'],
    ['an L* above the scale', { readings: [{ exposure: 0, lab: [151, 0, 0] }, { exposure: 1, lab: [50, 0, 0] }] }, 'readings[0].lab[0]'],
  ])('refuses %s', (_what, input, field) => {
    expect(() => run(input)).toThrow(InputError);
    expect(() => run(input)).toThrow(expect.objectContaining({ field }));
  });
});

function bench(rows: Record<string, CellValue>[], conditions: Record<string, CellValue> = {}): BenchReadings {
  const defaults = Object.fromEntries(lightExposureMethod.conditions.flatMap((field) => ('default' in field && field.default !== undefined ? [[field.key, field.default]] : [])));
  return { conditions: { ...defaults, ...conditions }, rows: rows.map((values, i) => ({ row: `r${i + 1}`, values })), limits: [], traces: {} };
}

describe('light-exposure method', () => {
  const rows = readings.map((reading): Record<string, CellValue> => ({ ...reading }));

  it('evaluates the sheet with the defaults of its conditions', () => {
    const result = lightExposureMethod.evaluate(bench(rows));
    expect(result.calculation).toBe(lightExposureMethod.calculation);
    for (const { key } of lightExposureMethod.properties) expect(result.results[key]).toBeDefined();
    expect(result.results.exposureToLimit!.value).toBeCloseTo(run({ readings, densityBasis: 'minus-paper' }).results.exposureToLimit!.value!, 10);
  });

  it('leaves out rows that are laid out but not read', () => {
    const planned = [...rows.slice(0, 6), { series: 'A', exposure: 300 }, {}];
    expect(lightExposureMethod.evaluate(bench(planned)).table).toHaveLength(6);
  });

  it('names its figures for the strips, and its caution for UV, ozone and heat', () => {
    const ids = lightExposureMethod.evaluate(bench(rows)).figures.map(({ id }) => id);
    for (const { readingsFigure } of lightExposureMethod.properties) if (readingsFigure) expect(ids).toContain(readingsFigure);
    expect(lightExposureMethod.cautions.map(({ hazard }) => hazard)).toEqual(['uv', 'ozone', 'heat']);
  });

  it.each<[string, Record<string, CellValue>[], Record<string, CellValue>, string]>([
    ['an empty sheet', [], {}, 'rows[0].density'],
    ['only the reference', [{ exposure: 0, density: 1 }], {}, 'rows[1].density'],
    ['a reading without exposure', [{ exposure: 0, density: 1 }, { density: 0.9 }], {}, 'rows[1].exposure'],
    ['half a colour', [{ exposure: 0, L: 50, a: 0 }], {}, 'rows[0].b'],
    ['a first exposure other than 0, after an unread row', [{}, { exposure: 5, density: 1 }, { exposure: 9, density: 1 }], {}, 'rows[1].exposure'],
    ['a colour without its reference', [{ exposure: 0, density: 1 }, { exposure: 9, L: 50, a: 0, b: 0 }], {}, 'rows[0].L'],
    ['paper with densities minus paper', [{ exposure: 0, density: 1 }, { exposure: 9, density: 0.9 }], { paperDensity: 0.1 }, 'conditions.paperDensity'],
    ['ΔE00 without its endpoint', [{ exposure: 0, density: 1 }, { exposure: 9, density: 0.9 }], { endpointOn: 'deltaE00' }, 'conditions.endpointDeltaE00'],
  ])('points at the cell: %s', (_what, given, conditions, field) => {
    const evaluate = () => lightExposureMethod.evaluate(bench(given, conditions));
    expect(evaluate).toThrow(InputError);
    expect(evaluate).toThrow(expect.objectContaining({ field }));
  });
});
