import { InputError } from '../calculation/input-error.ts';
import type { Flag } from '../calculation/result.ts';
import { gradeScale } from '../method/grade-scale.ts';
import type { Property } from '../method/method.ts';
import type { Response } from '../notebook/trial-entries.ts';
import type { TrialDifference } from '../notebook/trial-views.ts';
import { compareGroups } from '../statistics/compare-groups.ts';
import type { ColumnTrial } from './column-trial.ts';
import { fewerFlags } from './fewer-flags.ts';
import { trialDifference } from './trial-difference.ts';
import { censoredOf } from './trial-reading.ts';

export interface Compared {
  /** '' where nothing can be compared; then `why` says so. */
  procedure: string;
  why: string[];
  conclusions: string[];
  flags: Flag[];
  /** By name of the trial. */
  letters: Map<string, string>;
  differences: Map<string, TrialDifference>;
}

/**
 * Trials with readings against the control or, without one, against each other; `compareGroups` chooses the
 * procedure, as the calculation `compare-trials` does. Never throws: what cannot be compared is said in `why`.
 */
export function compareTrials(response: Response, property: Property, trials: readonly ColumnTrial[], level: number): Compared {
  const read = trials.filter(({ readings }) => readings.length > 0);
  if (read.length < 2) return nothing(read.length === 0 ? 'No trial has readings yet.' : `Only ${read[0]!.name} has readings; a comparison needs two trials.`);
  const control = read.find((trial) => trial.control)?.name;
  try {
    const groups = read.map(({ name, readings }) => ({ name, readings: readings.map(censoredOf) }));
    const found = compareGroups({ groups, control: control ?? null, kind: property.kind ?? 'number', scale: gradeScale(property), unit: property.unit, level });
    const differences = new Map(
      control === undefined ? [] : found.pairs.map((pair) => [read[pair.a]!.name, trialDifference(pair, found.levels, response, property, level)]),
    );
    return {
      procedure: found.method,
      why: [...found.notes, ...withoutControl(trials, control)],
      conclusions: [
        ...found.pairs.flatMap(({ a }, index) => judged(found.sentences.pairs[index]!, differences.get(read[a]!.name)) ?? []),
        ...found.sentences.overall,
      ],
      flags: fewerFlags(found.flags),
      letters: new Map(found.letters?.map((letters, place) => [read[place]!.name, letters])),
      differences,
    };
  } catch (error) {
    if (error instanceof InputError) return nothing(error.message);
    throw error;
  }
}

function nothing(why: string): Compared {
  return { procedure: '', why: [why], conclusions: [], flags: [], letters: new Map(), differences: new Map() };
}

function withoutControl(trials: readonly ColumnTrial[], control: string | undefined): string[] {
  if (control !== undefined) return [];
  const named = trials.find((trial) => trial.control);
  return [named ? `The control ${named.name} has no readings here: the trials are compared with one another.` : 'No trial is the control: the trials are compared with one another.'];
}

/** The sentence on a pair, with the direction as a word. */
function judged(sentence: string | null, difference: TrialDifference | undefined): string | null {
  const word = difference?.word;
  return sentence !== null && (word === 'better' || word === 'worse') ? `${sentence.replace(/\.$/, '')}: ${word}.` : sentence;
}
