import { InputError } from '../../shared-lib/calculation/input-error.ts';
import type { NotebookStore } from '../store/notebook-store.ts';
import { equipmentTyped } from './queries/equipment.ts';
import { listReferences, type StoredReference } from './queries/references.ts';
import { findSampleByCode } from './queries/samples.ts';
import type { ItemFinder } from './read-cell.ts';

const LONGEST_NAME = 200;
/** Between the name of a reference and its customer. */
const BETWEEN = ' · ';

/** Finds by its name what an item field holds. What is not kept in the notebook stands by the name alone; a sample must be there. */
export function itemFinder(store: NotebookStore): ItemFinder {
  return ({ of, label }, typed, where) => {
    if (typed.length > LONGEST_NAME) throw new InputError(where, typed.slice(0, 40), `${label} takes at most ${LONGEST_NAME} characters; this has ${typed.length}.`);
    if (of === 'reference') return referenceTyped(store, typed)?.reference.referenceId ?? typed;
    if (of !== 'sample') return equipmentTyped(store, of, typed) ?? typed;
    const sample = findSampleByCode(store, typed);
    if (!sample) throw new InputError(where, typed.slice(0, 40), `${label} takes the code of a sample in the notebook; there is none with the code “${typed.slice(0, 40)}”.`);
    return sample.sampleId;
  };
}

/** The reference that was typed, with its customer where one was named. */
export interface TypedReference {
  reference: StoredReference;
  /** '' where none was named. */
  customer: string;
}

/** 'Pouch red 12' or 'Pouch red 12 · Hollin Foods', whatever the case; `null` where no reference has that name. */
export function referenceTyped(store: NotebookStore, typed: string): TypedReference | null {
  const same = (one: string, other: string) => one.toLowerCase() === other.toLowerCase();
  const references = listReferences(store);
  const whole = references.find(({ name }) => same(name, typed));
  if (whole) return { reference: whole, customer: '' };
  for (const reference of references) {
    if (!same(typed.slice(0, reference.name.length + BETWEEN.length), reference.name + BETWEEN)) continue;
    const named = typed.slice(reference.name.length + BETWEEN.length);
    const customer = reference.tolerances.find((tolerance) => same(tolerance.customer, named))?.customer;
    if (customer !== undefined) return { reference, customer };
  }
  return null;
}
