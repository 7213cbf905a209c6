import { z } from 'zod';
import { defineCalculation, type Outcome } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import { fadeCautions } from './fade-cautions.ts';
import { fadeLifeFigure } from './fade-life-figure.ts';
import { fadeLifeColumns, fadeLifeTable, parameterResults } from './fade-life-table.ts';
import { fadeLife, type FadeLife } from './fade-life.ts';
import { deltaEQuantity, retainedQuantity, type FadeQuantity } from './fade-quantity.ts';
import { fadeSeries, needEnoughExposed } from './fade-series.ts';
import { convertExposureResult, exposureUnits } from './radiant-exposure.ts';
import { retainedFractions } from './retained-fraction.ts';
import { serviceTime, serviceTimeCaution } from './service-time.ts';

const input = z.strictObject({
  /** `retained` (fraction or percent) or `deltaE`, the same for all; `series` names a replicate patch. */
  readings: z
    .array(
      z.strictObject({
        exposure: z.number().min(0).max(1e9),
        retained: z.number().min(-20).max(200).optional(),
        deltaE: z.number().min(0).max(1000).optional(),
        series: z.string().max(100).optional(),
      }),
    )
    .min(2)
    .max(5000),
  exposureUnit: z.enum(exposureUnits).default('h'),
  /** Over the band of wavelengths in which the exposure is stated. */
  irradianceWPerM2: z.number().gt(0).max(5000).optional(),
  retainedAs: z.enum(['fraction', 'percent']).optional(),
  endpoint: z
    .strictObject({ retentionPct: z.number().gt(0).lt(100).default(70), deltaE: z.number().gt(0).max(1000).optional() })
    .default({ retentionPct: 70 }),
  /** Radiant exposure in a year where the print is used, in the same band of wavelengths. */
  yearlyDoseMJPerM2: z.number().gt(0).max(1e5).optional(),
  level: z.number().gt(0).lt(1).default(0.95),
});

type Given = z.output<typeof input>;

export const fadeLifeCalculation = defineCalculation({
  id: 'fade-life',
  version: '1',
  title: 'Fade: exposure until the limit',
  input,
  compute,
  columns: fadeLifeColumns,
  cautions: fadeCautions,
  sources: [
    'ISO 18909 (30 % loss of density as an illustrative endpoint, from memory)',
    'C. M. Hurvich, C.-L. Tsai, Biometrika 76 (1989) 297 (AICc)',
    'D. M. Bates, D. G. Watts, Nonlinear Regression Analysis and Its Applications (1988), 6.1 (profile interval)',
    'K. P. Burnham, D. R. Anderson, Sociol. Methods Res. 33 (2004) 261 (models that AICc does not rule out)',
  ],
});

function compute(given: Given): Outcome {
  const { values, kind, note } = valuesOf(given);
  const quantity = kind === 'retained' ? retainedQuantity : deltaEQuantity;
  const limit = kind === 'retained' ? given.endpoint.retentionPct / 100 : (given.endpoint.deltaE ?? null);
  const { exposureUnit, irradianceWPerM2, level } = given;
  const series = fadeSeries(given.readings, values);
  needEnoughExposed(series);
  const fitted = fadeLife(quantity, series, limit, exposureUnit, level);
  const { chosen } = fitted.choice;

  const results: Record<string, ResultValue> = {};
  const notes = [...(note ? [note] : []), ...choiceNotes(fitted, series.length)];
  if (fitted.life) {
    results.exposureToLimit = fitted.life;
    const other = exposureUnit === 'h' ? 'kJ/m²' : 'h';
    const converted = convertExposureResult(fitted.life, exposureUnit, other, irradianceWPerM2);
    if (converted) results[other === 'h' ? 'hoursToLimit' : 'radiantExposureToLimit'] = converted;
  } else {
    notes.push('No exposure to a limit: set endpoint.deltaE.');
  }
  if (given.yearlyDoseMJPerM2 !== undefined && fitted.life) {
    results.serviceTime = serviceTime(fitted.life, exposureUnit, irradianceWPerM2, given.yearlyDoseMJPerM2);
  }
  if (series.length === 1) Object.assign(results, parameterResults(chosen.model.parameters, chosen.series[0]!, exposureUnit, level));
  return {
    results,
    table: fadeLifeTable(fitted, limit),
    flags: [...startFlags(given, values, quantity), ...fitted.flags],
    notes,
    cautions: results.serviceTime ? [serviceTimeCaution] : [],
    figures: [fadeLifeFigure(quantity, fitted, limit, exposureUnit, level)],
  };
}

function valuesOf({ readings, retainedAs }: Given): { values: number[]; kind: 'retained' | 'deltaE'; note?: string } {
  const kind = readings[0]!.deltaE === undefined ? 'retained' : 'deltaE';
  const other = kind === 'retained' ? 'deltaE' : 'retained';
  const values = readings.map((reading, index) => {
    const value = reading[kind];
    if (value === undefined || reading[other] !== undefined) {
      throw new InputError(`readings[${index}].${kind}`, value ?? null, 'Each reading needs either retained or deltaE, the same one for all readings.');
    }
    return value;
  });
  if (kind === 'deltaE') return { values, kind };
  const { fractions, note } = retainedFractions(values, retainedAs);
  return { values: fractions, kind, note };
}

/** A reading at exposure 0 that is not unfaded: the curve is held at the start all the same. */
function startFlags({ readings }: Given, values: number[], { unfaded, startTolerance }: FadeQuantity): Flag[] {
  return readings.flatMap(({ exposure }, index) =>
    exposure === 0 && Math.abs(values[index]! - unfaded) > startTolerance
      ? [{ code: 'start-not-unfaded', where: `readings[${index}]`, text: `At exposure 0 nothing has faded by definition, yet this reading is ${values[index]}; the curve starts at ${unfaded} and counts it as scatter.` }]
      : [],
  );
}

function choiceNotes({ choice, lives, rivals }: FadeLife, series: number): string[] {
  const { chosen, why } = choice;
  const notes = [
    why === 'exact'
      ? `The readings lie on the curve (${chosen.model.title}) without scatter, so that no interval can be given.`
      : `Model: ${chosen.model.title}${why === 'aicc' ? ', by the smallest AICc' : ''}.`,
  ];
  if (rivals.length > 0) {
    const titles = rivals.map(({ model }) => model.title).join(', ');
    notes.push(`The interval spans the models that the readings do not rule out (AICc higher by 7 at most): this one and ${titles}.`);
  } else if (why !== 'exact') notes.push('The interval holds for this model; it does not contain the choice among models.');
  if (series > 1) {
    notes.push('The series count as replicate patches of one print: one model for all, the exposure to the limit is the geometric mean of theirs.');
    if (new Set(lives.map(({ bound }) => bound)).size > 1) notes.push('Some patches give only a bound; the mean is then a bound as well, or cannot be given.');
  }
  return notes;
}
