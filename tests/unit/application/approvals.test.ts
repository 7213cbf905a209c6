import { describe, expect, it } from 'vitest';
import type { Approval } from '../../../shared-lib/notebook/approval-views.ts';
import type { PlanContent } from '../../../shared-lib/plan/plan.ts';
import { draft, glossPlan, glossTest, JOB, PASS, setting } from './approval-setting.ts';

const states = ({ checklist }: Approval) => checklist.map(({ state }) => state);

describe('a press approval', () => {
  it('is drawn from the plan, filled from the job, signed, and frozen', async () => {
    const made = await setting();
    const { bench, abena, imke } = made;
    const testId = await glossTest(bench, [80, 81, 82]);
    const other = await bench.do('sample.add', { code: 'Q-9', product: '', job: 'J-200', roll: '', note: '', lotIds: [] });
    expect(await bench.do('approval.job', { job: 'j-100' })).toMatchObject({ product: 'dumpling pouch 600 g', customer: 'Marrowfield Foods', planId: made.planId, samples: [{ code: 'Q-1' }] });

    const drafted = await draft(made);
    expect(drafted).toMatchObject({ standing: 'blocked', blocking: '1 is open', checklist: [{ title: 'Specular gloss', momentText: 'on press', offers: [{ testId, roll: 'R1', verdict: 'meets' }] }] });
    const { approvalId, checklist } = drafted;
    const { lineId } = checklist[0]!;

    const { test: foreign } = await bench.do('test.start', { sampleId: other.sampleId, methodId: 'gloss' });
    expect(await bench.refused('approvalLine.link', { approvalId, lineId, testId: foreign.testId })).toMatchObject({ field: 'testId', message: 'Only a finished test fills a line; finish it first.' });
    expect(await bench.refused('approval.sign', { approvalId, digest: drafted.digest, personId: abena, passphrase: PASS })).toMatchObject({ message: expect.stringContaining('1 is open') });

    // The test had no limit of its own; the plan's decides.
    const linked = await bench.do('approvalLine.link', { approvalId, lineId, testId });
    // The entry holds the id of the test alone.
    expect((await bench.do('record.list', { search: 'Q-1', kind: 'approvalLine.linked' })).total).toBe(1);
    expect((await bench.do('record.list', { search: 'Q-9', kind: 'approvalLine.linked' })).total).toBe(0);
    expect(linked.checklist[0]).toMatchObject({ state: 'meets', result: { sampleCode: 'Q-1', properties: [{ n: 3, limitText: expect.stringContaining('≥ 70'), verdict: { verdict: 'meets' } }] } });

    const withLine = await bench.do('approvalLine.add', { approvalId, title: 'Barcode reads' });
    const own = withLine.checklist[1]!;
    expect(own).toMatchObject({ added: true, state: 'open' });
    expect(await bench.refused('approvalLine.observe', { approvalId, lineId: own.lineId, inOrder: false, remark: ' ', personId: imke, passphrase: PASS })).toMatchObject({ field: 'remark' });
    expect(await bench.refused('approvalLine.observe', { approvalId, lineId: own.lineId, inOrder: true, remark: '', personId: imke, passphrase: 'guessed' })).toMatchObject({ field: 'passphrase', value: null });
    const seen = await bench.do('approvalLine.observe', { approvalId, lineId: own.lineId, inOrder: true, remark: 'ten of ten', personId: imke, passphrase: PASS });
    expect(seen).toMatchObject({ standing: 'ready to sign', summary: '2 lines: 1 meets its limits, 1 was seen to be in order' });
    expect((await bench.do('today.get', {})).due).toContainEqual(expect.objectContaining({ what: 'Sign the press approval: job J-100, dumpling pouch 600 g, run 1', approvalId }));

    expect(await bench.refused('approval.sign', { approvalId, digest: linked.digest, personId: abena, passphrase: PASS })).toMatchObject({ message: expect.stringContaining('changed since') });
    const before = (await bench.do('session.get', {})).notebook!;
    const signed = await bench.do('approval.sign', { approvalId, digest: seen.digest, personId: abena, passphrase: PASS });
    expect(signed).toMatchObject({
      standing: 'signed',
      signed: { name: 'Abena Quist', role: 'quality lead', meaning: 'approves the press run of job J-100 (dumpling pouch 600 g, run 1): 2 lines: 1 meets its limits, 1 was seen to be in order' },
    });
    expect(bench.renderedApprovals).toMatchObject([{ laboratory: 'Quillmere Flexibles', record: { entries: before.entries, chainHash: before.chainHash } }]);
    const { fileName, bytes } = await bench.do('approval.pdf', { approvalId });
    expect(fileName).toBe('press-approval-j-100-run-1.pdf');
    expect(Buffer.from(bytes, 'base64').toString()).toContain(`%PDF of ${approvalId}`);
    expect((await bench.do('today.get', {})).due.filter((due) => due.approvalId)).toEqual([]);
    for (const [name, input] of [
      ['approvalLine.add', { approvalId, title: 'Register' }],
      ['approvalLine.link', { approvalId, lineId, testId, reason: 'x' }],
    ] as const) {
      expect(await bench.refused(name, input)).toMatchObject({ message: expect.stringContaining('signed by Abena Quist') });
    }
    expect(await bench.do('undo.last', {})).toMatchObject({ done: false, text: expect.stringContaining('withdraw it') });
    // What she was when she signed stands there, whatever she is later.
    await bench.do('person.change', { personId: abena, name: 'Abena Holt', role: 'plant manager', reason: 'new post' });
    expect(await bench.do('approval.get', { approvalId })).toMatchObject({ signed: { name: 'Abena Quist', role: 'quality lead' } });
    expect(await bench.do('record.verify', {})).toMatchObject({ intact: true, problems: [] });
  }, 60_000);

  it('says when a result was corrected after the signature, keeps what was signed, and is withdrawn or replaced', async () => {
    const made = await setting();
    const { bench, abena } = made;
    const testId = await glossTest(bench, [80, 81, 82]);
    const { approvalId } = await draft(made);
    const ready = await bench.do('approval.linkOffered', { approvalId });
    expect(states(ready)).toEqual(['meets']);
    await bench.do('approval.sign', { approvalId, digest: ready.digest, personId: abena, passphrase: PASS });

    await bench.do('reading.enter', { testId, row: 'r1', key: 'gloss', typed: '50', reason: 'misread' });
    const corrected = await bench.do('approval.get', { approvalId });
    expect(corrected).toMatchObject({ standing: 'signed, corrected later', correctedLater: ['Gloss on Q-1 was corrected after it was approved, and not finished again yet.'] });
    expect(states(corrected)).toEqual(['meets']);
    await bench.do('test.finish', { testId, remark: '' });
    expect((await bench.do('approvals.list', {}))[0]).toMatchObject({ standing: 'signed, corrected later', lines: 1 });
    const onToday = async () => (await bench.do('today.get', {})).due.filter((due) => due.approvalId === approvalId).map(({ what, why }) => `${what}. ${why}`);
    expect(await onToday()).toEqual([
      'Withdraw or replace the press approval: job J-100, dumpling pouch 600 g, run 1. Stands on a result that was corrected later: Gloss on Q-1 was corrected after it was approved, and finished anew.',
    ]);

    expect(await bench.refused('approval.draft', { planId: made.planId, product: '', job: JOB, customer: '', pressRun: 'RUN 1', lotIds: [], sampleIds: [], note: '' })).toMatchObject({ field: 'replacesReason' });
    const second = await draft(made, { replacesReason: 'gloss was misread' });
    expect(await bench.refused('approval.draft', { planId: made.planId, product: '', job: JOB, customer: '', pressRun: 'run 1', lotIds: [], sampleIds: [], note: '' })).toMatchObject({ field: 'pressRun' });
    const again = await bench.do('approvalLine.link', { approvalId: second.approvalId, lineId: second.checklist[0]!.lineId, testId });
    expect(states(again)).toEqual(['undecided']);
    const waived = await bench.do('approvalLines.waive', { approvalId: second.approvalId, lineIds: [second.checklist[0]!.lineId], reason: 'the customer has seen it', personId: abena, passphrase: PASS });
    await bench.do('approval.sign', { approvalId: second.approvalId, digest: waived.digest, personId: abena, passphrase: PASS });
    expect((await bench.do('approvals.list', {})).map(({ standing }) => standing)).toEqual(['signed', 'replaced']);
    expect(await onToday()).toEqual([]);
    expect(await bench.refused('approval.withdraw', { approvalId, reason: 'x', personId: abena, passphrase: PASS })).toMatchObject({ code: 'conflict' });
    expect(await bench.refused('approval.withdraw', { approvalId: second.approvalId, reason: ' ', personId: abena, passphrase: PASS })).toMatchObject({ field: 'reason' });
    expect(await bench.do('approval.withdraw', { approvalId: second.approvalId, reason: 'complaint', personId: abena, passphrase: PASS })).toMatchObject({
      standing: 'withdrawn',
      withdrawn: { name: 'Abena Quist', reason: 'complaint' },
    });
    expect(await bench.do('record.verify', {})).toMatchObject({ intact: true, problems: [] });
  }, 60_000);

  it('is not signed past a line that falls short unless a named person waives it, and the waiver lapses with the result', async () => {
    const made = await setting();
    const { bench, abena, imke } = made;
    const testId = await glossTest(bench, [40, 41, 42]);
    const { approvalId, checklist } = await draft(made);
    const { lineId } = checklist[0]!;
    const linked = await bench.do('approvalLine.link', { approvalId, lineId, testId });
    expect(states(linked)).toEqual(['falls short']);
    expect(await bench.refused('approvalLines.waive', { approvalId, lineIds: [lineId], reason: '', personId: abena, passphrase: PASS })).toMatchObject({ field: 'reason' });
    const waived = await bench.do('approvalLines.waive', { approvalId, lineIds: [lineId], reason: 'matt lacquer was ordered', personId: abena, passphrase: PASS });
    expect(waived).toMatchObject({ standing: 'ready to sign', checklist: [{ state: 'waived', waiver: { name: 'Abena Quist', role: 'quality lead', reason: 'matt lacquer was ordered', holds: true } }] });
    expect(await bench.refused('approvalLines.waive', { approvalId, lineIds: [lineId], reason: 'again', personId: imke, passphrase: PASS })).toMatchObject({ message: expect.stringContaining('nothing to waive') });

    await bench.do('reading.enter', { testId, row: 'r1', key: 'gloss', typed: '44', reason: 'misread' });
    expect(await bench.do('approval.get', { approvalId })).toMatchObject({ standing: 'blocked', checklist: [{ state: 'reopened', waiver: { holds: false }, remark: expect.stringContaining('finish the test again') }] });
    await bench.do('test.finish', { testId, remark: '' });
    const reopened = await bench.do('approval.get', { approvalId });
    expect(reopened.checklist).toMatchObject([{ state: 'reopened', remark: expect.stringContaining('finished anew'), offers: [{ testId }] }]);
    expect(states(await bench.do('approvalLine.link', { approvalId, lineId, testId }))).toEqual(['falls short']);

    const better = await glossTest(bench, [90, 91, 92]);
    expect(await bench.refused('approvalLine.link', { approvalId, lineId, testId: better })).toMatchObject({ field: 'reason' });
    expect(states(await bench.do('approvalLine.link', { approvalId, lineId, testId: better, reason: 'after the second lacquer' }))).toEqual(['meets']);
  }, 60_000);

  it('keeps the version of its plan, and tells that there is a newer one', async () => {
    const made = await setting();
    const { bench, planId } = made;
    const { approvalId } = await draft(made);
    const stricter = { ...glossPlan, lines: [{ ...glossPlan.lines[0]!, limits: [{ ...glossPlan.lines[0]!.limits[0]!, lower: 90 }] }] };
    await bench.do('plan.change', { planId, content: stricter, reason: 'customer asked' });
    expect(await bench.do('approval.get', { approvalId })).toMatchObject({ version: '1', newestVersion: '2', checklist: [{ limitTexts: [expect.stringContaining('70')] }] });
    await bench.do('plan.retire', { planId, reason: 'ended' });
    expect(await bench.refused('approval.draft', { planId, product: '', job: 'J-9', customer: '', pressRun: '', lotIds: [], sampleIds: [], note: '' })).toMatchObject({ field: 'planId' });
  });

  it('is signed by nobody who is retired, and by nobody unseen', async () => {
    const made = await setting();
    const { bench, abena } = made;
    await glossTest(bench, [80, 81, 82]);
    const { approvalId } = await draft(made);
    const { digest } = await bench.do('approval.linkOffered', { approvalId });
    await bench.do('person.retire', { personId: abena, reason: 'left the lab' });
    expect(await bench.refused('approval.sign', { approvalId, digest, personId: abena, passphrase: PASS })).toMatchObject({ message: expect.stringContaining('retired') });
    expect(await bench.refused('approval.draft', { planId: made.planId, product: '', job: ' ', customer: '', pressRun: '', lotIds: [], sampleIds: [], note: '' })).toMatchObject({ field: 'job' });
    expect(await bench.refused('approval.linkOffered', { approvalId })).toMatchObject({ code: 'conflict' });
    expect(await bench.refused('approvalLine.add', { approvalId, title: ' ' })).toMatchObject({ field: 'title' });
  });

  it('tells what makes a result doubtful, and is not signed by who has read it without', async () => {
    const made = await setting();
    const { bench, abena } = made;
    const testId = await glossTest(bench, [80, 81, 82]);
    const drafted = await draft(made);
    const { approvalId, digest } = await bench.do('approvalLine.link', { approvalId: drafted.approvalId, lineId: drafted.checklist[0]!.lineId, testId });
    const { materialId } = await bench.do('material.add', { kind: 'ink', name: 'Low-migration red', supplier: '', description: '' });
    const { lotId } = await bench.do('lot.add', { materialId, code: 'T-88', receivedOn: null, note: '' });
    const { samples } = await bench.do('samples.list', {});
    await bench.do('sample.change', { sampleId: samples[0]!.sampleId, code: 'Q-1', product: 'dumpling pouch 600 g', job: JOB, roll: 'R1', note: '', lotIds: [lotId], reason: 'put down late' });
    await bench.do('lot.retire', { lotId, reason: 'it bleeds' });
    const { checklist } = await bench.do('approval.get', { approvalId });
    expect(checklist[0]).toMatchObject({ state: 'meets', result: { doubts: [expect.stringMatching(/^The sample is made of Low-migration red, lot T-88, which was retired on .* \(it bleeds\)\.$/)] } });
    await bench.refused('approval.sign', { approvalId, digest, personId: abena, passphrase: PASS });
  });

  it('tells that a result was read out of calibration, also where the calibration was voided later', async () => {
    const made = await setting();
    const { bench, abena } = made;
    const { instrumentId } = await bench.do('instrument.add', { name: 'Gloss meter', serial: 'G-1', methodIds: ['gloss'], note: '' });
    const { calibrations } = await bench.do('instrument.calibrate', { instrumentId, calibratedOn: '2026-03-01', dueOn: '2027-02-28', remark: '' });
    const testId = await glossTest(bench, [80, 81, 82], { instrument: 'Gloss meter, G-1' });
    const drafted = await draft(made);
    const { approvalId, digest, checklist } = await bench.do('approvalLine.link', { approvalId: drafted.approvalId, lineId: drafted.checklist[0]!.lineId, testId });
    expect(checklist[0]!.result!.doubts).toEqual([]);
    await bench.do('calibration.void', { calibrationId: calibrations[0]!.calibrationId, reason: 'of another meter' });
    expect((await bench.do('approval.get', { approvalId })).checklist[0]).toMatchObject({ state: 'meets', result: { doubts: ['Read with Gloss meter, G-1 on 2026-03-02, which has no calibration on record.'] } });
    await bench.refused('approval.sign', { approvalId, digest, personId: abena, passphrase: PASS });
  });

  it('has several lines waived at once, each with a signature of its own, or none of them', async () => {
    const made = await setting();
    const { bench, abena } = made;
    const gloss = glossPlan.lines[0]!;
    const lines = ['', 'after 24 h at −18 °C'].map((preparation, index) => ({ ...gloss, lineId: `gloss ${index}`, preparation }));
    const { planId } = await bench.do('plan.add', { content: { ...glossPlan, title: 'Gloss twice', lines } });
    const { approvalId, standingText } = await draft(made, { planId });
    expect(standingText).toBe('Of its lines, 2 are open: Specular gloss, on press; Specular gloss, on press, after 24 h at −18 °C.');
    await bench.do('approvalLine.add', { approvalId, title: 'Barcode reads' });
    const { checklist } = await bench.do('approval.get', { approvalId });
    const lineIds = checklist.map(({ lineId }) => lineId);
    const signed = { approvalId, reason: 'the run is a trial', personId: abena, passphrase: PASS };
    expect(await bench.refused('approvalLines.waive', { ...signed, lineIds: [...lineIds, 'nowhere'] })).toMatchObject({ code: 'not-found' });
    expect(states(await bench.do('approval.get', { approvalId }))).toEqual(['open', 'open', 'open']);
    expect(states(await bench.do('approvalLines.waive', { ...signed, lineIds }))).toEqual(['waived', 'waived', 'waived']);
    const { entries } = await bench.do('record.list', { kind: 'approvalLine.waived' });
    expect(entries.map(({ text }) => /“(.*?)”/.exec(text)![1])).toEqual(['Barcode reads', 'Specular gloss, on press, after 24 h at −18 °C', 'Specular gloss, on press']);
    expect(await bench.refused('approvalLines.waive', { ...signed, lineIds: [lineIds[1]!] })).toMatchObject({ message: expect.stringContaining('‘Specular gloss, on press, after 24 h at −18 °C’ blocks nothing') });
  });

  it('drops only lines that were added, with a reason', async () => {
    const made = await setting();
    const { bench } = made;
    const { approvalId, checklist } = await draft(made);
    expect(await bench.refused('approvalLine.drop', { approvalId, lineId: checklist[0]!.lineId, reason: 'x' })).toMatchObject({ code: 'conflict' });
    const added = await bench.do('approvalLine.add', { approvalId, title: 'Barcode reads' });
    expect(await bench.refused('approvalLine.add', { approvalId, title: 'barcode reads' })).toMatchObject({ field: 'title' });
    expect(await bench.refused('approvalLine.drop', { approvalId, lineId: added.checklist[1]!.lineId, reason: '' })).toMatchObject({ field: 'reason' });
    expect((await bench.do('approvalLine.drop', { approvalId, lineId: added.checklist[1]!.lineId, reason: 'no barcode' })).checklist).toHaveLength(1);
  });
});

