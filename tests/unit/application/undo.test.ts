import { describe, expect, it } from 'vitest';
import { TestBench, testBench } from './open-application.ts';

const TYPED = { row: 'r1', key: 'wetsMNm' };

async function withSheet() {
  const bench = await testBench();
  const { test } = await bench.startTest('test-fluids');
  const enter = (typed: string, reason = '') => bench.do('reading.enter', { testId: test.testId, ...TYPED, typed, reason });
  return { bench, testId: test.testId, enter };
}

const cellOf = async (bench: TestBench, testId: string) => (await bench.do('test.get', { testId })).rows[0]?.cells.wetsMNm;
const undo = async (bench: TestBench) => bench.do('undo.last', {});

describe('undo', () => {
  it('corrects a reading back to what stood before, with all that was filled in beside it, and removes nothing', async () => {
    const { bench, testId, enter } = await withSheet();
    await enter('38');
    await enter('40', 'misread');
    const entries = await bench.entries();
    const undone = await undo(bench);
    expect(undone.done).toBe(true);
    expect(undone.text).toMatch(/^Undone: Corrected .* from 38 mN\/m to 40 mN\/m\. Both stand in the record\.$/);
    expect(await cellOf(bench, testId)).toMatchObject({ value: 38, typed: '38' });
    expect(await bench.entries()).toBe(entries + 1);
    expect((await bench.do('record.list', {})).entries[0]).toMatchObject({ kind: 'reading.corrected', correction: { before: '40 mN/m', after: '38 mN/m', reason: 'undone' } });
    // The action before it, not the undoing, is undone next.
    await undo(bench);
    const { rows } = await bench.do('test.get', { testId });
    expect(Object.values(rows[0]!.cells).map(({ value }) => value)).toEqual(Object.values(rows[0]!.cells).map(() => null));
    expect(await bench.do('record.verify', {})).toMatchObject({ intact: true });
  });

  it('takes back a paste as one, a voided and a restored row, a remark, limits and a condition', async () => {
    const { bench, testId, enter } = await withSheet();
    const sheet = () => bench.do('test.get', { testId });
    await enter('38');
    await bench.do('readings.paste', { testId, row: 'r2', key: 'wetsMNm', pasted: '36\n38\n40' });
    expect((await undo(bench)).text).toContain('and 2 more.');
    expect((await sheet()).rows.map(({ cells }) => cells.wetsMNm?.value ?? null).slice(0, 4)).toEqual([38, null, null, null]);

    await bench.do('row.remark', { testId, row: 'r1', remark: 'near the edge' });
    await bench.do('row.remark', { testId, row: 'r1', remark: 'at the edge' });
    await undo(bench);
    expect((await sheet()).rows[0]).toMatchObject({ remark: 'near the edge' });

    await bench.do('row.void', { testId, row: 'r1', reason: 'touched by hand' });
    await bench.do('row.restore', { testId, row: 'r1', reason: 'it was row 2' });
    await undo(bench);
    expect((await sheet()).rows[0]!.voided).toEqual({ reason: 'touched by hand' });
    await undo(bench);
    expect((await sheet()).rows[0]!.voided).toBeNull();

    const property = (await bench.do('method.get', { methodId: 'test-fluids' })).properties.find(({ limited }) => limited)!.key;
    const before = await sheet();
    await bench.do('test.setLimits', { testId, limits: [{ property, lower: 36, upper: null, source: 'ours' }], rule: 'simple', reason: '' });
    await undo(bench);
    expect(await sheet()).toMatchObject({ limits: before.limits, rule: before.rule });

    await bench.do('condition.enter', { testId, key: 'temperatureC', typed: '25' });
    const temperature = before.conditions.temperatureC?.value ?? null;
    await undo(bench);
    expect((await sheet()).conditions.temperatureC?.value ?? null).toBe(temperature);
    expect(await bench.do('record.verify', {})).toMatchObject({ intact: true });
  });

  it('withdraws a test that was just started, which then counts nowhere and takes nothing', async () => {
    const { bench, testId, enter } = await withSheet();
    expect((await undo(bench)).text).toMatch(/^Undone: Started /);
    expect(await bench.do('test.get', { testId })).toMatchObject({ withdrawn: 'undone' });
    expect((await bench.do('today.get', {})).running).toEqual([]);
    expect((await bench.do('samples.list', {})).samples).toMatchObject([{ tests: 0 }]);
    await expect(enter('38')).rejects.toThrow('This test was withdrawn');
    expect((await bench.do('record.list', { testId })).entries.map(({ kind }) => kind)).toEqual(['test.withdrawn', 'test.started']);
  });

  it('stops at what stays: a finished test, and says what to do instead', async () => {
    const { bench, testId } = await withSheet();
    for (const [index, typed] of ['38', '38', '38', '38', '38'].entries()) await bench.do('reading.enter', { testId, row: `r${index + 1}`, key: 'wetsMNm', typed });
    await bench.do('test.finish', { testId, remark: '' });
    const entries = await bench.entries();
    const answer = await undo(bench);
    expect(answer).toMatchObject({ done: false });
    expect(answer.text).toContain('A finished test stays finished: correct what is wrong, then finish it again.');
    expect(await bench.entries()).toBe(entries);
  });

  it('names all that the last action recorded, and advice that can be followed', async () => {
    const bench = await testBench();
    expect((await undo(bench)).text).toBe(
      'Not undone: Began the notebook “Quillmere lab” (Quillmere Flexibles). Added Imke Rasmund (IR), technician. A notebook that was begun stays: its title and laboratory are changed on the screen Notebook.',
    );
    await bench.do('material.add', { kind: 'film', name: 'PET 12', supplier: '', description: '' });
    expect((await undo(bench)).text).toBe('Not undone: Added the film PET 12. A material stays: change what is said of it on its page.');
  });

  it('takes back another title of the notebook', async () => {
    const bench = await testBench();
    await bench.do('notebook.describe', { title: 'Films 2026', laboratory: 'Quillmere Flexibles', reason: 'a new year' });
    expect((await undo(bench)).text).toBe('Undone: Changed the notebook from “Quillmere lab” (Quillmere Flexibles) to “Films 2026” (Quillmere Flexibles): a new year. Both stand in the record.');
    expect((await bench.do('session.get', {})).notebook).toMatchObject({ title: 'Quillmere lab' });
  });

  it('is of the person at the bench alone, and never of what another has gone on from', async () => {
    const { bench, testId, enter } = await withSheet();
    const imke = (await bench.do('session.get', {})).atBench!.personId;
    const { personId } = await bench.do('person.add', { name: 'Abena Quist', initials: 'AQ', role: '' });
    await enter('38');
    await bench.do('session.takeBench', { personId });
    expect((await bench.do('session.get', {})).undoable).toBe('');
    expect(await undo(bench)).toMatchObject({ done: false, text: 'There is nothing to undo: you have recorded nothing here today, or it is undone.' });
    await enter('40', 'misread');
    await bench.do('session.takeBench', { personId: imke });
    expect((await bench.do('session.get', {})).undoable).toContain('Entered 38');
    const answer = await undo(bench);
    expect(answer).toMatchObject({ done: false });
    expect(answer.text).toContain('It was changed since');
    expect(await cellOf(bench, testId)).toMatchObject({ value: 40 });
  });

  it('leaves what another has said of the same thing since: a person, a material, what a lot was made from', async () => {
    const bench = await testBench();
    const imke = (await bench.do('session.get', {})).atBench!.personId;
    const abena = (await bench.do('person.add', { name: 'Abena Quist', initials: 'AQ', role: '' })).personId;
    const { personId } = await bench.do('person.add', { name: 'Teodor Vance', initials: 'TV', role: '' });
    const film = { name: 'PET 12', supplier: '', description: '' };
    const { materialId } = await bench.do('material.add', { kind: 'film', ...film });
    const lot = async (code: string) => (await bench.do('lot.add', { materialId, code, receivedOn: null, note: '' })).lotId;
    const lots = [await lot('L-1'), await lot('L-2')];
    const lotId = await lot('L-3');
    const sayings: ((time: 1 | 2) => Promise<unknown>)[] = [
      (time) => bench.do('person.change', { personId, name: 'Teodor Vance', role: `post ${time}`, reason: 'new post' }),
      (time) => bench.do('material.describe', { materialId, ...film, description: `from data sheet ${time}`, reason: 'data sheet' }),
      (time) => bench.do('lot.makeFrom', { lotId, lotIds: lots.slice(0, time), reason: 'as it went in' }),
    ];
    for (const say of sayings) {
      await say(1);
      await bench.do('session.takeBench', { personId: abena });
      await say(2);
      await bench.do('session.takeBench', { personId: imke });
      const answer = await undo(bench);
      expect(answer).toMatchObject({ done: false });
      expect(answer.text).toContain('It was changed since');
    }
    expect((await bench.do('session.get', {})).people.find((person) => person.personId === personId)).toMatchObject({ role: 'post 2' });
    expect(await bench.do('material.get', { materialId })).toMatchObject({ description: 'from data sheet 2' });
    expect((await bench.do('lot.get', { lotId })).madeFrom).toHaveLength(2);
    // Abena's own are still hers to take back.
    await bench.do('session.takeBench', { personId: abena });
    expect(await undo(bench)).toMatchObject({ done: true });
    expect((await bench.do('lot.get', { lotId })).madeFrom).toHaveLength(1);
  });

  it('takes a file away from where it was put, and brings a retired person back', async () => {
    const { bench, testId } = await withSheet();
    await bench.do('attachment.add', { attachedTo: 'test', attachedId: testId, name: 'note.txt', caption: '', bytes: Buffer.from('note').toString('base64') });
    expect((await undo(bench)).text).toContain('Put the file note.txt with');
    expect(await bench.do('attachments.list', { attachedTo: 'test', attachedId: testId })).toEqual([]);
    const { personId } = await bench.do('person.add', { name: 'Abena Quist', initials: 'AQ', role: '' });
    await bench.do('person.retire', { personId, reason: 'left' });
    await undo(bench);
    expect((await bench.do('session.get', {})).people).toMatchObject([{}, { retired: false }]);
  });
});

