import { isDeepStrictEqual } from 'node:util';
import { InputError } from '../../shared-lib/calculation/input-error.ts';
import { differenceFormulaNames } from '../../shared-lib/colour/difference-formulas.ts';
import type { CellValue, ItemField, Limit, Method } from '../../shared-lib/method/method.ts';
import type { ToleranceView } from '../../shared-lib/notebook/colour-views.ts';
import type { NotebookStore } from '../store/notebook-store.ts';
import { conditionDraft } from './condition-draft.ts';
import { referenceTyped, type TypedReference } from './item-finder.ts';
import type { Draft } from './open-notebook.ts';
import type { StoredTest } from './queries/tests.ts';

const DIFFERENCES: readonly string[] = [...differenceFormulaNames, 'deltaL', 'deltaC', 'deltaH'];

/**
 * What follows once a reference colour is chosen: the customer and the CMC weights as conditions, and the tolerance as the
 * limits of the test. Nothing follows for a reference without tolerances, or one that the notebook does not keep.
 * @throws InputError when several customers have a tolerance on it and none was named
 */
export function followReference(store: NotebookStore, test: StoredTest, method: Method, field: ItemField, typed: string, reason: string): Draft[] {
  const chosen = field.of === 'reference' ? referenceTyped(store, typed.trim()) : null;
  const tolerance = chosen && toleranceOf(chosen);
  if (!chosen || !tolerance) return [];
  const { customer, cmcL, cmcC, formula } = tolerance;
  const said: [string, CellValue][] = [['customer', customer], ...(formula === 'deltaECMC' ? ([['cmcL', cmcL], ['cmcC', cmcC]] as [string, CellValue][]) : [])];
  const because = reason.trim() || `Tolerance of ${customer} on ${chosen.reference.name}`;
  return [
    ...said.flatMap(([key, value]) => {
      const field = method.conditions.find((condition) => condition.key === key);
      return field ? conditionDraft(test, field, value, '', because) : [];
    }),
    ...limitsDraft(test, limitsFrom(tolerance, chosen.reference.name), because),
  ];
}

function toleranceOf({ reference, customer }: TypedReference): ToleranceView | null {
  const { tolerances, name } = reference;
  if (customer !== '') return tolerances.find((tolerance) => tolerance.customer === customer)!;
  if (tolerances.length > 1) {
    throw new InputError('typed', name, `${name} has a tolerance for each of ${tolerances.map((tolerance) => tolerance.customer).join(', ')}: say which, such as “${name} · ${tolerances[0]!.customer}”.`);
  }
  return tolerances[0] ?? null;
}

function limitsFrom({ customer, formula, limit, deltaL, deltaC, deltaH }: ToleranceView, name: string): Limit[] {
  const source = `${customer}, tolerance on ${name}`;
  const eitherWay = [['deltaL', deltaL], ['deltaC', deltaC], ['deltaH', deltaH]] as const;
  return [
    { property: formula, lower: null, upper: limit, source },
    ...eitherWay.flatMap(([property, value]) => (value === null ? [] : [{ property, lower: -value, upper: value, source }])),
  ];
}

/** Limits on other properties than colour differences stay. */
function limitsDraft(test: StoredTest, wanted: Limit[], reason: string): Draft[] {
  const limits = [...wanted, ...test.limits.filter(({ property }) => !DIFFERENCES.includes(property))];
  if (isDeepStrictEqual(limits, test.limits)) return [];
  return [{ kind: 'limits.set', body: { testId: test.testId, limits, rule: test.rule, reason } }];
}
