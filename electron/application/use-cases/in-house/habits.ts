import type { ParsedInput } from '../../../../shared-lib/api.ts';
import { isDeepStrictEqual } from 'node:util';
import { InputError } from '../../../../shared-lib/calculation/input-error.ts';
import type { InHouseView } from '../../../../shared-lib/notebook/in-house-views.ts';
import { findHabit, findInHouseMethod, listHabits } from '../../queries/in-house-methods.ts';
import { Refusal } from '../../refusal.ts';
import type { Workplace } from '../../workplace.ts';
import { inHouseView } from './views.ts';

/** Keeps what a test is today, before it is written down; said again, it takes the place of what was said before. */
export function describeHabit(workplace: Workplace, { methodId: known, habit }: ParsedInput<'habit.describe'>): InHouseView {
  const { notebook } = workplace;
  const { store } = notebook;
  const before = known === undefined ? null : findHabit(store, known);
  // A method that was written straight away may have its habit told afterwards.
  if (known !== undefined && !before && !findInHouseMethod(store, known)) throw new Refusal('not-found', 'This habit is not in the notebook.');
  habit.answers.forEach(({ question }, index) => {
    if (habit.answers.findIndex((other) => other.question === question) !== index) throw new InputError(`habit.answers[${index}].question`, question, 'Each question is answered once.');
  });
  if (listHabits(store).some(({ methodId, title }) => methodId !== known && title.toLowerCase() === habit.title.toLowerCase())) {
    throw new InputError('habit.title', habit.title, `There is already a habit ‘${habit.title}’; go on with that one.`);
  }
  const methodId = known ?? workplace.newId();
  if (!isDeepStrictEqual(habit, before)) notebook.append([{ kind: 'habit.described', body: { methodId, habit } }]);
  return inHouseView(notebook, methodId);
}
