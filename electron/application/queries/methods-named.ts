import { allMethods } from '../../../shared-lib/registry/methods.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import { listInHouseMethods } from './in-house-methods.ts';

/** Ids of the methods, built-in or in-house, with `word` in their title. */
export function methodsNamed(store: NotebookStore, word: string): string[] {
  const wanted = word.toLowerCase();
  const named = [...allMethods.map(({ id, title, shortTitle }) => ({ id, text: `${title} ${shortTitle}` })), ...listInHouseMethods(store).map(({ methodId, title }) => ({ id: methodId, text: title }))];
  return named.filter(({ text }) => text.toLowerCase().includes(wanted)).map(({ id }) => id);
}
