import { describe, expect, it } from 'vitest';
import { testBench } from './open-application.ts';

async function benchWithRoll() {
  const bench = await testBench();
  const add = async (kind: 'film' | 'ink' | 'adhesive' | 'laminate', name: string, code: string, structure = '') => {
    const { materialId } = await bench.do('material.add', { kind, name, supplier: 'Osprey Vale', description: '', structure });
    return (await bench.do('lot.add', { materialId, code, receivedOn: null, note: '' })).lotId;
  };
  const pet = await add('film', 'PET 12 µm', 'OV-1');
  const ink = await add('ink', 'Series R0', 'TM-1');
  const glue = await add('adhesive', 'Adhesive 77', 'CO-1');
  const roll = await add('laminate', 'Pouch laminate', 'L-1', 'PET 12 / ink / adhesive / PE 60');
  await bench.do('lot.makeFrom', { lotId: roll, lotIds: [pet, ink, glue] });
  const sample = (code: string, lotIds: string[]) => bench.do('sample.add', { code, product: 'pouch', job: 'J-1', roll: '', note: '', lotIds });
  return { bench, add, pet, ink, glue, roll, sample };
}

describe('a material', () => {
  it('takes its structure as layers, and says it anew with the reason', async () => {
    const { bench } = await benchWithRoll();
    const laminate = (await bench.do('materials.list', {})).find(({ kind }) => kind === 'laminate')!;
    expect(laminate.layers.map(({ kind }) => kind)).toEqual(['film', 'ink', 'adhesive', 'film']);
    const same = { materialId: laminate.materialId, name: laminate.name, supplier: laminate.supplier, description: '', structure: 'PET 12 / ink / adhesive / PE 80' };
    expect(await bench.refused('material.describe', same)).toMatchObject({ code: 'input', field: 'reason' });
    const since = await bench.do('material.describe', { ...same, reason: 'heavier sealing web' });
    expect(since.layers.at(-1)).toMatchObject({ name: 'PE', thicknessUm: 80 });
    // What was not said yet is only added.
    await bench.do('material.describe', { ...same, description: 'for the freezer' });
    expect(await bench.refused('material.describe', { ...same, description: 'for the freezer' })).toMatchObject({ message: 'Nothing was changed.' });
    const { entries } = await bench.do('record.list', { kind: 'material.described' });
    expect(entries.map(({ correction }) => correction)).toEqual([
      null,
      { before: 'structure PET 12 µm / ink / adhesive / PE 60 µm', after: 'structure PET 12 µm / ink / adhesive / PE 80 µm', reason: 'heavier sealing web' },
    ]);
    expect(await bench.refused('material.describe', { ...same, structure: 'PET 12 //' })).toMatchObject({ field: 'structure' });
  });
});

