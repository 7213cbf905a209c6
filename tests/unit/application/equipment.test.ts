import { describe, expect, it } from 'vitest';
import type { ItemField, Method } from '../../../shared-lib/method/method.ts';
import { allMethods } from '../../../shared-lib/registry/methods.ts';
import { allBenchExamples } from '../../e2e/bench-examples.ts';
import type { TypedRow } from '../../e2e/bench-sheets/bench-example.ts';
import { thumbTwistRub } from '../method/in-house/written-methods.ts';
import { testBench, type TestBench } from './open-application.ts';

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

describe('a reading taken out of calibration', () => {
  /** A tester whose calibration ended on 1 March; the bench's clock stands on the 2nd. */
  async function expiredTester() {
    const made = await benchWithTest();
    const { bench } = made;
    const { instrumentId: testerId } = await bench.do('instrument.add', { name: 'Tensile tester', serial: 'T-3', methodIds: [], note: '' });
    await bench.do('instrument.calibrate', { instrumentId: testerId, calibratedOn: '2025-03-01', dueOn: '2026-03-01', remark: '' });
    return { ...made, testerId };
  }
  const pull = async (bench: TestBench, testId: string, row: string, force: string, reason?: string) => {
    await bench.do('reading.enter', { testId, row, key: 'forceN', typed: force, ...(reason ? { reason } : {}) });
    if (!reason) await bench.do('reading.enter', { testId, row, key: 'mode', typed: 'a' });
  };
  const bonds = async (bench: TestBench, testId: string) => {
    for (const [index, force] of ['3.1', '3.2', '3.3'].entries()) await pull(bench, testId, `r${index + 1}`, force);
  };
  const ENDED = 'Read with Tensile tester, T-3 on 2026-03-02, whose calibration ended on 2026-03-01.';

  it('is flagged whether the instrument was named before or after, in the finished result, the report and what a press approval takes', async () => {
    const { bench, start, flags, testerId } = await expiredTester();
    const before = await start('lamination-bond', { instrument: 'Tensile tester, T-3' });
    await bonds(bench, before);
    const after = await start('lamination-bond', {});
    await bonds(bench, after);
    expect(await flags(after)).toEqual([]);
    await bench.do('condition.enter', { testId: after, key: 'instrument', typed: 'tensile TESTER, t-3' });
    for (const testId of [before, after]) {
      expect(await flags(testId)).toEqual([ENDED]);
      const { live } = await bench.do('test.finish', { testId, remark: '' });
      expect(live!.result.flags).toContainEqual({ code: 'calibration', where: 'conditions.instrument', text: ENDED });
      expect(live!.result.results['mean']!.n).toBe(3);
    }
    const report = await bench.do('report.preview', { title: 'T', recipient: '', remark: '', testIds: [after], replaces: null });
    expect(report.sections[0]!.flags).toContainEqual(expect.objectContaining({ where: 'Instrument', text: ENDED }));
    expect(report.sections[0]!.conditions).toContainEqual({ label: 'Instrument', value: 'Tensile tester, T-3' });
    // Calibrated and read a week later, it is in order; what was read before stays flagged.
    bench.time += 7 * DAY;
    await bench.do('instrument.calibrate', { instrumentId: testerId, calibratedOn: '2026-03-09', dueOn: null, remark: '' });
    const later = await start('lamination-bond', { instrument: 'Tensile tester, T-3' });
    await bonds(bench, later);
    expect(await flags(later)).toEqual([]);
    expect(await flags(after)).toEqual([ENDED]);
    expect((await bench.do('record.verify', {})).problems).toEqual([]);
  });

  it('stays flagged when a slip is put right after the calibration; read anew, its row is voided', async () => {
    const { bench, start, flags, testerId } = await expiredTester();
    const testId = await start('lamination-bond', { instrument: 'Tensile tester, T-3' });
    await bonds(bench, testId);
    bench.time += 7 * DAY;
    await bench.do('instrument.calibrate', { instrumentId: testerId, calibratedOn: '2026-03-09', dueOn: null, remark: '' });
    for (const row of ['r1', 'r2', 'r3']) {
      await bench.do('reading.enter', { testId, row, key: 'forceN', typed: '3.4', reason: 'misread' });
      await bench.do('reading.enter', { testId, row, key: 'mode', typed: 'c', reason: 'misread' });
    }
    expect(await flags(testId)).toEqual([ENDED]);
    await pull(bench, testId, 'r4', '3.3');
    for (const row of ['r1', 'r2', 'r3']) await bench.do('row.void', { testId, row, reason: 'read anew' });
    expect(await flags(testId)).toEqual([]);
    await bench.do('row.restore', { testId, row: 'r2', reason: 'voided by mistake' });
    expect(await flags(testId)).toEqual([ENDED]);
  });

  it('a slip put right after the calibration ended does not hide, nor a name under it count as a reading', async () => {
    const { bench, start, flags, instrumentId } = await expiredTester();
    const testId = await start('gloss', { instrument: 'Gloss meter, G-1' });
    await bench.do('reading.enter', { testId, row: 'r1', key: 'label', typed: 'operator side' });
    bench.time += DAY;
    await bench.do('instrument.calibrate', { instrumentId, calibratedOn: '2026-03-03', dueOn: '2026-03-03', remark: '' });
    await bench.do('reading.enter', { testId, row: 'r1', key: 'gloss', typed: '60' });
    expect(await flags(testId)).toEqual([]);
    bench.time += DAY;
    await bench.do('reading.enter', { testId, row: 'r1', key: 'gloss', typed: '62', reason: 'read again' });
    expect(await flags(testId)).toEqual(['Read with Gloss meter, G-1 on 2026-03-04, whose calibration ended on 2026-03-03.']);
  });

  it('the day that a row says it was read on counts, not that on which it was entered', async () => {
    const { bench, start, flags } = await expiredTester();
    const testId = await start('light-exposure', { exposedIn: 'Tensile tester, T-3' });
    await bench.do('readings.paste', { testId, row: 'r1', key: 'exposure', pasted: '0\t1.50\n24\t1.37' });
    expect(await flags(testId)).toEqual([ENDED]);
    for (const [row, day] of [['r1', '2026-02-01'], ['r2', '2026-03-01']] as const) await bench.do('reading.enter', { testId, row, key: 'readOn', typed: day });
    expect(await flags(testId)).toEqual([]);
  });

  it('a calibration voided later takes its cover from what was read under it, and an instrument out of use is not offered', async () => {
    const { bench, start, flags, testerId } = await expiredTester();
    const { calibrations } = await bench.do('instrument.calibrate', { instrumentId: testerId, calibratedOn: '2026-03-02', dueOn: null, remark: '' });
    const testId = await start('friction', { instrument: 'Tensile tester, T-3' });
    await bench.do('reading.enter', { testId, row: 'r1', key: 'staticN', typed: '0.6' });
    await bench.do('test.finish', { testId, remark: '' });
    expect(await flags(testId)).toEqual([]);
    await bench.do('calibration.void', { calibrationId: calibrations.find(({ calibratedOn }) => calibratedOn === '2026-03-02')!.calibrationId, reason: 'of another tester' });
    expect(await flags(testId)).toEqual([ENDED]);
    const offered = async () => (await bench.do('items.find', { of: 'instrument', search: 'tens', methodId: 'friction' })).map(({ typed, detail }) => `${typed}, ${detail}`);
    expect(await offered()).toEqual(['Tensile tester, T-3, calibration ended on 2026-03-01']);
    await bench.do('instrument.retire', { instrumentId: testerId, reason: 'load cell overloaded' });
    expect(await offered()).toEqual([]);
    expect(await flags(testId)).toEqual([ENDED]);
  });

  it('the next test on the product is begun without it: it was read with nothing yet', async () => {
    const { bench, start } = await expiredTester();
    const testId = await start('lamination-bond', { instrument: 'Tensile tester, T-3' });
    await bench.do('test.setLimits', { testId, limits: [{ property: 'mean', lower: 2, upper: null, source: '' }], rule: 'simple', reason: '' });
    await bonds(bench, testId);
    await bench.do('test.finish', { testId, remark: '' });
    const next = await bench.do('test.get', { testId: await start('lamination-bond', {}) });
    expect(next.limits).toHaveLength(1);
    expect(next.conditions['instrument']).toBeUndefined();
  });

  it('is flagged on the sheet of an in-house method that names its instrument', async () => {
    const { bench, start, flags } = await expiredTester();
    const { methodId } = await bench.do('inHouseMethod.add', { written: { ...thumbTwistRub, settings: [...thumbTwistRub.settings, { kind: 'instrument', key: 'gauge', label: 'Force gauge' }] } });
    const testId = await start(methodId, { temperature: '23', gauge: 'tensile tester, t-3' });
    await bench.do('readings.paste', { testId, row: 'r1', key: 'grade', pasted: '4\t12' });
    expect(await flags(testId)).toEqual([ENDED]);
  });
});

