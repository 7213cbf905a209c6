import { describe, expect, it } from 'vitest';
import { blockingMethod } from '../../../shared-lib/mechanical/blocking.method.ts';
import { frictionMethod } from '../../../shared-lib/mechanical/friction.method.ts';
import type { Trace } from '../../../shared-lib/method/method.ts';
import { bench, type Cells } from '../colour/bench.ts';
import { refusal } from '../surface-energy/refusal.ts';

const friction = (rows: Cells[], conditions: Cells = { sledMassG: 200 }, traces: Record<string, Trace> = {}) => frictionMethod.evaluate({ ...bench(rows, conditions), traces });
const blocking = (rows: Cells[], conditions: Cells = {}) => blockingMethod.evaluate(bench(rows, { pressedBy: 'clamp', pressureKPa: 70, temperatureC: 50, hours: 24, areaCm2: 100, ...conditions }));
const trace = (mm: number[], forceN: number[]): Trace => ({ name: 'pull.csv', displacementMm: Float64Array.from(mm), forceN: Float64Array.from(forceN) });

/* A steady pull: up to 0.6 N at 2 mm, then 0.4 N to 70 mm. On a sled of 1.96133 N: 0.306 and 0.204. */
const pull = trace(
  Array.from({ length: 141 }, (_, index) => index / 2),
  Array.from({ length: 141 }, (_, index) => (index <= 4 ? 0.15 * index : 0.4)),
);

it('flags name a specimen by its number on the sheet, where a row before it is blank', () => {
  expect(blocking([{}, { loadG: 250, separated: 'yes' }]).flags).toMatchObject([{ where: 'rows[1].loadG', text: expect.stringMatching(/^Specimen 2 separated at 250 g/) as string }]);
  expect(friction([{}, { staticN: 0.3, kineticN: 0.4 }]).flags).toMatchObject([{ where: 'rows[1].kineticN', text: expect.stringMatching(/^Specimen 2: the kinetic coefficient/) as string }]);
});

describe('friction on the bench sheet', () => {
  it('takes forces, traces and angles side by side', () => {
    const { results, table, figures } = friction([{ staticN: 0.588399, kineticN: 0.392266 }, {}, { trace: 'k' }, { angleDeg: 15 }], { sledMassG: 200, travelMm: 60 }, { k: pull });
    expect(table.map((row) => Number(row.static).toFixed(4))).toEqual(['0.3000', (0.6 / 1.96133).toFixed(4), '0.2679']);
    expect(results.kinetic!.n).toBe(2);
    expect(figures.map(({ id }) => id)).toEqual(['sled-2', 'static-readings', 'kinetic-readings']);
  });

  it('names the cell of what it refuses or flags', () => {
    const still = trace([5, 5, 5], [0.1, 0.2, 0.3]);
    const stuck = refusal(() => friction([{}, { trace: 'k' }], { sledMassG: 200 }, { k: still }));
    expect([stuck.field, stuck.message]).toEqual(['rows[1].trace', 'The trace of specimen 2 has no movement: its displacement stays at 5 mm, so the sled never slid.']);
    expect(refusal(() => friction([{ angleDeg: 90 }])).field).toBe('rows[0].angleDeg');
    expect(refusal(() => friction([{ staticN: 0.5, angleDeg: 20 }])).field).toBe('rows[0].angleDeg');
    expect(refusal(() => friction([{ staticN: 0.5 }], {})).field).toBe('conditions.sledMassG');
    expect(refusal(() => friction([{ trace: 'lost' }])).message).toContain('not in the notebook');
    expect(refusal(() => friction([{}])).field).toBe('rows[0].staticN');
    expect(friction([{}, { staticN: 0.3, kineticN: 0.5 }]).flags.map(({ code, where }) => [code, where])).toEqual([['kinetic-above-static', 'rows[1].kineticN']]);
    expect(friction([{ trace: 'k' }], { sledMassG: 200 }, { k: trace([0, 10, 20], [0, 0, 0]) }).flags.map(({ code }) => code)).toContain('no-force');
  });
});

describe('blocking on the bench sheet', () => {
  it('grades, loads or both; a pair that held is a bound', () => {
    const { results, notes } = blocking([{ grade: '2', loadG: 80, separated: 'yes' }, {}, { grade: '3', loadG: 200, separated: 'no' }, { grade: '2' }]);
    expect(results.grade).toMatchObject({ value: 2, low: 2, high: 3, n: 3 });
    expect(results.worstGrade!.value).toBe(3);
    expect(results.load!.n).toBe(2);
    expect(results.maximum).toMatchObject({ value: 200, bound: 'at-least' });
    expect(notes.join(' ')).toContain('not the tendency');
  });

  it('only graded gives no load, and the worse of two middles', () => {
    const { results, figures } = blocking([{ grade: '1' }, { grade: '2' }]);
    expect(results.grade!.value).toBe(2);
    expect(results.load).toMatchObject({ value: null, n: 0 });
    expect(figures.map(({ id }) => id)).toEqual(['blocking-grades']);
  });

  it('says what is missing for a comparison, but not of pairs straight off the roll', () => {
    expect(blocking([{ grade: '1' }], { pressureKPa: null, hours: null }).flags[0]!.text).toContain('pressure and time');
    expect(blocking([{ grade: '1' }], { pressedBy: 'roll', pressureKPa: null, temperatureC: null, hours: null }).flags).toEqual([]);
  });

  it('names the cell', () => {
    expect(refusal(() => blocking([{}, { separated: 'yes' }])).field).toBe('rows[1].loadG');
    expect(refusal(() => blocking([{}])).field).toBe('rows[0].grade');
    expect(blocking([{}, { loadG: 250, separated: 'yes' }]).flags.map(({ code, where }) => [code, where])).toEqual([['beyond-limit', 'rows[1].loadG']]);
  });
});
