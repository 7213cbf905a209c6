import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { ResultValue, TableRow } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import type { Censored } from './censored-normal.ts';
import { compactLetters } from './compact-letters.ts';
import { compareBounded } from './compare-bounded.ts';
import { compareGrades } from './compare-grades.ts';
import { compareNumbers } from './compare-numbers.ts';
import { hedgesG } from './hedges-g.ts';
import { levelSchema } from './level.ts';
import type { TrialComparison } from './trial-comparison.ts';
import { trialSentences } from './trial-sentences.ts';
import { trialsFigure } from './trials-figure.ts';

const bounded = z.union([z.strictObject({ atLeast: z.number() }), z.strictObject({ atMost: z.number() }), z.strictObject({ low: z.number(), high: z.number() })]);

const input = z.strictObject({
  /** A value is a number, or what is known of it: `{atLeast}`, `{atMost}` or `{low, high}`. */
  groups: z.array(z.strictObject({ name: z.string().min(1).max(100), values: z.array(z.union([z.number(), bounded])).min(1).max(500) })).min(2).max(200),
  /** Name of the trial that all others are compared with; without it every pair is compared. */
  control: z.string().optional(),
  kind: z.enum(['number', 'grade']).default('number'),
  /** Grades outside are refused. */
  scale: z.strictObject({ lowest: z.number(), highest: z.number() }).default({ lowest: 0, highest: 5 }),
  /** Smallest difference that matters; the conclusions then say how many readings would show it. */
  difference: z.number().positive().optional(),
  unit: z.string().max(20).default(''),
  level: levelSchema,
});

type Input = z.output<typeof input>;

/**
 * Trials side by side. `table` holds the pairs first (`kind: 'pair'`: a, b, difference a − b, low, high, p, method,
 * effectSize g with effectLow and effectHigh), then a row per trial in the order given (`kind: 'group'`: group, n, mean
 * or median as `mean`, low, high, letters, star). Two trials that share a letter are not told apart; a star marks a
 * trial that differs from the control. `results.letters` has the letters as text.
 */
export const compareTrialsCalculation = defineCalculation({
  id: 'compare-trials',
  version: '1',
  title: 'Comparison of trials',
  input,
  compute: (given) => {
    const { groups, kind, unit, level } = given;
    const names = groups.map(({ name }) => name);
    const control = placeOfControl(given);
    refuseRepeatedNames(names);
    if (kind === 'grade') refuseOddGrades(given);
    const readings = groups.map(({ values }, g) => values.map((value, v) => readValue(value, `groups[${g}].values[${v}]`)));
    const exact = readings.every((group) => group.every(({ low, high }) => low === high));
    const numbers = groups.map(({ name }, g) => ({ name, values: readings[g]!.map(({ low }) => low!) }));
    const comparison = !exact
      ? compareBounded(groups.map(({ name }, g) => ({ name, readings: readings[g]! })), control, level)
      : kind === 'grade'
        ? compareGrades(numbers, control, level)
        : compareNumbers(numbers, control, level);
    const letters = control === null ? lettersOf(comparison, 1 - level) : null;
    const sentences = trialSentences(comparison, { names, counts: readings.map((group) => group.length), unit, level, grades: kind === 'grade', wanted: given.difference });
    const n = readings.reduce((sum, group) => sum + group.length, 0);
    const plain = (value: number | null) => valueWithoutInterval(value, '', n);
    return {
      results: {
        F: plain(comparison.f),
        pValue: plain(comparison.p),
        welchF: plain(comparison.welchF),
        welchP: plain(comparison.welchP),
        letters: lettersResult(names, letters, n),
      },
      table: [
        ...comparison.pairs.map((pair) => pairRow(pair, names, comparison.method, exact && kind === 'number' ? numbers.map(({ values }) => values) : null, level)),
        ...groups.map((_, g) => groupRow(g, names, readings[g]!.length, comparison, letters, control, 1 - level)),
      ],
      flags: comparison.flags,
      notes: [...comparison.notes, `Pairs by ${comparison.method}.`, ...sentences, ...letterNotes(control, letters)],
      figures: [trialsFigure(names, readings, comparison.levels, {
        control,
        unit,
        levelName: kind === 'grade' ? 'median' : 'mean',
        intervalName: `${Number((level * 100).toPrecision(6))} % interval`,
        finding: sentences[0] ?? `${names.length} trials side by side.`,
      })],
    };
  },
  columns: [
    { key: 'kind', title: 'Row' },
    { key: 'a', title: 'Trial' },
    { key: 'b', title: 'Against' },
    { key: 'difference', title: 'Difference' },
    { key: 'group', title: 'Trial' },
    { key: 'n', title: 'n', decimals: 0 },
    { key: 'mean', title: 'Mean or median' },
    { key: 'low', title: 'Low' },
    { key: 'high', title: 'High' },
    { key: 'p', title: 'p', decimals: 4 },
    { key: 'method', title: 'Procedure' },
    { key: 'effectSize', title: 'Effect in standard deviations', decimals: 2 },
    { key: 'letters', title: 'Letters' },
    { key: 'star', title: 'Differs from control' },
  ],
  cautions: [],
  sources: [
    'All pairs: J. W. Tukey (1953), C. Y. Kramer, Biometrics 12 (1956) 307; separate spreads: P. A. Games, J. F. Howell, J. Educ. Stat. 1 (1976) 113; A. C. Tamhane, J. Am. Stat. Assoc. 74 (1979) 471',
    'Against a control: C. W. Dunnett, Biometrics 20 (1964) 482; separate spreads: M. Hasler, L. A. Hothorn, Biom. J. 50 (2008) 793',
    'Overall: B. L. Welch, Biometrika 38 (1951) 330; W. H. Kruskal, W. A. Wallis, J. Am. Stat. Assoc. 47 (1952) 583',
    'Letters: H.-P. Piepho, J. Comput. Graph. Stat. 13 (2004) 456; effect size: L. V. Hedges, J. Educ. Stat. 6 (1981) 107',
  ],
});

