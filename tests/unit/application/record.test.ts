import { createRequire } from 'node:module';
import { readFileSync, writeFileSync } from 'node:fs';
import initSqlJs from 'sql.js';
import { describe, expect, it } from 'vitest';
import { NotebookStore } from '../../../electron/store/notebook-store.ts';
import { frozenPlan } from '../plan/frozen-plan.ts';
import { testBench, type TestBench } from './open-application.ts';

const wasm = createRequire(import.meta.url).resolve('sql.js/dist/sql-wasm.wasm');

/** Changes the notebook's file behind the program's back, as somebody with a database tool would. */
async function tamper(bench: TestBench, sql: string): Promise<void> {
  await bench.application.close();
  const sqlite = await initSqlJs({ locateFile: () => wasm });
  const database = new sqlite.Database(readFileSync(bench.notebookFile));
  for (const { name } of rows(database.exec("SELECT name FROM sqlite_master WHERE type = 'trigger'"))) database.run(`DROP TRIGGER ${name}`);
  database.run(sql);
  writeFileSync(bench.notebookFile, database.export());
  database.close();
  await bench.do('notebook.open', { handle: bench.notebookFile });
}

function rows(result: initSqlJs.QueryExecResult[]): { name: string }[] {
  return (result[0]?.values ?? []).map(([name]) => ({ name: String(name) }));
}

async function finishedTest(bench: TestBench): Promise<string> {
  const { test } = await bench.startTest('test-fluids');
  await bench.do('readings.paste', { testId: test.testId, row: 'r1', key: 'wetsMNm', pasted: '37\t38\n38\t39\n39\t40\n38\t39\n40\t41\n36\t37' });
  await bench.do('test.finish', { testId: test.testId, remark: '' });
  return test.testId;
}

