import type { TableColumn } from '../calculation/table-column.ts';
import { InputError } from '../calculation/input-error.ts';
import type { TitledTable } from '../calculation/result.ts';
import type { BenchReadings, ChoiceField, NumberField, TextField } from '../method/method.ts';
import { numberIn, textIn } from '../method/sheet.ts';
import type { Jar, Serving } from './blind-servings.ts';

/** An assessor of the panel: a row of the sheet that names one. */
export interface Assessor {
  /** Of the row on the sheet. */
  index: number;
  name: string;
  serving: Serving;
}

/** From which the codes and orders follow. */
export const seedField: NumberField = {
  kind: 'number',
  key: 'seed',
  label: 'Number drawn',
  min: 1,
  max: 2_147_483_647,
  required: true,
  hint: 'Any whole number, drawn anew for each test: codes and orders follow from it.',
};

/** Who must see the contents of the jars, and who must not. Switching is an entry of the record. */
export const showField: ChoiceField = {
  kind: 'choice',
  key: 'show',
  label: 'Serving plan for',
  default: 'panel',
  required: true,
  choices: [
    { value: 'panel', label: 'The panel: codes alone', shortcut: 'p' },
    { value: 'kitchen', label: 'Filling the jars: with contents', shortcut: 'k' },
  ],
  hint: 'Back to the panel before the first assessor comes in.',
};

export const controlField: TextField = { kind: 'text', key: 'control', label: 'Control', maxLength: 200, hint: 'unprinted film, or the print it is compared with' };

/**
 * The assessors named on the sheet, with their jars; a row keeps its jars whatever else is on the sheet.
 * @throws InputError for a seed that is not whole
 */
export function panelOf(bench: BenchReadings, servings: (seed: number, count: number) => Serving[]): Assessor[] {
  const seed = numberIn(bench.conditions, 'seed');
  if (seed === undefined || !Number.isInteger(seed)) throw new InputError('conditions.seed', seed ?? null, 'The number drawn must be a whole one; codes and orders follow from it.');
  const planned = servings(seed, bench.rows.length);
  return bench.rows.flatMap(({ values }, index) => {
    const name = textIn(values, 'assessor');
    return name === undefined ? [] : [{ index, name, serving: planned[index]! }];
  });
}

const PLACES = ['First', 'Second', 'Third'];

/** Codes in the order in which each assessor gets them; what is in the jars only for whom it is meant for. */
export function servingPlan(bench: BenchReadings, panel: readonly Assessor[]): TitledTable {
  const open = textIn(bench.conditions, 'show') === 'kitchen';
  const columns: TableColumn[] = [{ key: 'assessor', title: 'Assessor' }, ...panel[0]!.serving.map((_, place) => ({ key: `jar${place + 1}`, title: PLACES[place]! }))];
  return {
    title: open ? 'Serving plan with contents: not for the panel' : 'Serving plan',
    columns,
    rows: panel.map(({ name, serving }) => ({ assessor: name, ...Object.fromEntries(serving.map((jar, place) => [`jar${place + 1}`, open ? `${jar.code} ${jar.content}` : String(jar.code)])) })),
  };
}

/** What is shown in the place of a result until everyone has answered: else the last ones would know. */
export function waitingNote(answered: number, assessors: number): string {
  return `${answered} of ${assessors} assessors have answered. The result shows once all have, so that nobody learns from it; void the row of one who will not come.`;
}

/** The jar with this code. @throws InputError when the assessor has none such */
export function jarWithCode({ index, serving }: Assessor, key: string, code: number): Jar {
  const jar = serving.find((one) => one.code === code);
  if (jar) return jar;
  throw new InputError(`rows[${index}].${key}`, code, `${code} is none of this assessor’s codes: ${serving.map((one) => one.code).join(', ')}.`);
}
