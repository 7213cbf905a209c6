import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import type { TableColumn } from '../calculation/table-column.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { formatNumber, formatValue } from '../quantity/format.ts';
import { clopperPearson } from '../statistics/clopper-pearson.ts';
import { chiSquareUpperTail } from '../statistics/distributions.ts';
import { levelSchema } from '../statistics/level.ts';
import { fitLogistic, logistic, poolSteps, type EventStep, type LogisticFit } from '../statistics/logistic-fit.ts';
import { logisticQuantile } from '../statistics/logistic-quantile.ts';
import { heatBounds, needed } from './heat-bounds.ts';
import { heatFigure } from './heat-figure.ts';

const UNIT = '°C';
const count = z.int().min(0).max(100_000);

const input = z.strictObject({
  /** Specimens tested at each temperature, and how many of them failed. */
  steps: z.array(z.strictObject({ celsius: z.number().min(-80).max(600), tested: count.min(1), failed: count })).min(1).max(200),
  level: levelSchema,
});
type Input = z.output<typeof input>;

const columns: TableColumn[] = [
  { key: 'celsius', title: 'Temperature', unit: UNIT },
  { key: 'tested', title: 'Tested', decimals: 0 },
  { key: 'failed', title: 'Failed', decimals: 0 },
  { key: 'failedPct', title: 'Failed', unit: '%', decimals: 1 },
  { key: 'low', title: 'Interval from', unit: '%', decimals: 1 },
  { key: 'high', title: 'Interval to', unit: '%', decimals: 1 },
  { key: 'fittedPct', title: 'By the curve', unit: '%', decimals: 1 },
];

interface Answer {
  t50: ResultValue;
  t05: ResultValue;
  /** `null` where no curve can be laid through the steps. */
  fit: LogisticFit | null;
  flags: Flag[];
  notes: string[];
}

/** Temperatures at which half and a twentieth of the specimens fail, from passes and failures at steps of temperature. */
export const heatResistanceCalculation = defineCalculation({
  id: 'heat-resistance',
  version: '1',
  title: 'Heat resistance',
  input,
  compute: ({ steps: given, level }) => {
    refuseUnusable(given);
    const steps = poolSteps(given.map(({ celsius, tested, failed }) => ({ x: celsius, tried: tested, events: failed })));
    const fit = fitLogistic(steps);
    const { t50, t05, flags, notes, fit: curve } = fit === null ? bounded(steps, level) : fit.slope > 0 ? fitted(steps, fit, level) : falling(steps);
    return {
      results: { t50, t05 },
      table: steps.map(({ x, tried, events }) => {
        const { low, high } = clopperPearson(events, tried, level);
        return { celsius: x, tested: tried, failed: events, failedPct: (100 * events) / tried, low: 100 * low, high: 100 * high, fittedPct: curve && 100 * logistic(curve.intercept + curve.slope * x) };
      }),
      flags: [...countFlags(steps), ...flags],
      notes: [...notes, 'It shows the temperature at which this print fails in this apparatus, at this pressure and dwell; another jaw, dwell or pressure gives another temperature.'],
      figures: [heatFigure(steps, curve, { t50, t05 }, level)],
    };
  },
  columns,
  cautions: [],
  sources: [
    'Logistic regression by maximum likelihood: P. McCullagh, J. A. Nelder, Generalized Linear Models, 2nd ed. (1989)',
    'Interval by the likelihood ratio: D. A. Williams, Biometrics 42 (1986) 641',
    'Steps that do not mix: A. Albert, J. A. Anderson, Biometrika 71 (1984) 1; bounds by the binomial distribution',
    'Exact interval of a share: C. J. Clopper, E. S. Pearson, Biometrika 26 (1934) 404',
  ],
});

/** @throws InputError for more failures than specimens, or one temperature only. */
function refuseUnusable(steps: Input['steps']): void {
  steps.forEach(({ tested, failed }, index) => {
    if (failed > tested) throw new InputError(`steps[${index}].failed`, failed, `failed (${failed}) cannot be more than tested (${tested}).`);
  });
  const temperatures = new Set(steps.map(({ celsius }) => celsius));
  if (temperatures.size < 2) {
    throw new InputError('steps[0].celsius', steps[0]!.celsius, `celsius needs at least two different temperatures; all specimens were tested at ${steps[0]!.celsius} °C.`);
  }
}