describe('the record', () => {
  it('says where the thing opens that an entry is about', async () => {
    const bench = await testBench();
    const { materialId } = await bench.do('material.add', { kind: 'film', name: 'PET 12 µm', supplier: '', description: '' });
    const { lotId } = await bench.do('lot.add', { materialId, code: 'OV-1', receivedOn: null, note: '' });
    const { planId } = await bench.do('plan.add', { content: frozenPlan });
    const { approvalId } = await bench.do('approval.draft', { planId, product: '', job: 'J-1', customer: '', pressRun: '', lotIds: [lotId], sampleIds: [], note: '' });
    await bench.do('attachment.add', { attachedTo: 'lot', attachedId: lotId, name: 'certificate.txt', bytes: Buffer.from('12 µm').toString('base64') });
    expect((await bench.do('record.list', { limit: 6 })).entries.map(({ kind, place }) => [kind, place])).toEqual([
      ['attachment.linked', { screen: 'lot', id: lotId }],
      ['attachment.added', null],
      ['approval.drafted', { screen: 'approvals', id: approvalId }],
      ['plan.added', { screen: 'plans', id: planId }],
      ['lot.added', { screen: 'lot', id: lotId }],
      ['material.added', { screen: 'material', id: materialId }],
    ]);
  });

  it('lists every entry in words, newest first, by page', async () => {
    const bench = await testBench();
    await bench.startTest('test-fluids');
    const record = await bench.do('record.list', {});
    expect(record.total).toBe(4);
    expect(record.entries.map(({ seq, kind }) => [seq, kind])).toEqual([
      [4, 'test.started'],
      [3, 'sample.added'],
      [2, 'person.added'],
      [1, 'notebook.created'],
    ]);
    expect(record.entries[0]).toMatchObject({ by: 'Imke Rasmund', text: 'Started Test fluids (version 1) on Q-1.', correction: null });
    const page = await bench.do('record.list', { offset: 1, limit: 2 });
    expect(page.total).toBe(4);
    expect(page.entries.map(({ seq }) => seq)).toEqual([3, 2]);
  });

  it('prints the unit, also one that the test chooses, behind the number as it was typed', async () => {
    const bench = await testBench();
    const { test } = await bench.startTest('light-exposure');
    const newest = async () => (await bench.do('record.list', { limit: 1 })).entries[0]!.text;
    await bench.do('condition.enter', { testId: test.testId, key: 'exposureUnit', typed: 'kJ/m²' });
    await bench.do('reading.enter', { testId: test.testId, row: 'r1', key: 'exposure', typed: '48,0' });
    expect(await newest()).toBe('Entered 48,0 kJ/m² for Exposure so far, exposure 1, in Light exposure on Q-1.');
    await bench.do('condition.enter', { testId: test.testId, key: 'blackPanelC', typed: '63' });
    expect(await newest()).toBe('Entered 63 °C for Black panel or standard, in Light exposure on Q-1.');
  });

  it('finds by words, kind, person and test', async () => {
    const bench = await testBench();
    const other = await bench.do('person.add', { name: 'Teodor Vance', initials: 'TV', role: 'ink chemist' });
    await bench.do('session.takeBench', { personId: other.personId });
    const { test } = await bench.startTest('test-fluids');
    await bench.do('reading.enter', { testId: test.testId, row: 'r1', key: 'label', typed: 'Kante LINKS 100% geprüft' });
    const seqs = async (filter: object) => (await bench.do('record.list', filter)).entries.map(({ seq }) => seq);
    expect(await seqs({ search: 'kante links' })).toEqual([6]);
    expect(await seqs({ search: '100% geprüft' })).toEqual([6]); // signs are not searched, only letters and digits
    expect(await seqs({ search: '1_0' })).toEqual([]);
    expect(await seqs({ search: 'GEPRÜFT entered' })).toEqual([6]);
    expect(await seqs({ search: 'q-1 POUCH reading' })).toEqual([6]);
    expect(await seqs({ search: 'dumpling' })).toEqual([6, 5, 4]);
    expect(await seqs({ kind: 'person.added' })).toEqual([3, 2]);
    expect(await seqs({ by: other.personId })).toEqual([6, 5, 4]);
    expect(await seqs({ testId: test.testId })).toEqual([6, 5]);
    expect(await seqs({ search: "' OR 1=1 --" })).toEqual([]);
  });

  it('is narrowed to what was recorded from one instant on and before another', async () => {
    const bench = await testBench();
    const { test } = await bench.startTest('test-fluids');
    for (const typed of ['left', 'middle', 'right']) {
      bench.time += 60_000;
      await bench.do('reading.enter', { testId: test.testId, row: 'r1', key: 'label', typed, reason: 'moved' });
    }
    const { entries } = await bench.do('record.list', {});
    const [last, before] = entries.map(({ recordedAt }) => recordedAt) as [string, string];
    expect(last > before).toBe(true);
    const seqs = async (filter: object) => (await bench.do('record.list', filter)).entries.map(({ seq }) => seq);
    const all = entries.map(({ seq }) => seq);
    expect(await seqs({ from: last })).toEqual(all.slice(0, 1));
    expect(await seqs({ until: last })).toEqual(all.slice(1));
    expect(await bench.do('record.list', { from: before, until: last })).toMatchObject({ total: 1, entries: [{ seq: all[1] }] });
    expect(await seqs({ from: last, until: before })).toEqual([]);
    expect(await bench.refused('record.list', { from: 'yesterday' })).toMatchObject({ code: 'input', field: 'from' });
  });

  it('finds what was done to a thing by the name that the thing goes by', async () => {
    const bench = await testBench();
    const { materialId } = await bench.do('material.add', { kind: 'film', name: 'Cast PP', supplier: '', description: '' });
    const { lotId } = await bench.do('lot.add', { materialId, code: 'OV-4711', receivedOn: null, note: '' });
    const { lotId: rollId } = await bench.do('lot.add', { materialId, code: 'ROLL-9', receivedOn: null, note: '' });
    const { planId } = await bench.do('plan.add', { content: frozenPlan });
    const { instrumentId } = await bench.do('instrument.add', { name: 'Spectrodensitometer', serial: 'SD-2207', methodIds: [], note: '' });
    const { sampleId } = await bench.do('sample.add', { code: 'K-7', product: 'coffee brick', job: '', roll: '', note: '', lotIds: [] });
    const from = await bench.entries();
    await bench.do('lot.retire', { lotId, reason: 'gels' });
    await bench.do('lot.return', { lotId, reason: 'cut out' });
    await bench.do('lot.makeFrom', { lotId: rollId, lotIds: [lotId], reason: '' });
    await bench.do('instrument.calibrate', { instrumentId, calibratedOn: '2026-01-02', dueOn: null, remark: '' });
    await bench.do('sample.retire', { sampleId, reason: 'used up' });
    await bench.do('plan.retire', { planId, reason: 'product ended' });
    await bench.do('test.start', { sampleId, methodId: 'gloss' });
    const kinds = async (search: string) => (await bench.do('record.list', { search })).entries.filter(({ seq }) => seq > from).map(({ kind }) => kind).reverse();
    expect(await kinds('4711')).toEqual(['lot.retired', 'lot.returned', 'lot.madeFrom']);
    expect(await kinds('roll-9')).toEqual(['lot.madeFrom']);
    expect(await kinds('Cast gels')).toEqual(['lot.retired']);
    expect(await kinds('SD-2207')).toEqual(['instrument.calibrated']);
    expect(await kinds('K-7')).toEqual(['sample.retired', 'test.started']);
    expect(await kinds(frozenPlan.title)).toEqual(['plan.retired']);
    expect(await kinds('gloss')).toEqual(['test.started']);
    // Each by the name that its sentence shows, also once it was changed.
    await bench.do('lot.describe', { lotId, code: 'OV-5000', receivedOn: null, note: '', expiresOn: null, treatedOn: null, treatedSide: null, thickness: '', reason: 'misread' });
    expect(await kinds('5000')).toEqual(['lot.retired', 'lot.returned', 'lot.madeFrom', 'lot.described']);
    expect((await bench.do('record.verify', {})).intact).toBe(true);
  });
});

