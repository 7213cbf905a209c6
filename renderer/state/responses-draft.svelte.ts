import { z } from 'zod';
import type { CallProblem } from '../../shared-lib/api.ts';
import type { Response } from '../../shared-lib/notebook/trial-entries.ts';
import type { TrialSetView } from '../../shared-lib/notebook/trial-views.ts';
import type { MethodData } from '../../shared-lib/method/method.ts';
import type { AppState } from './app-state.svelte.ts';
import type { KeptDraft } from './kept-draft.ts';
import { asTyped, readOptional } from './optional-number.ts';
import { inSentence } from '../../shared-lib/quantity/words.ts';

const lineSchema = z.strictObject({
  methodId: z.string(),
  property: z.string(),
  title: z.string(),
  unit: z.string(),
  goal: z.enum(['higher', 'lower', 'target']),
  target: z.string(),
  lowest: z.string(),
  highest: z.string(),
  weight: z.string(),
});
const typedSchema = z.strictObject({ lines: z.array(lineSchema), reason: z.string() });

export type ResponseLine = z.infer<typeof lineSchema>;

type NumberKey = 'target' | 'lowest' | 'highest' | 'weight';

/** What is compared across the trials, while it is being chosen. */
export class ResponsesDraft implements KeptDraft {
  readonly shape = typedSchema;
  lines = $state<ResponseLine[]>([]);
  reason = $state('');
  #problem = $state.raw<CallProblem | null>(null);
  #checked = $state(false);
  #busy = $state(false);

  constructor(
    private readonly app: Pick<AppState, 'call'>,
    private readonly set: TrialSetView,
  ) {
    this.lines = set.responses.map(({ methodId, property, title, unit, goal, target, lowest, highest, weight }) => ({
      methodId,
      property,
      title,
      unit,
      goal,
      target: asTyped(target),
      lowest: asTyped(lowest),
      highest: asTyped(highest),
      weight: asTyped(weight),
    }));
  }

  get typed(): z.infer<typeof typedSchema> {
    const { lines, reason } = this;
    return $state.snapshot({ lines, reason });
  }

  set typed(typed: z.infer<typeof typedSchema>) {
    Object.assign(this, typed);
  }

  get busy(): boolean {
    return this.#busy;
  }

  get reasonProblem(): string {
    return this.#problem?.field === 'reason' ? this.#problem.message : '';
  }

  get generalProblem(): string {
    return this.#problem && this.#problem.field !== 'reason' ? this.#problem.message : '';
  }

  add(method: MethodData, propertyKey: string): void {
    const property = method.properties.find(({ key }) => key === propertyKey);
    if (!property) return;
    const goals = { higher: 'higher', lower: 'lower', within: 'target', none: 'higher' } as const;
    this.lines.push({
      methodId: method.id,
      property: property.key,
      title: `${property.title}, ${inSentence(method.shortTitle)}`,
      unit: property.unit,
      goal: goals[property.better],
      target: '',
      lowest: '',
      highest: '',
      weight: '1',
    });
  }

  /** Why a number cannot be taken, or ''; said only once the person has tried to send. */
  problemAt(line: ResponseLine, key: NumberKey): string {
    if (!this.#checked) return '';
    const read = readLine(line, key);
    return 'problem' in read ? read.problem : '';
  }

  /** Sends them; `null` when something cannot be read or was refused. */
  async save(): Promise<TrialSetView | null> {
    this.#checked = true;
    const responses: Response[] = [];
    for (const line of this.lines) {
      const [target, lowest, highest, weight] = (['target', 'lowest', 'highest', 'weight'] as const).map((key) => readLine(line, key)) as [Read, Read, Read, Read];
      if ('problem' in target || 'problem' in lowest || 'problem' in highest || 'problem' in weight) return null;
      responses.push({
        methodId: line.methodId,
        property: line.property,
        goal: line.goal,
        target: target.value,
        lowest: line.goal === 'lower' ? null : lowest.value,
        highest: line.goal === 'higher' ? null : highest.value,
        weight: weight.value ?? 1,
      });
    }
    this.#busy = true;
    const answer = await this.app.call('trialSet.setResponses', { trialSetId: this.set.trialSetId, responses, reason: this.reason.trim() });
    this.#busy = false;
    this.#problem = answer.ok ? null : answer.problem;
    return answer.ok ? answer.value : null;
  }
}

type Read = { value: number | null } | { problem: string };

function readLine(line: ResponseLine, key: NumberKey): Read {
  const read = readOptional(line[key]);
  if (key === 'target' && line.goal === 'target' && 'value' in read && read.value === null) return { problem: 'Type the best value.' };
  return read;
}
