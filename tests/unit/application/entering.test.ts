import { describe, expect, it } from 'vitest';
import { testBench } from './open-application.ts';

const SCRIPT = '<script>alert(1)</script>';

describe('a number', () => {
  it.each([
    ['38', 38],
    ['38,5', 38.5],
    ['38.5', 38.5],
    [' 38 mN/m ', 38],
    ['3.8e1', 38],
  ])('is taken as typed: %j', async (typed, value) => {
    const bench = await testBench();
    const { test } = await bench.startTest('test-fluids');
    const sheet = await bench.do('reading.enter', { testId: test.testId, row: 'r1', key: 'wetsMNm', typed });
    expect(sheet.rows[0]!.cells.wetsMNm).toEqual({ value, typed, corrections: 0, warning: '' });
    expect(sheet.test.readings).toBe(1);
  });

  it.each([
    ['abc', 'mN/m'],
    ['38 dyn/cm', 'without the unit'],
    ['38 N', 'without the unit'],
    ['120', 'at most 75 mN/m'],
    ['17.9', 'at least 18'],
    ['-38', 'at least 18'],
    ['1e400', 'too large'],
    ['38,5,6', 'one number'],
    ['🙂', 'not a number'],
    [SCRIPT, 'not a number'],
    ['38\t39', 'one number'],
    ['9'.repeat(10_000), ''],
  ])('is refused in a sentence and not recorded: %.40j', async (typed, says) => {
    const bench = await testBench();
    const { test } = await bench.startTest('test-fluids');
    const before = await bench.entries();
    const problem = await bench.refused('reading.enter', { testId: test.testId, row: 'r1', key: 'wetsMNm', typed });
    expect(problem).toMatchObject({ code: 'input', field: 'typed' });
    expect(problem.message).toContain('Holds for 2 s');
    expect(problem.message).toContain(says);
    expect(problem.message.length).toBeLessThan(300);
    expect(await bench.entries()).toBe(before);
  });

  it('outside the usual range is accepted with a warning', async () => {
    const bench = await testBench();
    const { test } = await bench.startTest('test-fluids');
    const sheet = await bench.do('reading.enter', { testId: test.testId, row: 'r1', key: 'wetsMNm', typed: '60' });
    expect(sheet.rows[0]!.cells.wetsMNm).toMatchObject({ value: 60, warning: 'outside the usual range 30 to 56 mN/m' });
  });
});

describe('text', () => {
  it.each([['Kante 🙂 links'], [SCRIPT], ["'; DROP TABLE reading; --"], ['=HYPERLINK("x")'], ['e\u0301dge ₂ µ']])('is taken as text: %j', async (typed) => {
    const bench = await testBench();
    const { test } = await bench.startTest('test-fluids');
    await bench.do('reading.enter', { testId: test.testId, row: 'r1', key: 'label', typed });
    const sheet = await bench.do('test.get', { testId: test.testId });
    expect(sheet.rows[0]!.cells.label).toMatchObject({ value: typed, typed });
  });

  it('of 10 000 characters is refused with the limit', async () => {
    const bench = await testBench();
    const { test } = await bench.startTest('test-fluids');
    const problem = await bench.refused('reading.enter', { testId: test.testId, row: 'r1', key: 'label', typed: 'x'.repeat(10_000) });
    expect(problem.message).toBe('Position takes at most 100 characters; this has 10000.');
    const long = await bench.refused('reading.enter', { testId: test.testId, row: 'r1', key: 'label', typed: 'x'.repeat(20_001) });
    expect(long).toMatchObject({ code: 'input', field: 'typed' });
  });

  it('with half a character is refused', async () => {
    const bench = await testBench();
    const { test } = await bench.startTest('test-fluids');
    const problem = await bench.refused('reading.enter', { testId: test.testId, row: 'r1', key: 'label', typed: 'edge \ud83d' });
    expect(problem).toMatchObject({ code: 'input', message: expect.stringContaining('broken character') });
  });
});

describe('a choice', () => {
  it.each(['film-tear', 'Film tore', 't', 'T', ' film tore '])('is taken by value, label or shortcut: %j', async (typed) => {
    const bench = await testBench();
    const { test } = await bench.startTest('lamination-bond');
    const sheet = await bench.do('reading.enter', { testId: test.testId, row: 'r1', key: 'mode', typed });
    expect(sheet.rows[0]!.cells.mode!.value).toBe('film-tear');
  });

  it('is refused with what is allowed', async () => {
    const bench = await testBench();
    const { test } = await bench.startTest('lamination-bond');
    const problem = await bench.refused('reading.enter', { testId: test.testId, row: 'r1', key: 'mode', typed: 'exploded' });
    expect(problem.message).toContain("read 'exploded'");
    expect(problem.message).toContain('film tore (t)');
  });
});