describe('a lot', () => {
  it('says what it was made from and what it went into', async () => {
    const { bench, pet, roll } = await benchWithRoll();
    const page = await bench.do('lot.get', { lotId: roll });
    expect(page.madeFrom.map(({ name, depth }) => [name, depth])).toEqual([['PET 12 µm, lot OV-1', 0], ['Series R0, lot TM-1', 0], ['Adhesive 77, lot CO-1', 0]]);
    expect((await bench.do('lot.get', { lotId: pet })).wentInto.map(({ name }) => name)).toEqual(['Pouch laminate, lot L-1']);
  });

  it('cannot be made from itself, and the loop is named', async () => {
    const { bench, pet, roll, add } = await benchWithRoll();
    const brick = await add('laminate', 'Brick laminate', 'L-2');
    await bench.do('lot.makeFrom', { lotId: brick, lotIds: [roll] });
    expect(await bench.refused('lot.makeFrom', { lotId: pet, lotIds: [brick] })).toMatchObject({
      code: 'input',
      field: 'lotIds',
      message: 'A lot cannot be made from itself: PET 12 µm, lot OV-1 would be made from Brick laminate, lot L-2, which is made from Pouch laminate, lot L-1, which is made from PET 12 µm, lot OV-1.',
    });
    expect((await bench.refused('lot.makeFrom', { lotId: pet, lotIds: [pet] })).message).toMatch(/PET 12 µm, lot OV-1 would be made from PET 12 µm, lot OV-1/);
  });

  it('gives up a part only for a reason', async () => {
    const { bench, pet, ink, roll } = await benchWithRoll();
    expect(await bench.refused('lot.makeFrom', { lotId: roll, lotIds: [pet, ink] })).toMatchObject({ field: 'reason' });
    expect((await bench.do('lot.makeFrom', { lotId: roll, lotIds: [pet, ink], reason: 'another adhesive' })).madeFrom).toHaveLength(2);
  });

  it('is retired and not deleted; what is made of it is flagged, also through other lots', async () => {
    const { bench, pet, roll, sample } = await benchWithRoll();
    const { sampleId } = await sample('Q-1', [roll]);
    const { test } = await bench.do('test.start', { sampleId, methodId: 'test-fluids' });
    for (const row of ['r1', 'r2', 'r3']) await bench.do('reading.enter', { testId: test.testId, row, key: 'wetsMNm', typed: '38' });
    const flags = async () => (await bench.do('test.get', { testId: test.testId })).live!.result.flags.filter(({ code }) => code === 'doubtful-lot').map(({ text }) => text);
    expect(await flags()).toEqual([]);
    expect(await bench.refused('lot.retire', { lotId: pet, reason: ' ' })).toMatchObject({ field: 'reason' });
    await bench.do('lot.retire', { lotId: pet, reason: 'Ink beads on it' });
    expect(await flags()).toEqual(['The sample is made of PET 12 µm, lot OV-1, which was retired on 2026-03-02 (Ink beads on it).']);
    const view = await bench.do('sample.get', { sampleId });
    expect(view.lots.map(({ doubt }) => doubt)).toEqual([undefined]);
    expect(view.madeFrom.map(({ name, depth, doubt }) => [name, depth, doubt !== ''])).toEqual([['Pouch laminate, lot L-1', 0, false], ['PET 12 µm, lot OV-1', 1, true], ['Series R0, lot TM-1', 1, false], ['Adhesive 77, lot CO-1', 1, false]]);
    expect((await bench.do('undo.last', {})).text).toMatch(/Retired PET 12 µm, lot OV-1/);
    expect(await flags()).toEqual([]);
  });

  it('that had expired when the sample was made is flagged, and comes up before', async () => {
    const { bench, pet, sample } = await benchWithRoll();
    const lot = await bench.do('lot.get', { lotId: pet });
    await bench.do('lot.describe', { lotId: pet, code: lot.code, receivedOn: null, note: '', expiresOn: '2026-03-01', treatedOn: '2026-01-05', treatedSide: 'outside', thickness: '12,1' });
    expect(await bench.do('lot.get', { lotId: pet })).toMatchObject({ thicknessUm: 12.1, treatedSide: 'outside', doubt: 'expired on 2026-03-01' });
    const { sampleId } = await sample('Q-1', [pet]);
    expect((await bench.do('sample.get', { sampleId })).lots[0]!.doubt).toBe('expired on 2026-03-01');
    expect((await bench.do('today.get', {})).due).toContainEqual(expect.objectContaining({ what: 'Use up or retire PET 12 µm, lot OV-1', dueOn: '2026-03-01', overdue: true, lotId: pet }));
  });

  it.each([
    [{ thickness: '0' }, 'thickness', /above 0 and at most 5000 µm/],
    [{ thickness: 'thin' }, 'thickness', /takes a number in µm/],
    [{ treatedOn: '2026-03-03' }, 'treatedOn', /is still to come/],
  ])('is refused with %o', async (more, field, says) => {
    const { bench, pet } = await benchWithRoll();
    expect(await bench.refused('lot.describe', { lotId: pet, code: 'OV-1', receivedOn: null, note: '', ...more })).toMatchObject({ code: 'input', field, message: expect.stringMatching(says) });
  });

  it('of an ink is not treated', async () => {
    const { bench, ink } = await benchWithRoll();
    expect((await bench.refused('lot.describe', { lotId: ink, code: 'TM-1', receivedOn: null, note: '', treatedSide: 'inside' })).field).toBe('treatedSide');
  });
});