describe('verifying', () => {
  it('finds nothing in an honest notebook, also after opening it again', async () => {
    const bench = await testBench();
    await finishedTest(bench);
    const honest = await bench.do('record.verify', {});
    expect(honest).toMatchObject({ intact: true, problems: [], entries: await bench.entries() });
    await bench.application.close();
    await bench.do('notebook.open', { handle: bench.notebookFile });
    expect(await bench.do('record.verify', {})).toEqual(honest);
  });

  it.each([
    ['an edited reading', "UPDATE reading SET value = 45 WHERE \"row\" = 'r1' AND key = 'retractsMNm'", ['Table reading', 'The stored result of Test fluids on Q-1']],
    ['an edited result', "UPDATE test SET results = replace(results, '\"n\":6', '\"n\":7')", ['Table test', 'The stored result of Test fluids on Q-1']],
    ['an edited entry', "UPDATE entry SET body = replace(body, '\"value\":36', '\"value\":39') WHERE kind = 'reading.entered'", ['was changed after it was written']],
    ['a removed entry', 'DELETE FROM entry_about WHERE seq = 5; DELETE FROM entry WHERE seq = 5', ['Entry 6']],
    ['a person under another name', "UPDATE person SET name = 'Somebody Else'", ['Table person']],
  ])('finds %s', async (_what, sql, says) => {
    const bench = await testBench();
    await finishedTest(bench);
    await tamper(bench, sql);
    const { intact, problems } = await bench.do('record.verify', {});
    expect(intact).toBe(false);
    for (const words of says) expect(problems.join('\n')).toContain(words);
  });

  it('finds a stored result that its readings do not give, even when record and tables agree', async () => {
    const bench = await testBench();
    const testId = await finishedTest(bench);
    // An entry like the program's own, but with a made-up result: only working it out anew can tell.
    const { results } = JSON.parse((await storedRow(bench, testId)).body) as { results: Record<string, { value: number }> };
    results.wettingTension!.value += 1;
    await bench.application.close();
    const store = await NotebookStore.open(bench.notebookFile, { now: () => new Date(bench.time), ulid: () => '01KJZZZZZZZZZZZZZZZZZZZZZZ' });
    const entry = [...store.entries()].findLast(({ kind }) => kind === 'test.finished')!;
    store.append([{ kind: 'test.finished', by: entry.by, occurredAt: entry.occurredAt, body: { ...(entry.body as object), results } } as never]);
    store.close();
    await bench.do('notebook.open', { handle: bench.notebookFile });
    expect((await bench.do('record.verify', {})).problems).toEqual([
      'The stored result of Test fluids on Q-1 is not the one that its readings give: wettingTension differs.',
    ]);
    const problem = await bench.refused('report.issue', { title: 'T', recipient: '', remark: '', testIds: [testId], replaces: null });
    expect(problem.message).toContain('is not the one that its readings give');
  });
});

async function storedRow(bench: TestBench, testId: string): Promise<{ body: string }> {
  await bench.do('notebook.checkpoint', {});
  const sqlite = await initSqlJs({ locateFile: () => wasm });
  const database = new sqlite.Database(readFileSync(bench.notebookFile));
  const [found] = database.exec("SELECT body FROM entry WHERE kind = 'test.finished' AND body LIKE '%' || ? || '%'", [testId]);
  database.close();
  return { body: String(found!.values[0]![0]) };
}
