import { copyFileSync, existsSync, mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import initSqlJs from 'sql.js';
import { describe, expect, it } from 'vitest';
import { testBench, TestBench } from './open-application.ts';

const sample = { product: 'dumpling pouch 600 g', job: '', roll: '', note: '', lotIds: [] };

/** A notebook with a running test, and a copy of it that goes on at a second bench in `bench-b.laydown`. */
async function twoBenches({ finished = false } = {}): Promise<{ a: TestBench; b: TestBench; file: string; testId: string }> {
  const a = await testBench();
  const { test } = await a.startTest('gloss');
  await a.do('reading.enter', { testId: test.testId, row: 'r1', key: 'gloss', typed: '38' });
  if (finished) await a.do('test.finish', { testId: test.testId, remark: '' });
  return { a, ...(await secondBench(a)), testId: test.testId };
}

/** A copy of the notebook of bench A that goes on in `bench-b.laydown`. */
async function secondBench(a: TestBench): Promise<{ b: TestBench; file: string }> {
  await a.do('notebook.checkpoint', {});
  const b = new TestBench();
  const folder = path.join(b.folder, 'notebooks');
  mkdirSync(folder, { recursive: true });
  const file = path.join(folder, 'bench-b.laydown');
  copyFileSync(a.notebookFile, file);
  await b.application.open(file);
  const [person] = (await b.do('session.get', {})).people;
  await b.do('session.takeBench', { personId: person!.personId });
  return { b, file };
}

/** Time goes by at both benches. */
function later(...benches: TestBench[]): void {
  const now = Math.max(...benches.map(({ time }) => time)) + 60_000;
  for (const bench of benches) bench.time = now;
}

async function take(bench: TestBench, file: string, belongsHere = false) {
  const answer = await bench.application.merge(file, belongsHere);
  if (!answer.ok) throw new Error(answer.problem.message);
  return answer.value;
}

describe('bringing in the notebook of another bench', () => {
  it('leaves the bench empty when who stands at it was retired at the other', async () => {
    const { a, b, file } = await twoBenches();
    const imke = (await a.do('session.get', {})).atBench!.personId;
    const { personId } = await b.do('person.add', { name: 'Abena Quist', initials: 'AQ', role: '' });
    await b.do('session.takeBench', { personId });
    later(a, b);
    await b.do('person.retire', { personId: imke, reason: 'left' });
    await b.do('notebook.checkpoint', {});
    await take(a, file);
    expect((await a.do('session.get', {})).atBench).toBeNull();
    expect((await a.refused('sample.add', { ...sample, code: 'A-1' })).message).toContain('Choose who is at the bench first');
    await a.do('session.takeBench', { personId });
    await a.do('sample.add', { ...sample, code: 'A-1' });
    expect(await a.do('record.verify', {})).toMatchObject({ intact: true });
  });

  it('shows what would come, changes nothing, then takes it in and shows whose it is', async () => {
    const { a, b, file } = await twoBenches();
    later(a, b);
    await b.do('sample.add', { ...sample, code: 'B-1' });
    await a.do('sample.add', { ...sample, code: 'A-1' });
    const before = await a.entries();
    await checkpointed(b, file);
    a.application.handOver(file);
    const other = { handle: file };
    expect(await a.do('merge.preview', other)).toMatchObject({ bench: 'bench-b', title: 'Quillmere lab', entries: 1, common: before - 1, files: 0, conflicts: [] });
    expect(await a.entries()).toBe(before);
    const merged = await a.do('merge.make', other);
    expect(merged).toMatchObject({ bench: 'bench-b', entries: 1, mergedBy: 'Imke Rasmund', conflicts: [] });
    expect((await a.do('samples.list', {})).samples.map(({ code }) => code)).toEqual(['B-1', 'A-1', 'Q-1']);
    const { entries } = await a.do('record.list', { limit: 3 });
    expect(entries.map(({ seq, text, marks }) => [seq, text, marks])).toEqual([
      [before + 2, 'Brought in 1 entry of bench-b (“Quillmere lab”): nothing contradicted.', []],
      [before + 1, 'Added sample B-1 (dumpling pouch 600 g).', [`Of bench-b, entry ${before} there.`]],
      [before, 'Added sample A-1 (dumpling pouch 600 g).', []],
    ]);
    expect((await a.do('record.list', { search: 'B-1 pouch' })).total).toBe(1);
    expect(await a.do('record.verify', {})).toMatchObject({ intact: true, remarks: [] });
    // Work goes on behind it, and so does its chain.
    await a.do('sample.add', { ...sample, code: 'A-2' });
    expect(await a.do('merge.make', other)).toBeNull();
    await a.application.close();
    await a.do('notebook.open', { handle: a.notebookFile });
    expect(await a.do('record.verify', {})).toMatchObject({ intact: true, entries: before + 3 });
  });

  it('lists one cell that both filled in otherwise, takes the later one, and a correction settles it', async () => {
    const { a, b, file, testId } = await twoBenches();
    later(a, b);
    const cell = { testId, row: 'r2', key: 'gloss' };
    await a.do('reading.enter', { ...cell, typed: '40' });
    later(a, b);
    await b.do('reading.enter', { ...cell, typed: '42' });
    await checkpointed(b, file);
    await take(a, file);
    const value = async () => (await a.do('test.get', { testId })).rows.find(({ row }) => row === 'r2')?.cells.gloss?.value;
    expect(await value()).toBe(42);
    const [merge] = await a.do('merges.list', {});
    expect(merge!.conflicts).toMatchObject([
      { here: { bench: '', by: 'Imke Rasmund' }, there: { bench: 'bench-b' }, taken: 'The later one stands: of bench-b.', state: 'open', testId },
    ]);
    expect(merge!.conflicts[0]!.here.text).toContain('40 GU');
    expect(merge!.conflicts[0]!.there.text).toContain('42 GU');
    await a.do('reading.enter', { ...cell, typed: '40', reason: 'the bottle of bench B was the wrong one' });
    const [settled] = (await a.do('merges.list', {}))[0]!.conflicts;
    expect(settled).toMatchObject({ state: 'settled' });
    expect(settled!.settled).toContain('Corrected');
    expect(await a.refused('conflict.settle', { mergeId: merge!.mergeId, here: settled!.here.id, there: settled!.there.id, reason: 'as it is' })).toMatchObject({ code: 'conflict' });
    expect((await a.do('record.verify', {})).intact).toBe(true);
  });

  it('takes the other word in one step: a correction that names the merge, by the way a person corrects', async () => {
    const { a, b, file, testId } = await twoBenches();
    const { sampleId, product } = (await a.do('samples.list', {})).samples[0]!;
    const change = { sampleId, code: 'Q-1', product, roll: '', note: '', lotIds: [], reason: 'misread' };
    later(a, b);
    await a.do('reading.enter', { testId, row: 'r2', key: 'gloss', typed: '40,0' });
    await a.do('row.remark', { testId, row: 'r1', remark: 'in the middle' });
    await a.do('sample.change', { ...change, job: 'J-7', keptAt: 'shelf 1' });
    later(a, b);
    await b.do('reading.enter', { testId, row: 'r2', key: 'gloss', typed: '42' });
    await b.do('row.remark', { testId, row: 'r1', remark: 'near the edge' });
    await b.do('sample.change', { ...change, job: 'J-9', customer: 'Marrowfield Foods' });
    await checkpointed(b, file);
    await take(a, file);
    const [{ mergeId, conflicts } = { mergeId: '', conflicts: [] }] = await a.do('merges.list', {});
    expect(conflicts.map(({ takesOther, taken }) => [takesOther, taken])).toEqual([true, false, true].map((takes) => [takes, 'The later one stands: of bench-b.']));
    const named = (index: number) => ({ mergeId, here: conflicts[index]!.here.id, there: conflicts[index]!.there.id });
    expect(await a.refused('conflict.takeOther', { ...named(0), reason: ' ' })).toMatchObject({ field: 'reason' });
    // A remark has no reason to name the merge in.
    expect(await a.refused('conflict.takeOther', { ...named(1), reason: 'it was' })).toMatchObject({ code: 'conflict' });
    await a.do('conflict.takeOther', { ...named(0), reason: 'read again together' });
    const [after] = await a.do('conflict.takeOther', { ...named(2), reason: 'the job card says so' });
    const said = (reason: string) => `At the merge with bench-b on ${new Date(a.time).toISOString().slice(0, 10)} the other word was taken: ${reason}`;
    expect(after!.conflicts.map(({ state }) => state)).toEqual(['settled', 'open', 'settled']);
    expect(after!.conflicts[0]!.taken).toBe('The later one stood until it was settled: of bench-b.');
    expect((await a.do('test.get', { testId })).rows.find(({ row }) => row === 'r2')!.cells.gloss).toMatchObject({ value: 40, typed: '40,0', corrections: 1 });
    // Of the sample only what both said otherwise is taken; what each said alone stands.
    expect(await a.do('sample.get', { sampleId })).toMatchObject({ job: 'J-7', keptAt: 'shelf 1', customer: 'Marrowfield Foods' });
    const { entries } = await a.do('record.list', { limit: 2 });
    expect(entries.map(({ kind, correction }) => [kind, correction])).toEqual([
      ['sample.changed', { before: 'job J-9', after: 'job J-7', reason: said('the job card says so') }],
      ['reading.corrected', { before: '42 GU', after: '40 GU', reason: said('read again together') }],
    ]);
    expect(await a.refused('conflict.takeOther', { ...named(0), reason: 'once more' })).toMatchObject({ code: 'conflict' });
    expect(await a.refused('conflict.takeOther', { ...named(0), mergeId: 'none', reason: 'x' })).toMatchObject({ code: 'not-found' });
    expect((await a.do('record.verify', {})).intact).toBe(true);
  });

  it('does not take a word that would be read otherwise now than it was then', async () => {
    const a = await testBench();
    const lab = { name: 'Pouch red', illuminant: 'D50' as const, observer: 2 as const, condition: null, geometry: null, note: '', spectrum: '', lab: { L: 45, a: 55, b: 30 } };
    const { referenceId } = await a.do('reference.add', lab);
    const { test } = await a.startTest('colour-measured');
    const { b, file } = await secondBench(a);
    const cell = { testId: test.testId, key: 'reference' };
    later(a, b);
    await a.do('condition.enter', { ...cell, typed: 'Pouch red' });
    later(a, b);
    await b.do('condition.enter', { ...cell, typed: 'an old card' });
    await checkpointed(b, file);
    await take(a, file);
    // The name stands for another edition since.
    await a.do('reference.add', { ...lab, replaces: { referenceId, reason: 'New standard card' } });
    const [{ mergeId, conflicts } = { mergeId: '', conflicts: [] }] = await a.do('merges.list', {});
    const { here, there } = conflicts[0]!;
    expect((await a.refused('conflict.takeOther', { mergeId, here: here.id, there: there.id, reason: 'it was' })).message).toMatch(/would be read otherwise now than it was then/);
  });

  it('says where both words are one value, and takes neither anew', async () => {
    const { a, b, file, testId } = await twoBenches();
    later(a, b);
    await a.do('reading.enter', { testId, row: 'r2', key: 'gloss', typed: '40,0' });
    later(a, b);
    await b.do('reading.enter', { testId, row: 'r2', key: 'gloss', typed: '40' });
    await checkpointed(b, file);
    await take(a, file);
    const [{ mergeId, conflicts } = { mergeId: '', conflicts: [] }] = await a.do('merges.list', {});
    const entries = await a.entries();
    const refused = await a.refused('conflict.takeOther', { mergeId, here: conflicts[0]!.here.id, there: conflicts[0]!.there.id, reason: 'as first typed' });
    expect(refused.message).toBe('Both words say the same value; settle it as it stands.');
    expect(await a.entries()).toBe(entries);
  });

  it('is settled as it stands with a reason', async () => {
    const { a, b, file, testId } = await twoBenches();
    later(a, b);
    await b.do('row.remark', { testId, row: 'r1', remark: 'near the edge' });
    later(a, b);
    await a.do('row.remark', { testId, row: 'r1', remark: 'in the middle' });
    await checkpointed(b, file);
    await take(a, file);
    const [merge] = await a.do('merges.list', {});
    const [conflict] = merge!.conflicts;
    expect(conflict).toMatchObject({ taken: 'The later one stands: of this notebook.', state: 'open' });
    const named = { mergeId: merge!.mergeId, here: conflict!.here.id, there: conflict!.there.id };
    expect(await a.refused('conflict.settle', { ...named, reason: ' ' })).toMatchObject({ field: 'reason' });
    const [after] = await a.do('conflict.settle', { ...named, reason: 'the strip was kept' });
    expect(after!.conflicts[0]).toMatchObject({ state: 'settled', settled: 'Imke Rasmund: what was taken stands, because the strip was kept' });
    expect((await a.do('test.get', { testId })).rows[0]!.remark).toBe('in the middle');
  });

  it('outdates a result that does not stand on what the other bench entered, on both sides alike', async () => {
    const { a, b, file, testId } = await twoBenches();
    later(a, b);
    await b.do('reading.enter', { testId, row: 'r2', key: 'gloss', typed: '42' });
    later(a, b);
    await a.do('test.finish', { testId, remark: '' });
    const copy = path.join(b.folder, 'lab.laydown');
    writeFileSync(copy, Buffer.from(await checkpointed(a, a.notebookFile), 'base64'));
    await checkpointed(b, file);
    await take(a, file);
    await take(b, copy);
    for (const bench of [a, b]) {
      expect((await bench.do('test.get', { testId })).test.state).toBe('outdated');
      expect((await bench.do('merges.list', {}))[0]!.conflicts).toMatchObject([{ taken: 'Both stay; the result is outdated, so the test must be finished again.', state: 'open' }]);
      expect((await bench.do('record.verify', {})).intact).toBe(true);
    }
    await a.do('test.finish', { testId, remark: '' });
    expect((await a.do('merges.list', {}))[0]!.conflicts).toMatchObject([{ state: 'settled' }]);
  });

  it('keeps two samples of one code apart, the later one by the name of its bench', async () => {
    const { a, b, file } = await twoBenches();
    later(a, b);
    await a.do('sample.add', { ...sample, code: 'S-014' });
    later(a, b);
    await b.do('sample.add', { ...sample, code: 'S-014' });
    await b.do('person.add', { name: 'Teodor Vance', initials: 'TV', role: 'ink chemist' });
    await a.do('person.add', { name: 'Tilde Voss', initials: 'TV', role: '' });
    await checkpointed(b, file);
    await take(a, file);
    expect((await a.do('samples.list', { search: 'S-014' })).samples.map(({ code }) => code)).toEqual(['S-014 (bench-b)', 'S-014']);
    expect((await a.do('session.get', {})).people.map(({ initials }) => initials).sort()).toEqual(['IR', 'TV', 'TV2']);
    const [merge] = await a.do('merges.list', {});
    expect(merge!.conflicts.map(({ taken }) => taken)).toContain('Both stay; the later one, of bench-b, goes by S-014 (bench-b).');
    expect((await a.do('record.verify', {})).intact).toBe(true);
  });

  it('finds the sample that a label is of, also one that goes by another code since', async () => {
    const { a, b, file } = await twoBenches();
    later(a, b);
    await b.do('sample.add', { ...sample, code: 'S-002', product: 'coffee brick', job: 'J-11' });
    later(a, b);
    await a.do('sample.add', { ...sample, code: 'S-002', product: 'snack bag', job: 'J-10', roll: 'roll 1' });
    await a.do('sample.add', { ...sample, code: 'S-0021', product: 'snack bag', job: 'J-10', roll: 'roll 1' });
    await checkpointed(b, file);
    await take(a, file);
    const byLabel = async (scanned: string) => ({
      searched: (await a.do('search.find', { search: scanned })).groups[0]!.hits.map(({ title, detail }) => `${title}: ${detail}`),
      listed: (await a.do('samples.list', { search: scanned })).samples.map(({ product }) => product),
    });
    expect(await byLabel('S-002 | snack bag | job J-10 | roll 1 | Quillmere lab')).toEqual({ searched: ['S-002 (lab): snack bag · J-10 · roll 1'], listed: ['snack bag'] });
    expect(await byLabel('S-002 | coffee brick | job J-11 | Quillmere lab')).toEqual({ searched: ['S-002: coffee brick · J-11'], listed: ['coffee brick'] });
    // Where the label does not say which of both, both are shown.
    expect((await byLabel('S-002 | Quillmere lab')).searched).toEqual(['S-002: coffee brick · J-11', 'S-002 (lab): snack bag · J-10 · roll 1']);
    // What was corrected since the label was printed does not hide its sample, nor lets another take its place.
    expect((await byLabel('S-0021 | snack bags | job J-9 | roll 1 | Quillmere lab')).searched).toEqual(['S-0021: snack bag · J-10 · roll 1']);
  });

  it('sees a code that was changed to one that the other bench gave, and not one that was changed away', async () => {
    const { a, b, file } = await twoBenches();
    const { sampleId } = (await a.do('samples.list', {})).samples[0]!;
    const rename = async (bench: TestBench, code: string, id: string) => {
      const { product, job, roll, note, customer, keptAt, retainedUntil } = await bench.do('sample.get', { sampleId: id });
      return bench.do('sample.change', { sampleId: id, code, product, job, roll, note, customer, across: '', along: '', keptAt, retainedUntil, lotIds: [], reason: 'misread' });
    };
    later(a, b);
    await b.do('sample.add', { ...sample, code: 'S-014' });
    const moved = await b.do('sample.add', { ...sample, code: 'S-020' });
    await rename(b, 'S-021', moved.sampleId);
    later(a, b);
    await rename(a, 'S-014', sampleId);
    await a.do('sample.add', { ...sample, code: 'S-020' });
    await checkpointed(b, file);
    await take(a, file);
    const [merge] = await a.do('merges.list', {});
    expect(merge!.conflicts.map(({ here, there, taken }) => [here.text, there.text, taken])).toEqual([
      [expect.stringMatching(/^Changed sample S-014 \(.*\): code S-014: misread\.$/), 'Added sample S-014 (dumpling pouch 600 g).', expect.stringMatching(/^Both stay; the later one, of this notebook, goes by S-014 \(.*\)\.$/)],
    ]);
    expect((await a.do('samples.list', {})).samples.map(({ code }) => code).sort()).toEqual(['S-014', expect.stringMatching(/^S-014 \(/), 'S-020', 'S-021']);
    await rename(a, 'S-015', sampleId);
    expect((await a.do('merges.list', {}))[0]!.conflicts).toMatchObject([{ state: 'settled' }]);
    expect((await a.do('record.verify', {})).intact).toBe(true);
  });

  it('lists what goes by one name at both benches, also once it was changed to it, until one is named otherwise or retired', async () => {
    const a = await testBench();
    const { materialId } = await a.do('material.add', { kind: 'film', name: 'PET', supplier: '', description: '' });
    const { lotId } = await a.do('lot.add', { materialId, code: 'OV-1', receivedOn: null, note: '' });
    const { instrumentId } = await a.do('instrument.add', { name: 'Tensile tester', serial: 'TT-1', methodIds: [], note: '' });
    const { b, file } = await secondBench(a);
    later(a, b);
    const lot = { receivedOn: null, note: '', expiresOn: null, treatedOn: null, treatedSide: null, thickness: '', reason: 'misread' };
    await a.do('lot.describe', { ...lot, lotId, code: 'OV-2' });
    await a.do('instrument.change', { instrumentId, name: 'Tensile tester', serial: 'TT-2', methodIds: [], note: '', reason: 'misread' });
    await a.do('material.add', { kind: 'film', name: 'Cast PP', supplier: '', description: '' });
    await a.do('trialSet.add', { title: 'Low-migration series', question: '', product: '' });
    later(a, b);
    await b.do('lot.add', { materialId, code: 'OV-2', receivedOn: null, note: '' });
    await b.do('instrument.add', { name: 'Tensile tester', serial: 'tt-2', methodIds: [], note: '' });
    await b.do('material.describe', { materialId, name: 'Cast PP', supplier: '', description: '', structure: '', reason: 'delivered as such' });
    await b.do('trialSet.add', { title: 'Low-migration series', question: '', product: '' });
    await checkpointed(b, file);
    await take(a, file);
    const conflicts = async () => (await a.do('merges.list', {}))[0]!.conflicts.map(({ there, taken, state }) => [there.text.split(' ').slice(0, 2).join(' '), taken, state]);
    const underOne = 'Both stay under one name: give one of them another, or retire it.';
    expect(await conflicts()).toEqual([
      ['Added lot', 'Both stay; the later one, of bench-b, goes by OV-2 (bench-b).', 'open'],
      ['Added the', underOne, 'open'],
      ['Described Cast', underOne, 'open'],
      ['Began the', underOne, 'open'],
    ]);
    await a.do('instrument.retire', { instrumentId, reason: 'it is the same one' });
    await a.do('material.describe', { materialId, name: 'PET 12', supplier: '', description: '', structure: '', reason: 'told apart' });
    expect((await conflicts()).map(([, , state]) => state)).toEqual(['open', 'settled', 'settled', 'open']);
    expect((await a.do('record.verify', {})).intact).toBe(true);
  });

  it('takes in two reports of one number', async () => {
    const { a, b, file, testId } = await twoBenches({ finished: true });
    for (const bench of [a, b]) {
      later(a, b);
      await bench.do('report.issue', { title: 'Wetting', recipient: bench === a ? 'Osprey Vale' : 'Tamarind', remark: '', testIds: [testId], replaces: null });
    }
    await checkpointed(b, file);
    await take(a, file);
    const reports = await a.do('reports.list', {});
    expect(reports.map(({ number, recipient }) => [number, recipient])).toEqual([['LR-2026-001 (bench-b)', 'Tamarind'], ['LR-2026-001', 'Osprey Vale']]);
    expect((await a.do('report.pdf', { reportId: reports[0]!.reportId })).bytes).not.toBe('');
    await a.do('report.issue', { title: 'Wetting', recipient: '', remark: '', testIds: [testId], replaces: null });
    expect((await a.do('reports.list', {}))[0]!.number).toBe('LR-2026-003');
  });

  it('joins notebooks that never had an entry in common, and a second merge brings only what is new', async () => {
    const a = await testBench();
    const b = await testBench();
    await b.startTest('gloss', 'B-1');
    await checkpointed(b, b.notebookFile);
    const file = path.join(a.folder, 'bench-c.laydown');
    copyFileSync(b.notebookFile, file);
    expect(await take(a, file, true)).toMatchObject({ bench: 'bench-c', entries: 4 });
    expect((await a.do('session.get', {})).notebook!.title).toBe('Quillmere lab');
    await b.startTest('gloss', 'B-2');
    await checkpointed(b, b.notebookFile);
    copyFileSync(b.notebookFile, file);
    expect(await take(a, file)).toMatchObject({ entries: 2, conflicts: [] });
    expect(await a.do('record.verify', {})).toMatchObject({ intact: true });
    expect(await a.do('merges.list', {})).toHaveLength(2);
  });
});

describe('a notebook that has no entry in common', () => {
  it('says whose it is and what would come, and comes in only when a person has said that it belongs here', async () => {
    const a = await testBench();
    const b = new TestBench();
    await b.do('notebook.create', { fileName: 'lab', title: 'Films of the other house', laboratory: 'Corrie', person: { name: 'Teodor Vance', initials: 'TV', role: '' } });
    await b.startTest('gloss', 'B-1');
    await b.application.close();
    a.application.handOver(b.notebookFile);
    const other = { handle: b.notebookFile };
    expect(await a.do('merge.preview', other)).toMatchObject({ title: 'Films of the other house', laboratory: 'Corrie', common: 0, people: 1, samples: 1 });
    const before = await a.entries();
    const refused = await a.refused('merge.make', other);
    expect(refused).toMatchObject({ code: 'input', field: 'belongsHere' });
    expect(refused.message).toMatch(/^lab \(“Films of the other house”, Corrie\) and lab \(“Quillmere lab”, .*\) have no entry in common\..* belongs to this laboratory\./);
    expect(await a.entries()).toBe(before);
    expect(await a.do('merge.make', { ...other, belongsHere: true })).toMatchObject({ laboratory: 'Corrie' });
    // From then on both have entries in common, and it is asked no more.
    expect(await a.do('merge.make', other)).toBeNull();
  });
});

describe('after a merge', () => {
  it('undo names the merge, which is final, also when the notebook was opened anew', async () => {
    const { a, b, file } = await twoBenches();
    later(a, b);
    await b.do('sample.add', { ...sample, code: 'B-1' });
    await checkpointed(b, file);
    await take(a, file);
    const said = 'Not undone: Brought in 1 entry of bench-b (“Quillmere lab”): nothing contradicted. What was brought in stays: bringing in another notebook is final. What is wrong in it is corrected where it is shown, or retired.';
    expect((await a.do('undo.last', {})).text).toBe(said);
    await a.application.close();
    await a.do('notebook.open', { handle: a.notebookFile });
    expect((await a.do('undo.last', {})).text).toBe(said);
  });

  it('the notebook keeps its own title; of two titles that both benches gave it the later one stands', async () => {
    const { a, b, file } = await twoBenches();
    const name = (bench: TestBench, title: string) => bench.do('notebook.describe', { title, laboratory: 'Quillmere Flexibles', reason: 'a new year' });
    later(a, b);
    await name(b, 'Title of B');
    later(a, b);
    await name(a, 'Title of A');
    await checkpointed(b, file);
    await take(a, file);
    const title = async () => (await a.do('session.get', {})).notebook!.title;
    expect(await title()).toBe('Title of A');
    expect((await a.do('merges.list', {}))[0]!.conflicts).toMatchObject([{ taken: 'The later one stands: of this notebook.' }]);
    const other = await testBench();
    await name(other, 'Title of another');
    await other.application.close();
    const foreign = path.join(a.folder, 'foreign.laydown');
    copyFileSync(other.notebookFile, foreign);
    await take(a, foreign, true);
    expect(await title()).toBe('Title of A');
    expect(await a.do('record.verify', {})).toMatchObject({ intact: true });
  });
});

describe('what cannot be brought in', () => {
  it('is refused in words, and nothing is changed', async () => {
    const { a, b, file } = await twoBenches();
    await b.do('sample.add', { ...sample, code: 'B-1' });
    await checkpointed(b, file);
    const entries = await a.entries();
    const refused = async (bytes: Buffer) => {
      const handle = path.join(a.folder, 'other.laydown');
      writeFileSync(handle, bytes);
      a.application.handOver(handle);
      return (await a.refused('merge.make', { handle })).message;
    };
    expect(await refused(Buffer.from('not a notebook'))).toBe('other.laydown is not a notebook: it is a file of another kind, or its beginning is damaged.');
    expect(await refused(Buffer.alloc(0))).toMatch(/is empty/);
    const newer = Buffer.from(readFileSync(file));
    newer.writeUInt32BE(9999, 60);
    expect(await refused(newer)).toMatch(/written by a newer version of Laydown/);
    const { Database } = await initSqlJs();
    const edited = new Database(readFileSync(file));
    edited.exec(`DROP TRIGGER entry_unchanged; UPDATE entry SET body = replace(body, 'Q-1', 'Q-2') WHERE seq = 3`);
    expect(await refused(Buffer.from(edited.export()))).toMatch(/^The record of other\.laydown does not hold, so nothing was brought in\. Entry 3 \(sample\.added.*was changed after it was written/);
    edited.close();
    const own = await a.application.merge(a.notebookFile, false);
    expect(own).toMatchObject({ ok: false, problem: { message: 'This is the notebook that is open here; choose another one.' } });
    expect(await a.refused('merge.make', { handle: '/etc/passwd' })).toMatchObject({ code: 'not-found' });
    expect((await a.application.merge(path.join(a.folder, 'gone.laydown'), false)).ok).toBe(false);
    expect(await a.entries()).toBe(entries);
  });

  it('is read while the other bench has it open, what its file does not hold yet included, and leaves nothing beside it', async () => {
    const { a, b, file } = await twoBenches();
    await b.do('sample.add', { ...sample, code: 'B-1' }); // in the journal only
    const beside = () => readdirSync(path.dirname(file)).sort();
    const before = beside();
    expect(await take(a, file)).toMatchObject({ entries: 1 });
    expect(beside()).toEqual(before);
    await b.do('sample.add', { ...sample, code: 'B-2' });
    expect(existsSync(`${file}.lock`)).toBe(true);
  });
});

/** The file of a bench once everything is in it, as base64. */
async function checkpointed(bench: TestBench, file: string): Promise<string> {
  await bench.do('notebook.checkpoint', {});
  return readFileSync(file).toString('base64');
}