describe('the last approved lot', () => {
  const bands = Array.from({ length: 31 }, (_, index) => 400 + 10 * index);
  const red = (edge: number) => `400-700: ${bands.map((nm) => (4 + 60 / (1 + Math.exp(-(nm - edge) / 14))).toFixed(2)).join(' ')}`;
  const colourPlan: PlanContent = { ...glossPlan, title: 'Colour', lines: [{ ...glossPlan.lines[0]!, lineId: 'colour printing+0', methodId: 'colour-measured', replicates: 1, limits: [] }] };

  it('is that of the signed press approval, before any that merely meets its limits, for as long as it stands', async () => {
    const { bench, abena } = await setting();
    await bench.do('reference.add', { name: 'Pouch red', illuminant: 'D50', observer: 2, condition: 'M1', geometry: null, note: '', spectrum: red(585), lab: null });
    const measure = async (code: string, edge: number) => {
      const { test } = await bench.startTest('colour-measured', code);
      const { testId } = test;
      await bench.do('condition.enter', { testId, key: 'reference', typed: 'Pouch red' });
      await bench.do('reading.enter', { testId, row: 'r1', key: 'spectrum', typed: red(edge) });
      await bench.do('test.setLimits', { testId, limits: [{ property: 'deltaE00', lower: null, upper: 2, source: '' }], rule: 'simple', reason: 'One reading' });
      return bench.do('test.finish', { testId, remark: '' });
    };
    const approvedLot = (sheet: Awaited<ReturnType<typeof measure>>) =>
      sheet.live!.result.tables!.find(({ title }) => title === 'This print against')!.rows.map(({ against }) => String(against)).find((against) => against.startsWith('last approved lot'));
    const { testId } = (await measure('Q-signed', 586)).test;
    await measure('Q-newer', 585.5);
    expect(approvedLot(await measure('Q-before', 585.2))).toContain('Q-newer');

    const { planId } = await bench.do('plan.add', { content: colourPlan });
    const sampleIds = (await bench.do('approval.job', { job: JOB })).samples.map(({ sampleId }) => sampleId);
    const { approvalId, checklist } = await bench.do('approval.draft', { planId, product: '', job: JOB, customer: '', pressRun: '', lotIds: [], sampleIds, note: '' });
    const { digest, standing } = await bench.do('approvalLine.link', { approvalId, lineId: checklist[0]!.lineId, testId });
    expect(standing).toBe('ready to sign');
    await bench.do('approval.sign', { approvalId, digest, personId: abena, passphrase: PASS });
    const meanwhile = await measure('Q-while', 585.3);
    expect(approvedLot(meanwhile)).toContain('Q-signed');
    await bench.do('approval.withdraw', { approvalId, reason: 'complaint', personId: abena, passphrase: PASS });
    expect(approvedLot(await measure('Q-after', 585.4))).toContain('Q-while');
    // What was finished while it stood keeps what it was seen beside.
    expect(approvedLot(await bench.do('test.get', { testId: meanwhile.test.testId }))).toContain('Q-signed');
    expect(await bench.do('record.verify', {})).toMatchObject({ intact: true, problems: [] });
  }, 60_000);
});
