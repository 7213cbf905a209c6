import type { PlanStress } from './plan.ts';

/** A kind of pack, described by what its print must endure and by nothing else: the tests follow from that. */
export interface EndUse {
  id: string;
  title: string;
  stresses: PlanStress[];
}

/** `'cold:frozen'` → stress and degree. */
function endUse(id: string, title: string, ...stresses: string[]): EndUse {
  return {
    id,
    title,
    stresses: stresses.map((text) => {
      const [stress, degree = ''] = text.split(':');
      return { stress: stress!, degree };
    }),
  };
}

const dried = 'printing:dried';
const cured = 'printing:cured';

/** The end uses that a plan can begin from. */
export const endUses: readonly EndUse[] = [
  endUse('frozen-pouch', 'Frozen pouch', dried, 'colour', 'lamination:film', 'sealing:usual', 'machine', 'rubbing:transport', 'flexing', 'cold:frozen', 'water:humid', 'food:usual'),
  endUse('retort-pouch', 'Retort pouch', dried, 'colour', 'lamination:foil', 'sealing:hot', 'heat:retort', 'water:wet', 'food:sensitive'),
  endUse('hot-filled-pouch', 'Hot-filled pouch', dried, 'colour', 'lamination:film', 'sealing:usual', 'heat:hot-fill', 'water:humid', 'food:usual'),
  endUse('snack-bag', 'Snack bag', dried, 'colour', 'lamination:metallised', 'sealing:usual', 'machine', 'rubbing:transport', 'flexing', 'grease', 'light:shop', 'food:sensitive', 'aroma:taken'),
  endUse('detergent-laminate', 'Detergent laminate', dried, 'colour', 'lamination:film', 'sealing:usual', 'rubbing:transport', 'chemical', 'water:wet', 'load:pallet'),
  endUse('outdoor-sack', 'Outdoor sack', dried, 'rubbing:transport', 'load:pallet', 'water:wet', 'light:outdoors', 'weather'),
  endUse('shrink-sleeve', 'Shrink sleeve', dried, 'colour', 'shrinking', 'machine', 'rubbing:transport', 'water:humid', 'load:reel'),
  endUse('dry-food-aroma', 'Dry food with aroma', dried, 'colour', 'lamination:film', 'sealing:usual', 'machine', 'food:sensitive', 'aroma:taken', 'load:reel'),
  endUse('lidding', 'Lidding', dried, 'sealing:hot', 'machine', 'cold:chilled', 'water:humid', 'grease', 'food:usual', 'load:reel'),
  endUse('paper-free-label', 'Paper-free label', cured, 'colour', 'machine', 'rubbing:transport', 'water:wet', 'light:shop', 'load:reel'),
  endUse('microwave-pouch', 'Microwave pouch', dried, 'colour', 'lamination:film', 'sealing:usual', 'cold:frozen', 'microwave', 'grease', 'food:sensitive'),
  endUse('ground-coffee-brick', 'Ground coffee brick', dried, 'colour', 'lamination:metallised', 'sealing:usual', 'machine', 'rubbing:transport', 'flexing', 'food:usual', 'aroma:given', 'load:pallet'),
  endUse('shelf-sachet', 'Sachet on a window shelf', dried, 'colour', 'lamination:film', 'sealing:usual', 'rubbing:handling', 'light:window', 'food:usual'),
];

const byId = new Map(endUses.map((use) => [use.id, use]));

/** The built-in end use with this id; `undefined` for '' and for one that only another version of the program knows. */
export function endUseById(id: string): EndUse | undefined {
  return byId.get(id);
}
