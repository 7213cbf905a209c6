import type { Layer, LayerSide } from './layer.ts';

/**
 * Which side of each film is printed, `null` for none and for what is no film. Ink lies on the film before it, on its
 * inner side, where nothing but ink or coating is between; otherwise on the outer side of the film after it.
 * @param layers from the outside of the pack to the inside
 */
export function printedSides(layers: readonly Layer[]): (LayerSide | null)[] {
  const sides = layers.map((): LayerSide | null => null);
  for (const [index, { kind }] of layers.entries()) {
    if (kind !== 'ink') continue;
    const before = filmFrom(layers, index, -1);
    const after = filmFrom(layers, index, 1);
    if (before !== null) sides[before] = both(sides[before]!, 'inner');
    else if (after !== null) sides[after] = both(sides[after]!, 'outer');
  }
  return sides;
}

/** The next film that way with nothing but ink or coating between. */
function filmFrom(layers: readonly Layer[], from: number, step: 1 | -1): number | null {
  for (let index = from + step; index >= 0 && index < layers.length; index += step) {
    const { kind } = layers[index]!;
    if (kind === 'film') return index;
    if (kind === 'adhesive') return null;
  }
  return null;
}

function both(known: LayerSide | null, side: LayerSide): LayerSide {
  return known === null || known === side ? side : 'both';
}
