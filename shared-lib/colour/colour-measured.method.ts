import { instrumentField } from '../method/instrument-field.ts';
import type { Field, Method, NumberField } from '../method/method.ts';
import { differenceFormulas, type DifferenceFormula } from './difference-formulas.ts';
import { backingField } from './density-conditions.ts';
import { evaluateMeasuredColour, referenceKeys, sampleKeys, toleranceFormulas } from './evaluate-measured-colour.ts';
import { illuminantNames } from './illuminants.ts';
import { measurementLightFields } from './measurement-light-fields.ts';

const coordinate = (key: string, label: string, low: number, high: number, usual: { min: number; max: number }): NumberField => ({ kind: 'number', key, label, min: low, max: high, usual });
const coordinates = (keys: readonly [string, string, string], of: string): NumberField[] => [
  coordinate(keys[0], `L*${of}`, 0, 150, { min: 0, max: 100 }),
  coordinate(keys[1], `a*${of}`, -300, 300, { min: -100, max: 110 }),
  coordinate(keys[2], `b*${of}`, -300, 300, { min: -100, max: 120 }),
];
const choice = (key: string, label: string, choices: { value: string; label: string; shortcut: string }[], more: Partial<Field> = {}): Field => ({ kind: 'choice', key, label, choices, ...more }) as Field;

/** A print's measured colour, typed or from its spectrum, against its reference, with the customer's tolerance as the limit. */
export const colourMeasuredMethod: Method = {
  id: 'colour-measured',
  version: '2',
  title: 'Measured colour against a reference',
  shortTitle: 'Colour',
  group: 'colour',
  standards: ['ISO 13655', 'ISO/CIE 11664-4', 'ISO/CIE 11664-6'],
  help: {
    shows: 'How far a print’s colour is from its reference and which way: lighter, greener, duller. Readings over a run show its drift.',
    how: [
      'Choose the reference colour of the customer: its tolerance becomes the limit. A reference that is not in Materials is typed by name with its L*, a*, b*, illuminant and observer.',
      'Calibrate; lay the film on the agreed backing; transparent film over white.',
      'Read several places, or samples in the order of the run: one row each, as a spectrum or as L*, a*, b*. With the running length, the drift is drawn.',
      'Reference and sample must stand under the same light. Spectra are computed for the light of this sheet; a pair of L*, a*, b* under different lights is refused.',
      'Choose a control to see the print beside it; the last approved lot of the product comes by itself.',
    ],
    spoils: [
      'Another backing or instrument than the reference was read with.',
      'Films or inks that fluoresce, measured without the same UV share (M1 against M0 or M2).',
      'Wet or warm prints; shiny and metallic films in a geometry that lets the mirror image in or out.',
      'A tolerance taken over from another formula: ΔE00 2 is not ΔE*ab 2.',
    ],
  },
  cautions: [],
  companions: true,
  conditions: [
    { kind: 'item', of: 'reference', key: 'reference', label: 'Reference', required: true, hint: 'a reference colour of Materials with its customer, or the name and date of another standard' },
    { kind: 'text', key: 'customer', label: 'Customer', maxLength: 200, hint: 'whose tolerance is the limit; comes with the reference' },
    ...coordinates(referenceKeys, ' of the reference').map((field) => ({ ...field, unlessFrom: 'reference', required: true })),
    ...measurementLightFields('reference'),
    ...measurementLightFields(''),
    choice('secondIlluminant', 'Second light', illuminantNames.map((value, index) => ({ value, label: value, shortcut: String(index + 1) })), { default: 'A', hint: 'under which a match of spectra is tried as well' }),
    { kind: 'item', of: 'sample', key: 'control', label: 'Control', hint: 'a sample whose colour this print is seen beside' },
    { kind: 'number', key: 'cmcL', label: 'CMC l', min: 0, minExclusive: true, max: 10, default: 2, hint: '2 for acceptability, 1 for perceptibility' },
    { kind: 'number', key: 'cmcC', label: 'CMC c', min: 0, minExclusive: true, max: 10, default: 1 },
    choice('runUnit', 'Run in', [{ value: 'm', label: 'm', shortcut: 'm' }, { value: 'min', label: 'min', shortcut: 't' }, { value: 'prints', label: 'prints', shortcut: 'p' }], { default: 'm', hint: 'unit of the running length or time in the rows' }),
    backingField,
    instrumentField,
  ],
  readings: {
    rowName: 'reading',
    fields: [
      { kind: 'text', key: 'label', label: 'Place', maxLength: 100 },
      { kind: 'number', key: 'run', label: 'Run', unitFrom: 'runUnit', min: 0, max: 1e7 },
      { kind: 'spectrum', key: 'spectrum', label: 'Spectrum', nameTo: 'label' },
      ...coordinates(sampleKeys, ''),
    ],
    startRows: 5,
    minRows: 1,
    maxRows: 5000,
  },
  calculation: 'measured-colour',
  properties: [
    ...toleranceFormulas.map((key: DifferenceFormula) => ({ key, title: differenceFormulas[key].title, unit: '', better: 'lower' as const, limited: true, headline: key === 'deltaE00', readingsFigure: `${key}-readings` })),
    { key: 'direction', title: 'The print is', unit: '', better: 'none', limited: false, headline: true },
    { key: 'deltaL', title: 'ΔL*', unit: '', better: 'within', limited: true, headline: false },
    { key: 'deltaA', title: 'Δa*', unit: '', better: 'within', limited: true, headline: false },
    { key: 'deltaB', title: 'Δb*', unit: '', better: 'within', limited: true, headline: false },
    { key: 'deltaC', title: 'ΔC*', unit: '', better: 'within', limited: true, headline: false },
    { key: 'deltaH', title: 'ΔH*', unit: '', better: 'within', limited: true, headline: false },
    { key: 'partingBand', title: 'The curves part', unit: 'nm', better: 'none', limited: false, headline: false },
    { key: 'metamerismIndex', title: 'Metamerism, second light', unit: '', better: 'lower', limited: true, headline: false },
    { key: 'drift', title: 'Drift over the run', unit: '', better: 'none', limited: false, headline: false },
  ],
  evaluate: evaluateMeasuredColour,
};
