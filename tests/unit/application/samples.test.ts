import { describe, expect, it } from 'vitest';
import { testBench } from './open-application.ts';

const plain = { code: 'Q-1', product: 'pouch', job: 'J-1', roll: 'roll 3', note: '', lotIds: [] };

describe('a sample', () => {
  it('says where it was cut, for whom, and how long it is kept', async () => {
    const bench = await testBench();
    const { sampleId } = await bench.do('sample.add', { ...plain, customer: 'Hollin Foods', across: '350 mm', along: '1 200,5', keptAt: 'shelf 4', retainedUntil: '2026-03-20' });
    const view = await bench.do('sample.get', { sampleId });
    expect(view).toMatchObject({ customer: 'Hollin Foods', acrossMm: 350, alongM: 1200.5, keptAt: 'shelf 4', retainedUntil: '2026-03-20', retired: false });
    expect((await bench.do('today.get', {})).due).toContainEqual(expect.objectContaining({ what: 'Dispose of sample Q-1, or keep it longer', why: 'It is kept until 2026-03-20, at shelf 4.', dueOn: '2026-03-20', overdue: false, sampleId }));
    expect(await bench.refused('sample.change', { sampleId, ...plain, across: 'left' })).toMatchObject({ code: 'input', field: 'across' });
  });

  it('is changed with what stood before, and a reason where something said is replaced', async () => {
    const bench = await testBench();
    const { sampleId } = await bench.do('sample.add', plain);
    await bench.do('sample.change', { sampleId, ...plain, customer: 'Hollin Foods' });
    expect(await bench.refused('sample.change', { sampleId, ...plain, roll: 'roll 4', customer: 'Hollin Foods' })).toMatchObject({ field: 'reason' });
    await bench.do('sample.change', { sampleId, ...plain, roll: 'roll 4', customer: 'Hollin Foods', reason: 'label misread' });
    const { entries } = await bench.do('record.list', { kind: 'sample.changed' });
    expect(entries[0]!.correction).toEqual({ before: 'roll roll 3', after: 'roll roll 4', reason: 'label misread' });
    await bench.do('undo.last', {});
    expect((await bench.do('sample.get', { sampleId })).roll).toBe('roll 3');
    await bench.do('sample.add', { ...plain, code: 'Q-2' });
    expect(await bench.refused('sample.change', { sampleId, ...plain, code: 'Q-2', reason: 'x' })).toMatchObject({ field: 'code' });
    expect((await bench.do('record.verify', {})).problems).toEqual([]);
  });

  it('is disposed of with a reason and asks for nothing any more', async () => {
    const bench = await testBench();
    const { sampleId } = await bench.do('sample.add', { ...plain, retainedUntil: '2026-02-01' });
    expect((await bench.do('today.get', {})).due.map(({ overdue }) => overdue)).toEqual([true]);
    expect(await bench.refused('sample.retire', { sampleId })).toMatchObject({ field: 'reason' });
    expect(await bench.do('sample.retire', { sampleId, reason: 'kept long enough' })).toMatchObject({ retired: true, retiredReason: 'kept long enough' });
    expect((await bench.do('today.get', {})).due).toEqual([]);
    expect((await bench.do('sample.return', { sampleId, reason: 'wrong box' })).retired).toBe(false);
  });

  it('is found by what its label holds', async () => {
    const bench = await testBench();
    await bench.do('sample.add', plain);
    await bench.do('sample.add', { ...plain, code: 'Q-2' });
    const { samples } = await bench.do('samples.list', { search: 'Q-2 | pouch | job J-1 | roll 3 | Lab' });
    expect(samples.map(({ code }) => code)).toEqual(['Q-2']);
  });

  it('is found by words of several fields in any order, and by page', async () => {
    const bench = await testBench();
    for (const [code, job] of [['Q-1', 'J-1'], ['Q-2', 'J-2'], ['Q-3', 'J-1'], ['Q-4', 'J-1']] as const) await bench.do('sample.add', { ...plain, code, job });
    const found = async (input: object) => {
      const { total, samples } = await bench.do('samples.list', input);
      return [total, ...samples.map(({ code }) => code)];
    };
    expect(await found({ search: 'j-1 POUCH' })).toEqual([3, 'Q-4', 'Q-3', 'Q-1']);
    expect(await found({ search: 'j-1 lid' })).toEqual([0]);
    expect(await found({ search: '  ', offset: 2, limit: 2 })).toEqual([4, 'Q-2', 'Q-1']);
    expect(await found({ search: 'j-1', offset: 2 })).toEqual([3, 'Q-1']);
  });
});
