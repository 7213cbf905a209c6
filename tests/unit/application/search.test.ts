import { describe, expect, it } from 'vitest';
import type { SearchView } from '../../../shared-lib/notebook/search-views.ts';
import { testBench } from './open-application.ts';

const titles = ({ groups }: SearchView) => groups.map(({ title }) => title);
const group = ({ groups }: SearchView, wanted: string) => groups.find(({ title }) => title === wanted);

/** A notebook with one thing of each kind. */
async function filled() {
  const bench = await testBench();
  const film = await bench.do('material.add', { kind: 'film', name: 'Corona-treated PET 12', supplier: 'Osprey Vale', description: 'PET 12 µm' });
  const lot = await bench.do('lot.add', { materialId: film.materialId, code: 'OV-4711', receivedOn: null, note: '' });
  const sheet = await bench.startTest('gloss', 'S-014');
  await bench.do('sample.add', { code: 'S-0141', product: 'ground coffee brick', job: '', roll: '', note: '', lotIds: [lot.lotId] });
  const { trialSetId } = await bench.do('trialSet.add', { title: 'Low-migration series', question: 'Which one bonds best?', product: 'dumpling pouch 600 g' });
  await bench.do('attachment.add', { attachedTo: 'sample', attachedId: sheet.sample.sampleId, name: 'roll photograph.txt', bytes: Buffer.from('x').toString('base64'), caption: 'edge of the roll' });
  return { bench, film, sheet, trialSetId };
}

describe('a search through everything', () => {
  it('finds each kind of thing and says where it opens', async () => {
    const { bench, film, sheet, trialSetId } = await filled();
    const find = (search: string) => bench.do('search.find', { search });
    expect(group(await find('osprey'), 'Materials')?.hits).toMatchObject([{ title: 'Corona-treated PET 12', detail: 'film · Osprey Vale', screen: 'material', id: film.materialId }]);
    expect(group(await find('ov-47'), 'Lots')?.hits).toMatchObject([{ title: 'OV-4711', detail: 'Corona-treated PET 12' }]);
    expect(group(await find('gloss S-014'), 'Tests')?.hits).toMatchObject([{ title: 'Gloss on S-014', screen: 'bench-sheet', id: sheet.test.testId }]);
    expect(group(await find('migration'), 'Trial sets')?.hits).toMatchObject([{ screen: 'trials', id: trialSetId }]);
    expect(group(await find('D523'), 'Methods')?.hits.map(({ id }) => id)).toContain('gloss');
    expect(group(await find('rasmund'), 'People')?.hits).toMatchObject([{ title: 'Imke Rasmund', detail: 'IR · technician', screen: 'notebook' }]);
    expect(group(await find('edge roll'), 'Files')?.hits).toMatchObject([{ title: 'roll photograph.txt', screen: 'samples', id: sheet.sample.sampleId }]);
    expect(group(await find('4711'), 'Record')?.hits.map(({ title }) => title)).toEqual([
      'Added sample S-0141 (ground coffee brick), made from Corona-treated PET 12, lot OV-4711.',
      expect.stringMatching(/^Added lot OV-4711/),
    ]);
  });

  it('puts the sample whose code was typed first, whatever is newer', async () => {
    const { bench, sheet } = await filled();
    const [first, second] = group(await bench.do('search.find', { search: ' s-014 ' }), 'Samples')!.hits;
    expect(first).toMatchObject({ title: 'S-014', screen: 'samples', id: sheet.sample.sampleId });
    expect(second?.title).toBe('S-0141');
  });

  it('names a sample by its product, job and roll, as far as they are said', async () => {
    const { bench } = await filled();
    expect(group(await bench.do('search.find', { search: 'S-014' }), 'Samples')!.hits[0]!.detail).toBe('dumpling pouch 600 g · J-100 · R1');
    await bench.do('sample.add', { code: 'K-1', product: '', job: 'J-7', roll: 'R2', note: '', lotIds: [] });
    expect(group(await bench.do('search.find', { search: 'K-1' }), 'Samples')!.hits[0]!.detail).toBe('J-7 · R2');
  });

  it('wants every word, takes wildcards as they stand, and finds nothing for nothing', async () => {
    const { bench } = await filled();
    expect(titles(await bench.do('search.find', { search: 'osprey coffee' }))).toEqual([]);
    expect(titles(await bench.do('search.find', { search: '%' }))).toEqual([]);
    expect(titles(await bench.do('search.find', { search: '   ' }))).toEqual([]);
    expect(titles(await bench.do('search.find', { search: '"*' }))).toEqual([]);
    expect((await bench.refused('search.find', { search: 'x'.repeat(201) })).code).toBe('input');
  });

  it('counts all and shows the newest', async () => {
    const { bench } = await filled();
    for (let number = 1; number <= 9; number++) await bench.do('sample.add', { code: `K-${number}`, product: 'window-shelf sachet', job: '', roll: '', note: '', lotIds: [] });
    const found = group(await bench.do('search.find', { search: 'sachet' }), 'Samples')!;
    expect([found.total, found.many, found.hits.map(({ title }) => title)]).toEqual([9, false, ['K-9', 'K-8', 'K-7', 'K-6', 'K-5', 'K-4']]);
  });
});
