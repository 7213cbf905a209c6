import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { deltaE2000 } from './delta-e-2000.ts';
import { deltaE94 } from './delta-e-94.ts';
import { deltaEab } from './delta-e-ab.ts';
import { deltaECmc } from './delta-e-cmc.ts';
import { labDifference } from './lab-difference.ts';
import { labSchema } from './lab.ts';

const weight = z.number().gt(0).max(10);

export const colourDifferenceCalculation = defineCalculation({
  id: 'colour-difference',
  version: '1',
  title: 'Colour difference',
  input: z.strictObject({
    reference: labSchema,
    sample: labSchema,
    cmc: z.strictObject({ l: weight, c: weight }).default({ l: 2, c: 1 }),
  }),
  compute: ({ reference, sample, cmc }) => {
    const { deltaL, deltaC, deltaH } = labDifference(reference, sample);
    const single = (value: number) => valueWithoutInterval(value, '', 1);
    return {
      results: {
        deltaEab: single(deltaEab(reference, sample)),
        deltaE94: single(deltaE94(reference, sample)),
        deltaECMC: single(deltaECmc(reference, sample, cmc)),
        deltaE00: single(deltaE2000(reference, sample)),
        deltaL: single(deltaL),
        deltaC: single(deltaC),
        deltaH: single(deltaH),
      },
      notes: [
        `CMC weights ${cmc.l}:${cmc.c}. ΔE94 and CMC weight by the reference: exchanging the two colours changes them.`,
        'One pair of colours gives no interval; measure several places to see the scatter.',
      ],
    };
  },
  columns: [],
  cautions: [],
  sources: [
    'ISO/CIE 11664-4 (ΔE*ab, ΔL*, ΔC*, ΔH*)',
    'CIE 116-1995 (ΔE94, graphic-arts weights)',
    'ISO 105-J03 (CMC l:c)',
    'ISO/CIE 11664-6; Sharma, Wu & Dalal 2005, Color Res. Appl. 30, 21–30 (ΔE00)',
  ],
});
