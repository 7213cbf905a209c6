import path from 'node:path';
import { expect, it } from 'vitest';
import { testBench } from './open-application.ts';

it('names a file from the screens only after a person has chosen it', async () => {
  const [a, b] = [await testBench(), await testBench()];
  const other = { handle: path.join(b.folder, 'notebooks', 'lab.laydown') };
  await b.startTest('gloss', 'B-1');
  await b.application.close();
  expect(await a.refused('merge.preview', other)).toMatchObject({ code: 'not-found' });
  a.application.handOver(other.handle);
  expect(await a.do('merge.preview', other)).toMatchObject({ bench: 'lab', common: 0 });
  expect(await a.do('merge.make', { ...other, belongsHere: true })).toMatchObject({ bench: 'lab' });
  expect((await a.do('samples.list', {})).samples.map(({ code }) => code)).toEqual(['B-1']);
});
