import type { Method } from '../../shared-lib/method/method.ts';
import type { NotebookStore } from '../store/notebook-store.ts';
import { treatmentDaysOf } from './queries/film-lots.ts';

const DAY_MS = 86_400_000;

/**
 * The age of the treatment, by the key of the condition that asks for it. Nothing where no lot of the sample says its day, or
 * several say different ones.
 * @param day ISO 8601 date on which the test is started
 */
export function daysSinceTreatment(store: NotebookStore, { conditions }: Pick<Method, 'conditions'>, sampleId: string, day: string): Record<string, number> {
  const asked = conditions.find((field) => field.kind === 'number' && field.daysSince === 'treatment');
  const [treatedOn, ...others] = asked ? treatmentDaysOf(store, sampleId) : [];
  if (!asked || treatedOn === undefined || others.length > 0 || treatedOn > day) return {};
  return { [asked.key]: (Date.parse(day) - Date.parse(treatedOn)) / DAY_MS };
}
