import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { laminationRecheckCalculation } from '../../../shared-lib/mechanical/lamination-recheck.calculation.ts';
import { laminationRecheckMethod } from '../../../shared-lib/mechanical/lamination-recheck.method.ts';
import { recheckFollowUp } from '../../../shared-lib/mechanical/recheck-follow-up.ts';
import { bench } from '../colour/bench.ts';
import { refusal } from '../surface-energy/refusal.ts';

const run = (input: unknown) => runCalculation(laminationRecheckCalculation, input);
const place = (more: Record<string, unknown> = {}) => ({ hours: 1, areaCm2: 500, bubbles: 0, tunnels: 0, delaminations: 0, ...more });

describe('defects per area', () => {
  it('are those of the last check with the exact interval of their count', () => {
    const { results, table } = run({ places: [place({ bubbles: 40 }), place({ hours: 24, bubbles: 3, tunnels: 1 }), place({ hours: 24 })] });
    // 4 in 0.1 m²; limits of 4: 1.089865 to 10.24159 (Garwood; R's survival package prints 10.24153).
    expect(results.defects).toMatchObject({ value: 40, unit: 'per m²', n: 2 });
    expect(results.defects!.low).toBeCloseTo(10.89865, 3);
    expect(results.defects!.high).toBeCloseTo(102.4159, 3);
    expect(results.tunnels!.value).toBe(10);
    expect(results.lastCheckH!.value).toBe(24);
    expect(table.map(({ hours, bubbles, perM2 }) => [hours, bubbles, perM2])).toEqual([[1, 40, 800], [24, 3, 40]]);
  });

  it('where nothing was found have an upper end', () => {
    const { results } = run({ places: [place({ areaCm2: 10_000 })] });
    expect(results.defects).toMatchObject({ value: 0, low: 0 });
    expect(results.defects!.high).toBeCloseTo(3.6888794541, 9);
    expect(results.delaminations!.high).toBeCloseTo(3.6888794541, 9);
  });
});

describe('growth', () => {
  it('is the ratio of the rates, and says what the counts can show', () => {
    const grown = run({ places: [place({ bubbles: 2 }), place({ hours: 168, areaCm2: 1000, bubbles: 20 })] });
    expect(grown.results.growth!.value).toBeCloseTo(5, 12);
    expect(grown.results.growth!.low!).toBeGreaterThan(1);
    expect(grown.notes.join(' ')).toContain('the counts show that defects grow in number');
    const open = run({ places: [place({ bubbles: 2 }), place({ hours: 168, bubbles: 3 })] });
    expect(open.results.growth).toMatchObject({ value: expect.closeTo(1.5, 12) as number, bound: 'exact' });
    expect(open.notes.join(' ')).toContain('cannot show whether defects grow');
  });

  it('from nothing is a lower bound; of one check or of nothing it is none', () => {
    // Exact: of 9 defects all at the last check; share at least 0.025^(1/9) = 0.66373, odds 1.9738.
    expect(run({ places: [place(), place({ hours: 24, bubbles: 9 })] }).results.growth).toMatchObject({ bound: 'at-least', high: null, value: expect.closeTo(1.9738, 3) as number });
    expect(run({ places: [place({ bubbles: 1 })] }).results.growth!.value).toBeNull();
    expect(run({ places: [place(), place({ hours: 24 })] }).results.growth!.value).toBeNull();
  });
});

describe('the link to ink coverage', () => {
  const at = (coveragePct: number, bubbles: number) => place({ coveragePct, bubbles });

  it('of two coverages is the ratio of their rates, per 10 %', () => {
    const { results, notes } = run({ places: [at(0, 4), at(100, 40)] });
    expect(results.coverageFactor!.value).toBeCloseTo(10 ** 0.1, 9);
    expect(results.coverageFactor!.low!).toBeGreaterThan(1);
    expect(notes.join(' ')).toContain('the 44 defects show that there are more of them where more ink lies');
    expect(notes.join(' ')).toContain('do not say which of them is the cause');
  });

  it('says when the counts cannot show it', () => {
    expect(run({ places: [at(0, 2), at(100, 3)] }).notes.join(' ')).toContain('the 5 defects cannot show whether');
    expect(run({ places: [at(0, 0), at(100, 0)] }).notes.join(' ')).toContain('no defect was counted');
    expect(run({ places: [at(50, 3), at(55, 2)] }).notes.join(' ')).toContain('too alike');
    expect(run({ places: [place({ bubbles: 3 })] }).notes.join(' ')).toContain('fewer than two places');
    expect(run({ places: [at(0, 40), at(100, 4)] }).notes.join(' ')).toContain('fewer of them where more ink lies');
  });

  it('is a bound where all defects lie at one end', () => {
    expect(run({ places: [at(0, 0), at(100, 12)] }).results.coverageFactor).toMatchObject({ bound: 'at-least', high: null });
    expect(run({ places: [at(0, 12), at(100, 0)] }).results.coverageFactor).toMatchObject({ bound: 'at-most', low: 0 });
  });

  it('is not taken from earlier checks', () => {
    expect(run({ places: [at(0, 0), at(100, 12), place({ hours: 24, bubbles: 3 })] }).results.coverageFactor!.value).toBeNull();
  });
});

