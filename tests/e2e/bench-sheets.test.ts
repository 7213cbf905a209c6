import { expect, it } from 'vitest';
import { allMethods } from '../../shared-lib/registry/methods.ts';
import { allBenchExamples, isOfFilmAndColour } from './bench-examples.ts';
import { walkBenchSheets } from './bench-sheet-suite.ts';

const examples = await allBenchExamples();

it('has one first example for every method of the registry, and none for what is no method', () => {
  const worked = examples.map(({ method }) => method);
  const known = allMethods.map(({ id }) => id);
  expect({ withoutExample: known.filter((id) => !worked.includes(id)), withoutMethod: worked.filter((id) => !known.includes(id)) }).toEqual({ withoutExample: [], withoutMethod: [] });
  const first = examples.filter(({ variant }) => variant === undefined).map(({ method }) => method);
  expect(first.filter((id, index) => first.indexOf(id) !== index), 'more than one first example').toEqual([]);
});

walkBenchSheets('bench-sheets', examples.filter((example) => !isOfFilmAndColour(example)));