describe('a recall', () => {
  it('names every lot, sample, test, report and approval that stands on a lot', async () => {
    const { bench, pet, glue, roll, sample } = await benchWithRoll();
    const { sampleId } = await sample('Q-1', [roll]);
    await sample('Q-2', [glue]);
    const { test } = await bench.do('test.start', { sampleId, methodId: 'test-fluids' });
    for (const row of ['r1', 'r2', 'r3']) await bench.do('reading.enter', { testId: test.testId, row, key: 'wetsMNm', typed: '38' });
    await bench.do('test.finish', { testId: test.testId, remark: '' });
    const content = await bench.do('report.preview', { title: 'Treatment', recipient: '', remark: '', testIds: [test.testId], replaces: null });
    expect(content.genealogy).toEqual([{ sample: 'Q-1', lots: expect.arrayContaining([expect.objectContaining({ name: 'PET 12 µm, lot OV-1', depth: 1, doubt: '' })]) }]);
    const { number } = await bench.do('report.issue', { title: 'Treatment', recipient: 'Tamarind', remark: '', testIds: [test.testId], replaces: null });
    const recall = await bench.do('lot.recall', { lotId: pet });
    expect(recall).toMatchObject({
      lot: 'PET 12 µm, lot OV-1',
      lots: [{ name: 'Pouch laminate, lot L-1' }],
      samples: [{ code: 'Q-1', through: 'Pouch laminate, lot L-1', disposedOf: false }],
      tests: [{ sampleCode: 'Q-1', state: 'finished' }],
      reports: [{ number, recipient: 'Tamarind', replaced: false }],
      approvals: [],
    });
    expect((await bench.do('lot.recall', { lotId: glue })).samples.map(({ code }) => code)).toEqual(['Q-1', 'Q-2']);
  });

  it('names the formulation trials that took it as a component, or print on what was made from it', async () => {
    const { bench, pet, glue, roll, sample } = await benchWithRoll();
    const { sampleId } = await sample('Q-1', [roll]);
    const { trialSetId } = await bench.do('trialSet.add', { title: 'Low-migration series', question: '', product: '' });
    const component = { name: 'Adhesive', materialId: null, lotId: null, parts: 10, solidsPct: null, costPerKg: null };
    const { materialId } = await bench.do('lot.get', { lotId: glue });
    const fields = { trialSetId, control: false, factors: {}, note: '' };
    await bench.do('trial.add', { ...fields, name: 'R0', components: [component] });
    await bench.do('trial.add', { ...fields, name: 'R1', components: [component, { ...component, materialId, lotId: glue }] });
    await bench.do('trial.add', { ...fields, name: 'R2', components: [{ ...component, materialId, lotId: glue }] });
    const { trials } = await bench.do('trial.add', { ...fields, name: 'R3', components: [] });
    const idOf = (wanted: string) => trials.find(({ name }) => name === wanted)!.trialId;
    await bench.do('trial.linkSample', { trialId: idOf('R2'), sampleId });
    const { sampleId: other } = await sample('Q-2', [roll]);
    await bench.do('trial.linkSample', { trialId: idOf('R3'), sampleId: other });
    const on = async (lotId: string) => (await bench.do('lot.recall', { lotId })).trials.map(({ name, set, by }) => [name, set, by]);
    expect(await on(pet)).toEqual([['R2', 'Low-migration series', 'sample'], ['R3', 'Low-migration series', 'sample']]);
    expect(await on(glue)).toEqual([['R1', 'Low-migration series', 'formulation'], ['R2', 'Low-migration series', 'formulation and sample'], ['R3', 'Low-migration series', 'sample']]);
    const { bytes } = await bench.do('lot.recallCsv', { lotId: glue });
    expect(Buffer.from(bytes, 'base64').toString('utf8')).toContain('trial,R2,Low-migration series,by its formulation and sample,');
    await bench.do('trial.unlinkSample', { trialId: idOf('R3'), sampleId: other, reason: 'printed with R2' });
    expect(await on(pet)).toHaveLength(1);
  });

  it('goes into a spreadsheet in which no name is worked out as a formula', async () => {
    const { bench, roll, sample } = await benchWithRoll();
    await sample('=HYPERLINK("x")', [roll]);
    await sample('@Q, 2', [roll]);
    const { fileName, bytes } = await bench.do('lot.recallCsv', { lotId: roll });
    const text = Buffer.from(bytes, 'base64').toString('utf8');
    expect(fileName).toBe('recall-Pouch-laminate-lot-L-1.csv');
    expect(text.split('\r\n')).toEqual([
      '\ufeffwhat,name,belongs to,state,day',
      'lot asked about,"Pouch laminate, lot L-1",,,2026-03-02',
      'sample,"\'=HYPERLINK(""x"")","pouch; J-1; Pouch laminate, lot L-1",kept,',
      'sample,"\'@Q, 2","pouch; J-1; Pouch laminate, lot L-1",kept,',
      '',
    ]);
  });
});