describe('a correction', () => {
  it('needs a reason, keeps what was there, and the same value again records nothing', async () => {
    const bench = await testBench();
    const { test } = await bench.startTest('test-fluids');
    const cell = { testId: test.testId, row: 'r1', key: 'wetsMNm' };
    await bench.do('reading.enter', { ...cell, typed: '38' });
    const entries = await bench.entries();
    await bench.do('reading.enter', { ...cell, typed: '38' });
    await bench.do('reading.enter', { ...cell, typed: '38,0' });
    expect(await bench.entries()).toBe(entries);

    expect(await bench.refused('reading.enter', { ...cell, typed: '39' })).toMatchObject({ code: 'input', field: 'reason', message: 'Holds for 2 s was entered before as 38 mN/m; say in a few words why it changes.' });
    expect(await bench.refused('reading.enter', { ...cell, typed: '39', reason: '   ' })).toMatchObject({ code: 'input', field: 'reason' });
    expect(await bench.entries()).toBe(entries);

    const sheet = await bench.do('reading.enter', { ...cell, typed: '39', reason: 'Misread the bottle' });
    expect(sheet.rows[0]!.cells.wetsMNm).toMatchObject({ value: 39, corrections: 1 });
    const [newest] = (await bench.do('record.list', { testId: test.testId })).entries;
    expect(newest).toMatchObject({ kind: 'reading.corrected', by: 'Imke Rasmund', correction: { before: '38 mN/m', after: '39 mN/m', reason: 'Misread the bottle' } });
  });

  it('clears a cell with a reason; an empty cell cleared is nothing', async () => {
    const bench = await testBench();
    const { test } = await bench.startTest('test-fluids');
    const cell = { testId: test.testId, row: 'r1', key: 'wetsMNm' };
    const entries = await bench.entries();
    await bench.do('reading.enter', { ...cell, typed: '  ' });
    expect(await bench.entries()).toBe(entries);
    await bench.do('reading.enter', { ...cell, typed: '38' });
    expect(await bench.refused('reading.enter', { ...cell, typed: '' })).toMatchObject({ field: 'reason' });
    const cleared = await bench.do('reading.enter', { ...cell, typed: '', reason: 'Wrong row' });
    expect(cleared.rows[0]!.cells.wetsMNm).toMatchObject({ value: null, corrections: 1 });
    expect(cleared.test.readings).toBe(0);
  });

  it('of a condition: a default is typed over freely, a typed value only with a reason', async () => {
    const bench = await testBench();
    const { test, conditions } = await bench.startTest('test-fluids');
    expect(conditions.criterionS).toMatchObject({ value: 2, typed: '2' });
    const cell = { testId: test.testId, key: 'criterionS' };
    const first = await bench.do('condition.enter', { ...cell, typed: '3' });
    expect(first.conditions.criterionS).toMatchObject({ value: 3, corrections: 0, warning: 'outside the usual range 2 to 2 s' });
    expect(await bench.refused('condition.enter', { ...cell, typed: '2' })).toMatchObject({ field: 'reason' });
    const second = await bench.do('condition.enter', { ...cell, typed: '2', reason: 'Slip' });
    expect(second.conditions.criterionS).toMatchObject({ value: 2, corrections: 1, warning: '' });
    // Cleared, it was still entered before.
    await bench.do('condition.enter', { ...cell, typed: '', reason: 'Not timed' });
    expect(await bench.refused('condition.enter', { ...cell, typed: '4' })).toMatchObject({ field: 'reason', message: expect.stringContaining('entered before and cleared') });
  });
});