function placeOfControl({ groups, control }: Input): number | null {
  if (control === undefined) return null;
  const place = groups.findIndex(({ name }) => name === control);
  if (place === -1) throw new InputError('control', control, `control must be the name of one of the groups: ${groups.map(({ name }) => name).join(', ')}.`);
  return place;
}

function refuseRepeatedNames(names: string[]): void {
  const repeated = names.findIndex((name, index) => names.indexOf(name) !== index);
  if (repeated !== -1) throw new InputError(`groups[${repeated}].name`, names[repeated], `Each group needs a name of its own; ${names[repeated]} comes twice.`);
}

function refuseOddGrades({ groups, scale: { lowest, highest } }: Input): void {
  groups.forEach(({ values }, g) => values.forEach((value, v) => {
    const field = `groups[${g}].values[${v}]`;
    if (typeof value !== 'number') throw new InputError(field, value, `${field} must be a grade; bounds are for measured numbers.`);
    if (value < lowest || value > highest) throw new InputError(field, value, `${field} is ${value}, outside the scale from ${lowest} to ${highest}; correct it, or give the scale that was used.`);
  }));
}

function readValue(value: number | z.output<typeof bounded>, field: string): Censored {
  if (typeof value === 'number') return { low: value, high: value };
  if ('atLeast' in value) return { low: value.atLeast, high: null };
  if ('atMost' in value) return { low: null, high: value.atMost };
  if (value.low > value.high) throw new InputError(field, value, `${field} has low ${value.low} above high ${value.high}.`);
  return value;
}

function lettersOf({ levels, pairs }: TrialComparison, alpha: number): string[] | null {
  if (pairs.some(({ p }) => p === null)) return null;
  const order = levels.map((_, place) => place).sort((a, b) => (levels[b]!.value ?? levels[b]!.low ?? 0) - (levels[a]!.value ?? levels[a]!.low ?? 0) || a - b);
  const different = new Set(pairs.filter(({ p }) => p! < alpha).map(({ a, b }) => `${a} ${b}`));
  return compactLetters(order, (a, b) => different.has(`${Math.min(a, b)} ${Math.max(a, b)}`));
}

function lettersResult(names: string[], letters: string[] | null, n: number): ResultValue {
  const result = valueWithoutInterval(null, '', n);
  return letters === null ? result : { ...result, text: names.map((name, g) => `${name} ${letters[g]}`).join(', ') };
}

function letterNotes(control: number | null, letters: string[] | null): string[] {
  if (control !== null) return ['A star marks a trial that differs from the control. Letters are for comparing every pair, which needs an input without control.'];
  return letters === null ? ['Letters cannot be given: some pairs cannot be judged, or they would be too many to read.'] : ['Trials that share a letter are not told apart.'];
}

function pairRow({ a, b, difference, low, high, p }: TrialComparison['pairs'][number], names: string[], method: string, values: number[][] | null, level: number): TableRow {
  // With many trials the effect sizes would cost more time than anyone reads them.
  const effect = values !== null && values.length <= 40 ? hedgesG(values[a]!, values[b]!, level) : null;
  return { kind: 'pair', a: names[a]!, b: names[b]!, difference, low, high, p, method, effectSize: effect?.g ?? null, effectLow: effect?.low ?? null, effectHigh: effect?.high ?? null };
}

function groupRow(g: number, names: string[], n: number, { levels, pairs }: TrialComparison, letters: string[] | null, control: number | null, alpha: number): TableRow {
  const { value, low, high } = levels[g]!;
  const star = control === null || g === control ? null : pairs.some(({ a, p }) => a === g && p !== null && p < alpha);
  return { kind: 'group', group: names[g]!, n, mean: value, low, high, letters: letters?.[g] ?? null, star };
}
