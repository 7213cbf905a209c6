import type { Caution } from './method.ts';

/** Hazards as they are written before a caution. */
export const hazardWords: Record<Caution['hazard'], string> = {
  toxic: 'Toxic',
  solvent: 'Solvent',
  uv: 'UV light',
  ozone: 'Ozone',
  blade: 'Blade',
  heat: 'Heat',
  'food-contact': 'Food contact',
  electrical: 'Electrical',
};
