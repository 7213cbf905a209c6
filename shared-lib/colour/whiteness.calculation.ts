import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { replicatesFigure } from '../figure/replicates-figure.ts';
import { levelSchema } from '../statistics/level.ts';
import { meanOfReplicates } from '../statistics/mean-of-replicates.ts';
import { observerDegrees } from './observers.ts';
import { cieWhiteness, whitenessConstants, whitenessOld, yellownessD1925, yellownessE313 } from './whiteness.ts';
import { xyzSchema, type Xyz } from './xyz.ts';

const input = z.strictObject({
  /** One reading [X, Y, Z] or several, all under the illuminant and observer stated. */
  xyz: z.union([xyzSchema, z.array(xyzSchema).min(1).max(1000)]),
  illuminant: z.enum(['C', 'D65']),
  observer: z.literal(observerDegrees),
  /** Chromaticity of the perfect diffuser, where another than that of CIE 015 is agreed. */
  whitePoint: z.tuple([z.number().gt(0).lt(1), z.number().gt(0).lt(1)]).optional(),
  level: levelSchema,
});

export const whitenessCalculation = defineCalculation({
  id: 'whiteness',
  version: '1',
  title: 'Whiteness and yellowness',
  input,
  compute: ({ xyz, illuminant, observer, whitePoint, level }) => {
    const readings = (Array.isArray(xyz[0]) ? xyz : [xyz]) as Xyz[];
    const old = illuminant === 'C' && observer === 2;
    const white = whitePoint ?? whitenessConstants[illuminant][observer].white;
    const rows = readings.map((reading, index) => {
      if (reading[1] <= 0) throw new InputError(readings.length === 1 ? 'xyz[1]' : `xyz[${index}][1]`, reading[1], 'Y must be above zero; a black has neither whiteness nor yellowness.');
      return {
        reading: index + 1,
        yellownessE313: yellownessE313(reading, illuminant, observer),
        yellownessD1925: old ? yellownessD1925(reading) : null,
        ...cieWhiteness(reading, observer, white),
        whitenessOld: old ? whitenessOld(reading) : null,
      };
    });
    const mean = (values: (number | null)[]): ResultValue => {
      const known = values.filter((value) => value !== null);
      return known.length === 0 ? valueWithoutInterval(null, '', 0) : meanOfReplicates(known, '', level);
    };
    const keys = ['yellownessE313', 'yellownessD1925', 'whiteness', 'tint', 'whitenessOld'] as const;
    const results = Object.fromEntries(keys.map((key) => [key, mean(rows.map((row) => row[key]))])) as Record<(typeof keys)[number], ResultValue>;
    return {
      results,
      table: rows,
      flags: rows.flatMap((row, index) => outsideFlags(row, readings[index]![1])),
      notes: [
        `Illuminant ${illuminant}, ${observer}° observer; white point ${white[0]}, ${white[1]}.`,
        ...(old ? [] : ['Yellowness by ASTM D1925 and the old whiteness of ASTM E313 are defined for illuminant C, 2° only.']),
      ],
      figures: [
        replicatesFigure('whiteness-readings', 'Whiteness', '', rows.map((row) => row.whiteness), results.whiteness),
        replicatesFigure('yellowness-readings', 'Yellowness, E313', '', rows.map((row) => row.yellownessE313), results.yellownessE313),
      ],
    };
  },
  columns: [
    { key: 'reading', title: 'Reading' },
    { key: 'whiteness', title: 'Whiteness', decimals: 1 },
    { key: 'tint', title: 'Tint', decimals: 1 },
    { key: 'yellownessE313', title: 'Yellowness E313', decimals: 2 },
    { key: 'yellownessD1925', title: 'Yellowness D1925', decimals: 2 },
    { key: 'whitenessOld', title: 'Old whiteness', decimals: 1 },
  ],
  cautions: [],
  sources: ['ASTM E313 (yellowness, whiteness, tint)', 'ASTM D1925 (withdrawn)', 'CIE 015 (whiteness, tint; bounds from memory)'],
});

/** CIE whiteness compares whites only: 40 < W < 5Y − 280, −4 < tint < 2 (from memory). */
function outsideFlags({ reading, whiteness, tint }: { reading: number; whiteness: number; tint: number }, Y: number): Flag[] {
  if (whiteness > 40 && whiteness < 5 * Y - 280 && tint > -4 && tint < 2) return [];
  return [{ code: 'not-white', where: `reading ${reading}`, text: `Reading ${reading} is too dark or too tinted for the whiteness formula, which is made for whites (W 40 to ${(5 * Y - 280).toFixed(0)}, tint −4 to 2).` }];
}
