import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { rubCalculation } from '../../../shared-lib/mechanical/rub.calculation.ts';
import { rubMethod } from '../../../shared-lib/mechanical/rub.method.ts';
import { bench, type Cells } from '../colour/bench.ts';
import { refusal } from '../surface-energy/refusal.ts';

const run = (input: object) => runCalculation(rubCalculation, input);
type Look = [specimen: string, strokes: number, density?: number, transferred?: number];
const looks = (...all: Look[]) => all.map(([specimen, strokes, density, transferred]) => ({ specimen, strokes, density, transferred }));

/* 1.20 → 1.14 → 1.08 → 0.96: 5 %, 10 %, 20 % lost at 20, 50, 100 strokes; the second loses half as much. */
const two = looks(['a', 0, 1.2], ['a', 20, 1.14, 0.02], ['a', 50, 1.08, 0.05], ['a', 100, 0.96, 0.1], ['b', 0, 1.2], ['b', 20, 1.17, 0.01], ['b', 50, 1.14, 0.03], ['b', 100, 1.08, 0.05]);

describe('rub', () => {
  it('gives the losses at the last strokes that all share, by the definition', () => {
    const { lostPct, lost, transferred } = run({ readings: two }).results;
    expect(lostPct!.value).toBeCloseTo(15, 9);
    expect(lost!.value).toBeCloseTo(0.18, 9);
    expect(transferred!.value).toBeCloseTo(0.075, 9);
    // t(0.975; 1) = 12.7062 (handbook table); s = 10/√2, so 15 ± 12.7062 · 5.
    expect(lostPct!.high).toBeCloseTo(15 + 12.7062 * 5, 3);
  });

  it('reads strokes to a limit off the straight line between readings, and keeps one that never reached it as a bound', () => {
    const { results, figures, notes } = run({ readings: two, lostLimitPct: 15 });
    // a: from 10 % at 50 to 20 % at 100, 15 % at 75. b: 10 % at 100, never reached.
    expect(results.least).toMatchObject({ bound: 'exact' });
    expect(results.least!.value).toBeCloseTo(75, 9);
    expect(results.strokesToLimit!.bound).toBe('at-least');
    expect(figures.find(({ id }) => id === 'lasting')!.series[0]!.points).toMatchObject([{ y: 75 }, { y: 100, open: 'up' }]);
    expect(notes.join(' ')).toContain('1 of 2 were still whole');
  });

  it('is at its end just after 0 strokes where next to no loss is allowed', () => {
    const { least } = run({ readings: two, lostLimitPct: 1e-9 }).results;
    expect(least!.value).toBeGreaterThan(0);
    expect(least!.value).toBeLessThan(1e-6);
  });

  it('takes whichever limit is reached first', () => {
    // Transfer 0.04 of a: from 0.02 at 20 to 0.05 at 50, so 40 strokes.
    const { least } = run({ readings: two, lostLimitPct: 15, transferredLimit: 0.04 }).results;
    expect(least!.value).toBeCloseTo(40, 9);
  });

  it('nothing reached: every strokes result is a bound', () => {
    const { strokesToLimit, median, least } = run({ readings: two, lostLimitPct: 50 }).results;
    for (const result of [strokesToLimit!, median!, least!]) {
      expect(result).toMatchObject({ bound: 'at-least', n: 2 });
      expect(result.value).toBe(100);
    }
  });

  it('takes the film’s and the receptor’s own density away', () => {
    const shifted = two.map((look) => ({ ...look, density: look.density && look.density + 0.1, transferred: look.transferred && look.transferred + 0.06 }));
    const own = run({ readings: shifted, filmDensity: 0.1, receptorDensity: 0.06, lostLimitPct: 15 }).results;
    const plain = run({ readings: two, lostLimitPct: 15 }).results;
    for (const key of ['lostPct', 'transferred', 'least']) expect(own[key]!.value).toBeCloseTo(plain[key]!.value!, 9);
  });

  it('draws a curve from zero, bent where the readings bend', () => {
    const bent = (rate: number) => [0, 10, 20, 40, 80, 160, 320].map((strokes): Look => [`${rate}`, strokes, 1.5 - 0.5 * (1 - Math.exp(-rate * strokes))]);
    const curve = run({ readings: looks(...bent(0.02), ...bent(0.025)) }).figures.find(({ id }) => id === 'lostPct-curve')!;
    const fit = curve.series.find(({ role }) => role === 'fit')!;
    expect(fit.name).toContain('plateau');
    expect(fit.points[0]).toEqual({ x: 0, y: 0 });
    expect(fit.points.at(-1)!.y!).toBeCloseTo(33.3, 0);
    expect(run({ readings: two }).figures[0]!.series.find(({ role }) => role === 'fit')!.name).toContain('straight');
  });

  it('flags ink that comes back and specimens rubbed farther than the rest', () => {
    const odd = looks(['a', 0, 1.2], ['a', 20, 1.0], ['a', 50, 1.1], ['b', 0, 1.2], ['b', 20, 1.1]);
    expect(run({ readings: odd }).flags.map(({ code }) => code)).toEqual(['density-rose', 'unequal-strokes']);
    expect(run({ readings: two }).flags).toEqual([]);
  });

  it('without counts in common gives no loss for all, but says so', () => {
    const { results, notes } = run({ readings: looks(['a', 0, 1.2], ['a', 20, 1], ['b', 0, 1.2], ['b', 30, 1]) });
    expect(results.lostPct).toMatchObject({ value: null, n: 0 });
    expect(notes[0]).toContain('no count of strokes');
  });
});

