import type { Caution } from '../method/method.ts';

/** Hazards of the formamide and 2-ethoxyethanol fluids, for whatever has them in hand. */
export const fluidCautions: Caution[] = [
  {
    hazard: 'toxic',
    text:
      'Formamide and 2-ethoxyethanol are toxic to reproduction and pass through the skin: gloves, extraction, and nobody who is or may be ' +
      'pregnant. The safety data sheet and local rules go first.',
  },
  { hazard: 'solvent', text: '2-Ethoxyethanol is flammable: no flame or spark near the fluids; collect used swabs in a closed container.' },
  { hazard: 'food-contact', text: 'Film that was touched by a test fluid is waste and never goes back to the roll or near food.' },
];
