import { describe, expect, it } from 'vitest';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import { layerHeights } from '../../../shared-lib/material/layer-heights.ts';
import type { Layer } from '../../../shared-lib/material/layer.ts';
import { printedSides } from '../../../shared-lib/material/printed-sides.ts';
import { readStructure } from '../../../shared-lib/material/read-structure.ts';
import { structureText } from '../../../shared-lib/material/structure-text.ts';

const layer = (kind: Layer['kind'], name: string, more: Partial<Layer> = {}): Layer => ({ kind, name, thicknessUm: null, coatGsm: null, treated: null, ...more });

describe('a structure as it is typed', () => {
  it.each<[string, Layer[]]>([
    ['PET 12 / ink / adhesive / PE 60', [layer('film', 'PET', { thicknessUm: 12 }), layer('ink', 'ink'), layer('adhesive', 'adhesive'), layer('film', 'PE', { thicknessUm: 60 })]],
    ['PET 12 µm / ink R0 / adhesive 1,8 g/m2 / PE 60um', [layer('film', 'PET', { thicknessUm: 12 }), layer('ink', 'ink R0'), layer('adhesive', 'adhesive', { coatGsm: 1.8 }), layer('film', 'PE', { thicknessUm: 60 })]],
    ['OPP 20 treated inner/white ink 2 g/m²/primer 0.3 µm/CPP 25 treated both sides', [layer('film', 'OPP', { thicknessUm: 20, treated: 'inner' }), layer('ink', 'white ink', { coatGsm: 2 }), layer('coating', 'primer', { thicknessUm: 0.3 }), layer('film', 'CPP', { thicknessUm: 25, treated: 'both' })]],
    ['metallised PET 12', [layer('film', 'metallised PET', { thicknessUm: 12 })]],
    ['paper', [layer('film', 'paper')]],
    ['PE 40 / two-part adhesive-77', [layer('film', 'PE', { thicknessUm: 40 }), layer('adhesive', 'two-part adhesive-77')]],
    ['  ', []],
  ])('%s', (typed, layers) => {
    expect(readStructure(typed)).toEqual(layers);
    expect(readStructure(structureText(layers))).toEqual(layers);
  });

  it.each([
    ['PET 12 // PE 60', /Layer 2 is empty/],
    ['PET 12 / ink / ', /Layer 3 is empty/],
    ['PET 0 / PE 60', /Layer 1 .* must have more than 0 and at most 5000 µm/],
    ['PET 12000', /at most 5000 µm/],
    ['PET 12 mm / PE 60', /Layer 1 \(PET 12 mm\) takes its thickness in µm/],
    ['PET 48 gauge', /takes its thickness in µm/],
    ['PET 12 g/m²', /is a film and takes its thickness in µm/],
    ['PET 12 treated / PE 60', /on which side: outer, inner or both/],
    ['PET 12 / ink treated inner', /Layer 2 .* only a film is treated/],
    ['ink / adhesive', /at least one film/],
    // 1.8 of what? A solvent-free adhesive lies at about 1.8 g/m² as well as 1.8 µm.
    ['PET 12 / ink / adhesive 1,8 / PE 60', /Layer 3 \(adhesive 1,8\) has a number without its unit: say the unit, 1,8 g\/m² or 1,8 µm\./],
    ['PET 12 / ink 2', /say the unit, 2 g\/m² or 2 µm/],
    ['PET 12 / primer 0.3', /say the unit, 0.3 g\/m² or 0.3 µm/],
    ['PET 1.2.3', /cannot be read/],
    [Array.from({ length: 31 }, () => 'PE 5').join('/'), /at most 30 layers; this has 31/],
  ])('is refused: %s', (typed, says) => {
    const read = () => readStructure(typed);
    expect(read).toThrow(InputError);
    expect(read).toThrow(says);
  });
});

describe('the printed side of a film', () => {
  it.each([
    // Reverse print lies inside the laminate, surface print outside the pack (common use of the words).
    ['PET 12 / ink / adhesive / PE 60', ['inner', null, null, null]],
    ['ink / PE 60', [null, 'outer']],
    ['lacquer / ink / PE 60 / ink', [null, null, 'both', null]],
    ['PET 12 / adhesive / ink / PE 60', [null, null, null, 'outer']],
    ['PET 12 / primer / ink / adhesive / PE 60', ['inner', null, null, null, null]],
    ['PET 12 / adhesive / ink / adhesive / PE 60', [null, null, null, null, null]],
  ])('of %s', (typed, sides) => {
    expect(printedSides(readStructure(typed))).toEqual(sides);
  });
});

it('draws the thicker of two films never the thinner, and nothing too thin to see', () => {
  const heights = layerHeights(readStructure(Array.from({ length: 28 }, (_, index) => `PE ${2 ** (index / 2.5)}`).join('/')));
  expect(heights).toEqual(heights.toSorted((a, b) => a - b));
  expect(Math.min(...layerHeights(readStructure('PET 0,5 / ink / adhesive')))).toBeGreaterThanOrEqual(20);
});
