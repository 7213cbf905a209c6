import { readdirSync } from 'node:fs';
import path from 'node:path';
import type { MethodGroup } from '../../shared-lib/method/method.ts';
import { allMethods } from '../../shared-lib/registry/methods.ts';
import type { BenchExample } from './bench-sheets/bench-example.ts';

const filmAndColour: readonly MethodGroup[] = ['surface-energy', 'colour'];
const folder = path.join(import.meta.dirname, 'bench-sheets');

/** Every example of the folder, in the order in which lists show the methods. */
export async function allBenchExamples(): Promise<BenchExample[]> {
  const files = readdirSync(folder).filter((name) => name !== 'bench-example.ts');
  const examples = await Promise.all(files.map(async (name) => ((await import(path.join(folder, name))) as { example: BenchExample }).example));
  const placeOf = ({ method }: BenchExample) => allMethods.findIndex(({ id }) => id === method);
  return examples.sort((a, b) => placeOf(a) - placeOf(b));
}

/** About half of the methods. */
export function isOfFilmAndColour({ method }: BenchExample): boolean {
  return filmAndColour.includes(allMethods.find(({ id }) => id === method)!.group);
}
