import { describe, expect, it } from 'vitest';
import { testBench } from './open-application.ts';

const DAY = 86_400_000;
const gloss = { name: 'Gloss meter', serial: 'G-1', methodIds: ['gloss'], note: '' };

async function benchWithTest() {
  const bench = await testBench();
  const { instrumentId } = await bench.do('instrument.add', gloss);
  const { sampleId } = await bench.do('sample.add', { code: 'Q-1', product: '', job: '', roll: '', note: '', lotIds: [] });
  const start = async (methodId: string, conditions: Record<string, string>) => {
    const { test } = await bench.do('test.start', { sampleId, methodId });
    for (const [key, typed] of Object.entries(conditions)) await bench.do('condition.enter', { testId: test.testId, key, typed });
    return test.testId;
  };
  const flags = async (testId: string) => (await bench.do('test.get', { testId })).live!.result.flags.filter(({ code }) => ['calibration', 'expired-fluid'].includes(code)).map(({ text }) => text);
  return { bench, instrumentId, start, flags };
}

describe('an instrument', () => {
  it('flags what was read with it while no calibration held, and refuses nothing', async () => {
    const { bench, instrumentId, start, flags } = await benchWithTest();
    await bench.do('instrument.calibrate', { instrumentId, calibratedOn: '2025-03-01', dueOn: '2026-03-01', remark: '' });
    const testId = await start('gloss', { instrument: 'gloss METER, g-1' });
    const sheet = await bench.do('test.get', { testId });
    expect(sheet.items).toEqual({ [instrumentId]: 'Gloss meter, G-1' });
    const key = (await bench.do('method.get', { methodId: 'gloss' })).readings.fields.find(({ kind, required }) => kind === 'number' && required)!.key;
    for (const row of ['r1', 'r2', 'r3']) await bench.do('reading.enter', { testId, row, key, typed: '60' });
    expect(await flags(testId)).toEqual(['Read with Gloss meter, G-1 on 2026-03-02, whose calibration ended on 2026-03-01.']);
    // Calibrated today, it is in order for what is read today.
    const { calibrations } = await bench.do('instrument.calibrate', { instrumentId, calibratedOn: '2026-03-02', dueOn: '2027-03-01', remark: 'by the maker' });
    expect(await flags(testId)).toEqual([]);
    await bench.do('calibration.void', { calibrationId: calibrations[0]!.calibrationId, reason: 'of another instrument' });
    expect(await flags(testId)).toHaveLength(1);
    expect((await bench.do('record.verify', {})).problems).toEqual([]);
  });

  it('comes up on Today 30 days before its calibration ends, and while it has none', async () => {
    const { bench, instrumentId } = await benchWithTest();
    const due = async () => (await bench.do('today.get', {})).due.map(({ what, dueOn, overdue }) => ({ what, dueOn, overdue }));
    expect(await due()).toEqual([{ what: 'Calibrate Gloss meter, G-1', dueOn: '2026-03-02', overdue: false }]);
    await bench.do('instrument.calibrate', { instrumentId, calibratedOn: '2025-04-02', dueOn: '2026-04-02', remark: '' });
    expect(await due()).toEqual([]);
    bench.time += DAY;
    expect(await due()).toEqual([{ what: 'Calibrate Gloss meter, G-1', dueOn: '2026-04-02', overdue: false }]);
    bench.time += 31 * DAY;
    expect(await due()).toEqual([{ what: 'Calibrate Gloss meter, G-1', dueOn: '2026-04-02', overdue: true }]);
    await bench.do('instrument.retire', { instrumentId, reason: 'lamp failed' });
    expect(await due()).toEqual([]);
  });

  it.each([
    ['instrument.add', gloss, 'serial', /already an instrument Gloss meter, G-1/],
    ['instrument.add', { ...gloss, serial: 'G-2', methodIds: ['shine'] }, 'methodIds', /no method shine/],
    ['instrument.add', { ...gloss, name: ' ' }, 'name', /needs a name/],
  ] as const)('is refused by %s %o', async (call, input, field, says) => {
    const { bench } = await benchWithTest();
    expect(await bench.refused(call, { ...input, methodIds: [...input.methodIds] })).toMatchObject({ code: 'input', field, message: expect.stringMatching(says) });
  });

  it('cannot be calibrated in the future, or until before it was', async () => {
    const { bench, instrumentId } = await benchWithTest();
    expect((await bench.refused('instrument.calibrate', { instrumentId, calibratedOn: '2026-03-03', dueOn: null, remark: '' })).field).toBe('calibratedOn');
    expect((await bench.refused('instrument.calibrate', { instrumentId, calibratedOn: '2026-03-01', dueOn: '2026-02-01', remark: '' })).field).toBe('dueOn');
  });

  it('is offered first for a method that it serves, and not once it is out of use', async () => {
    const { bench, instrumentId } = await benchWithTest();
    await bench.do('instrument.add', { ...gloss, name: 'A balance', methodIds: [] });
    await bench.do('instrument.add', { ...gloss, name: 'A cup', methodIds: ['viscosity-cup'] });
    const offered = async () => (await bench.do('items.find', { of: 'instrument', search: '', methodId: 'gloss' })).map(({ typed, detail }) => `${typed} (${detail})`);
    expect(await offered()).toEqual(['Gloss meter, G-1 (no calibration)', 'A balance, G-1 (no calibration)', 'A cup, G-1 (no calibration)']);
    await bench.do('instrument.retire', { instrumentId, reason: 'lamp failed' });
    expect(await offered()).toHaveLength(2);
  });
});

describe('a test fluid', () => {
  const fluid = { kind: 'test fluids' as const, name: 'Test fluids 30 to 60', lot: 'TF-9', methodIds: ['test-fluids'], openedOn: null, expiresOn: '2026-03-01', note: '' };

  it('flags what was read with it after its last day; a name that is not in the notebook stands as typed', async () => {
    const { bench, start, flags } = await benchWithTest();
    const { fluidId } = await bench.do('fluid.add', fluid);
    const testId = await start('test-fluids', { fluidLot: 'Test fluids 30 to 60, lot TF-9' });
    for (const row of ['r1', 'r2', 'r3']) await bench.do('reading.enter', { testId, row, key: 'wetsMNm', typed: '38' });
    expect(await flags(testId)).toEqual(['Read with Test fluids 30 to 60, lot TF-9 on 2026-03-02, which expired on 2026-03-01.']);
    await bench.do('condition.enter', { testId, key: 'fluidLot', typed: 'set from the press hall', reason: 'misread' });
    expect((await bench.do('test.get', { testId })).conditions['fluidLot']).toMatchObject({ value: 'set from the press hall', typed: 'set from the press hall' });
    expect(await flags(testId)).toEqual([]);
    expect((await bench.do('fluid.change', { fluidId, ...fluid, openedOn: '2026-03-02' })).openedOn).toBe('2026-03-02');
    expect((await bench.do('today.get', {})).due).toContainEqual(expect.objectContaining({ what: 'Replace Test fluids 30 to 60, lot TF-9', overdue: true, equipmentId: fluidId }));
  });
});
