import { z } from 'zod';
import { deltaE2000 } from './delta-e-2000.ts';
import { deltaE94 } from './delta-e-94.ts';
import { deltaEab } from './delta-e-ab.ts';
import { deltaECmc, type CmcWeights } from './delta-e-cmc.ts';
import type { Lab } from './lab.ts';

/** The colour-difference formulas by the name of their result. */
export const differenceFormulaNames = ['deltaEab', 'deltaE94', 'deltaECMC', 'deltaE00'] as const;
export type DifferenceFormula = (typeof differenceFormulaNames)[number];

export const differenceFormulas: Record<DifferenceFormula, { title: string; of: (reference: Lab, sample: Lab, cmc: CmcWeights) => number }> = {
  deltaEab: { title: 'ΔE*ab', of: deltaEab },
  deltaE94: { title: 'ΔE94', of: deltaE94 },
  deltaECMC: { title: 'ΔE CMC', of: deltaECmc },
  deltaE00: { title: 'ΔE00', of: deltaE2000 },
};

const weight = z.number().gt(0).max(10);
export const cmcSchema = z.strictObject({ l: weight, c: weight }).default({ l: 2, c: 1 });

/** A difference that the customer still takes, and the formula it is meant by. */
export const toleranceSchema = z.strictObject({ on: z.enum(differenceFormulaNames).default('deltaE00'), limit: z.number().gt(0).max(100) });
export type Tolerance = z.output<typeof toleranceSchema>;
