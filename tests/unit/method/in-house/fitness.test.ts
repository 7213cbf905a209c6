import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../../shared-lib/calculation/calculation.ts';
import { fitnessOf } from '../../../../shared-lib/method/in-house/fitness.ts';
import type { StudiedProperty, StudiedReading } from '../../../../shared-lib/method/in-house/studied.ts';
import { standardisingAdvice, writtenFromHabit } from '../../../../shared-lib/method/in-house/standardise.ts';
import { looksAt, type Habit } from '../../../../shared-lib/method/in-house/habit.ts';
import { checkWrittenMethod } from '../../../../shared-lib/method/in-house/check-written-method.ts';
import { writtenMethodSchema } from '../../../../shared-lib/method/in-house/written-method.ts';
import { allMethods } from '../../../../shared-lib/registry/methods.ts';
import { measurementStudyCalculation } from '../../../../shared-lib/statistics/measurement-study.calculation.ts';

const sd = (value: number) => ({ value, unit: 'N', low: null, high: null, level: null, n: 40, bound: 'exact' as const });
const numbers = (repeatability: number, reproducibility: number, part: number, more: Partial<StudiedProperty> = {}) =>
  fitnessOf('force', {
    title: 'Pull',
    unit: 'N',
    kind: 'number',
    limit: { lower: 2, upper: 8 },
    replicates: 4,
    averaged: true,
    results: { repeatability: sd(repeatability), reproducibility: sd(reproducibility), part: sd(part) },
    readings: [],
    ...more,
  });

describe('a studied number', () => {
  it('is held to the room between its limits, by a result of as many readings as the method asks for', () => {
    // √(0.4²/4 + 0.1²) = 0.22361; six of it are 1.3416 of 6 N: 22 %. One reading alone: 6·√(0.16 + 0.01) = 2.474, 41 %.
    const fit = numbers(0.4, 0.1, 1);
    expect(fit.standing).toBe('fit');
    expect(fit.reasons[0]).toMatch(/A result of 4 readings scatters by 0\.22 N .*: 22 % of the room between the limits/);
    const single = numbers(0.4, 0.1, 1, { averaged: false });
    expect(single.standing).toBe('not fit');
    expect(single.reasons[0]).toMatch(/One reading scatters by 0\.41 N .*: 41 %/);
  });

  it('says the smallest difference it can see', () => {
    // ISO 5725-6: 1.96·√2·0.22361 = 0.6198 between people, 1.96·√2·0.4/√4 = 0.5544 by one person; 1.96·0.22361 = 0.438 to the limit.
    const { reasons } = numbers(0.4, 0.1, 1);
    expect(reasons[1]).toMatch(/between two results is 0\.62 N, or 0\.55 N where the same person/);
    expect(reasons[2]).toMatch(/nearer to the limit than 0\.44 N does not decide/);
  });

  it('is held to the spread of the parts where it has one limit', () => {
    // √(0.25 + 0) = 0.5 of √(0.5² + 1²): 45 %.
    expect(numbers(1, 0, 1, { limit: { lower: 2, upper: null } })).toMatchObject({ standing: 'not fit', reasons: [expect.stringMatching(/45 % of the spread of the parts/), expect.anything(), expect.anything()] });
    expect(numbers(0.1, 0, 1, { limit: null })).toMatchObject({ standing: 'studied' });
  });

  it('is held to the spread of the parts where its limits meet in one value', () => {
    expect(numbers(0, 0, 1, { limit: { lower: 0, upper: 0 } })).toMatchObject({ standing: 'fit', reasons: [expect.stringMatching(/0 % of the spread of the parts/), expect.anything(), expect.anything()] });
  });

  it('says what to improve first', () => {
    expect(numbers(0.2, 0.8, 1).improve).toMatch(/^Improve reproducibility first.*More readings by one person do not help/s);
    // 6·√(1.2²/n) ≤ 30 % of 6, so n ≥ 16.
    expect(numbers(1.2, 0, 1).improve).toMatch(/^Improve repeatability first.*With the mean of 16 readings/s);
  });
});

