import type { PlanStress } from './plan.ts';

/** Something that a print must endure in its use. */
export interface Stress {
  id: string;
  title: string;
  /** What it does to the print, in one sentence. */
  does: string;
  /** From mild to harsh, where it matters how much; the first is taken unless another is chosen. */
  degrees: readonly { id: string; title: string }[];
}

/** Every stress that a plan can be made from, in the order in which they are asked for. */
export const stresses: readonly Stress[] = [
  {
    id: 'printing',
    title: 'Printed on film',
    does: 'The ink must wet the film, hold on it and be dry or cured when it is wound up.',
    degrees: [
      { id: 'dried', title: 'dried ink (solvent or water)' },
      { id: 'cured', title: 'cured ink (ultraviolet light or electron beam)' },
    ],
  },
  { id: 'colour', title: 'Compared with others on the shelf', does: 'A pack of another shade beside it is taken for a fault.', degrees: [] },
  {
    id: 'lamination',
    title: 'Lamination over the print',
    does: 'The print is the weakest layer between two webs that are pulled apart.',
    degrees: [
      { id: 'film', title: 'film to film' },
      { id: 'metallised', title: 'to metallised film' },
      { id: 'foil', title: 'to aluminium foil' },
    ],
  },
  {
    id: 'sealing',
    title: 'Sealing jaws on the print',
    does: 'Hot jaws press on the print and may pick it off.',
    degrees: [
      { id: 'usual', title: 'jaws up to 150 °C' },
      { id: 'hot', title: 'jaws above 150 °C' },
    ],
  },
  { id: 'machine', title: 'Runs on a packing machine', does: 'The web slides over formers and rails; too much or too little friction stops it or lets it run askew.', degrees: [] },
  {
    id: 'rubbing',
    title: 'Rubbing',
    does: 'Packs rub against each other and against their case.',
    degrees: [
      { id: 'handling', title: 'handling' },
      { id: 'transport', title: 'long transport' },
    ],
  },
  { id: 'flexing', title: 'Crumpling', does: 'The film is folded and crumpled, and a stiff ink film breaks.', degrees: [] },
  {
    id: 'load',
    title: 'Storage under load',
    does: 'Layers lie on each other under pressure and warmth, and ink sticks or sets off.',
    degrees: [
      { id: 'reel', title: 'on the reel' },
      { id: 'pallet', title: 'stacked on pallets' },
    ],
  },
  {
    id: 'cold',
    title: 'Cold',
    does: 'Films and binders stiffen, and water freezes on the print.',
    degrees: [
      { id: 'chilled', title: 'chilled, about 5 °C' },
      { id: 'frozen', title: 'frozen, −18 °C' },
    ],
  },
  {
    id: 'heat',
    title: 'Heat after filling',
    does: 'Binder and adhesive soften while water and fill press on them.',
    degrees: [
      { id: 'hot-fill', title: 'hot filled, about 85 °C' },
      { id: 'pasteurised', title: 'pasteurised, up to 100 °C' },
      { id: 'retort', title: 'sterilised, 121 °C and above' },
    ],
  },
  { id: 'microwave', title: 'Microwave oven', does: 'Steam and hot fat heat the print from within, unevenly.', degrees: [] },
  {
    id: 'water',
    title: 'Water and humidity',
    does: 'Water softens binders and creeps under the ink.',
    degrees: [
      { id: 'humid', title: 'condensation' },
      { id: 'wet', title: 'lies in water or ice' },
    ],
  },
  { id: 'grease', title: 'Grease and fat', does: 'Fat swells binders and carries colourants.', degrees: [] },
  { id: 'chemical', title: 'Fill that attacks: detergent, bleach, alcohol', does: 'Surfactants and solvents of the fill go through the inner web and loosen what they reach.', degrees: [] },
  {
    id: 'food',
    title: 'Food beside the print',
    does: 'What is left of solvents and small molecules moves into the food.',
    degrees: [
      { id: 'usual', title: 'behind a film' },
      { id: 'sensitive', title: 'close, long or fatty: low migration' },
    ],
  },
  {
    id: 'aroma',
    title: 'Aroma',
    does: 'The fill takes up a foreign smell, or its own aroma attacks the laminate.',
    degrees: [
      { id: 'taken', title: 'fill that takes up smells' },
      { id: 'given', title: 'strong aroma or spice that attacks' },
    ],
  },
  {
    id: 'light',
    title: 'Light',
    does: 'Colourants fade.',
    degrees: [
      { id: 'shop', title: 'shop light indoors' },
      { id: 'window', title: 'daylight behind glass' },
      { id: 'outdoors', title: 'open daylight' },
    ],
  },
  { id: 'weather', title: 'Sun, rain and dew', does: 'Binder breaks down, chalks and lets go of the film.', degrees: [] },
  { id: 'shrinking', title: 'Shrinking', does: 'The film shrinks under a print that does not.', degrees: [] },
];

const byId = new Map(stresses.map((stress) => [stress.id, stress]));

/** The stress with this id; `undefined` for one that only another version of the program knows. */
export function stressById(id: string): Stress | undefined {
  return byId.get(id);
}

/** 'Cold: frozen, −18 °C'. */
export function stressText({ stress: id, degree }: PlanStress): string {
  const stress = byId.get(id);
  if (!stress) return degree ? `${id}: ${degree}` : id;
  const chosen = stress.degrees.find((candidate) => candidate.id === degree);
  return chosen ? `${stress.title}: ${chosen.title}` : stress.title;
}
