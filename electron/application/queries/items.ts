import type { ItemField } from '../../../shared-lib/method/method.ts';
import type { ItemChoice } from '../../../shared-lib/notebook/colour-views.ts';
import { toleranceText } from '../../../shared-lib/notebook/tolerance-text.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import { equipmentChoices, findFluid, findInstrument } from './equipment.ts';
import { listReferences } from './references.ts';
import { listSamples } from './samples.ts';

const MOST_CHOICES = 50;

/** The name of what an item field holds; `undefined` where the notebook has no such thing. */
export function itemName(store: NotebookStore, { of }: ItemField, value: string): string | undefined {
  if (of === 'instrument') return findInstrument(store, value)?.typed;
  if (of === 'fluid') return findFluid(store, value)?.typed;
  const sql = of === 'sample' ? 'SELECT code AS name FROM sample WHERE sampleId = ?' : 'SELECT name FROM reference_colour WHERE referenceId = ?';
  return store.one<{ name: string }>(sql, [value])?.name;
}

/** What an item field can name, as it is typed; a reference once for each customer, an instrument or fluid that serves the method first. */
export function itemChoices(store: NotebookStore, of: ItemField['of'], search: string, methodId: string, today: string): ItemChoice[] {
  if (of === 'instrument' || of === 'fluid') return equipmentChoices(store, of, search, methodId, MOST_CHOICES, today);
  if (of === 'sample') {
    return listSamples(store, search, MOST_CHOICES, 0).map(({ code, product, job }) => ({ typed: code, detail: [product, job].filter(Boolean).join(', ') }));
  }
  const choices = listReferences(store).filter(({ retiredAt }) => retiredAt === null).flatMap(({ name, tolerances }) =>
    tolerances.length === 0 ? [{ typed: name, detail: 'no tolerance set' }] : tolerances.map((tolerance) => ({ typed: `${name} · ${tolerance.customer}`, detail: toleranceText(tolerance) })),
  );
  const wanted = search.toLowerCase();
  return choices.filter(({ typed }) => typed.toLowerCase().includes(wanted)).slice(0, MOST_CHOICES);
}