describe('undo after the notebook was opened again', () => {
  /** Closed as after a crash, opened again a minute later by whoever was at the bench. */
  async function reopened(bench: TestBench, minutes = 1): Promise<TestBench> {
    await bench.application.close();
    const again = new TestBench(bench.folder);
    again.time = bench.time + minutes * 60_000;
    await again.application.open(bench.notebookFile);
    return again;
  }

  /** Every call a second after the one before, as at a bench. */
  async function paced() {
    const bench = await testBench();
    const step = () => (bench.time += 1000);
    step();
    const { sampleId } = await bench.do('sample.add', { code: 'Q-1', product: '', job: '', roll: '', note: '', lotIds: [] });
    step();
    const { test } = await bench.do('test.start', { sampleId, methodId: 'test-fluids' });
    const enter = (typed: string, reason = '', row = 'r1') => (step(), bench.do('reading.enter', { testId: test.testId, row, key: 'wetsMNm', typed, reason }));
    return { bench, testId: test.testId, enter, step };
  }

  it('takes back the last own action of today from the record, then the one before it', async () => {
    const { bench, testId, enter } = await paced();
    await enter('38');
    await enter('40', 'misread');
    const again = await reopened(bench);
    expect((await again.do('session.get', {})).undoable).toMatch(/^Corrected .* from 38 mN\/m to 40 mN\/m\.$/);
    expect((await undo(again)).text).toMatch(/^Undone: Corrected .* from 38 mN\/m to 40 mN\/m\. Both stand in the record\.$/);
    expect(await cellOf(again, testId)).toMatchObject({ value: 38, typed: '38' });
    again.time += 1000;
    expect((await undo(again)).text).toMatch(/^Undone: Entered 38/);
    expect((await cellOf(again, testId))?.value ?? null).toBeNull();
    again.time += 1000;
    expect((await undo(again)).text).toMatch(/^Undone: Started /);
    expect(await again.do('record.verify', {})).toMatchObject({ intact: true });
  });

  it('takes back as one what one call recorded', async () => {
    const { bench, testId, enter, step } = await paced();
    await enter('38');
    step();
    await bench.do('readings.paste', { testId, row: 'r2', key: 'wetsMNm', pasted: '36\n38\n40' });
    const again = await reopened(bench);
    expect((await undo(again)).text).toContain('and 2 more.');
    expect((await again.do('test.get', { testId })).rows.map(({ cells }) => cells.wetsMNm?.value ?? null).slice(0, 4)).toEqual([38, null, null, null]);
  });

  it('passes over what was undone before, and goes on with what was not', async () => {
    const { bench, testId, enter, step } = await paced();
    await enter('38');
    await enter('40', '', 'r2');
    step();
    await undo(bench);
    const again = await reopened(bench);
    expect((await undo(again)).text).toMatch(/^Undone: Entered 38/);
    expect((await again.do('test.get', { testId })).rows.map(({ cells }) => cells.wetsMNm?.value ?? null).filter((value) => value !== null)).toEqual([]);
  });

  it('is of the person at the bench, of today, and not where another has said otherwise since', async () => {
    const { bench, testId, enter, step } = await paced();
    const imke = (await bench.do('session.get', {})).atBench!.personId;
    const { personId } = await bench.do('person.add', { name: 'Abena Quist', initials: 'AQ', role: '' });
    await enter('38');
    await bench.do('session.takeBench', { personId });
    await enter('40', 'misread');
    const again = await reopened(bench);
    expect((await again.do('session.get', {})).undoable).toContain('Corrected');
    await again.do('session.takeBench', { personId: imke });
    const answer = await undo(again);
    expect(answer).toMatchObject({ done: false });
    expect(answer.text).toContain('It was changed since');
    expect(await cellOf(again, testId)).toMatchObject({ value: 40 });
    step();
    const tomorrow = await reopened(again, 24 * 60);
    expect((await tomorrow.do('session.get', {})).undoable).toBe('');
    expect(await undo(tomorrow)).toMatchObject({ done: false, text: expect.stringContaining('nothing here today') });
  });
});

