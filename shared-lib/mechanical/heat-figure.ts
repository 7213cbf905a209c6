import type { ResultValue } from '../calculation/result.ts';
import type { Figure } from '../figure/figure.ts';
import { formatWithInterval } from '../quantity/format.ts';
import { clopperPearson } from '../statistics/clopper-pearson.ts';
import { logistic, type EventStep, type LogisticFit } from '../statistics/logistic-fit.ts';

const CURVE_POINTS = 60;

/** Share that failed against temperature, with its exact interval and the fitted curve where there is one. */
export function heatFigure(steps: readonly EventStep[], fit: LogisticFit | null, { t50, t05 }: { t50: ResultValue; t05: ResultValue }, level: number): Figure {
  const points = steps.map(({ x, tried, events }) => {
    const { low, high } = clopperPearson(events, tried, level);
    return { x, y: (100 * events) / tried, low: 100 * low, high: 100 * high };
  });
  // A temperature far outside those tested is no reason to squeeze these together.
  const [coolest, hottest] = [steps[0]!.x, steps.at(-1)!.x];
  const range = hottest - coolest;
  const near = [t05.value, t50.value].filter((value) => value !== null && value > coolest - range && value < hottest + range) as number[];
  return {
    id: 'failures',
    title: 'Failures against temperature',
    finding: `Temperature at which half fail: ${words(t50)}; 5 %: ${words(t05)}.`,
    x: { title: 'Temperature', unit: '°C', scale: 'linear' },
    y: { title: 'Failed', unit: '%', scale: 'linear', min: 0, max: 100 },
    series: [
      { name: 'share failed', kind: 'points', role: 'reading', points },
      ...(fit === null ? [] : [{ name: 'fitted curve', kind: 'line' as const, role: 'fit' as const, points: curve(fit, Math.min(coolest, ...near), Math.max(hottest, ...near)) }]),
    ],
    lines: fit === null ? [] : [{ name: '50 %', axis: 'y', value: 50, role: 'mark' }, { name: '5 %', axis: 'y', value: 5, role: 'mark' }],
  };
}

function words(result: ResultValue): string {
  return result.value === null ? 'not known' : formatWithInterval(result);
}

function curve({ intercept, slope }: LogisticFit, from: number, to: number) {
  return Array.from({ length: CURVE_POINTS + 1 }, (_, step) => {
    const x = from + ((to - from) * step) / CURVE_POINTS;
    return { x, y: 100 * logistic(intercept + slope * x) };
  });
}
