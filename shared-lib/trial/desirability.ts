import { runCalculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Response } from '../notebook/trial-entries.ts';
import type { TrialCell } from '../notebook/trial-views.ts';
import { desirabilityCalculation } from '../statistics/desirability.calculation.ts';
import { responseKey } from './response-head.ts';

export interface RatedResponse {
  response: Response;
  title: string;
  /** By `trialId`. */
  cells: Record<string, TrialCell>;
}

export interface TrialDesirability {
  overall: number | null;
  /** By response key. */
  single: Record<string, number | null>;
}

/**
 * How desirable each trial is over all responses, 0–1, by `trialId`, with notes on what was assumed or cannot be given.
 * Ends that the person left open are the best and the worst mean found, so that they move with the trials.
 */
export function trialDesirability(
  responses: readonly RatedResponse[],
  trials: readonly { trialId: string; name: string }[],
): { desirability: Map<string, TrialDesirability> | null; notes: string[] } {
  const valued = responses.filter(({ response }) => response.weight > 0);
  const scales = valued.map((rated) => scaleOf(rated));
  const wanting = valued.filter((_, index) => scales[index] === null).map(({ title }) => title);
  if (trials.length === 0 || valued.length === 0) return { desirability: null, notes: [] };
  if (wanting.length > 0) return { desirability: null, notes: [`No overall desirability: the trials give no scale for ${wanting.join(', ')}; state what is enough and what is of no use.`] };
  try {
    const names = valued.map(({ response }) => responseKey(response).slice(0, 100));
    const { table } = runCalculation(desirabilityCalculation, {
      responses: valued.map(({ response }, index) => ({ name: names[index]!, goal: response.goal, ...scales[index]!, importance: response.weight })),
      trials: trials.map(({ trialId, name }) => ({ name, values: valued.map(({ cells }) => cells[trialId]?.value ?? null) })),
    });
    const found = trials.map(({ trialId }, row): [string, TrialDesirability] => [
      trialId,
      {
        overall: numberIn(table[row]!.desirability),
        single: Object.fromEntries(valued.map(({ response }, index) => [responseKey(response), numberIn(table[row]![names[index]!])])),
      },
    ]);
    const open = valued.filter(({ response }) => hasOpenEnd(response)).map(({ title }) => title);
    return {
      desirability: new Map(found),
      notes: [
        ...(open.length === 0 ? [] : [`For ${open.join(', ')} the best and the worst mean found stand in for ends that are not stated.`]),
        ...(found.some(([, { overall }]) => overall === null) ? ['A trial without readings in a response has no overall desirability.'] : []),
        'Desirability ranks means and does not know how sure they are; judge close calls by the comparisons.',
      ],
    };
  } catch (error) {
    if (error instanceof InputError) return { desirability: null, notes: [`No overall desirability: ${error.message}`] };
    throw error;
  }
}

function hasOpenEnd({ goal, target, lowest, highest }: Response): boolean {
  return target === null || (goal !== 'lower' && lowest === null) || (goal !== 'higher' && highest === null);
}

/** `null` where open ends leave no scale: no trial has a value, or all have the same. */
function scaleOf({ response: { goal, target, lowest, highest }, cells }: RatedResponse): { low?: number; target: number; high?: number } | null {
  const values = Object.values(cells).flatMap(({ value }) => value ?? []);
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const aim = target ?? (goal === 'higher' ? most : least);
  const low = goal === 'lower' ? undefined : (lowest ?? least);
  const high = goal === 'higher' ? undefined : (highest ?? most);
  const fits = Number.isFinite(aim) && (low === undefined || low < aim) && (high === undefined || high > aim);
  return fits ? { target: aim, ...(low !== undefined && { low }), ...(high !== undefined && { high }) } : null;
}

function numberIn(value: unknown): number | null {
  return typeof value === 'number' ? value : null;
}