describe('rows', () => {
  it('are blank until the first entry, with one more always at hand, up to the most', async () => {
    const bench = await testBench();
    const { test, rows } = await bench.startTest('test-fluids');
    expect(rows.map((row) => row.row)).toEqual(['r1', 'r2', 'r3', 'r4', 'r5', 'r6', 'r7', 'r8', 'r9', 'r10']);
    const sheet = await bench.do('reading.enter', { testId: test.testId, row: 'r12', key: 'wetsMNm', typed: '38' });
    expect(sheet.rows).toHaveLength(13);
    for (const row of ['r0', 'r1001', '1', 'r', 'r1.5', 'r-1', 'rr1']) {
      expect(await bench.refused('reading.enter', { testId: test.testId, row, key: 'wetsMNm', typed: '38' })).toMatchObject({ code: 'input', field: 'row' });
    }
    expect(await bench.refused('reading.enter', { testId: test.testId, row: 'r1', key: 'nonsense', typed: '38' })).toMatchObject({ code: 'not-found' });
  });

  it('carry down what the method carries down, to be typed over without a reason', async () => {
    const bench = await testBench();
    const { test } = await bench.startTest('lamination-bond');
    const enter = (row: string, key: string, typed: string) => bench.do('reading.enter', { testId: test.testId, row, key, typed });
    await enter('r1', 'forceN', '3');
    await enter('r1', 'widthMm', '25');
    const carried = await enter('r2', 'forceN', '3,1');
    expect(carried.rows[1]!.cells.widthMm).toEqual({ value: 25, typed: '25', corrections: 0, warning: '' });
    const over = await enter('r2', 'widthMm', '15');
    expect(over.rows[1]!.cells.widthMm).toMatchObject({ value: 15, corrections: 0 });
    expect(await bench.refused('reading.enter', { testId: test.testId, row: 'r2', key: 'widthMm', typed: '20' })).toMatchObject({ field: 'reason' });
  });

  it('are voided with a reason, stay on the sheet, count no more, and can be restored', async () => {
    const bench = await testBench();
    const { test } = await bench.startTest('test-fluids');
    const { testId } = test;
    for (const [row, wets, retracts] of [['r1', '38', '39'], ['r2', '38', '39'], ['r3', '50', '52']] as const) {
      await bench.do('reading.enter', { testId, row, key: 'wetsMNm', typed: wets });
      await bench.do('reading.enter', { testId, row, key: 'retractsMNm', typed: retracts });
    }
    expect(await bench.refused('row.void', { testId, row: 'r9', reason: 'x' })).toMatchObject({ code: 'conflict' });
    expect(await bench.refused('row.void', { testId, row: 'r3', reason: ' ' })).toMatchObject({ code: 'input', field: 'reason' });
    const voided = await bench.do('row.void', { testId, row: 'r3', reason: 'Touched by hand' });
    expect(voided.rows[2]).toMatchObject({ voided: { reason: 'Touched by hand' } });
    expect(voided.rows[2]!.cells.wetsMNm!.value).toBe(50);
    expect(voided.live!.result.results.wettingTension!.n).toBe(2);
    expect(await bench.refused('row.void', { testId, row: 'r3', reason: 'again' })).toMatchObject({ code: 'conflict' });
    expect(await bench.refused('reading.enter', { testId, row: 'r3', key: 'wetsMNm', typed: '51', reason: 'x' })).toMatchObject({ code: 'conflict' });
    const restored = await bench.do('row.restore', { testId, row: 'r3', reason: 'It was the other row' });
    expect(restored.rows[2]!.voided).toBeNull();
    expect(restored.live!.result.results.wettingTension!.n).toBe(3);
    expect(await bench.refused('row.restore', { testId, row: 'r3', reason: 'x' })).toMatchObject({ code: 'conflict' });
  });

  it('take a remark; the same remark again records nothing', async () => {
    const bench = await testBench();
    const { test } = await bench.startTest('test-fluids');
    await bench.do('row.remark', { testId: test.testId, row: 'r2', remark: 'near a gel' });
    const entries = await bench.entries();
    const sheet = await bench.do('row.remark', { testId: test.testId, row: 'r2', remark: 'near a gel ' });
    expect(sheet.rows[1]!.remark).toBe('near a gel');
    expect(await bench.entries()).toBe(entries);
  });
});

describe('what is missing', () => {
  it('is said with its place, and the rows that are complete still give a result', async () => {
    const bench = await testBench();
    const { test, missing } = await bench.startTest('lamination-bond');
    expect(missing?.text).toBe('Needs 1 complete specimen, has 0.');
    const enter = (row: string, key: string, typed: string) => bench.do('reading.enter', { testId: test.testId, row, key, typed });
    const half = await enter('r1', 'forceN', '3');
    expect(half).toMatchObject({ live: null, missing: { where: 'rows[0].mode' } });
    const whole = await enter('r1', 'mode', 'a');
    expect(whole.missing).toBeNull();
    expect(whole.live!.result.results.mean!.value).toBeCloseTo(3, 12);
    const second = await enter('r2', 'forceN', '4');
    expect(second.missing).toMatchObject({ where: 'rows[1].mode' });
    expect(second.live!.result.results.mean!.n).toBe(1);
    expect(await bench.refused('test.finish', { testId: test.testId, remark: '' })).toMatchObject({ code: 'input', field: 'rows[1].mode' });
  });

  it('names the cell that the evaluation stumbles over, voided rows or not', async () => {
    const bench = await testBench();
    const { test } = await bench.startTest('test-fluids');
    const enter = (row: string, key: string, typed: string) => bench.do('reading.enter', { testId: test.testId, row, key, typed });
    await enter('r1', 'wetsMNm', '38');
    await bench.do('row.void', { testId: test.testId, row: 'r1', reason: 'dirty' });
    await enter('r3', 'wetsMNm', '40');
    const sheet = await enter('r3', 'retractsMNm', '38');
    expect(sheet.live).toBeNull();
    expect(sheet.missing!.where).toMatch(/^rows\[2\]\./);
  });
});
