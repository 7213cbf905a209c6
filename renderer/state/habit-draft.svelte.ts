import { z } from 'zod';
import type { Answer, CallProblem } from '../../shared-lib/api.ts';
import { habitQuestions, habitSchema, looksAt, type Habit } from '../../shared-lib/method/in-house/habit.ts';
import type { InHouseView } from '../../shared-lib/notebook/in-house-views.ts';
import type { KeptDraft } from './kept-draft.ts';

const typedSchema = z.strictObject({
  title: z.string(),
  purpose: z.string(),
  looksAt: habitSchema.shape.looksAt,
  outcome: habitSchema.shape.outcome,
  answers: z.array(z.strictObject({ question: z.string(), today: z.string(), varies: z.boolean(), fixed: z.string() })),
});

export interface AnswerLine {
  question: Habit['answers'][number]['question'];
  label: string;
  ask: string;
  fix: string;
  unit: string;
  today: string;
  varies: boolean;
  fixed: string;
}

/** A habit while it is being told. */
export class HabitDraft implements KeptDraft {
  readonly shape = typedSchema;
  title = $state('');
  purpose = $state('');
  looksAt = $state<Habit['looksAt']>(looksAt[0].key);
  outcome = $state<Habit['outcome']>('yes-no');
  answers = $state<AnswerLine[]>([]);
  #problem = $state.raw<CallProblem | null>(null);
  #busy = $state(false);

  constructor(habit: Habit | null, title: string) {
    this.title = habit?.title ?? title;
    this.purpose = habit?.purpose ?? '';
    this.looksAt = habit?.looksAt ?? looksAt[0].key;
    this.outcome = habit?.outcome ?? 'yes-no';
    this.answers = habitQuestions.map(({ key, ...question }) => {
      const answer = habit?.answers.find((other) => other.question === key);
      return { ...question, question: key, today: answer?.today ?? '', varies: answer?.varies ?? false, fixed: answer?.fixed ?? '' };
    });
  }

  get typed(): z.infer<typeof typedSchema> {
    const { title, purpose, looksAt, outcome } = this;
    return { title, purpose, looksAt, outcome, answers: this.answers.map(({ question, today, varies, fixed }) => ({ question, today, varies, fixed })) };
  }

  set typed({ answers, ...fields }: z.infer<typeof typedSchema>) {
    Object.assign(this, fields);
    this.answers = this.answers.map((line) => ({ ...line, ...answers.find(({ question }) => question === line.question), question: line.question }));
  }

  get busy(): boolean {
    return this.#busy;
  }

  /** As it stands; a question of which nothing is said is left out. */
  readonly habit: Habit = $derived({
    title: this.title.trim(),
    purpose: this.purpose.trim(),
    looksAt: this.looksAt,
    outcome: this.outcome,
    answers: this.answers
      .filter(({ today, varies, fixed }) => today.trim() !== '' || varies || fixed.trim() !== '')
      .map(({ question, today, varies, fixed }) => ({ question, today: today.trim(), varies, fixed: fixed.trim() })),
  });

  problemAt(field: string): string {
    const problem = this.#problem;
    if (problem?.field !== `habit.${field}`) return '';
    return problem.message.startsWith(problem.field) ? `This${problem.message.slice(problem.field.length)}` : problem.message;
  }

  /** The sentence that belongs to none of the fields with a place of their own, or ''. */
  get generalProblem(): string {
    return this.#problem && !['habit.title', 'habit.purpose'].includes(this.#problem.field) ? this.#problem.message : '';
  }

  async send(ask: (habit: Habit) => Promise<Answer<InHouseView>>): Promise<InHouseView | null> {
    if (this.#busy) return null;
    this.#busy = true;
    const answer = await ask(this.habit);
    this.#busy = false;
    this.#problem = answer.ok ? null : answer.problem;
    return answer.ok ? answer.value : null;
  }
}
