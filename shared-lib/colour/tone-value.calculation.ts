import { z } from 'zod';
import { defineCalculation, type Outcome } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { replicatesFigure } from '../figure/replicates-figure.ts';
import { levelSchema } from '../statistics/level.ts';
import { meanOfReplicates } from '../statistics/mean-of-replicates.ts';
import { meanOf } from '../statistics/summarise.ts';
import { dotArea } from './dot-area.ts';
import { listOf, oneOrMore } from './replicates.ts';
import { spotToneValue } from './spot-tone-value.ts';
import { toneCurveFigure } from './tone-curve-figure.ts';
import { toneValueForm, type DensityForm, type SpotForm } from './tone-value-input.ts';

/** A density or a list of them, or [X, Y, Z]; which of the two follows from `paper`. */
const reading = oneOrMore(z.number());
const nominal = z.number().gt(0).max(100);

const input = z.strictObject({
  solid: reading,
  paper: reading,
  /** One patch … */
  tint: reading.optional(),
  nominalPct: nominal.optional(),
  /** … or those of a tone curve; a nominal value that comes again is a replicate. */
  patches: z.array(z.strictObject({ nominalPct: nominal, tint: reading })).min(1).max(1000).optional(),
  /** The patch of a tone curve whose tone value is the result; the nearest is taken. */
  reportAtPct: nominal.default(50),
  /** Yule–Nielsen factor; without it Murray–Davies. */
  n: z.number().min(1).max(10).optional(),
  /** White point of the tristimulus values; default D50, 2°. */
  white: z.array(z.number()).length(3).optional(),
  level: levelSchema,
});

export const toneValueCalculation = defineCalculation({
  id: 'tone-value',
  version: '1',
  title: 'Tone value and gain',
  input,
  compute: (given) => {
    const form = toneValueForm(given);
    return 'spot' in form ? compute(spotPatches(form.spot), form.spot) : compute(densityPatches(form.density), form.density);
  },
  columns: [
    { key: 'nominalPct', title: 'Nominal', unit: '%', decimals: 1 },
    { key: 'toneValuePct', title: 'Tone value', unit: '%', decimals: 1 },
    { key: 'gainPct', title: 'Gain', unit: '%', decimals: 1 },
    { key: 'n', title: 'n' },
  ],
  cautions: [],
  sources: [
    'Murray & Davies 1936, J. Franklin Inst. 221, 721; ISO 12647-1',
    'Yule & Nielsen 1951 (factor n)',
    'ISO 20654 (spot colour tone value, from memory)',
  ],
});

interface Patch {
  nominalPct: number | null;
  /** Tone values in percent, one per reading. */
  values: number[];
}

interface Patches {
  patches: Patch[];
  formula: string;
}

function densityPatches({ solid, paper, tint, nominalPct, patches, n }: DensityForm): Patches {
  const overPaper = meanOf(listOf(solid)) - paper;
  if (!(overPaper > 0)) throw new InputError('solid', overPaper + paper, `The solid (${overPaper + paper}) must be denser than the paper (${paper}).`);
  const toneValues = (readings: number | number[], field: string) =>
    listOf(readings).map((one) => {
      if (one - paper > overPaper) throw new InputError(field, one, `The solid (${overPaper + paper}) is lighter than this tint (${one}); check that they are not exchanged.`);
      return 100 * dotArea(overPaper, one - paper, n);
    });
  const read = patches
    ? patches.map((patch, index) => ({ nominalPct: patch.nominalPct, values: toneValues(patch.tint, `patches[${index}].tint`) }))
    : [{ nominalPct: nominalPct ?? null, values: toneValues(needed(tint), 'tint') }];
  return { patches: read, formula: n === undefined ? 'Murray–Davies' : `Yule–Nielsen with n = ${n}` };
}

