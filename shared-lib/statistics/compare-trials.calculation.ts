import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import type { ResultValue, TableRow } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { compareGroups } from './compare-groups.ts';
import type { GroupComparison } from './compare-groups.ts';
import { hedgesG } from './hedges-g.ts';
import { levelSchema } from './level.ts';
import { observationSchema, readObservation } from './observation.ts';
import type { TrialPair } from './trial-comparison.ts';
import { trialsFigure } from './trials-figure.ts';

const input = z.strictObject({
  /** A value is a number, or what is known of it: `{atLeast}`, `{atMost}` or `{low, high}`. */
  groups: z.array(z.strictObject({ name: z.string().min(1).max(100), values: z.array(observationSchema).min(1).max(500) })).min(2).max(200),
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

/**
 * Trials side by side. `table` holds the pairs first (`kind: 'pair'`: a, b, difference a − b, low, high, p, method,
 * effectSize g with effectLow and effectHigh, and the pair in a sentence), then a row per trial in the order given (`kind: 'group'`: group, n, mean
 * or median as `mean`, low, high, letters, star). Two trials that share a letter are not told apart; a star marks a
 * trial that differs from the control. `results.letters` has the letters as text.
 */
export const compareTrialsCalculation = defineCalculation({
  id: 'compare-trials',
  version: '1',
  title: 'Comparison of trials',
  input,
  compute: ({ groups, control, kind, scale, difference, unit, level }) => {
    const names = groups.map(({ name }) => name);
    const readings = groups.map(({ values }, g) => values.map((value, v) => readObservation(value, `groups[${g}].values[${v}]`)));
    const found = compareGroups({
      groups: names.map((name, g) => ({ name, readings: readings[g]! })),
      control: control ?? null,
      kind,
      scale: { low: scale.lowest, high: scale.highest },
      difference,
      unit,
      level,
    });
    const exact = readings.every((group) => group.every(({ low, high }) => low === high));
    const numbers = exact && kind === 'number' ? readings.map((group) => group.map(({ low }) => low!)) : null;
    const sentences = [...found.sentences.pairs.filter((sentence) => sentence !== null), ...found.sentences.overall];
    const n = readings.reduce((sum, group) => sum + group.length, 0);
    const plain = (value: number | null) => valueWithoutInterval(value, '', n);
    return {
      results: {
        F: plain(found.f),
        pValue: plain(found.p),
        welchF: plain(found.welchF),
        welchP: plain(found.welchP),
        letters: lettersResult(names, found.letters, n),
      },
      table: [
        ...found.pairs.map((pair, index) => ({ ...pairRow(pair, names, found.method, numbers, level), sentence: found.sentences.pairs[index]! })),
        ...groups.map((_, g) => groupRow(g, names, readings[g]!.length, found, 1 - level)),
      ],
      flags: found.flags,
      notes: [...found.notes, `Pairs by ${found.method}.`, ...sentences, ...letterNotes(found)],
      figures: [trialsFigure(names, readings, found.levels, {
        control: found.control,
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

function lettersResult(names: string[], letters: string[] | null, n: number): ResultValue {
  const result = valueWithoutInterval(null, '', n);
  return letters === null ? result : { ...result, text: names.map((name, g) => `${name} ${letters[g]}`).join(', ') };
}

function letterNotes({ control, letters }: GroupComparison): string[] {
  if (control !== null) return ['A star marks a trial that differs from the control. Letters are for comparing every pair, which needs an input without control.'];
  return letters === null ? ['Letters cannot be given: some pairs cannot be judged, or they would be too many to read.'] : ['Trials that share a letter are not told apart.'];
}

function pairRow({ a, b, difference, low, high, p }: TrialPair, names: string[], method: string, values: number[][] | null, level: number): TableRow {
  // With many trials the effect sizes would cost more time than anyone reads them.
  const effect = values !== null && values.length <= 40 ? hedgesG(values[a]!, values[b]!, level) : null;
  return { kind: 'pair', a: names[a]!, b: names[b]!, difference, low, high, p, method, effectSize: effect?.g ?? null, effectLow: effect?.low ?? null, effectHigh: effect?.high ?? null };
}

function groupRow(g: number, names: string[], n: number, { levels, pairs, letters, control }: GroupComparison, alpha: number): TableRow {
  const { value, low, high } = levels[g]!;
  const star = control === null || g === control ? null : pairs.some(({ a, p }) => a === g && p !== null && p < alpha);
  return { kind: 'group', group: names[g]!, n, mean: value, low, high, letters: letters?.[g] ?? null, star };
}
