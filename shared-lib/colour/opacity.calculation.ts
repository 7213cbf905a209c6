import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { replicatesFigure } from '../figure/replicates-figure.ts';
import { levelSchema } from '../statistics/level.ts';
import { meanOfReplicates } from '../statistics/mean-of-replicates.ts';
import { kubelkaMunkLayer } from './kubelka-munk.ts';
import { inStep, oneOrMore } from './replicates.ts';

const luminous = oneOrMore(z.number().min(0).max(120));

const input = z.strictObject({
  /** Y of the same place over black and over white, in percent. */
  overBlackY: luminous,
  overWhiteY: luminous,
  /** Y of the white backing alone, in percent; with it the opacity over other backings follows. */
  whiteBackingY: z.number().gt(0).max(100).optional(),
  level: levelSchema,
});

/** Opacities over other backings, each by the R∞ and SX of the layer, 0–1. */
const extrapolations = {
  t425Pct: { title: 'TAPPI T 425, 89 % backing', backing: 0.89 },
  d2805Pct: { title: 'ASTM D2805, 80 % backing', backing: 0.8 },
  iso2471Pct: { title: 'ISO 2471, own pile', backing: null },
} as const;
const extrapolated = Object.keys(extrapolations) as (keyof typeof extrapolations)[];

export const opacityCalculation = defineCalculation({
  id: 'opacity',
  version: '1',
  title: 'Opacity by contrast ratio',
  input,
  compute: ({ overBlackY, overWhiteY, whiteBackingY, level }) => {
    const sets = inStep({ overBlackY, overWhiteY });
    const rows = sets.map((set, index) => {
      const at = (field: string, given: number | number[]) => (Array.isArray(given) ? `${field}[${index}]` : field);
      if (set.overWhiteY <= 0) throw new InputError(at('overWhiteY', overWhiteY), set.overWhiteY, 'overWhiteY must be above zero.');
      if (set.overBlackY > set.overWhiteY) {
        throw new InputError(at('overBlackY', overBlackY), set.overBlackY, `The place is lighter over black (${set.overBlackY}) than over white (${set.overWhiteY}); check that the readings are not exchanged.`);
      }
      return { reading: index + 1, ...set, contrastRatioPct: (100 * set.overBlackY) / set.overWhiteY, ...otherBackings(set.overBlackY / 100, set.overWhiteY / 100, whiteBackingY) };
    });
    const mean = (values: (number | null)[]): ResultValue => {
      const known = values.filter((value) => value !== null);
      return known.length === 0 ? valueWithoutInterval(null, '%', 0) : meanOfReplicates(known, '%', level);
    };
    const contrastRatioPct = mean(rows.map((row) => row.contrastRatioPct));
    const results: Record<string, ResultValue> = { contrastRatioPct };
    for (const key of extrapolated) results[key] = mean(rows.map((row) => row[key]));
    return {
      results,
      table: rows,
      flags: whiteBackingY === undefined ? [] : rows.filter((row) => row.t425Pct === null).map((row) => noLayer(row.reading)),
      notes: [
        'Contrast ratio 100·Y over black / Y over white (ISO 13655 backings); it holds for the backings used.',
        whiteBackingY === undefined
          ? 'No opacity over other backings: it needs the Y of the white backing alone.'
          : `Opacities over other backings follow by Kubelka–Munk from the white backing of ${whiteBackingY} %; the black was taken as 0 % (at most 0.5 % by TAPPI T 425).`,
      ],
      figures: [replicatesFigure('opacity-readings', 'Contrast ratio', '%', rows.map((row) => row.contrastRatioPct), contrastRatioPct)],
    };
  },
  columns: [
    { key: 'reading', title: 'Reading' },
    { key: 'overBlackY', title: 'Y over black', unit: '%', decimals: 2 },
    { key: 'overWhiteY', title: 'Y over white', unit: '%', decimals: 2 },
    { key: 'contrastRatioPct', title: 'Contrast ratio', unit: '%', decimals: 2 },
    ...extrapolated.map((key) => ({ key, title: extrapolations[key].title, unit: '%', decimals: 2 })),
  ],
  cautions: [],
  sources: [
    'ISO 13655 (opacity over black and white backing)',
    'ISO 2471; TAPPI T 425; ASTM D2805 (from memory)',
    'Kubelka 1948, J. Opt. Soc. Am. 38, 448',
  ],
});

/** Opacities over other backings in percent; `null` where they do not follow. */
function otherBackings(overBlack: number, overWhite: number, whiteBackingY: number | undefined): Record<keyof typeof extrapolations, number | null> {
  const layer = whiteBackingY === undefined ? null : kubelkaMunkLayer(overBlack, overWhite, whiteBackingY / 100);
  const over = (backing: number | null) => (layer === null ? null : (100 * overBlack) / (backing === null ? layer.infinite : layer.over(backing)));
  return { t425Pct: over(extrapolations.t425Pct.backing), d2805Pct: over(extrapolations.d2805Pct.backing), iso2471Pct: over(extrapolations.iso2471Pct.backing) };
}

function noLayer(reading: number): Flag {
  return { code: 'no-layer', where: `reading ${reading}`, text: `At reading ${reading} no layer of the Kubelka–Munk theory gives both values over this backing: it hides all or nothing, or a reading is wrong.` };
}
