import type { ItemField } from './method.ts';

/**
 * The condition of every test that is read with a calibrated instrument: which one it was. Readings taken while its
 * calibration did not hold are flagged (`equipment/instrument-doubt.ts`).
 */
export const instrumentField: ItemField = {
  kind: 'item',
  of: 'instrument',
  key: 'instrument',
  label: 'Instrument',
  hint: 'one of Materials, Instruments and fluids, whose calibration is then watched, or any other by its name',
};

/** A second apparatus beside the instrument that is read, such as the lamp that fades what a densitometer then reads. */
export function apparatusField(key: string, label: string): ItemField {
  return { ...instrumentField, key, label };
}
