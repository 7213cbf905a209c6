import type { Layer } from './layer.ts';

/** 'PET 12 µm treated inner / ink / adhesive 1.8 g/m² / PE 60 µm': reads back to the same layers. */
export function structureText(layers: readonly Layer[]): string {
  return layers.map(layerText).join(' / ');
}

/** 'PET 12 µm treated inner' */
export function layerText({ name, thicknessUm, coatGsm, treated }: Layer): string {
  return [name, ...(thicknessUm === null ? [] : [`${thicknessUm} µm`]), ...(coatGsm === null ? [] : [`${coatGsm} g/m²`]), ...(treated ? [`treated ${treated}`] : [])].join(' ');
}
