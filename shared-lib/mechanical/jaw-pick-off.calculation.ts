import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import type { Figure, ReferenceLine } from '../figure/figure.ts';
import { formatNumber, formatPlain, formatValue } from '../quantity/format.ts';
import { clopperPearson } from '../statistics/clopper-pearson.ts';
import { levelSchema } from '../statistics/level.ts';
import { medianGrade } from '../statistics/median-grade.ts';
import { gradeSchema } from './grade-field.ts';

const celsius = z.number().min(0).max(500);

const input = z.strictObject({
  /** One per seal: jaw temperature and how much print it took, 5 none to 0. */
  seals: z.array(z.strictObject({ celsius, grade: gradeSchema })).min(1).max(1000),
  /** Grades below this one count as picked off. */
  pickedBelow: z.int().min(1).max(5).default(5),
  /** Jaw temperature in production. */
  sealingC: celsius.optional(),
  level: levelSchema,
});
type Input = z.output<typeof input>;

/** Between two steps the beginning may lie anywhere. */
const COARSE_C = 10;

/** The seals made at one temperature. */
interface Step {
  celsius: number;
  grades: number[];
  picked: number;
}

export const jawPickOffCalculation = defineCalculation({
  id: 'jaw-pick-off',
  version: '1',
  title: 'Print picked off by a sealing jaw',
  input,
  compute: (given) => {
    const { seals, pickedBelow, sealingC, level } = given;
    const steps = stepsOf(given);
    const begins = beginsOf(steps, seals.length);
    const atSealing = steps.find((step) => step.celsius === sealingC)?.grades ?? [];
    return {
      results: {
        begins,
        margin: sealingC === undefined ? valueWithoutInterval(null, '°C', 0) : above(begins, sealingC),
        gradeAtSealing: atSealing.length === 0 ? valueWithoutInterval(null, '', 0) : medianGrade(atSealing, 'higher'),
        worst: valueWithoutInterval(Math.min(...seals.map(({ grade }) => grade)), '', seals.length),
      },
      table: steps.map((step) => {
        const { low, high } = clopperPearson(step.picked, step.grades.length, level);
        const share = (100 * step.picked) / step.grades.length;
        return { celsius: step.celsius, seals: step.grades.length, picked: step.picked, sharePct: share, low: 100 * low, high: 100 * high, median: medianGrade(step.grades, 'higher').value };
      }),
      flags: flagsOf(steps),
      notes: [
        `A seal with a grade below ${pickedBelow} counts as picked off. The scale of grades is ours, after common practice.`,
        beginNote(begins),
        ...chanceNote(steps, begins, level),
        ...(sealingC === undefined ? ['No margin: the jaw temperature in production is not given.'] : atSealing.length === 0 ? [`No grade at ${formatPlain(sealingC)} °C: no seal was made there.`] : []),
      ],
      figures: [figure(given, steps, begins)],
    };
  },
  columns: [
    { key: 'celsius', title: 'Jaw', unit: '°C' },
    { key: 'seals', title: 'Seals', decimals: 0 },
    { key: 'picked', title: 'Picked off', decimals: 0 },
    { key: 'sharePct', title: 'Share', unit: '%', decimals: 0 },
    { key: 'low', title: 'From', unit: '%', decimals: 0 },
    { key: 'high', title: 'To', unit: '%', decimals: 0 },
    { key: 'median', title: 'Median grade', decimals: 0 },
  ],
  cautions: [],
  sources: ['Print against a heated jaw at stated temperature, pressure and time: common practice, no single standard', 'Clopper & Pearson 1934 (exact interval of the share)'],
});

function stepsOf({ seals, pickedBelow }: Input): Step[] {
  const temperatures = [...new Set(seals.map((seal) => seal.celsius))].sort((a, b) => a - b);
  return temperatures.map((at) => {
    const grades = seals.filter((seal) => seal.celsius === at).map(({ grade }) => grade);
    return { celsius: at, grades, picked: grades.filter((grade) => grade < pickedBelow).length };
  });
}

