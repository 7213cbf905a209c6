import type { TableColumn } from '../calculation/table-column.ts';
import type { ResultValue, TableRow } from '../calculation/result.ts';
import { studentTQuantile } from '../statistics/distributions.ts';
import type { FadeLife } from './fade-life.ts';
import type { FadeParameter } from './fade-model.ts';
import type { SeriesFit } from './fit-fade-models.ts';

export const fadeLifeColumns: TableColumn[] = [
  { key: 'series', title: 'Series' },
  { key: 'model', title: 'Model' },
  { key: 'formula', title: 'Curve' },
  { key: 'rate', title: 'Rate' },
  { key: 'scale', title: 'Scale' },
  { key: 'shape', title: 'Shape', decimals: 3 },
  { key: 'plateau', title: 'Plateau', decimals: 2 },
  { key: 'residualSumOfSquares', title: 'Residual sum of squares' },
  { key: 'aicc', title: 'AICc', decimals: 2 },
  { key: 'deltaAicc', title: 'ΔAICc', decimals: 2 },
  { key: 'chosen', title: 'Chosen' },
  { key: 'exposureToLimit', title: 'Exposure to limit' },
  { key: 'low', title: 'Low' },
  { key: 'high', title: 'High' },
  { key: 'bound', title: 'Bound' },
];

/**
 * One row for each model of each series. `deltaAicc` compares the sums over all series, by which one model is chosen for
 * all. For models that were not chosen `exposureToLimit` is where their curve meets the limit, `null` if it never does.
 */
export function fadeLifeTable({ fits, choice, lives }: FadeLife, limit: number | null): TableRow[] {
  const criteria = fits.flatMap(({ aicc }) => (aicc === null ? [] : [aicc]));
  const least = criteria.length === 0 ? null : Math.min(...criteria);
  return choice.chosen.series.flatMap((_, index) =>
    fits.map((fit): TableRow => {
      const one = fit.series[index]!;
      const chosen = fit === choice.chosen;
      return {
        series: one.series.name,
        model: fit.model.id,
        formula: fit.model.formula,
        rate: null,
        scale: null,
        shape: null,
        plateau: null,
        ...Object.fromEntries(fit.model.parameters.map(({ name }, place) => [name, one.fit.parameters[place]!])),
        residualSumOfSquares: one.fit.residualSumOfSquares,
        aicc: one.aicc,
        deltaAicc: fit.aicc === null || least === null ? null : fit.aicc - least,
        chosen,
        ...lifeCells(chosen ? lives[index] : undefined, limit === null ? Infinity : fit.model.exposureAt(limit, one.fit.parameters)),
      };
    }),
  );
}

function lifeCells(life: ResultValue | undefined, crossing: number): TableRow {
  if (life) return { exposureToLimit: life.value, low: life.low, high: life.high, bound: life.bound };
  return { exposureToLimit: Number.isFinite(crossing) ? crossing : null, low: null, high: null, bound: null };
}

/** The parameters of one fitted curve by name, with t intervals from their standard errors. */
export function parameterResults(parameters: readonly FadeParameter[], { fit, problem }: SeriesFit, exposureUnit: string, level: number): Record<string, ResultValue> {
  const units = { 'per-exposure': `1/${exposureUnit.includes('/') ? `(${exposureUnit})` : exposureUnit}`, exposure: exposureUnit, none: '' };
  return Object.fromEntries(
    parameters.map(({ name, dimension }, place): [string, ResultValue] => {
      const value = fit.parameters[place]!;
      const standardError = fit.standardErrors[place] ?? null;
      const reach = standardError === null ? null : standardError * studentTQuantile((1 + level) / 2, fit.degreesOfFreedom);
      const interval = reach === null ? { low: null, high: null, level: null } : { low: value - reach, high: value + reach, level };
      return [name, { value, unit: units[dimension], ...interval, n: problem.x.length, bound: 'exact' }];
    }),
  );
}
