import type { TraceReading } from '../../shared-lib/notebook/entry.ts';

export const LENGTH_UNITS = ['mm', 'cm', 'm', 'in'] as const satisfies readonly TraceReading['displacementUnit'][];
export const FORCE_UNITS = ['N', 'mN', 'kN', 'gf', 'kgf', 'lbf'] as const satisfies readonly TraceReading['forceUnit'][];

/** Other ways in which files write a unit. Case counts only for 'mN' (a meganewton, 'MN', is no peel force). */
const LENGTH_WORDS: Record<string, TraceReading['displacementUnit']> = {
  mm: 'mm', millimeter: 'mm', millimetre: 'mm', millimeters: 'mm', millimetres: 'mm',
  cm: 'cm', centimeter: 'cm', centimetre: 'cm',
  m: 'm', meter: 'm', metre: 'm',
  in: 'in', inch: 'in', inches: 'in', zoll: 'in', '"': 'in',
};
const FORCE_WORDS: Record<string, TraceReading['forceUnit']> = {
  n: 'N', newton: 'N', newtons: 'N', kn: 'kN',
  gf: 'gf', g: 'gf', gram: 'gf', grams: 'gf', p: 'gf', pond: 'gf',
  kgf: 'kgf', kg: 'kgf', kp: 'kgf',
  lbf: 'lbf', lb: 'lbf', lbs: 'lbf',
};

export function lengthUnit(word: string): TraceReading['displacementUnit'] | null {
  return LENGTH_WORDS[word.trim().toLowerCase()] ?? null;
}

export function forceUnit(word: string): TraceReading['forceUnit'] | null {
  const text = word.trim();
  return text === 'mN' ? 'mN' : (FORCE_WORDS[text.toLowerCase()] ?? null);
}
