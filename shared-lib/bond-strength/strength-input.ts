import { z } from 'zod';
import { InputError } from '../calculation/input-error.ts';
import { strengthOf } from './strength.ts';

/** The two ways to give the strength of a strip: as it is, or as a force on a width. */
export const strengthFields = {
  strengthNPer15mm: z.number().min(0).optional(),
  forceN: z.number().min(0).optional(),
  widthMm: z.number().positive().max(1000).optional(),
};

interface StrengthInput {
  strengthNPer15mm?: number | undefined;
  forceN?: number | undefined;
  widthMm?: number | undefined;
}

/**
 * The strength in N/15 mm of one item of a list.
 * @param path of the item as the caller wrote it, e.g. `specimens[2]`.
 * @param name of the item at the start of a sentence, e.g. 'Specimen 3'.
 * @throws InputError for neither way or both.
 */
export function readStrength(item: StrengthInput, path: string, name: string): number {
  const { strengthNPer15mm, forceN, widthMm } = item;
  if (strengthNPer15mm !== undefined) {
    const twice = forceN !== undefined ? 'forceN' : widthMm !== undefined ? 'widthMm' : null;
    if (twice) throw new InputError(`${path}.${twice}`, item[twice], `${name}: give either strengthNPer15mm or forceN with widthMm, not both.`);
    return strengthNPer15mm;
  }
  if (forceN === undefined) {
    throw new InputError(`${path}.${widthMm === undefined ? 'strengthNPer15mm' : 'forceN'}`, null, `${name} has no strength: give strengthNPer15mm, or forceN with widthMm.`);
  }
  if (widthMm === undefined) throw new InputError(`${path}.widthMm`, null, `${name} has a force without the width of its strip: give widthMm.`);
  return strengthOf(forceN, widthMm, 'N/15 mm');
}