describe('a test begun by mistake', () => {
  it('is withdrawn with a reason, but not once it has readings', async () => {
    const { bench, testId, enter } = await withSheet();
    expect(await bench.refused('test.withdraw', { testId, reason: '' })).toMatchObject({ field: 'reason' });
    await enter('38');
    expect((await bench.refused('test.withdraw', { testId, reason: 'wrong sample' })).message).toContain('This test has readings');
    await undo(bench);
    expect(await bench.do('test.withdraw', { testId, reason: 'wrong sample' })).toMatchObject({ withdrawn: 'wrong sample' });
  });

  it('is kept for a trace that was read into it, though nothing was typed', async () => {
    const bench = await testBench();
    const { test } = await bench.startTest('lamination-bond');
    const lines = Array.from({ length: 40 }, (_, millimetre) => `${millimetre},${2 + (millimetre % 3) / 10}`);
    const file = { name: 'peel.csv', bytes: Buffer.from(['Extension (mm),Force (N)', ...lines].join('\n')).toString('base64') };
    const { reading } = await bench.do('trace.preview', { ...file, reading: {} });
    await bench.do('trace.read', { testId: test.testId, row: 'r1', key: 'trace', ...file, reading });
    expect((await bench.refused('test.withdraw', { testId: test.testId, reason: 'wrong sample' })).message).toContain('This test has readings');
    await undo(bench);
    expect(await bench.do('test.withdraw', { testId: test.testId, reason: 'wrong sample' })).toMatchObject({ withdrawn: 'wrong sample' });
  });
});
