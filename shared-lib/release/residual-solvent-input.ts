import { z } from 'zod';
import { InputError } from '../calculation/input-error.ts';
import { levelSchema } from '../statistics/level.ts';
import { sigmaChoices } from './detection-limits.ts';

/** Milligrams in one of each unit of the standards. */
export const milligramsPer = { ng: 1e-6, ug: 1e-3, 'µg': 1e-3, mg: 1 } as const;

const area = z.number().min(0).max(1e15);
const areaM2 = z.number().gt(0).max(100);

const solventFields = {
  /** Of this solvent alone, mg/m². */
  limitMgM2: z.number().gt(0).max(1e6).optional(),
  /** External calibration: mass of solvent in the vial, and its peak. */
  calibration: z.array(z.strictObject({ amount: z.number().min(0).max(1e9), area })).min(2).max(1000).optional(),
  /** Peaks of each piece of print (replicate injections), and its area. With `headspace` the area alone. */
  specimens: z.array(z.strictObject({ areas: z.array(area).min(1).max(1000).optional(), areaM2 })).min(1).max(200).optional(),
  /** Peaks of blank vials, for `sigma: 'blanks'`. */
  blanks: z.array(area).max(1000).optional(),
  /** Multiple headspace extraction, in the place of a calibration. */
  headspace: z
    .strictObject({
      sampleAreas: z.array(area).min(2).max(100),
      standardAreas: z.array(area).min(2).max(100),
      standardUg: z.number().gt(0).max(1e9),
      areaM2: areaM2.optional(),
    })
    .optional(),
};

export const residualSolventInput = z.strictObject({
  name: z.string().max(100).default(''),
  ...solventFields,
  /** Several solvents of one run, in the place of the fields above. */
  solvents: z.array(z.strictObject({ name: z.string().trim().min(1).max(100), ...solventFields })).min(1).max(60).optional(),
  amountUnit: z.enum(['ng', 'ug', 'µg', 'mg']).default('µg'),
  weighting: z.enum(['none', '1/x']).default('none'),
  sigma: z.enum(sigmaChoices).default('residual'),
  level: levelSchema,
});

export type ResidualSolventInput = z.output<typeof residualSolventInput>;
export type SolventInput = Pick<ResidualSolventInput, keyof typeof solventFields | 'name'> & {
  /** Path of its fields in the input: '' or `solvents[2].`. */
  path: string;
};

/**
 * The solvents of the input, whichever way they were given.
 * @throws InputError when one has both or neither way of quantification, or two bear one name
 */
export function solventsOf({ solvents, ...given }: ResidualSolventInput): SolventInput[] {
  if (solvents && (given.calibration || given.specimens || given.headspace || given.blanks || given.limitMgM2 !== undefined)) {
    throw new InputError('solvents', null, 'Give one solvent, or a list of solvents, not both.');
  }
  const list: SolventInput[] = solvents ? solvents.map((solvent, index) => ({ ...solvent, path: `solvents[${index}].` })) : [{ ...given, path: '' }];
  list.forEach(({ name, calibration, headspace, path }, index) => {
    if (!calibration === !headspace) {
      throw new InputError(`${path}calibration`, null, `${name || 'The solvent'} needs either calibration standards or a multiple headspace extraction${calibration ? ', not both' : ''}.`);
    }
    if (list.findIndex((other) => other.name === name) !== index) throw new InputError(`${path}name`, name, `${name} is given twice.`);
  });
  return list;
}
