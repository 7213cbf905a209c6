import { describe, expect, it } from 'vitest';
import { testBench, type TestBench } from './open-application.ts';

async function sheetFor(bench: TestBench) {
  const { test } = await bench.startTest('test-fluids');
  return (key: string, pasted: string, row = 'r1') => ({ testId: test.testId, row, key, pasted });
}

describe('pasting', () => {
  it('fills a column down, with decimal commas, and makes the rows that are needed', async () => {
    const bench = await testBench();
    const paste = await sheetFor(bench);
    const column = ['38', '38,5', '39', '40', '36', '38', '38', '38', '38', '38', '38', '37,5'].join('\r\n');
    const sheet = await bench.do('readings.paste', paste('wetsMNm', `${column}\r\n`));
    expect(sheet.rows.slice(0, 12).map((row) => row.cells.wetsMNm?.value)).toEqual([38, 38.5, 39, 40, 36, 38, 38, 38, 38, 38, 38, 37.5]);
    expect(sheet.rows).toHaveLength(13);
    expect(sheet.rows[1]!.cells.wetsMNm!.typed).toBe('38,5');
  });

  it('fills a block right and down, leaves out empty cells, and reads quoted ones', async () => {
    const bench = await testBench();
    const paste = await sheetFor(bench);
    const sheet = await bench.do('readings.paste', paste('label', 'edge\t0\t38\t39\n"lane 2,\nnear the fold"\t300\t\t38\n'));
    expect(sheet.rows.slice(0, 2).map(({ cells }) => [cells.label, cells.acrossMm, cells.wetsMNm, cells.retractsMNm].map((cell) => cell?.value))).toEqual([
      ['edge', 0, 38, 39],
      ['lane 2,\nnear the fold', 300, undefined, 38],
    ]);
  });

  it.each([
    ['38\nabc\n39', 'Line 2', 'abc'],
    ['38\n39\n400', 'Line 3', '400'],
    ['38;39', 'Line 1', '38;39'],
    ['38\n38 N', 'Line 2', '38 N'],
    ['Wetting tension\n38', 'Line 1', 'Wetting tension'],
    ['38\t39\t40', 'Line 1', '3 columns'],
    ['\ud83d', 'Line 1', ''],
    ['"38\n39', 'Line 1', 'quotation mark'],
    ['x'.repeat(10_000), 'Line 1', 'xxx'],
  ])('takes all or nothing: %.20j', async (pasted, line, value) => {
    const bench = await testBench();
    const paste = await sheetFor(bench);
    const entries = await bench.entries();
    const problem = await bench.refused('readings.paste', paste('wetsMNm', pasted));
    expect(problem).toMatchObject({ code: 'input', field: 'pasted' });
    expect(problem.message).toContain(line);
    expect(problem.message).toContain(value);
    expect(await bench.entries()).toBe(entries);
  });

  it('refuses nothing, too many rows and a voided row', async () => {
    const bench = await testBench();
    const paste = await sheetFor(bench);
    expect(await bench.refused('readings.paste', paste('wetsMNm', ' \n\n'))).toMatchObject({ field: 'pasted' });
    expect(await bench.refused('readings.paste', paste('wetsMNm', '38\n38', 'r1000'))).toMatchObject({ field: 'row', message: 'This sheet takes at most 1000 positions.' });
    const sheet = await bench.do('readings.paste', paste('wetsMNm', '38\n38'));
    await bench.do('row.void', { testId: sheet.test.testId, row: 'r2', reason: 'dirty' });
    expect(await bench.refused('readings.paste', paste('retractsMNm', '39\n39'))).toMatchObject({ code: 'conflict' });
  });

  it('never writes over what is there and says which; the same values are no overwriting', async () => {
    const bench = await testBench();
    const paste = await sheetFor(bench);
    await bench.do('readings.paste', paste('wetsMNm', '38\n38\n38'));
    const entries = await bench.entries();
    const problem = await bench.refused('readings.paste', paste('wetsMNm', '38\n39\n40\n41'));
    expect(problem.message).toBe('There are values already: Holds for 2 s in position 2, Holds for 2 s in position 3. Nothing was pasted; correct those cells one by one, with a reason.');
    expect(await bench.entries()).toBe(entries);
    await bench.do('readings.paste', paste('wetsMNm', '38\n38\n38\n41'));
    expect(await bench.entries()).toBe(entries + 1);
  });

  it('carries down like typing does', async () => {
    const bench = await testBench();
    const { test } = await bench.startTest('lamination-bond');
    const testId = test.testId;
    await bench.do('readings.paste', { testId, row: 'r1', key: 'widthMm', pasted: '25\t3,1' });
    const sheet = await bench.do('readings.paste', { testId, row: 'r2', key: 'forceN', pasted: '3,2\n3,3' });
    expect(sheet.rows.slice(0, 3).map(({ cells }) => [cells.widthMm?.value, cells.forceN?.value])).toEqual([
      [25, 3.1],
      [25, 3.2],
      [25, 3.3],
    ]);
  });
});
