import type { Field, Property } from '../method/method.ts';

export const nominalField: Field = { kind: 'number', key: 'nominalPct', label: 'Nominal', unit: '%', min: 0, max: 100, required: true, steps: [0, 5, 10, 20, 25, 30, 40, 50, 60, 70, 75, 80, 90, 95, 100], hint: '0 the unprinted film, 100 the solid' };
export const reportField: Field = { kind: 'number', key: 'reportAtPct', label: 'Report at', unit: '% nominal', min: 1, max: 99, default: 50, required: true };

export const toneValueProperties: Property[] = [
  { key: 'gainPct', title: 'Tone value increase', unit: '%', better: 'within', limited: true, headline: true, readingsFigure: 'gain-readings' },
  { key: 'toneValuePct', title: 'Tone value', unit: '%', better: 'within', limited: true, headline: true, readingsFigure: 'tone-value-readings' },
];
