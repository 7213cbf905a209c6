import { describe, expect, it } from 'vitest';
import { draft, glossTest, JOB, PASS, setting } from './approval-setting.ts';

const DAY = 86_400_000;

describe('a line with a limit', () => {
  it('is not seen away once there is a result: only another result or a waiver lets it pass', async () => {
    const made = await setting();
    const { bench, imke, abena } = made;
    const bad = await glossTest(bench, [40, 41, 42]);
    await bench.startTest('gloss', 'Q-2');
    const { approvalId, checklist } = await draft(made);
    const { lineId } = checklist[0]!;
    const seen = { approvalId, lineId, inOrder: true, remark: 'shines like the proof', reason: 'ran on line', personId: imke, passphrase: PASS };
    const REFUSED = { code: 'conflict', message: 'The result on Q-1 falls short, and what was seen does not stand against it: take another result, or have a named person waive the line.' };
    // Offered, linked, and linked before.
    expect(await bench.refused('approvalLine.observe', seen)).toMatchObject(REFUSED);
    await bench.do('approvalLine.link', { approvalId, lineId, testId: bad });
    expect(await bench.refused('approvalLine.observe', seen)).toMatchObject(REFUSED);
    const good = await glossTest(bench, [80, 81, 82], { code: 'Q-2' });
    const replaced = await bench.do('approvalLine.link', { approvalId, lineId, testId: good, reason: 'second roll' });
    expect(replaced.checklist[0]).toMatchObject({
      state: 'meets',
      earlier: [{ testId: bad, sampleCode: 'Q-1', roll: 'R1', text: 'Gloss 41.0 GU', verdict: 'falls short' }],
      result: { sampleCode: 'Q-2', roll: 'R1', doubts: ['Also on Q-1 (R1), finished 2026-03-02: falls short.'] },
    });
    expect(await bench.refused('approvalLine.observe', seen)).toMatchObject(REFUSED);
    const [linked] = (await bench.do('record.list', { kind: 'approvalLine.linked' })).entries;
    expect(linked!.text).toContain('Took Gloss on Q-2 for the line “Specular gloss, on press” of the press approval of job J-100, dumpling pouch 600 g, instead of Gloss on Q-1: second roll.');
    const signed = await bench.do('approval.sign', { approvalId, digest: replaced.digest, personId: abena, passphrase: PASS });
    expect(signed.checklist[0]!.earlier).toMatchObject([{ text: 'Gloss 41.0 GU', verdict: 'falls short' }]);
    expect(bench.renderedApprovals).toMatchObject([{ approval: { checklist: [{ earlier: [{ testId: bad }] }] } }]);
    expect(await bench.do('record.verify', {})).toMatchObject({ intact: true, problems: [] });
  }, 60_000);

  it('is seen, not measured, in words, while there is no result, and open again once there is one', async () => {
    const made = await setting();
    const { bench, imke } = made;
    await bench.startTest('gloss');
    const { approvalId, checklist } = await draft(made);
    const seen = { approvalId, lineId: checklist[0]!.lineId, inOrder: true, personId: imke, passphrase: PASS };
    expect(await bench.refused('approvalLine.observe', { ...seen, remark: ' ' })).toMatchObject({ field: 'remark', message: expect.stringContaining('say in words what was seen') });
    expect(await bench.do('approvalLine.observe', { ...seen, remark: 'shines like the proof' })).toMatchObject({
      standing: 'ready to sign',
      summary: '1 line: 1 was seen, not measured',
      checklist: [{ state: 'seen, not measured' }],
    });
    const onToday = async () => (await bench.do('today.get', {})).due.filter((due) => due.approvalId === approvalId).map(({ what }) => what);
    expect(await onToday()).toEqual(['Sign the press approval: job J-100, dumpling pouch 600 g, run 1']);
    await glossTest(bench, [80, 81, 82]);
    expect(await bench.do('approval.get', { approvalId })).toMatchObject({ standing: 'blocked', checklist: [{ state: 'open', remark: 'There is a result by now, which alone decides this line: take it.', offers: [{ verdict: 'meets' }] }] });
    expect(await onToday()).toEqual(['Press approval blocked: job J-100, dumpling pouch 600 g, run 1']);
    expect(await bench.refused('approvalLine.observe', { ...seen, remark: 'shines', reason: 'again' })).toMatchObject({ message: expect.stringContaining('take the result') });
  }, 60_000);

  it('is blocked by too few complete rows, which a named person may waive', async () => {
    const made = await setting();
    const { bench, abena } = made;
    const { test } = await bench.startTest('gloss');
    const { testId } = test;
    for (const [index, typed] of ['80', '81', '82', '83'].entries()) await bench.do('reading.enter', { testId, row: `r${index + 1}`, key: 'gloss', typed });
    for (const row of ['r3', 'r4']) await bench.do('row.void', { testId, row, reason: 'a scratch' });
    await bench.do('test.finish', { testId, remark: '' });
    const { approvalId } = await draft(made);
    const few = await bench.do('approval.linkOffered', { approvalId });
    expect(few).toMatchObject({ standing: 'blocked', blocking: '1 has too few readings', checklist: [{ state: 'too few', tooFew: '2 of 3 places' }] });
    const waived = await bench.do('approvalLines.waive', { approvalId, lineIds: [few.checklist[0]!.lineId], reason: 'roll is gone', personId: abena, passphrase: PASS });
    expect(waived.checklist).toMatchObject([{ state: 'waived', tooFew: '2 of 3 places' }]);
    expect((await bench.do('record.list', { kind: 'approvalLine.waived' })).entries[0]!.text).toContain('which has too few readings, because: roll is gone.');
    await bench.do('approval.sign', { approvalId, digest: waived.digest, personId: abena, passphrase: PASS });
    expect(await bench.do('approvals.list', {})).toMatchObject([{ standing: 'signed', standingWords: 'signed, 1 line waived' }]);
  }, 60_000);

  it('shows the limit that decides with who sets it, and says where the test’s own differs', async () => {
    const made = await setting();
    const { bench } = made;
    const finished = async (limit: object, code: string) => {
      const { test } = await bench.startTest('gloss', code);
      const { testId } = test;
      for (const [index, typed] of ['80', '81', '82'].entries()) await bench.do('reading.enter', { testId, row: `r${index + 1}`, key: 'gloss', typed });
      await bench.do('test.setLimits', { testId, limits: [{ property: 'gloss', lower: 70, upper: null, source: 'common practice', ...limit }], rule: 'guarded', reason: 'as ordered' });
      await bench.do('test.finish', { testId, remark: '' });
      return testId;
    };
    const same = await finished({}, 'Q-1');
    const other = await finished({ source: 'Customer specification, revision B' }, 'Q-2');
    const stricter = await finished({ lower: 75, source: 'Customer specification, revision B' }, 'Q-3');
    const { approvalId, checklist } = await draft(made);
    const lineWith = async (testId: string) => (await bench.do('approvalLine.link', { approvalId, lineId: checklist[0]!.lineId, testId, reason: 'x' })).checklist[0]!.result!;
    expect((await lineWith(same)).doubts).toEqual([]);
    const result = await lineWith(other);
    expect(result.properties.map(({ limitText, verdict }) => [limitText, verdict.limit?.source])).toEqual([['≥ 70 GU', 'common practice']]);
    expect(result.doubts).toEqual(['The test says otherwise who sets the limit: Gloss ≥ 70 GU (Customer specification, revision B); here the plan’s word stands: common practice.']);
    const both = await lineWith(stricter);
    expect(both.properties.map(({ limitText, verdict }) => [limitText, verdict.limit?.source])).toEqual([['≥ 70 GU', 'common practice'], ['≥ 75 GU', 'Customer specification, revision B']]);
    expect(both.doubts).toEqual(['The test has another limit than the plan: Gloss ≥ 75 GU (Customer specification, revision B); the plan asks for Gloss ≥ 70 GU (common practice). Both count.']);
  }, 60_000);
});

