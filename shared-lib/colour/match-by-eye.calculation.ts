import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { clopperPearson } from '../statistics/clopper-pearson.ts';
import { levelSchema } from '../statistics/level.ts';
import { summarise } from '../statistics/summarise.ts';
import { gradeText, matchGrades } from './grade-of-match.ts';

const grade = z.literal(matchGrades);

const input = z.strictObject({
  /** One comparison per patch or place. */
  comparisons: z
    .array(z.strictObject({ label: z.string().max(100).optional(), grade, secondGrade: grade.optional(), difference: z.string().max(200).optional() }))
    .min(1)
    .max(1000),
  level: levelSchema,
});

export const matchByEyeCalculation = defineCalculation({
  id: 'match-by-eye',
  version: '1',
  title: 'Match by eye against a reference',
  input,
  compute: ({ comparisons, level }) => {
    const all = comparisons.flatMap(({ grade: first, secondGrade }) => (secondGrade === undefined ? [first] : [first, secondGrade]));
    const { median, minimum, maximum } = summarise(all);
    // Between two half grades the lower one: a median of 4 and 4-5 is no 4-5.
    const middle = Math.floor(median * 2) / 2;
    const pairs = comparisons.filter((one) => one.secondGrade !== undefined) as ((typeof comparisons)[number] & { secondGrade: number })[];
    const share = (within: number): ResultValue => {
      if (pairs.length === 0) return valueWithoutInterval(null, '%', 0);
      const agreed = pairs.filter((pair) => Math.abs(pair.grade - pair.secondGrade) <= within).length;
      const { low, high } = clopperPearson(agreed, pairs.length, level);
      return { value: (100 * agreed) / pairs.length, unit: '%', low: 100 * low, high: 100 * high, level, n: pairs.length, bound: 'exact' };
    };
    const name = (index: number) => comparisons[index]!.label ?? `${index + 1}`;
    return {
      results: {
        grade: { value: middle, text: gradeText(middle), unit: '', low: minimum, high: maximum, level: null, n: all.length, bound: 'exact' },
        worst: { ...valueWithoutInterval(minimum, '', all.length), text: gradeText(minimum) },
        agreementPct: share(0),
        withinHalfGradePct: share(0.5),
      },
      table: comparisons.map((one, index) => ({
        patch: name(index),
        grade: gradeText(one.grade),
        secondGrade: one.secondGrade === undefined ? null : gradeText(one.secondGrade),
        difference: one.difference ?? '',
      })),
      flags: comparisons.flatMap((one, index) => (one.secondGrade !== undefined && Math.abs(one.grade - one.secondGrade) > 1 ? [apart(name(index), one.grade, one.secondGrade)] : [])),
      notes: [
        'The grade is the median of all gradings; its range runs from the lowest to the highest.',
        pairs.length === 0 ? 'No agreement: a second observer has not graded.' : `Agreement of two observers on ${pairs.length} comparison${pairs.length === 1 ? '' : 's'}, exact interval.`,
      ],
      figures: [
        {
          id: 'grades',
          title: 'Grades of match',
          finding: `Median grade ${gradeText(middle)}, from ${gradeText(minimum)} to ${gradeText(maximum)}; n = ${all.length}.`,
          x: { title: 'Patch', scale: 'category', categories: comparisons.map((_, index) => name(index)) },
          y: { title: 'Grade', scale: 'linear', min: 1, max: 5 },
          series: [
            { name: 'first observer', kind: 'points', role: 'reading', points: comparisons.map((one, x) => ({ x, y: one.grade })) },
            ...(pairs.length === 0 ? [] : [{ name: 'second observer', kind: 'points' as const, role: 'reading' as const, points: comparisons.map((one, x) => ({ x, y: one.secondGrade ?? null })) }]),
          ],
        },
      ],
    };
  },
  columns: [
    { key: 'patch', title: 'Patch' },
    { key: 'grade', title: 'Grade' },
    { key: 'secondGrade', title: 'Second observer' },
    { key: 'difference', title: 'Difference' },
  ],
  cautions: [],
  sources: ['ISO 105-A02 (steps of the grades)', 'ISO 3664 (viewing conditions, from memory)', 'Clopper & Pearson 1934 (exact interval)'],
});

function apart(patch: string, first: number, second: number): Flag {
  return { code: 'observers-apart', where: `patch ${patch}`, text: `At patch ${patch} the observers are more than a grade apart (${gradeText(first)} and ${gradeText(second)}); look again together, under the same light.` };
}
