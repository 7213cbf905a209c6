import { runCalculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Flag, TableRow } from '../calculation/result.ts';
import type { Property } from '../method/method.ts';
import type { Response } from '../notebook/trial-entries.ts';
import type { TrialDifference } from '../notebook/trial-views.ts';
import { compareTrialsCalculation } from '../statistics/compare-trials.calculation.ts';
import type { ColumnTrial } from './column-trial.ts';
import { trialDifference } from './trial-difference.ts';
import { areExact, observationOf } from './trial-reading.ts';

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

/** Each pair of trials with bounds among its readings takes a tenth of a second: more of them would keep the bench waiting. */
const MOST_BOUNDED_PAIRS = 100;

/**
 * Trials with readings against the control or, without one, against each other; the calculation `compare-trials` chooses
 * the procedure. Never throws: what cannot be compared is said in `why`.
 */
export function compareTrials(response: Response, property: Property, trials: readonly ColumnTrial[], level: number): Compared {
  const read = trials.filter(({ readings }) => readings.length > 0);
  if (read.length < 2) return nothing(read.length === 0 ? 'No trial has readings yet.' : `Only ${read[0]!.name} has readings; a comparison needs two trials.`);
  const control = read.find((trial) => trial.control)?.name;
  const pairCount = control === undefined ? (read.length * (read.length - 1)) / 2 : read.length - 1;
  if (pairCount > MOST_BOUNDED_PAIRS && !read.every(({ readings }) => areExact(readings))) {
    return nothing(`Some readings are only bounds or brackets, and ${pairCount} pairs of trials are too many to compare by them; ${control === undefined ? 'name a control, or split the set' : 'split the set'}.`);
  }
  try {
    const { table, notes, flags } = runCalculation(compareTrialsCalculation, {
      groups: read.map(({ name, readings }) => ({ name, values: readings.map(observationOf) })),
      ...(control !== undefined && { control }),
      kind: property.kind ?? 'number',
      unit: property.unit,
      level,
    });
    const pairs = table.filter((row) => row.kind === 'pair');
    const groups = table.filter((row) => row.kind === 'group');
    const { why, sentences } = splitNotes(notes);
    const differences = new Map(control === undefined ? [] : pairs.map((row) => [row.a as string, trialDifference(row, groups, response, property, level)]));
    return {
      procedure: String(pairs[0]!.method),
      why: [...why, ...withoutControl(trials, control)],
      conclusions: sentences.map((sentence, index) => judged(sentence, pairs, index, differences)),
      flags,
      letters: new Map(groups.flatMap((row) => (typeof row.letters === 'string' ? [[row.group as string, row.letters]] : []))),
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

/** The calculation's notes: why this procedure, then what came out, with a note on letters at the end. */
function splitNotes(notes: string[]): { why: string[]; sentences: string[] } {
  const named = notes.findIndex((note) => note.startsWith('Pairs by '));
  return { why: notes.slice(0, named), sentences: notes.slice(named + 1, -1) };
}

function withoutControl(trials: readonly ColumnTrial[], control: string | undefined): string[] {
  if (control !== undefined) return [];
  const named = trials.find((trial) => trial.control);
  return [named ? `The control ${named.name} has no readings here: the trials are compared with one another.` : 'No trial is the control: the trials are compared with one another.'];
}

/** The sentence on a pair, with the direction as a word. */
function judged(sentence: string, pairs: TableRow[], index: number, differences: Map<string, TrialDifference>): string {
  const name = pairs[index]?.a;
  const word = typeof name === 'string' && sentence.startsWith(`${name} is `) ? differences.get(name)?.word : undefined;
  return word === 'better' || word === 'worse' ? `${sentence.replace(/\.$/, '')}: ${word}.` : sentence;
}