describe('studied grades', () => {
  const study = (grades: Record<string, number[]>, limit: StudiedProperty['limit'] = { lower: 3, upper: null }) => {
    const readings: (StudiedReading & { trial: string })[] = Object.entries(grades).flatMap(([name, values]) => values.map((value, part) => ({ part: String(part), appraiser: name.charAt(0), trial: name.charAt(1), value })));
    const { results } = runCalculation(measurementStudyCalculation, { readings: readings.map(({ value, ...reading }) => ({ ...reading, grade: value })) });
    return fitnessOf('grade', { title: 'Grade', unit: '', kind: 'grade', limit, replicates: 6, averaged: false, results, readings });
  };
  const parts = [0, 1, 2, 3, 4, 5, 5, 4, 2, 1];

  it('are fit where everyone agrees', () => {
    expect(study({ a1: parts, a2: parts, b1: parts, b2: parts })).toMatchObject({ standing: 'fit', improve: expect.stringMatching(/nothing to improve/) });
  });

  it('are not fit where people put parts on different sides of the limit, and say between which grades', () => {
    const lower = parts.map((grade) => (grade === 3 || grade === 4 ? 2 : grade));
    const found = study({ a1: parts, a2: parts, b1: lower, b2: lower });
    expect(found.standing).toBe('not fit');
    expect(found.reasons.join(' ')).toMatch(/7 of 10 parts were put on the same side/);
    expect(found.reasons[0]).toMatch(/kappa 0\.\d\d \(95 % interval 0\.\d\d to \d\.\d\d, 10 parts\)/);
    expect(found.improve).toMatch(/^Improve reproducibility first.*between 2 and 4/s);
  });

  it('say repeatability first where one differs from oneself', () => {
    const other = parts.map((grade, part) => (part % 2 ? grade : Math.max(0, grade - 1)));
    expect(study({ a1: parts, a2: other, b1: parts, b2: other }).improve).toMatch(/^Improve repeatability first/);
  });

  it('that were all alike say that nothing can be said', () => {
    const alike = parts.map(() => 4);
    expect(study({ a1: alike, a2: alike, b1: alike, b2: alike })).toMatchObject({ standing: 'not fit', text: expect.stringMatching(/cannot be said yet/) });
  });
});

describe('a habit', () => {
  const habit: Habit = {
    title: 'Pull it off by hand',
    purpose: 'does it hold?',
    looksAt: 'parts',
    outcome: 'yes-no',
    answers: [
      { question: 'who', today: 'anyone', varies: true, fixed: '' },
      { question: 'angle', today: 'somehow', varies: true, fixed: '90' },
      { question: 'contact', today: '', varies: false, fixed: 'tape of the store' },
      { question: 'temperature', today: '', varies: false, fixed: '' },
    ],
  };

  it('leads to what to hold, what to read instead and how often', () => {
    const advice = standardisingAdvice(habit);
    expect(advice.fix.map(({ label }) => label)).toEqual(['Who does it', 'Angle']);
    expect(advice.open).toEqual(['Load', 'Strokes', 'Speed', 'Dwell', 'Where']);
    expect(advice.measuredBy).toEqual(['lamination-bond']);
    // 0.9^29 = 0.0471: 29 that all pass show, with 95 %, that at least 90 % do; 28 do not.
    expect(advice.replicates.n).toBe(29);
    expect(0.9 ** 29).toBeLessThan(0.05);
    expect(0.9 ** 28).toBeGreaterThan(0.05);
  });

  it.each(looksAt.map(({ key, measured }) => [key, measured] as const))('names tests that there are for %s', (_, measured) => {
    const known = allMethods.map(({ id }) => id);
    for (const id of measured) expect(known).toContain(id);
  });

  it('keeps the unit of what is more than a number, and takes a number out of its unit', () => {
    const answer = { question: 'force' as const, today: '', varies: false };
    const settingOf = (fixed: string) => writtenFromHabit({ ...habit, answers: [{ ...answer, fixed }] }).settings[0];
    expect(settingOf('10 to 12')).toEqual({ kind: 'text', key: 'load', label: 'Load', value: '10 to 12 N' });
    expect(settingOf('10 N')).toEqual({ kind: 'number', key: 'load', label: 'Load', unit: 'N', value: 10, tolerance: null });
    expect(settingOf('by a weight')).toMatchObject({ kind: 'text', value: 'by a weight' });
  });

  it.each(['yes-no', 'grade', 'number', 'count'] as const)('begins a whole method that reads a %s', (outcome) => {
    const written = writtenMethodSchema.parse(writtenFromHabit({ ...habit, outcome }));
    checkWrittenMethod(written);
    // A step says what is held from now on, not what was done so far.
    expect(written.how).toContain('Angle: 90 °');
    expect(written.how.join(' ')).not.toContain('somehow');
    expect(written.settings).toEqual([
      { kind: 'number', key: 'angle', label: 'Angle', unit: '°', value: 90, tolerance: null },
      { kind: 'text', key: 'tapeOrCloth', label: 'Tape or cloth', value: 'tape of the store' },
      { kind: 'number', key: 'temperature', label: 'Temperature', unit: '°C', value: null, tolerance: null },
    ]);
  });
});