function spotPatches({ solid, paper, tint, nominalPct, patches, white }: SpotForm): Patches {
  if (Math.min(...white) <= 0) throw new InputError('white', Math.min(...white), 'The white point must be above zero in X, Y and Z.');
  if (solid.every((value, index) => value === paper[index])) throw new InputError('solid', solid, 'The solid has the colour of the paper; there is no way between them to measure along.');
  const toneValue = (one: SpotForm['solid']) => 100 * spotToneValue(paper, solid, one, white);
  const read = patches
    ? patches.map((patch) => ({ nominalPct: patch.nominalPct, values: [toneValue(patch.tint)] }))
    : [{ nominalPct: nominalPct ?? null, values: [toneValue(needed(tint))] }];
  return { patches: read, formula: 'ISO 20654, spot colour' };
}

function needed<Tint>(tint: Tint | undefined): Tint {
  if (tint === undefined) throw new InputError('tint', null, 'Give the reading of a tint, or patches of a tone curve.');
  return tint;
}

function compute({ patches, formula }: Patches, { reportAtPct, level }: { reportAtPct: number; level: number }): Outcome {
  const groups = grouped(patches);
  const gainsOf = ({ nominalPct, values }: Patch) => (nominalPct === null ? [] : values.map((value) => value - nominalPct));
  const distance = ({ nominalPct }: Patch) => Math.abs((nominalPct ?? 0) - reportAtPct);
  const reported = groups.reduce((nearest, group) => (distance(group) < distance(nearest) ? group : nearest));
  const gains = gainsOf(reported);
  const toneValuePct = meanOfReplicates(reported.values, '%', level);
  const gainPct: ResultValue = gains.length === 0 ? valueWithoutInterval(null, '%', 0) : meanOfReplicates(gains, '%', level);
  const at = reported.nominalPct === null ? '' : ` of the ${reported.nominalPct} % patch`;
  const curve = groups.flatMap((group) => (group.nominalPct === null ? [] : [{ nominalPct: group.nominalPct, toneValuePct: meanOf(group.values) }]));
  return {
    results: { toneValuePct, gainPct },
    table: groups.map((group) => ({
      nominalPct: group.nominalPct,
      toneValuePct: meanOf(group.values),
      gainPct: group.nominalPct === null ? null : meanOf(gainsOf(group)),
      n: group.values.length,
    })),
    flags: groups.flatMap(flagsOf),
    notes: [
      `Formula: ${formula}. Tone value and gain are those${at === '' ? ' of the tint' : at}.`,
      ...(gains.length === 0 ? ['No gain: the nominal value of the tint is not given.'] : []),
      ...(toneValuePct.n === 1 ? ['One reading gives no interval; read the patch several times along the sheet.'] : ['Intervals hold the scatter of the tint; the solid enters by its mean.']),
    ],
    figures: [
      ...(curve.length > 0 ? [toneCurveFigure(curve, `The tone value${at} is ${toneValuePct.value!.toFixed(1)} %, a gain of ${gainPct.value!.toFixed(1)} %; ${curve.length} patch${curve.length === 1 ? '' : 'es'}.`)] : []),
      replicatesFigure('tone-value-readings', `Tone value${at}`, '%', reported.values, toneValuePct),
      ...(gains.length > 0 ? [replicatesFigure('gain-readings', `Gain${at}`, '%', gains, gainPct)] : []),
    ],
  };
}

function grouped(patches: Patch[]): Patch[] {
  const groups = new Map<number | null, Patch>();
  for (const { nominalPct, values } of patches) {
    const group = groups.get(nominalPct);
    if (group) group.values.push(...values);
    else groups.set(nominalPct, { nominalPct, values: [...values] });
  }
  return [...groups.values()].sort((one, other) => (one.nominalPct ?? 0) - (other.nominalPct ?? 0));
}

function flagsOf({ nominalPct, values }: Patch): Flag[] {
  const where = nominalPct === null ? 'tint' : `${nominalPct} % patch`;
  if (values.some((value) => value < 0)) return [{ code: 'tint-below-paper', where, text: `At the ${where} a reading is lighter than the paper, which makes its tone value negative.` }];
  if (values.some((value) => value > 100)) return [{ code: 'beyond-solid', where, text: `At the ${where} the colour lies farther from the paper than the solid; check that they are not exchanged.` }];
  return [];
}
