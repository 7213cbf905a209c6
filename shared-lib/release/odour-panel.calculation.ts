import { z } from 'zod';
import { defineCalculation, type Outcome } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import type { Figure } from '../figure/figure.ts';
import { formatNumber } from '../quantity/format.ts';
import { levelSchema } from '../statistics/level.ts';
import { medianRank } from '../statistics/median-interval.ts';
import { summarise } from '../statistics/summarise.ts';
import { discriminators, minimumCorrect, trianglePValue } from './triangle-test.ts';

/** EN 1230-1: whole grades and halves between them. */
const intensities = z.array(z.number().min(0).max(4).multipleOf(0.5)).min(1).max(1000);

const input = z.strictObject({
  /** Triangle test: how many tasted or smelled three, and how many of them found the odd one. */
  assessors: z.int().min(1).max(2000).optional(),
  correct: z.int().min(0).max(2000).optional(),
  /** Strength of the smell of the print, one grade from each assessor. */
  intensities: intensities.optional(),
  /** The same of the control, from the same assessors. */
  controlIntensities: intensities.optional(),
  /** Chance of calling alike prints different that is put up with. */
  alpha: z.number().min(0.0001).max(0.5).default(0.05),
  level: levelSchema,
});

type Given = z.output<typeof input>;

/** A panel's answers: can print and control be told apart, and how strong is the smell. */
export const odourPanelCalculation = defineCalculation({
  id: 'odour-panel',
  version: '1',
  title: 'Odour panel',
  input,
  compute,
  columns: [
    { key: 'assessor', title: 'Assessor', decimals: 0 },
    { key: 'intensity', title: 'Smell', decimals: 1 },
    { key: 'controlIntensity', title: 'Smell of the control', decimals: 1 },
  ],
  cautions: ['Nobody smells or tastes what a safety data sheet forbids. For food contact the law of the place and a licensed laboratory prevail.'],
  sources: [
    'ISO 4120 (triangle test; exact binomial with chance 1/3)',
    'EN 1230-1, DIN 10955 (intensity 0–4, median; scale from memory)',
    'Interval of the median: W. J. Conover, Practical Nonparametric Statistics, 3rd ed. (1999), 3.2',
  ],
});

function compute(given: Given): Outcome {
  const { assessors, correct, intensities: grades, controlIntensities } = given;
  if (assessors === undefined && grades === undefined) {
    throw new InputError('assessors', null, 'Give assessors and correct answers of a triangle test, or intensities from 0 to 4, or both.');
  }
  const triangle = triangleResults(assessors, correct, given);
  const smell = grades ? intensityResults(grades, controlIntensities, given.level) : null;
  if (!grades && controlIntensities) throw new InputError('intensities', null, 'The control was graded and the print was not.');
  return {
    results: { ...triangle?.results, ...smell?.results },
    table: (grades ?? []).map((intensity, index) => ({ assessor: index + 1, intensity, controlIntensity: controlIntensities?.[index] ?? null })),
    flags: [...(triangle?.flags ?? []), ...(smell?.flags ?? [])],
    notes: [...(triangle?.notes ?? []), ...(smell?.notes ?? [])],
    figures: [...(triangle?.figures ?? []), ...(smell?.figures ?? [])],
  };
}

type Part = Required<Pick<Outcome, 'flags' | 'notes' | 'figures'>> & { results: Record<string, ResultValue> };

function triangleResults(assessors: number | undefined, correct: number | undefined, { alpha, level }: Given): Part | null {
  if (assessors === undefined && correct === undefined) return null;
  if (assessors === undefined) throw new InputError('assessors', null, 'How many assessors were there?');
  if (correct === undefined) throw new InputError('correct', null, 'How many of the assessors found the odd one?');
  if (correct > assessors) throw new InputError('correct', correct, `At most all ${assessors} assessors can be right, not ${correct}.`);
  const pValue = trianglePValue(assessors, correct);
  const needed = minimumCorrect(assessors, alpha);
  const { value, low, high } = discriminators(assessors, correct, level);
  const percent = `${Number((100 * alpha).toPrecision(3))} %`;
  return {
    results: {
      pValue: valueWithoutInterval(pValue, '', assessors),
      correct: valueWithoutInterval(correct, '', assessors),
      minimumCorrect: valueWithoutInterval(needed, '', assessors),
      shareDiscriminating: { value: 100 * value, unit: '%', low: 100 * low, high: 100 * high, level, n: assessors, bound: 'exact' },
    },
    flags: needed === null ? [{ code: 'too-few-assessors', where: 'assessors', text: `With ${assessors} assessors not even all of them right would differ from guessing at ${percent}.` }] : [],
    notes: [
      pValue <= alpha
        ? `${correct} of ${assessors} found the odd one; ${needed} are enough to call the two different at ${percent}: they smell different.`
        : `${correct} of ${assessors} found the odd one${needed === null ? '' : `; ${needed} would be needed to call the two different at ${percent}`}. That does not show that they are alike: up to ${formatNumber(100 * high, 0)} % of people may still tell them apart.`,
    ],
    figures: [triangleFigure(assessors, correct, needed, pValue, percent)],
  };
}

