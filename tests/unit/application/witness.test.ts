import { describe, expect, it } from 'vitest';
import { testBench } from './open-application.ts';

const PASSPHRASE = 'three dry cylinders';

async function withWitness() {
  const bench = await testBench();
  const imke = (await bench.do('session.get', {})).atBench!.personId;
  const abena = (await bench.do('person.add', { name: 'Abena Quist', initials: 'AQ', role: 'quality lead' })).personId;
  await bench.do('passphrase.set', { personId: abena, passphrase: PASSPHRASE });
  const { test } = await bench.startTest('test-fluids');
  const enter = (row: string, typed: string, reason = '') => bench.do('reading.enter', { testId: test.testId, row, key: 'wetsMNm', typed, reason });
  for (const row of ['r1', 'r2', 'r3', 'r4', 'r5']) await enter(row, '38');
  return { bench, imke, abena, testId: test.testId, enter };
}

describe('a page of work', () => {
  it('is witnessed by a second person, on the sheet, the Record and in the report, and later corrections are shown as later', async () => {
    const { bench, abena, testId, enter } = await withWitness();
    await bench.do('test.finish', { testId, remark: '' });
    const page = { testId };
    const read = await bench.do('work.page', { page });
    expect(read).toMatchObject({ title: expect.stringContaining('on Q-1'), authors: [{ name: 'Imke Rasmund' }], witnesses: [] });
    expect(read.entries.map(({ kind }) => kind)).toContain('test.finished');
    const signed = await bench.do('work.witness', { page, toSeq: read.toSeq, chainHash: read.chainHash, personId: abena, passphrase: PASSPHRASE });
    const text = `Witnessed by Abena Quist on 2026-03-02 (has read and understood, up to entry ${read.toSeq}).`;
    expect(signed.witnesses).toMatchObject([{ name: 'Abena Quist', text, later: 0 }]);
    expect((await bench.do('test.get', { testId })).witnesses).toMatchObject([{ text }]);
    const report = await bench.do('report.preview', { title: 'T', recipient: '', remark: '', testIds: [testId], replaces: null });
    expect(report.sections[0]!.notes).toContain(text);

    await enter('r1', '40', 'misread');
    expect((await bench.do('test.get', { testId })).witnesses).toMatchObject([{ text: `${text} One entry on this test is later than the witness.`, later: 1 }]);
    const { entries } = await bench.do('record.list', { testId });
    expect(entries[0]).toMatchObject({ kind: 'reading.corrected', marks: ['Later than the witness of Abena Quist.'] });
    expect(entries.find(({ kind }) => kind === 'work.witnessed')!.text).toBe(`Abena Quist has read and understood: entries ${read.fromSeq} to ${read.toSeq} of Test fluids on Q-1.`);
    expect(entries.at(-1)).toMatchObject({ kind: 'test.started', marks: ['Witnessed by Abena Quist.'] });
    expect(await bench.do('record.verify', {})).toMatchObject({ intact: true, remarks: [] });
  });

  it('is not signed by its author, with a wrong passphrase, nor unseen', async () => {
    const { bench, imke, abena, testId, enter } = await withWitness();
    await bench.do('passphrase.set', { personId: imke, passphrase: 'five wet rollers' });
    const page = { testId };
    const { toSeq, chainHash } = await bench.do('work.page', { page });
    const sign = { page, toSeq, chainHash };
    expect((await bench.refused('work.witness', { ...sign, personId: imke, passphrase: 'five wet rollers' })).message).toBe('Imke Rasmund made or signed entries of this page; a witness is somebody who did not.');
    expect(await bench.refused('work.witness', { ...sign, personId: abena, passphrase: 'five wet rollers' })).toMatchObject({ field: 'passphrase', value: null });
    await enter('r6', '36');
    expect((await bench.refused('work.witness', { ...sign, personId: abena, passphrase: PASSPHRASE })).message).toContain('Entries were added to this page since it was shown');
    expect((await bench.do('record.list', { kind: 'work.witnessed' })).entries).toEqual([]);
  });

  it('is not witnessed by who signed a part of it while another was at the bench', async () => {
    const { bench, imke, abena } = await withWitness();
    await bench.do('passphrase.set', { personId: imke, passphrase: 'five wet rollers' });
    await bench.do('passphrase.renew', { personId: imke, passphrase: 'six wet rollers', reason: 'forgotten', secondPersonId: abena, secondPassphrase: PASSPHRASE });
    const [renewed] = (await bench.do('record.list', { kind: 'passphrase.renewed' })).entries;
    const page = { fromSeq: renewed!.seq, toSeq: renewed!.seq };
    const { toSeq, chainHash, authors } = await bench.do('work.page', { page });
    expect(authors.map(({ name }) => name)).toEqual(['Imke Rasmund', 'Abena Quist']);
    expect((await bench.refused('work.witness', { page, toSeq, chainHash, personId: abena, passphrase: PASSPHRASE })).message).toContain('Abena Quist made or signed entries of this page');
  });

  it('keeps the witness who was retired since', async () => {
    const { bench, abena, testId } = await withWitness();
    const page = { testId };
    const { toSeq, chainHash } = await bench.do('work.page', { page });
    const sign = { page, toSeq, chainHash, personId: abena, passphrase: PASSPHRASE };
    await bench.do('work.witness', sign);
    await bench.do('person.retire', { personId: abena, reason: 'left' });
    expect((await bench.do('work.page', { page })).witnesses).toMatchObject([{ name: 'Abena Quist' }]);
    expect(await bench.refused('work.witness', sign)).toMatchObject({ code: 'conflict', message: expect.stringContaining('is retired (left)') });
    expect(await bench.do('record.verify', {})).toMatchObject({ intact: true });
  });

  it('may be a day of one person or entries from one number to another, and a correction of a test in it is later', async () => {
    const { bench, imke, abena, testId, enter } = await withWitness();
    const page = { by: imke, from: '2026-03-02T00:00:00.000Z', to: '2026-03-03T00:00:00.000Z' };
    const day = await bench.do('work.page', { page });
    await bench.do('work.witness', { page, toSeq: day.toSeq, chainHash: day.chainHash, personId: abena, passphrase: PASSPHRASE });
    bench.time += 86_400_000;
    await enter('r1', '40', 'misread');
    expect((await bench.do('record.list', { testId })).entries[0]!.marks).toEqual(['Later than the witness of Abena Quist.']);
    expect((await bench.do('test.get', { testId })).witnesses).toMatchObject([{ later: 1 }]);
    const stretch = await bench.do('work.page', { page: { fromSeq: 1, toSeq: 4 } });
    expect(stretch.title).toBe('entries 1 to 4');
    expect(await bench.refused('work.page', { page: { fromSeq: 900, toSeq: 950 } })).toMatchObject({ code: 'not-found' });
  });
});

describe('a clock that was set back', () => {
  it('is marked in the Record and remarked on by verify, and is no damage', async () => {
    const { bench, testId, enter } = await withWitness();
    bench.time -= 3_600_000;
    await enter('r6', '36');
    const [newest] = (await bench.do('record.list', { testId })).entries.filter(({ marks }) => marks!.length > 0);
    expect(newest).toMatchObject({ marks: ['The computer’s clock went back before this entry.'] });
    const found = await bench.do('record.verify', {});
    expect(found).toMatchObject({ intact: true, problems: [] });
    expect(found.remarks).toEqual([expect.stringMatching(/^The computer’s clock went back before entry \d+: it was recorded at 2026-03-02T07:00/)]);
  });
});