describe('what was added and undone', () => {
  const lot = { receivedOn: null, note: '', expiresOn: null, treatedOn: null, treatedSide: null, thickness: '' };
  const intact = async (bench: Awaited<ReturnType<typeof testBench>>) => expect(await bench.do('record.verify', {})).toMatchObject({ intact: true });

  it('is a lot that is listed no more; adding its code again puts it back into use as it is typed now, and that is undone as one', async () => {
    const bench = await testBench();
    const { materialId } = await bench.do('material.add', { kind: 'film', name: 'PET 12 µm', supplier: '', description: '' });
    const { lotId } = await bench.do('lot.add', { materialId, ...lot, code: 'F-101', note: 'mistyped' });
    const listed = async () => (await bench.do('materials.list', {}))[0]!.lots.map(({ code, note, doubt }) => ({ code, note, doubt }));
    await bench.do('undo.last', {});
    expect(await listed()).toEqual([]);
    expect(await bench.do('lot.get', { lotId })).toMatchObject({ doubt: 'was undone on 2026-03-02' });
    const right = { code: 'F-101', note: 'from the press', doubt: '' };
    expect(await bench.do('lot.add', { materialId, ...lot, code: 'F-101', note: right.note })).toMatchObject({ lotId, code: 'F-101', note: right.note });
    expect(await listed()).toEqual([right]);
    expect(await bench.refused('lot.add', { materialId, ...lot, code: 'F-101' })).toMatchObject({ message: 'PET 12 µm already has a lot F-101.' });
    await bench.do('undo.last', {});
    expect(await listed()).toEqual([]);
    await bench.do('lot.add', { materialId, ...lot, code: 'F-101', note: right.note });
    expect(await listed()).toEqual([right]);
    // What was retired for a reason and returned by mistake is as it was.
    await bench.do('lot.retire', { lotId, reason: 'blocked by the supplier' });
    await bench.do('lot.return', { lotId, reason: 'mixed up with F-102' });
    await bench.do('undo.last', {});
    expect(await listed()).toEqual([{ ...right, doubt: 'was retired on 2026-03-02 (blocked by the supplier)' }]);
    await bench.do('lot.return', { lotId, reason: 'cleared' });
    // One that was used up is another matter: it is in use again on its page.
    await bench.do('lot.retire', { lotId, reason: 'used up' });
    expect(await bench.refused('lot.add', { materialId, ...lot, code: 'F-101' })).toMatchObject({ message: 'PET 12 µm already has a lot F-101; it is retired: take it back into use on its page.' });
    await intact(bench);
  });

  it('stays listed as undone where something is made of it', async () => {
    const bench = await testBench();
    const { materialId } = await bench.do('material.add', { kind: 'film', name: 'PET 12 µm', supplier: '', description: '' });
    const { lotId } = await bench.do('lot.add', { materialId, ...lot, code: 'F-101' });
    await bench.do('undo.last', {});
    await bench.do('sample.add', { code: 'S-778', product: '', job: '', roll: '', note: '', lotIds: [lotId] });
    expect((await bench.do('materials.list', {}))[0]!.lots).toMatchObject([{ code: 'F-101', doubt: 'was undone on 2026-03-02' }]);
  });

  it('is a sample that is listed no more, kept again under its code with what is typed now', async () => {
    const bench = await testBench();
    const { sampleId } = await bench.do('sample.add', { code: 'S-778', product: 'pouch', job: 'J-1', roll: '', note: '', lotIds: [] });
    await bench.do('undo.last', {});
    expect(await bench.do('samples.list', { search: '' })).toEqual({ total: 0, samples: [] });
    expect(await bench.do('sample.get', { sampleId })).toMatchObject({ retired: true, undone: true });
    expect(await bench.do('sample.add', { code: 'S-778', product: 'brick', job: 'J-2', roll: '', note: '', lotIds: [] })).toMatchObject({ sampleId, product: 'brick', job: 'J-2', retired: false, undone: false });
    expect(await bench.do('samples.list', { search: '' })).toMatchObject({ total: 1, samples: [{ sampleId, undone: false }] });
    await bench.do('undo.last', {});
    await bench.do('test.start', { sampleId, methodId: 'tape-adhesion' });
    expect(await bench.do('samples.list', { search: '' })).toMatchObject({ samples: [{ sampleId, product: 'pouch', retired: true, undone: true }] });
    await bench.do('sample.return', { sampleId, reason: 'it is there' });
    await bench.do('sample.retire', { sampleId, reason: 'used up' });
    expect(await bench.do('samples.list', { search: '' })).toMatchObject({ samples: [{ retired: true, undone: false }] });
    await intact(bench);
  });

  it('a lot does not expire before it was received', async () => {
    const bench = await testBench();
    const { materialId } = await bench.do('material.add', { kind: 'film', name: 'PET 12 µm', supplier: '', description: '' });
    expect(await bench.refused('lot.add', { materialId, ...lot, code: 'F-1', receivedOn: '2026-02-20', expiresOn: '2026-01-01' })).toMatchObject({ code: 'input', field: 'expiresOn' });
    expect(await bench.do('lot.add', { materialId, ...lot, code: 'F-1', receivedOn: '2026-02-20', expiresOn: '2026-02-20' })).toMatchObject({ code: 'F-1' });
  });
});

