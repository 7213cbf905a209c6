import type { ReferenceColour } from '../method/reference-colour.ts';
import type { MeasurementLight } from './measurement-light.ts';

/** The light that a reference colour stands under; what it does not state is left out. */
export function lightOfReference({ illuminant, observer, condition, geometry }: Pick<ReferenceColour, 'illuminant' | 'observer' | 'condition' | 'geometry'>): MeasurementLight {
  return { illuminant, observer, ...(condition ? { condition } : {}), ...(geometry ? { geometry } : {}) };
}