describe('bad readings are refused', () => {
  it.each([
    ['strokes out of order', { readings: looks(['a', 0, 1.2], ['a', 50, 1.1], ['a', 20, 1.0]) }, 'readings[2].strokes', /must rise/],
    ['one count twice', { readings: looks(['a', 0, 1.2], ['a', 50, 1.1], ['a', 50, 1.0]) }, 'readings[2].strokes', /must rise/],
    ['no reading before rubbing', { readings: looks(['a', 20, 1.1], ['a', 50, 1]) }, 'readings[0].strokes', /begin with 0/],
    ['half a stroke', { readings: looks(['a', 0, 1.2], ['a', 20.5, 1.1]) }, 'readings[1].strokes', /whole number/],
    ['nothing printed', { readings: looks(['a', 0, 0.1], ['a', 20, 0.05]), filmDensity: 0.1 }, 'readings[0].density', /above that of the unprinted film/],
    ['a look without a density', { readings: [{ strokes: 0, density: 1 }, { strokes: 20 }] }, 'readings[1].density', /density is missing/],
    ['not rubbed', { readings: looks(['a', 0, 1.2]) }, 'readings[0].strokes', /has not been rubbed/],
    ['a limit of what was not read', { readings: looks(['a', 0, 1.2], ['a', 20, 1.1]), transferredLimit: 0.1 }, 'transferredLimit', /never read/],
  ])('%s', (_, input, field, message) => {
    const error = refusal(() => run(input));
    expect(error.field).toBe(field);
    expect(error.message).toMatch(message);
  });

  it('on the sheet the cell is named, blank rows apart', () => {
    const rows: Cells[] = [{ specimen: '1', strokes: 0, density: 1.2 }, { specimen: '1' }, { specimen: '1', strokes: 50, density: 1.1 }, { specimen: '1', strokes: 20, density: 1 }];
    expect(refusal(() => rubMethod.evaluate(bench(rows, { way: 'dry' }))).field).toBe('rows[3].strokes');
    expect(refusal(() => rubMethod.evaluate(bench([rows[0]!, rows[2]!], { transferredLimit: 0.1 }))).field).toBe('conditions.transferredLimit');
  });
});