/** How likely each number of right answers is when everyone guesses. */
function triangleFigure(assessors: number, correct: number, needed: number | null, pValue: number, percent: string): Figure {
  const counts = Array.from({ length: assessors + 1 }, (_, count) => count);
  const chance = (count: number) => trianglePValue(assessors, count) - (count === assessors ? 0 : trianglePValue(assessors, count + 1));
  return {
    id: 'triangle',
    title: 'Right answers against guessing',
    finding: `${correct} of ${assessors} right; by guessing alone as many or more come about with probability ${pValue < 0.0001 ? 'below 0.0001' : formatNumber(pValue, 4)}.`,
    x: { title: 'Right answers', scale: 'linear', min: 0, max: assessors },
    y: { title: 'Probability when guessing', scale: 'linear', min: 0 },
    series: [{ name: 'guessing', kind: 'line', role: 'reference', points: counts.map((x) => ({ x, y: chance(x) })) }],
    lines: [
      { name: 'found', axis: 'x', value: correct, role: 'mark' },
      ...(needed === null ? [] : [{ name: `needed at ${percent}`, axis: 'x' as const, value: needed, role: 'limit' as const }]),
    ],
  };
}

/** Fewer give a median that hangs on one nose (EN 1230-1). */
const ENOUGH_ASSESSORS = 6;
/** Grades farther apart than this: repeat (common practice). */
const WIDE_RANGE = 2;

function intensityResults(grades: number[], control: number[] | undefined, level: number): Part {
  const n = grades.length;
  if (control && control.length !== n) throw new InputError('controlIntensities', control.length, `The control needs a grade from each of the ${n} assessors, not ${control.length}.`);
  const median = medianOf(grades, level);
  const { minimum, maximum } = summarise(grades);
  const controlMedian = control ? medianOf(control, level) : null;
  const flags: Flag[] = [];
  if (n < ENOUGH_ASSESSORS) flags.push({ code: 'too-few-assessors', where: 'intensities', text: `EN 1230-1 asks for at least ${ENOUGH_ASSESSORS} assessors; there ${n === 1 ? 'is' : 'are'} ${n}.` });
  if (maximum - minimum > WIDE_RANGE) flags.push({ code: 'wide-range', where: 'intensities', text: `The grades run from ${minimum} to ${maximum}; repeat with fresh specimens.` });
  if (controlMedian && controlMedian.value! >= 1) flags.push({ code: 'control-smells', where: 'controlIntensities', text: `The control itself was graded ${controlMedian.value} in the median: jars, room or film smell.` });
  return {
    results: {
      median,
      // Its ends are grades, not an interval of the width: they stand in words.
      range: { ...valueWithoutInterval(maximum - minimum, '', n), text: `${maximum - minimum}, from ${minimum} to ${maximum}` },
      ...(controlMedian && { controlMedian }),
    },
    flags,
    notes: [`0 none, 1 just perceptible, 2 moderate, 3 moderately strong, 4 strong. ${median.level === null ? 'Fewer than six grades give no interval of the median.' : 'The interval of the median runs from grade to grade.'}`],
    figures: [intensityFigure(grades, control, median)],
  };
}

function medianOf(grades: number[], level: number): ResultValue {
  const value = summarise(grades).median;
  const found = medianRank(grades.length, level);
  const text = String(value);
  if (!found) return { ...valueWithoutInterval(value, '', grades.length), text };
  const sorted = [...grades].sort((a, b) => a - b);
  return { value, text, unit: '', low: sorted[found.rank - 1]!, high: sorted[grades.length - found.rank]!, level, n: grades.length, bound: 'exact' };
}

function intensityFigure(grades: number[], control: number[] | undefined, median: ResultValue): Figure {
  const points = (values: number[]) => values.map((y, x) => ({ x, y }));
  return {
    id: 'intensities',
    title: 'Strength of the smell',
    finding: `Median ${median.value} from ${grades.length} ${grades.length === 1 ? 'assessor' : 'assessors'}.`,
    x: { title: 'Assessor', scale: 'category', categories: grades.map((_, index) => `${index + 1}`) },
    y: { title: 'Smell', scale: 'linear', min: 0, max: 4 },
    series: [
      { name: 'print', kind: 'points', role: 'reading', points: points(grades) },
      ...(control ? [{ name: 'control', kind: 'points' as const, role: 'reference' as const, points: points(control) }] : []),
    ],
    lines: [{ name: 'median', axis: 'y', value: median.value!, role: 'mean' }],
  };
}