const readWith = ({ conditions }: Method) => conditions.filter((field): field is ItemField => field.kind === 'item' && (field.of === 'instrument' || field.of === 'fluid'));
/** Where the example reads files. */
const typedInstead: Record<string, TypedRow[]> = { 'lamination-bond': [{ forceN: '3.1', mode: 'a' }] };
const typedOf = (row: TypedRow) => Object.entries(row).filter((cell): cell is [string, string] => typeof cell[1] === 'string');

/** The readings are those of the bench examples, which were worked without the program. */
describe('a test of each method that names an instrument or fluid', () => {
  const methods = allMethods.filter((method) => readWith(method).length > 0);
  it.each(methods.map((method) => [method.group, method.id, method] as const))('%s: %s flags what is read out of calibration or past its last day', async (_group, methodId, method) => {
    const { bench, start, flags } = await benchWithTest();
    const example = (await allBenchExamples()).find((candidate) => candidate.method === methodId && candidate.variant === undefined)!;
    for (const { key, of } of readWith(method)) {
      if (of === 'instrument') {
        const { instrumentId } = await bench.do('instrument.add', { name: key, serial: '', methodIds: [methodId], note: '' });
        await bench.do('instrument.calibrate', { instrumentId, calibratedOn: '2025-03-01', dueOn: '2026-03-01', remark: '' });
      } else await bench.do('fluid.add', { kind: 'other', name: key, lot: '', methodIds: [methodId], openedOn: null, expiresOn: '2026-03-01', note: '' });
    }
    const testId = await start(methodId, { ...Object.fromEntries(typedOf(example.conditions)), ...Object.fromEntries(readWith(method).map(({ key }) => [key, key])) });
    for (const [index, row] of (typedInstead[methodId] ?? example.rows).entries()) for (const [key, typed] of typedOf(row)) await bench.do('reading.enter', { testId, row: `r${index + 1}`, key, typed });
    expect(await flags(testId)).toEqual(readWith(method).map(({ key, of }) => `Read with ${key} on 2026-03-02, ${of === 'instrument' ? 'whose calibration ended' : 'which expired'} on 2026-03-01.`));
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
