import type { ItemField, NumberField } from '../method/method.ts';
import { fluidSteps } from './fluid-table.ts';

const fluid = { kind: 'number' as const, unit: 'mN/m', min: 18, max: 75, usual: { min: 30, max: 56 }, steps: [...fluidSteps] };

/** The two cells of a bracket by test fluids; one of them may stay empty. */
export const fluidFields: NumberField[] = [
  { ...fluid, key: 'wetsMNm', label: 'Holds for 2 s', hint: 'highest fluid whose film stays whole' },
  { ...fluid, key: 'retractsMNm', label: 'Retracts within 2 s', hint: 'lowest fluid whose film breaks' },
];

/** Which fluids: readings with a set past its last day are flagged. */
export const fluidLotField: ItemField = {
  kind: 'item',
  of: 'fluid',
  key: 'fluidLot',
  label: 'Fluid set and lot',
  hint: 'one of Materials, Instruments and fluids, or any other with the date it was last checked',
};
