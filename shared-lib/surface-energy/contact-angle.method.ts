import type { Method, Property } from '../method/method.ts';
import { contactAngleSheet } from './contact-angle-sheet.ts';

const total: Property = { key: 'total', title: 'Surface energy', unit: 'mN/m', better: 'higher', limited: true, headline: true };
const part = (key: string, title: string, headline = false): Property => ({
  key,
  title,
  unit: 'mN/m',
  better: 'within',
  limited: true,
  headline,
});

/** Surface energy in dispersive and polar part from drops of two or more liquids (Owens–Wendt or Wu). */
export const contactAngleMethod: Method = contactAngleSheet({
  id: 'contact-angle',
  title: 'Surface energy from contact angles: dispersive and polar part',
  shortTitle: 'Contact angle',
  models: [
    { value: 'owens-wendt', label: 'Owens–Wendt (geometric mean)', shortcut: 'o' },
    { value: 'wu', label: 'Wu (harmonic mean)', shortcut: 'w' },
  ],
  sets: ['strom', 'owens-wendt', 'wu', 'annamalai'],
  liquids: ['water', 'diiodomethane', 'ethylene glycol', 'formamide', 'glycerol'],
  properties: [total, part('polar', 'Polar part', true), part('dispersive', 'Dispersive part')],
});

/** Surface energy in Lifshitz–van der Waals, acid and base part from drops of three or more liquids. */
export const contactAngleAcidBaseMethod: Method = contactAngleSheet({
  id: 'contact-angle-acid-base',
  title: 'Surface energy from contact angles: acid and base part',
  shortTitle: 'Contact angle, acid–base',
  models: [{ value: 'acid-base', label: 'van Oss–Chaudhury–Good', shortcut: 'v' }],
  sets: ['van-oss'],
  liquids: ['water', 'diiodomethane', 'ethylene glycol', 'formamide', 'glycerol', 'dimethyl sulfoxide', '1-bromonaphthalene'],
  properties: [
    total,
    part('lifshitz', 'Lifshitz–van der Waals part'),
    part('acid', 'Acid part'),
    part('base', 'Base part'),
    part('acidBase', 'Acid–base part', true),
  ],
});
