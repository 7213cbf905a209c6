import type { ResultValue } from '../calculation/result.ts';
import { commonDomain } from '../figure/strip-domain.ts';
import type { StripSpec } from '../figure/strip.ts';
import { gradeDomain } from '../method/grade-scale.ts';
import type { Property } from '../method/method.ts';
import type { Response } from '../notebook/trial-entries.ts';
import type { Comparison, TrialCell } from '../notebook/trial-views.ts';
import { formatValue, NO_NUMBER, plainDecimals, sharedDecimals } from '../quantity/format.ts';
import type { ColumnTrial } from './column-trial.ts';
import { compareTrials } from './compare-trials.ts';
import { usefulRange } from './response-head.ts';
import { summariseTrial } from './summarise-trial.ts';

export interface ResponseColumn {
  comparison: Comparison;
  /** By `trialId`. */
  cells: Record<string, TrialCell>;
}

const LEVEL = 0.95;

/** One column of the table: every trial's readings of one response, summed up, drawn on one scale and compared. */
export function responseColumn(response: Response, property: Property, trials: readonly ColumnTrial[]): ResponseColumn {
  const kind = property.kind ?? 'number';
  const summaries = trials.map(({ readings }) => summariseTrial(readings, kind, property.unit, LEVEL));
  const decimals = decimalsOf(kind, summaries.flatMap((summary) => summary?.result ?? []));
  const strips = trials.map((trial, index) => stripOf(response, trial, summaries[index]?.result ?? null, property.title, decimals));
  const domain = gradeDomain(property) ?? commonDomain(strips.filter((strip) => strip !== null));
  const compared = compareTrials(response, property, trials, LEVEL);
  const cells = trials.map((trial, index): [string, TrialCell] => {
    const summary = summaries[index] ?? null;
    const strip = strips[index] ?? null;
    const text = summary ? formatValue(summary.result, [], decimals) : { text: NO_NUMBER, intervalText: '' };
    return [
      trial.trialId,
      {
        n: trial.readings.length,
        value: summary?.result.value ?? null,
        text: summary && kind === 'grade' ? `median ${text.text}` : text.text,
        intervalText: text.intervalText,
        strip: strip && { ...strip, domain },
        letters: compared.letters.get(trial.name) ?? '',
        difference: compared.differences.get(trial.name) ?? null,
        desirability: null,
        note: summary?.note ?? (trial.tests.length === 0 ? 'No finished test.' : 'No readings in its tests.'),
        tests: trial.tests,
      },
    ];
  });
  const { procedure, why, conclusions, flags } = compared;
  return { comparison: { procedure, why, conclusions, flags, domain }, cells: Object.fromEntries(cells) };
}

/** One number of decimals for the whole column. Medians of grades keep their halves. */
function decimalsOf(kind: 'number' | 'grade', results: ResultValue[]): number {
  return kind === 'grade' ? Math.max(0, ...results.map(({ value }) => plainDecimals(value ?? 0))) : sharedDecimals(results);
}

function stripOf(response: Response, { name, readings }: ColumnTrial, result: ResultValue | null, title: string, decimals: number): StripSpec | null {
  if (!result) return null;
  const { lower, upper } = usefulRange(response);
  const { text, intervalText } = formatValue(result, [], decimals);
  return {
    unit: result.unit,
    readings,
    value: result.value,
    low: result.low,
    high: result.high,
    bound: result.bound,
    lowerLimit: lower,
    upperLimit: upper,
    domain: null,
    label: `${name}, ${title}: ${text}${intervalText ? `, ${intervalText}` : ''}, from ${result.n} ${result.n === 1 ? 'reading' : 'readings'}.`,
  };
}
