import { describe, expect, test } from 'vitest';
import { laminationBondMethod } from '../../../shared-lib/bond-strength/lamination-bond.method.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import type { BenchReadings, CellValue, Trace } from '../../../shared-lib/method/method.ts';

function bench(rows: Record<string, CellValue>[], more: Partial<BenchReadings> = {}): BenchReadings {
  return {
    conditions: { stripWidthMm: 15 },
    rows: rows.map((values, index) => ({ row: `r${index + 1}`, values })),
    limits: [],
    traces: {},
    ...more,
  };
}

const evaluate = (readings: BenchReadings) => laminationBondMethod.evaluate(readings);

function trace(name: string, plateauN: number, breakMm = Infinity): Trace {
  const displacementMm = Float64Array.from({ length: 801 }, (_, index) => index / 10);
  const forceN = displacementMm.map((mm) => (mm > breakMm ? 0 : mm < 4 ? (plateauN * mm) / 4 : plateauN + 0.05 * Math.sin(mm)));
  return { name, displacementMm, forceN };
}

function problem(readings: BenchReadings): InputError {
  try {
    evaluate(readings);
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error('expected to be refused');
}

describe('the sheet', () => {
  test('has one shortcut letter per failure mode, and names its calculation', () => {
    const mode = laminationBondMethod.readings.fields.find(({ key }) => key === 'mode');
    const shortcuts = mode?.kind === 'choice' ? mode.choices.map(({ shortcut }) => shortcut) : [];
    expect(new Set(shortcuts).size).toBe(6);
    expect(shortcuts.every((shortcut) => /^[a-z]$/.test(shortcut))).toBe(true);
    expect(laminationBondMethod.calculation).toBe('bond-strength');
  });

  test('yields every property that it promises', () => {
    const { results } = evaluate(bench([{ forceN: 2, mode: 'adhesive' }, { forceN: 3, mode: 'film-tear' }]));
    for (const { key, unit } of laminationBondMethod.properties) expect(results[key]!.unit).toBe(unit);
  });
});

describe('typed forces', () => {
  test('become N/15 mm by the width of the row, else of the test', () => {
    const { results } = evaluate(bench([{ forceN: 2, mode: 'adhesive' }, { forceN: 5, widthMm: 25, mode: 'adhesive' }, { forceN: 4, mode: 'adhesive' }]));
    // 2, 5·15/25 = 3 and 4 N/15 mm.
    expect(results.mean!.value).toBeCloseTo(3, 12);
    expect(results.median!.value).toBeCloseTo(3, 12);
    expect(results.minimum!.value).toBeCloseTo(2, 12);
  });

  test('without any width take 15 mm and say so', () => {
    const { results, flags } = evaluate(bench([{ forceN: 2, mode: 'adhesive' }], { conditions: {} }));
    expect(results.mean!.value).toBe(2);
    expect(flags).toMatchObject([{ code: 'width-assumed', where: 'conditions.stripWidthMm' }]);
  });

  test('rows not begun are passed over, and flags name the row of the sheet', () => {
    const rows: Record<string, CellValue>[] = [{ widthMm: 15 }, {}, ...[2.1, 2.2, 2.15, 2.18, 2.12, 0.4].map((forceN) => ({ forceN, mode: 'adhesive' }))];
    const { flags, results } = evaluate(bench(rows));
    expect(results.mean!.n).toBe(6);
    expect(flags).toMatchObject([{ code: 'outlier', where: 'rows[7].forceN', text: expect.stringMatching(/^Specimen 8 /) }]);
  });

  test('a limit is drawn', () => {
    const limits = [{ property: 'mean', lower: 2.5, upper: null, source: 'customer' }];
    const { figures } = evaluate(bench([{ forceN: 2, mode: 'adhesive' }], { limits }));
    expect(figures[0]!.lines).toContainEqual({ name: 'required', axis: 'y', value: 2.5, role: 'limit' });
  });
});

describe('traces', () => {
  const traces = { t1: trace('a.csv', 2), t2: trace('b.csv', 3, 50) };

  test('count with their plateau, are drawn together and pass on their flags with the specimen', () => {
    const { results, flags, figures } = evaluate(bench([{ trace: 't1', mode: 'adhesive' }, { trace: 't2', mode: 'film-tear' }, { forceN: 2.4, mode: 'adhesive' }], { traces }));
    expect(results.mean!.n).toBe(3);
    expect(results.minimum!.value).toBeCloseTo(2, 1);
    expect(flags).toMatchObject([{ code: 'film-broke', where: 'rows[1].trace', text: expect.stringMatching(/^Specimen 2: /) }]);
    expect(figures.map(({ id }) => id)).toEqual(['specimens', 'traces']);
    expect(figures[1]!.series.map(({ name, role }) => [name, role])).toEqual([['1: a.csv', 'reading'], ['2: b.csv', 'doubtful']]);
  });

  test('win over a typed force, with a flag', () => {
    const { results, flags } = evaluate(bench([{ trace: 't1', forceN: 9, mode: 'adhesive' }], { traces }));
    expect(results.mean!.value).toBeCloseTo(2, 1);
    expect(flags).toMatchObject([{ code: 'force-and-trace', where: 'rows[0].forceN' }]);
  });

  test('lengths to leave out are taken from the conditions', () => {
    const conditions = { stripWidthMm: 15, discardStartMm: 60, discardEndMm: 15 };
    const { notes } = evaluate(bench([{ trace: 't1', mode: 'adhesive' }], { traces, conditions }));
    expect(notes.join(' ')).toMatch(/after the stated lengths/);
    const refused = problem(bench([{ trace: 't1', mode: 'adhesive' }], { traces, conditions: { stripWidthMm: 15, discardStartMm: 90 } }));
    expect(refused.field).toBe('conditions.discardStartMm');
    expect(refused.message).toMatch(/^Specimen 1: /);
  });
});

describe('what is missing or wrong is said', () => {
  const negative = { ...trace('n.csv', 2), forceN: trace('n.csv', 2).forceN.map((force) => -force) };
  const bad = { ...trace('x.csv', 2), displacementMm: new Float64Array(801) };
  test.each([
    ['nothing at all', bench([]), 'rows[0].forceN', /no force yet/],
    ['a mode without a force', bench([{ forceN: 2, mode: 'adhesive' }, { mode: 'adhesive' }]), 'rows[1].forceN', /^Specimen 2 has neither a force nor a trace/],
    ['a force without a mode', bench([{ forceN: 2 }]), 'rows[0].mode', /no failure mode/],
    ['a trace that is not there', bench([{ trace: 't9', mode: 'adhesive' }]), 'rows[0].trace', /read its file again/],
    ['a trace that does not rise', bench([{ trace: 't', mode: 'adhesive' }], { traces: { t: bad } }), 'rows[0].trace', /must rise/],
    ['a trace that pushes', bench([{ trace: 't', mode: 'adhesive' }], { traces: { t: negative } }), 'rows[0].trace', /below zero/],
    ['a width of zero', bench([{ forceN: 2, widthMm: 0, mode: 'adhesive' }]), 'rows[0].widthMm', /more than 0/],
    ['an unknown mode', bench([{ forceN: 2, mode: 'peeled' }]), 'rows[0].mode', /one of adhesive/],
    ['a negative force', bench([{ forceN: -2, mode: 'adhesive' }]), 'rows[0].forceN', /below zero/],
  ])('%s', (_, readings, field, message) => {
    const refused = problem(readings);
    expect(refused.field).toBe(field);
    expect(refused.message).toMatch(message);
  });
});
