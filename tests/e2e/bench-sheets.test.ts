import { expect, it } from 'vitest';
import { allMethods } from '../../shared-lib/registry/methods.ts';
import { allBenchExamples, isOfFilmAndColour } from './bench-examples.ts';
import { walkBenchSheets } from './bench-sheet-suite.ts';

const examples = await allBenchExamples();

it('has an example for every method of the registry, and none besides', () => {
  const worked = examples.map(({ method }) => method);
  const known = allMethods.map(({ id }) => id);
  expect({ withoutExample: known.filter((id) => !worked.includes(id)), withoutMethod: worked.filter((id) => !known.includes(id)) }).toEqual({ withoutExample: [], withoutMethod: [] });
  expect(worked.filter((id, index) => worked.indexOf(id) !== index), 'more than one example').toEqual([]);
});

walkBenchSheets('bench-sheets', examples.filter((example) => !isOfFilmAndColour(example)));
