import { describe, expect, it } from 'vitest';
import { testBench, TestBench } from './open-application.ts';

describe('people', () => {
  it('sign with initials of their own and take the bench', async () => {
    const bench = await testBench();
    expect(await bench.refused('person.add', { name: 'Ines Rohde', initials: 'ir', role: '' })).toMatchObject({ code: 'input', field: 'initials' });
    expect(await bench.refused('person.add', { name: ' ', initials: 'X', role: '' })).toMatchObject({ code: 'input', field: 'name' });
    expect(await bench.refused('session.takeBench', { personId: 'nobody' })).toMatchObject({ code: 'not-found' });
    const person = await bench.do('person.add', { name: 'Abena Quist', initials: 'AQ', role: 'quality lead' });
    expect((await bench.do('session.takeBench', { personId: person.personId })).atBench).toEqual(person);
  });

  it('are asked for when several could be at the bench', async () => {
    const bench = await testBench();
    await bench.do('person.add', { name: 'Abena Quist', initials: 'AQ', role: '' });
    await bench.application.close();
    const elsewhere = new TestBench();
    await elsewhere.application.open(bench.notebookFile);
    expect((await elsewhere.do('session.get', {})).atBench).toBeNull();
    expect(await elsewhere.refused('material.add', { kind: 'film', name: 'PET', supplier: '', description: '' })).toMatchObject({ code: 'conflict' });
  });
});

describe('materials and samples', () => {
  it('are added once each, with their lots, and found again', async () => {
    const bench = await testBench();
    const film = await bench.do('material.add', { kind: 'film', name: 'PET 12 µm', supplier: 'Osprey Vale', description: 'treated one side' });
    expect(await bench.refused('material.add', { kind: 'film', name: 'PET 12 µm', supplier: 'Osprey Vale', description: '' })).toMatchObject({ field: 'name' });
    const lot = await bench.do('lot.add', { materialId: film.materialId, code: 'OV-1', receivedOn: '2026-02-20', note: '' });
    expect(lot).toMatchObject({ kind: 'film', material: 'PET 12 µm', supplier: 'Osprey Vale', code: 'OV-1' });
    expect(await bench.refused('lot.add', { materialId: film.materialId, code: 'OV-1', receivedOn: null, note: '' })).toMatchObject({ field: 'code' });
    expect(await bench.refused('lot.add', { materialId: 'none', code: 'X', receivedOn: null, note: '' })).toMatchObject({ code: 'not-found' });
    expect(await bench.refused('lot.add', { materialId: film.materialId, code: 'X', receivedOn: '2026-02-30', note: '' })).toMatchObject({ code: 'input', field: 'receivedOn' });
    expect(await bench.do('materials.list', {})).toMatchObject([{ name: 'PET 12 µm', lots: [{ code: 'OV-1' }] }]);

    const sample = (code: string, lotIds: string[] = []) => ({ code, product: 'coffee 100%', job: 'J-1', roll: '', note: '', lotIds });
    const added = await bench.do('sample.add', sample('Q-1', [lot.lotId, lot.lotId]));
    expect(added.lots).toEqual([lot]);
    expect(await bench.refused('sample.add', sample('Q-1'))).toMatchObject({ code: 'input', field: 'code' });
    expect(await bench.refused('sample.add', sample('Q-2', ['none']))).toMatchObject({ code: 'input', field: 'lotIds[0]' });
    await bench.do('sample.add', sample('Q-10'));
    const codes = async (search: string) => (await bench.do('samples.list', { search })).samples.map(({ code }) => code);
    expect(await codes('')).toEqual(['Q-10', 'Q-1']);
    expect(await codes('q-10')).toEqual(['Q-10']);
    expect(await codes('100%')).toEqual(['Q-10', 'Q-1']);
    expect(await codes('Q_1')).toEqual([]);
    expect(await bench.do('samples.list', { offset: 1, limit: 1 })).toMatchObject({ total: 2, samples: [{ code: 'Q-1' }] });
  });
});

describe('methods', () => {
  it('travel as plain data', async () => {
    const bench = await testBench();
    const methods = await bench.do('methods.list', {});
    expect(methods.map(({ id }) => id)).toContain('test-fluids');
    expect(structuredClone(methods)).toEqual(methods);
    expect(methods[0]).not.toHaveProperty('evaluate');
    expect(await bench.refused('test.start', { sampleId: 'none', methodId: 'test-fluids' })).toMatchObject({ code: 'not-found' });
  });
});