/** Between the lowest step that picked and the step below it; a bound where one of them is missing. */
function beginsOf(steps: readonly Step[], n: number): ResultValue {
  const first = steps.findIndex(({ picked }) => picked > 0);
  if (first === -1) {
    const highest = steps[steps.length - 1]!.celsius;
    return { value: highest, unit: '°C', low: highest, high: null, level: null, n, bound: 'at-least' };
  }
  const high = steps[first]!.celsius;
  if (first === 0) return { value: high, unit: '°C', low: null, high, level: null, n, bound: 'at-most' };
  const low = steps[first - 1]!.celsius;
  return { value: (low + high) / 2, unit: '°C', low, high, level: null, n, bound: 'between' };
}

function above(begins: ResultValue, sealingC: number): ResultValue {
  const less = (value: number | null) => (value === null ? null : value - sealingC);
  return { ...begins, value: less(begins.value), low: less(begins.low), high: less(begins.high) };
}

function beginNote({ bound, value, low, high }: ResultValue): string {
  if (bound === 'at-least') return `No seal was picked off up to ${formatPlain(value!)} °C: it begins above, if at all.`;
  if (bound === 'at-most') return `The lowest temperature, ${formatPlain(value!)} °C, picked off already: it begins there or below.`;
  return `Pick-off begins between ${formatPlain(low!)} °C, where no seal was picked off, and ${formatPlain(high!)} °C, the lowest temperature at which one was.`;
}

/** Few clean seals do not rule out that some would be picked off. */
function chanceNote(steps: readonly Step[], begins: ResultValue, level: number): string[] {
  const clean = begins.low === null ? undefined : steps.find((step) => step.celsius === begins.low);
  if (!clean) return [];
  const count = clean.grades.length;
  const most = clopperPearson(0, count, level).high * 100;
  return [`${count} clean ${count === 1 ? 'seal' : 'seals'} at ${formatPlain(clean.celsius)} °C leave${count === 1 ? 's' : ''} room for up to ${formatNumber(most, 0)} % of all seals there being picked off (exact ${formatPlain(level * 100)} % interval).`];
}

function flagsOf(steps: readonly Step[]): Flag[] {
  const first = steps.findIndex(({ picked }) => picked > 0);
  if (first === -1) return [];
  const cleanAbove = steps.slice(first + 1).filter(({ picked }) => picked === 0);
  const flags: Flag[] = cleanAbove.map((step) => ({
    code: 'clean-above',
    where: 'seals',
    text: `No seal was picked off at ${formatPlain(step.celsius)} °C, but one was at ${formatPlain(steps[first]!.celsius)} °C: look for a dirty jaw or a swapped specimen, and seal more.`,
  }));
  if (first > 0 && steps[first]!.celsius - steps[first - 1]!.celsius > COARSE_C) {
    flags.push({ code: 'coarse-steps', where: 'seals', text: `From ${formatPlain(steps[first - 1]!.celsius)} to ${formatPlain(steps[first]!.celsius)} °C is a coarse step; temperatures between them would tell more.` });
  }
  return flags;
}

function figure({ seals, sealingC, pickedBelow }: Input, steps: readonly Step[], begins: ResultValue): Figure {
  const lines: ReferenceLine[] = sealingC === undefined ? [] : [{ name: 'sealing temperature', axis: 'x', value: sealingC, role: 'mark' }];
  const { text } = formatValue(begins);
  return {
    id: 'pick-off',
    title: 'Print left by the jaw',
    finding: `Pick-off begins ${begins.bound === 'between' ? text : `at ${text}`}; ${seals.length} ${seals.length === 1 ? 'seal' : 'seals'} at ${steps.length} ${steps.length === 1 ? 'temperature' : 'temperatures'}.`,
    x: { title: 'Jaw temperature', unit: '°C', scale: 'linear' },
    y: { title: 'Grade', scale: 'linear', min: 0, max: 5 },
    series: [
      { name: 'seals', kind: 'points', role: 'reading', points: seals.map((seal) => ({ x: seal.celsius, y: seal.grade })) },
      { name: 'median', kind: 'line', role: 'fit', points: steps.map((step) => ({ x: step.celsius, y: medianGrade(step.grades, 'higher').value })) },
    ],
    lines: [...lines, { name: `picked off below ${pickedBelow}`, axis: 'y', value: pickedBelow, role: 'mark' }],
  };
}