describe('the days since treatment', () => {
  const started = async (bench: Awaited<ReturnType<typeof benchWithRoll>>['bench'], sampleId: string, methodId = 'test-fluids') => bench.do('test.start', { sampleId, methodId });
  const treated = (lotId: string, code: string, treatedOn: string | null) => ({ lotId, code, receivedOn: null, note: '', expiresOn: null, treatedOn, treatedSide: null, thickness: '', reason: 'from its label' });

  it('are filled in from the lot that the sample is made of, say so, and are typed over without a reason', async () => {
    const { bench, pet, ink, sample } = await benchWithRoll();
    const { sampleId } = await sample('Q-1', [pet, ink]);
    expect((await started(bench, sampleId)).conditions.daysSinceTreatment).toBeUndefined();
    // The bench's clock shows 2 March 2026: 2 days of February after the 26th, and 2 of March.
    await bench.do('lot.describe', treated(pet, 'OV-1', '2026-02-26'));
    const { test, conditions } = await started(bench, sampleId);
    expect(conditions.daysSinceTreatment).toMatchObject({ value: 4, typed: '4', filledIn: 'filled in from lot' });
    const typed = await bench.do('condition.enter', { testId: test.testId, key: 'daysSinceTreatment', typed: '5' });
    expect(typed.conditions.daysSinceTreatment).toEqual({ value: 5, typed: '5', corrections: 0, warning: '' });
    expect((await started(bench, sampleId, 'contact-angle')).conditions.daysSinceTreatment).toMatchObject({ value: 4 });
    expect((await started(bench, sampleId, 'tape-adhesion')).conditions.daysSinceTreatment).toBeUndefined();
  });

  it('are left to the person where two films were treated on different days', async () => {
    const { bench, pet, add, sample } = await benchWithRoll();
    const pe = await add('film', 'PE 60 µm', 'OV-2');
    await bench.do('lot.describe', treated(pet, 'OV-1', '2026-02-26'));
    await bench.do('lot.describe', treated(pe, 'OV-2', '2026-02-20'));
    const { sampleId } = await sample('Q-1', [pet, pe]);
    expect((await started(bench, sampleId)).conditions.daysSinceTreatment).toBeUndefined();
    await bench.do('lot.describe', treated(pe, 'OV-2', '2026-02-26'));
    expect((await started(bench, sampleId)).conditions.daysSinceTreatment).toMatchObject({ value: 4 });
  });
});
