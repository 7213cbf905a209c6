import { z } from 'zod';
import { defineCalculation, type Outcome } from '../calculation/calculation.ts';
import { fluidCautions } from './fluid-cautions.ts';
import { fluidSteps, fluidTable, fluidTableSource } from './fluid-table.ts';
import { statedValue } from './stated-value.ts';

const input = z.strictObject({
  targetMNm: z.number().min(fluidSteps[0]!).max(fluidSteps.at(-1)!),
  batchMl: z.number().gt(0).max(10_000),
});

/** The mixture of formamide and 2-ethoxyethanol for a test fluid of a nominal wetting tension. */
export const fluidRecipeCalculation = defineCalculation({
  id: 'fluid-recipe',
  version: '1',
  title: 'Recipe of a test fluid',
  input,
  compute: ({ targetMNm, batchMl }): Outcome => {
    const { formamidePct, below, above } = formamideShare(targetMNm);
    const formamideMl = (batchMl * formamidePct) / 100;
    const interpolated = below !== above;
    return {
      results: {
        formamideMl: statedValue(formamideMl, 'mL'),
        ethoxyethanolMl: statedValue(batchMl - formamideMl, 'mL'),
        formamidePct: statedValue(formamidePct, '%'),
      },
      notes: [
        'Measure at 23 °C: the volumes contract and expand. Check the mixture against its nominal tension (common practice: within ±0.5 mN/m).',
        'The scale is empirical: 2-ethoxyethanol alone is the 30 mN/m fluid although its surface tension is about 28.6 mN/m.',
        'A recipe is exact by the table, so it has no interval.',
        ...(interpolated ? [`The standard has no ${targetMNm} mN/m fluid: the share is interpolated between ${below} and ${above} mN/m.`] : []),
      ],
      flags: interpolated
        ? [{ code: 'interpolated', where: 'targetMNm', text: `The standard has no ${targetMNm} mN/m fluid; this recipe is interpolated between its neighbours.` }]
        : [],
    };
  },
  columns: [],
  cautions: fluidCautions.map((caution) => caution.text),
  sources: [fluidTableSource],
});

/** Share of formamide, % by volume, straight between the neighbours in the table; `below === above` for a fluid of the table. */
function formamideShare(targetMNm: number): { formamidePct: number; below: number; above: number } {
  const index = fluidTable.findIndex((fluid) => fluid.tensionMNm >= targetMNm);
  const above = fluidTable[index]!;
  if (above.tensionMNm === targetMNm) return { formamidePct: above.formamidePct, below: targetMNm, above: targetMNm };
  const below = fluidTable[index - 1]!;
  const part = (targetMNm - below.tensionMNm) / (above.tensionMNm - below.tensionMNm);
  return {
    formamidePct: below.formamidePct + part * (above.formamidePct - below.formamidePct),
    below: below.tensionMNm,
    above: above.tensionMNm,
  };
}
