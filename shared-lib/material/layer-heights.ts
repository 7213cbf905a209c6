import type { Layer } from './layer.ts';

/** Thin layers must be seen beside thick ones: ink and adhesive have one height, a film grows by the root of its thickness. */
const THIN = 20;
const FILM = 24;
const PER_ROOT_UM = 3.6;
/** A film that nobody gave a thickness is drawn as this one. */
const USUAL_FILM_UM = 20;

/** Heights to draw the layers in, in pixels; not to scale, but of two films the thicker is never drawn the thinner. */
export function layerHeights(layers: readonly Layer[]): number[] {
  return layers.map(({ kind, thicknessUm }) => (kind === 'film' ? Math.round(FILM + PER_ROOT_UM * Math.sqrt(thicknessUm ?? USUAL_FILM_UM)) : THIN));
}