function fitted(steps: readonly EventStep[], fit: LogisticFit, level: number): Answer {
  const n = total(steps);
  const at = (q: number): ResultValue => {
    const { value, low, high } = logisticQuantile(steps, fit, q, level);
    return { value, unit: UNIT, low, high, level: low === null && high === null ? null : level, n, bound: 'exact' };
  };
  const [t50, t05] = [at(0.5), at(0.05)];
  const notes = ['Logistic regression of failures on temperature by maximum likelihood, profile-likelihood intervals.'];
  if ([t50, t05].some(({ low, high }) => low === null || high === null)) {
    notes.push('The failures rise too little with temperature to close the interval on both sides: test more specimens, and at temperatures farther apart.');
  }
  return { t50, t05, fit, notes, flags: [...extrapolated({ t50, t05 }, steps), ...poorFit(fit)] };
}

function bounded(steps: readonly EventStep[], level: number): Answer {
  const failed = steps.reduce((sum, { events }) => sum + events, 0);
  const [t50, t05] = [heatBounds(steps, 0.5, level), heatBounds(steps, 0.05, level)];
  const reversed = failed > 0 && failed < total(steps) && steps[0]!.events > 0 && steps.at(-1)!.events < steps.at(-1)!.tried;
  if (reversed) return falling(steps);
  const percent = Number((100 * level).toPrecision(6));
  const what = failed === 0 ? 'No specimen failed' : failed === total(steps) ? 'Every specimen failed' : 'Passes and failures mix at one temperature at most';
  const notes = [
    `${what}, so there is no curve to read a temperature from: what the counts show is a bound, each at ${percent} % confidence.`,
    `A bound on the temperature for 50 % takes ${needed(0.5, level)} specimens that agree; one on that for 5 % takes ${needed(0.95, level)} that pass from below, ${needed(0.05, level)} that fails from above.`,
  ];
  if (t05.value === null) notes.push('So few specimens say nothing about the temperature at which 5 % fail.');
  if (failed === 0) notes.push('Test hotter until some fail.');
  else if (failed === total(steps)) notes.push('Test cooler until some pass.');
  else notes.push('Steps closer together, where some pass and some fail, give a temperature with an interval.');
  return { t50, t05, fit: null, flags: [], notes };
}

function falling(steps: readonly EventStep[]): Answer {
  const none = valueWithoutInterval(null, UNIT, total(steps));
  const flag: Flag = { code: 'not-rising', where: 'steps', text: 'Failures do not rise with temperature, so no failure temperature can be given; look for another cause, or for counts exchanged.' };
  return { t50: none, t05: none, fit: null, flags: [flag], notes: ['No temperature: the share that fails does not rise with temperature.'] };
}

function total(steps: readonly EventStep[]): number {
  return steps.reduce((sum, { tried }) => sum + tried, 0);
}

function extrapolated(results: { t50: ResultValue; t05: ResultValue }, steps: readonly EventStep[]): Flag[] {
  const [coolest, hottest] = [steps[0]!.x, steps.at(-1)!.x];
  return Object.entries(results)
    .filter(([, { value }]) => value! < coolest || value! > hottest)
    .map(([name, result]) => ({
      code: 'extrapolated',
      where: name,
      text: `The temperature at which ${name === 't50' ? 'half' : '5 %'} fail, ${formatValue(result).text}, lies outside those tested, ${coolest} to ${hottest} °C: it follows from the shape of the curve alone.`,
    }));
}

function poorFit({ deviance, degreesOfFreedom }: LogisticFit): Flag[] {
  const p = degreesOfFreedom > 0 ? chiSquareUpperTail(deviance, degreesOfFreedom) : 1;
  if (p >= 0.01) return [];
  return [{ code: 'poor-fit', where: 'steps', text: `The failures scatter about the curve more than chance allows (deviance ${formatNumber(deviance, 1)} with ${degreesOfFreedom} degrees of freedom): the intervals are too short. Look for steps that were not run alike.` }];
}

function countFlags(steps: readonly EventStep[]): Flag[] {
  const few = steps.filter(({ tried }) => tried < 3);
  return few.length === 0 ? [] : [{ code: 'few-specimens', where: 'steps', text: `At ${few.map(({ x }) => `${x} °C`).join(', ')} fewer than three specimens were tested; one more or less that fails moves the result far.` }];
}
