import { z } from 'zod';

/** A density as read, absolute or minus paper; a tint minus paper may come out a hair below zero. */
export const densitySchema = z.number().min(-0.05).max(6);

/** Whether the paper's (or unprinted film's) own density is in the number. */
export const densityBases = ['absolute', 'minus-paper'] as const;
export type DensityBasis = (typeof densityBases)[number];

/** The basis as it is printed behind the number, so that it is never parted from it. */
export const basisUnit: Record<DensityBasis, string> = { absolute: 'absolute', 'minus-paper': 'minus paper' };