describe('a press run', () => {
  it('is filled from the samples that stand for it, and from no other of the job', async () => {
    const made = await setting();
    const { bench, planId } = made;
    const other = await glossTest(bench, [90, 91, 92], { code: 'Q-2' });
    const own = await glossTest(bench, [80, 81, 82], { code: 'Q-1' });
    const { samples } = await bench.do('approval.job', { job: JOB });
    const idOf = (code: string) => samples.find((sample) => sample.code === code)!.sampleId;
    const input = { planId, product: '', job: JOB, customer: '', pressRun: 'run 1', lotIds: [], note: '' };
    expect(await bench.refused('approval.draft', { ...input, sampleIds: [] })).toMatchObject({ field: 'sampleIds', message: expect.stringContaining('Say which samples of the job stand for this press run') });
    const { sampleId: foreign } = await bench.do('sample.add', { code: 'Q-9', product: '', job: 'J-9', roll: '', note: '', lotIds: [] });
    expect(await bench.refused('approval.draft', { ...input, sampleIds: [idOf('Q-1'), foreign] })).toMatchObject({ field: 'sampleIds[1]' });
    const { approvalId, checklist, samples: standing, allSamples } = await bench.do('approval.draft', { ...input, sampleIds: [idOf('Q-1')] });
    expect([standing.map(({ code, roll }) => [code, roll]), allSamples]).toEqual([[['Q-1', 'R1']], false]);
    expect(checklist[0]!.offers.map(({ testId, sampleCode, roll }) => [testId, sampleCode, roll])).toEqual([[own, 'Q-1', 'R1']]);
    const { lineId } = checklist[0]!;
    expect(await bench.refused('approvalLine.link', { approvalId, lineId, testId: other })).toMatchObject({ field: 'testId', message: expect.stringContaining('does not stand for this press run') });
    expect((await bench.do('approval.linkOffered', { approvalId })).checklist[0]!.result!.testId).toBe(own);

    const change = { approvalId, product: 'dumpling pouch 600 g', customer: 'Marrowfield Foods', lotIds: [], sampleIds: [idOf('Q-2')], note: '' };
    expect(await bench.refused('approval.change', change)).toMatchObject({ field: 'reason' });
    expect(await bench.refused('approval.change', { ...change, sampleIds: null, reason: 'x' })).toMatchObject({ field: 'sampleIds' });
    const changed = await bench.do('approval.change', { ...change, reason: 'wrong roll' });
    expect(changed).toMatchObject({ product: 'dumpling pouch 600 g', standing: 'blocked', checklist: [{ state: 'reopened', remark: expect.stringContaining('Sample Q-1 does not stand for this press run any more'), offers: [{ testId: other }] }] });
    expect((await bench.do('record.list', { kind: 'approval.changed' })).entries[0]).toMatchObject({ correction: { before: 'product nothing; customer nothing; samples Q-1', after: 'product dumpling pouch 600 g; customer Marrowfield Foods; samples Q-2', reason: 'wrong roll' } });
    expect(await bench.do('undo.last', {})).toMatchObject({ done: true });
    expect(await bench.do('approval.get', { approvalId })).toMatchObject({ product: '', samples: [{ code: 'Q-1' }], checklist: [{ state: 'meets' }] });
    expect(await bench.do('record.verify', {})).toMatchObject({ intact: true, problems: [] });
  }, 60_000);

  it('calls a result old that was finished more than 30 days before the draft', async () => {
    const made = await setting();
    const { bench } = made;
    await glossTest(bench, [80, 81, 82]);
    bench.time += 30 * DAY;
    const inTime = await draft(made);
    expect((await bench.do('approval.linkOffered', { approvalId: inTime.approvalId })).checklist[0]!.result!.doubts).toEqual([]);
    bench.time += DAY;
    const late = await draft(made, { pressRun: 'run 2' });
    expect((await bench.do('approval.linkOffered', { approvalId: late.approvalId })).checklist[0]!.result!.doubts).toEqual([
      'Finished on 2026-03-02, more than 30 days before the approval was drafted (30 days: common practice).',
    ]);
  });

  it('is told of when a lot that it stands on, however far down, is retired after the signature; the page stays', async () => {
    const made = await setting();
    const { bench, abena } = made;
    const lot = async (name: string) => {
      const { materialId } = await bench.do('material.add', { kind: 'ink', name, supplier: '', description: '' });
      return (await bench.do('lot.add', { materialId, code: 'T-1', receivedOn: null, note: '' })).lotId;
    };
    const [red, laminate, film] = [await lot('Red'), await lot('Laminate'), await lot('Film')];
    await bench.do('lot.makeFrom', { lotId: laminate, lotIds: [red], reason: '' });
    await bench.do('sample.add', { code: 'Q-1', product: 'dumpling pouch 600 g', job: JOB, roll: 'R1', note: '', lotIds: [laminate] });
    const testId = await glossTest(bench, [80, 81, 82]);
    const { reportId } = await bench.do('report.issue', { title: 'T', recipient: '', remark: '', testIds: [testId], replaces: null });
    const { approvalId } = await draft(made, { lotIds: [film] });
    const { digest } = await bench.do('approval.linkOffered', { approvalId });
    await bench.do('lot.retire', { lotId: film, reason: 'before the signature' });
    await bench.do('approval.sign', { approvalId, digest, personId: abena, passphrase: PASS });
    const onToday = async () => (await bench.do('today.get', {})).due.filter((due) => due.approvalId === approvalId).map(({ what, why }) => `${what}. ${why}`);
    expect(await onToday()).toEqual([]);
    expect((await bench.do('approvals.list', {}))[0]).toMatchObject({ standing: 'signed' });

    bench.time += DAY;
    await bench.do('lot.retire', { lotId: red, reason: 'it bleeds' });
    const view = await bench.do('approval.get', { approvalId });
    expect(view).toMatchObject({ standing: 'signed, lot retired later', retiredLater: ['Red, lot T-1 was retired on 2026-03-03 (it bleeds), after it was signed.'], checklist: [{ state: 'meets', result: { doubts: [] } }] });
    expect((await bench.do('approvals.list', {}))[0]).toMatchObject({ standing: 'signed, lot retired later' });
    expect(await onToday()).toEqual(['Withdraw or replace the press approval: job J-100, dumpling pouch 600 g, run 1. Stands on a lot that was retired later: Red, lot T-1 was retired on 2026-03-03 (it bleeds), after it was signed.']);
    expect((await bench.do('reports.list', {})).find((report) => report.reportId === reportId)!.retiredLots).toEqual(['Red, lot T-1 was retired on 2026-03-03 (it bleeds), after it was issued.']);
    expect((await bench.do('lot.recall', { lotId: red })).approvals).toMatchObject([{ approvalId, pressRun: 'run 1', state: 'signed' }]);
    await bench.do('lot.return', { lotId: red, reason: 'another lot was meant' });
    expect(await onToday()).toEqual([]);
  }, 60_000);
});
