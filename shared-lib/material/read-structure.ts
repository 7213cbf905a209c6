import { InputError } from '../calculation/input-error.ts';
import { readDecimal } from '../quantity/decimal.ts';
import { MOST_LAYERS, type Layer } from './layer.ts';

/** Inks, adhesives and coatings by a word of their name; everything else is a film. */
const KINDS: [RegExp, Layer['kind']][] = [
  [/\b(ink|inks|print)\b/i, 'ink'],
  [/\b(adhesive|glue)\b/i, 'adhesive'],
  [/\b(primer|lacquer|varnish|coating|coat|cold seal)\b/i, 'coating'],
];
const TREATED = /\s+treated(?:\s+(\p{L}+)(?:\s+sides?)?)?$/iu;
const SIDES: Record<string, 'outer' | 'inner' | 'both'> = { outer: 'outer', outside: 'outer', out: 'outer', inner: 'inner', inside: 'inner', in: 'inner', both: 'both' };
const SIZE = /\s+([\d.,]+)\s*(µm|μm|um|microns?|g\/m²)?$/iu;
const OTHER_UNIT = /\s[\d.,]+\s*(mm|cm|nm|in|mil|mils|gauge|ga|g)$/iu;

/**
 * Layers of a structure as it is typed, from the outside of the pack to the inside: 'PET 12 / ink / adhesive / PE 60'.
 * A number after a film is its thickness in µm, with or without the unit; ink, adhesive and coating need 'µm' or 'g/m²' said.
 * 'treated inner', 'treated outer' or 'treated both' ends a film. '' has no layers.
 * @throws InputError on `structure`
 */
export function readStructure(typed: string): Layer[] {
  if (typed.trim() === '') return [];
  const parts = typed.replace(/g\s*\/\s*m(?:²|2|\^2)/gi, 'g∕m²').split('/');
  if (parts.length > MOST_LAYERS) throw new InputError('structure', typed, `A structure has at most ${MOST_LAYERS} layers; this has ${parts.length}.`);
  const layers = parts.map((part, index) => readLayer(part.replaceAll('∕', '/').trim(), index + 1));
  if (!layers.some(({ kind }) => kind === 'film')) throw new InputError('structure', typed, 'A structure has at least one film, such as PET 12.');
  return layers;
}

function readLayer(text: string, number: number): Layer {
  const refuse = (why: string) => new InputError('structure', text, `Layer ${number}${text ? ` (${text.slice(0, 40)})` : ''} ${why}`);
  if (text === '') throw refuse('is empty; write each layer between two slashes, such as PET 12 / ink / adhesive / PE 60.');
  const treated = TREATED.exec(text);
  const untreated = treated ? text.slice(0, treated.index) : text;
  const kind = KINDS.find(([word]) => word.test(untreated))?.[1] ?? 'film';
  const size = SIZE.exec(untreated);
  const unit = size?.[2]?.toLowerCase();
  if (size && kind !== 'film' && unit === undefined) throw refuse(`has a number without its unit: say the unit, ${size[1]} g/m² or ${size[1]} µm. A number that belongs to the name is joined to it: ${kind}-${size[1]}.`);
  const isSize = size !== null;
  const name = (isSize ? untreated.slice(0, size.index) : untreated).trim();
  if (!isSize && OTHER_UNIT.test(untreated)) throw refuse('takes its thickness in µm, ink and adhesive also in g/m².');
  if (name.length > 100) throw refuse('has a name of more than 100 characters.');
  const amount = isSize ? readDecimal(size[1]!) : null;
  if (amount && 'problem' in amount) throw refuse(`has a thickness that cannot be read. ${amount.problem}`);
  const isCoat = unit === 'g/m²';
  if (isCoat && kind === 'film') throw refuse('is a film and takes its thickness in µm.');
  const most = isCoat ? 1000 : 5000;
  if (amount && (amount.value <= 0 || amount.value > most)) throw refuse(`must have more than 0 and at most ${most} ${isCoat ? 'g/m²' : 'µm'}.`);
  return { kind, name, thicknessUm: amount && !isCoat ? amount.value : null, coatGsm: amount && isCoat ? amount.value : null, treated: treated ? readSide(treated[1], kind, refuse) : null };
}

function readSide(word: string | undefined, kind: Layer['kind'], refuse: (why: string) => InputError): Layer['treated'] {
  if (kind !== 'film') throw refuse('is no film; only a film is treated.');
  const side = SIDES[(word ?? '').toLowerCase()];
  if (!side) throw refuse('says that it is treated, but not on which side: outer, inner or both.');
  return side;
}