it('flags defects in groups', () => {
  expect(run({ places: [place({ bubbles: 20 }), place(), place(), place({ bubbles: 1 })] }).flags.map(({ code }) => code)).toEqual(['clustered']);
  expect(run({ places: [place({ bubbles: 5 }), place({ bubbles: 3 }), place({ bubbles: 6 })] }).flags).toEqual([]);
});

it('flags groups that a few places with an ink coverage do not show', () => {
  const alike = [0, 50, 100].map((coveragePct) => place({ coveragePct, bubbles: 4 }));
  expect(run({ places: alike }).flags).toEqual([]);
  expect(run({ places: [...alike, place({ bubbles: 30 }), place()] }).flags.map(({ code }) => code)).toEqual(['clustered']);
});

it('draws the located places of the last check on a sketch of the web', () => {
  const { figures } = run({
    webWidthMm: 1000,
    places: [place({ acrossMm: 10, alongM: 1, bubbles: 9 }), place({ hours: 24, acrossMm: 100, alongM: 5, bubbles: 2, tunnels: 1 }), place({ hours: 24, acrossMm: 500, alongM: 6 }), place({ hours: 24, bubbles: 1 })],
  });
  const sketch = figures.find(({ id }) => id === 'web-sketch')!;
  expect(sketch.series.map(({ name, points }) => [name, points.map(({ x, y }) => [x, y])])).toEqual([
    ['nothing found', [[500, 6]]],
    ['bubbles and tunnels', [[100, 5]]],
  ]);
  expect(sketch.finding).toMatch(/^Defects at 1 of 2 located places after 24 h/);
  expect(run({ places: [place()] }).figures.map(({ id }) => id)).toEqual(['defects-over-time']);
});

it.each([
  ['no place', { places: [] }, 'places'],
  ['no area', { places: [place({ areaCm2: 0 })] }, 'places[0].areaCm2'],
  ['an area that is missing', { places: [place({ areaCm2: undefined })] }, 'places[0].areaCm2'],
  ['half a bubble', { places: [place({ bubbles: 0.5 })] }, 'places[0].bubbles'],
  ['a negative count', { places: [place({ tunnels: -1 })] }, 'places[0].tunnels'],
  ['a kind that was not counted', { places: [place({ delaminations: undefined })] }, 'places[0].delaminations'],
  ['a place beyond the web', { webWidthMm: 800, places: [place(), place({ acrossMm: 900 })] }, 'places[1].acrossMm'],
  ['a time before lamination', { places: [place({ hours: -1 })] }, 'places[0].hours'],
])('refuses %s', (_, input, field) => {
  expect(refusal(() => run(input)).field).toBe(field);
});

it('names the cell of the sheet', () => {
  expect(refusal(() => laminationRecheckMethod.evaluate(bench([{}, place({ bubbles: 1.5 })], { frameCm2: 100 }))).field).toBe('rows[1].bubbles');
  expect(refusal(() => laminationRecheckMethod.evaluate(bench([{ hours: 1 }], { frameCm2: 100 }))).field).toBe('rows[0].bubbles');
  expect(refusal(() => laminationRecheckMethod.evaluate(bench([place({ areaCm2: undefined })]))).field).toBe('conditions.frameCm2');
});

describe('what a finished check asks for', () => {
  const after = (hours: number, laminatedOn: string | null = '2026-03-02') =>
    recheckFollowUp({ results: { lastCheckH: { value: hours, unit: 'h', low: null, high: null, level: null, n: 1, bound: 'exact' } }, conditions: { laminatedOn }, finishedOn: '2026-03-02' });

  it('is the next look after 24 h, then after 7 days, then nothing', () => {
    expect(after(1)).toMatchObject([{ what: 'Check the lamination again after 24 h', dueOn: '2026-03-03', settledBy: ['lamination-recheck'] }]);
    expect(after(23)).toMatchObject([{ dueOn: '2026-03-09' }]);
    expect(after(168)).toEqual([]);
  });

  it('is nothing without the day of lamination', () => {
    expect(after(1, null)).toEqual([]);
  });
});
