import type { Caution } from '../method/method.ts';

/** What to heed before anybody smells a print. */
export const odourCautions: Caution[] = [
  { hazard: 'solvent', text: 'Smell only what the safety data sheets allow; no fresh prints with much solvent in them, and nobody who is pregnant, ill or allergic to what may be there. Anyone may stop at any time.' },
  { hazard: 'food-contact', text: 'A panel finds smell, not harm: whether a print may touch food is decided by the food-contact law of the place and a licensed laboratory.' },
];
