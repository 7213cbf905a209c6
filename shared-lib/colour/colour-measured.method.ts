import type { BenchReadings, Field, Method, NumberField } from '../method/method.ts';
import { runOnBench } from '../method/run-on-bench.ts';
import { limitOn, numberIn } from '../method/sheet.ts';
import { benchColumns } from './bench-columns.ts';
import { colourDifferenceCalculation } from './colour-difference.calculation.ts';
import { backingField, instrumentField } from './density-conditions.ts';
import { differenceFormulas, type DifferenceFormula } from './difference-formulas.ts';
import { measurementLightFields, measurementLightOf } from './measurement-light-fields.ts';

const coordinate = (key: string, label: string, low: number, high: number, usual: { min: number; max: number }): NumberField => ({ kind: 'number', key, label, min: low, max: high, usual, required: true });
const coordinates = (keys: readonly [string, string, string], of: string): Field[] => [
  coordinate(keys[0], `L*${of}`, 0, 150, { min: 0, max: 100 }),
  coordinate(keys[1], `a*${of}`, -300, 300, { min: -100, max: 110 }),
  coordinate(keys[2], `b*${of}`, -300, 300, { min: -100, max: 120 }),
];
const referenceKeys = ['referenceL', 'referenceA', 'referenceB'] as const;
const sampleKeys = ['L', 'a', 'b'] as const;
/** The first of these with an upper limit is the tolerance that the figures show. */
const formulas: readonly DifferenceFormula[] = ['deltaE00', 'deltaECMC', 'deltaE94', 'deltaEab'];

/** A print's measured colour against its reference, with the tolerance as limit on ΔE00 or another formula. */
export const colourMeasuredMethod: Method = {
  id: 'colour-measured',
  version: '1',
  title: 'Measured colour against a reference',
  shortTitle: 'Colour',
  group: 'colour',
  standards: ['ISO 13655', 'ISO/CIE 11664-4', 'ISO/CIE 11664-6'],
  help: {
    shows: 'How far a print’s colour is from its reference and which way: lighter, greener, duller. Readings over a run show its drift.',
    how: [
      'Enter the reference’s L*, a*, b* with its illuminant, observer and measurement condition, and set the tolerance as the limit on ΔE00 or on the formula agreed.',
      'Calibrate; lay the film on the agreed backing; transparent film over white.',
      'Read several places, or samples in the order of the run: one row each.',
      'Reference and sample must stand under the same light. If not, measure the sample again: this sheet refuses the pair.',
    ],
    spoils: [
      'Another backing or instrument than the reference was read with.',
      'Films or inks that fluoresce, measured without the same UV share (M1 against M0 or M2).',
      'Wet or warm prints; shiny and metallic films in a geometry that lets the mirror image in or out.',
      'A tolerance taken over from another formula: ΔE00 2 is not ΔE*ab 2.',
    ],
  },
  cautions: [],
  conditions: [
    { kind: 'text', key: 'reference', label: 'Reference', maxLength: 200, required: true, hint: 'name and date of the standard' },
    ...coordinates(referenceKeys, ' of the reference'),
    ...measurementLightFields('reference'),
    ...measurementLightFields(''),
    { kind: 'number', key: 'cmcL', label: 'CMC l', min: 0, minExclusive: true, max: 10, default: 2, hint: '2 for acceptability, 1 for perceptibility' },
    backingField,
    instrumentField,
  ],
  readings: {
    rowName: 'reading',
    fields: [{ kind: 'text', key: 'label', label: 'Place or time', maxLength: 100 }, ...coordinates(sampleKeys, '')],
    startRows: 5,
    minRows: 1,
    maxRows: 5000,
  },
  calculation: 'colour-difference',
  properties: [
    ...formulas.map((key) => ({ key, title: differenceFormulas[key].title, unit: '', better: 'lower' as const, limited: true, headline: key === 'deltaE00', readingsFigure: `${key}-readings` })),
    { key: 'direction', title: 'The print is', unit: '', better: 'none', limited: false, headline: true },
    { key: 'deltaL', title: 'ΔL*', unit: '', better: 'within', limited: true, headline: false },
    { key: 'deltaA', title: 'Δa*', unit: '', better: 'within', limited: true, headline: false },
    { key: 'deltaB', title: 'Δb*', unit: '', better: 'within', limited: true, headline: false },
    { key: 'deltaC', title: 'ΔC*', unit: '', better: 'within', limited: true, headline: false },
    { key: 'deltaH', title: 'ΔH*', unit: '', better: 'within', limited: true, headline: false },
  ],
  evaluate,
};

function evaluate(bench: BenchReadings) {
  const { columns, labels, rows } = benchColumns(bench, sampleKeys);
  const on = formulas.find((formula) => (limitOn(bench, formula)?.upper ?? 0) > 0);
  const input = {
    reference: referenceKeys.map((key) => numberIn(bench.conditions, key)),
    sample: rows.map((_, place) => sampleKeys.map((key) => columns[key][place]!)),
    labels,
    cmc: { l: numberIn(bench.conditions, 'cmcL') ?? 2, c: 1 },
    tolerance: on ? { on, limit: limitOn(bench, on)!.upper! } : undefined,
    referenceLight: measurementLightOf(bench, 'reference'),
    sampleLight: measurementLightOf(bench, ''),
  };
  return runOnBench(colourDifferenceCalculation, input, (field) => {
    const [, what, first, second] = /^(reference|sample)\[(\d+)\](?:\[(\d)\])?/.exec(field) ?? [];
    if (what === 'reference') return `conditions.${referenceKeys[Number(first)]}`;
    if (what === 'sample') return `rows[${rows[Number(first)]}].${sampleKeys[Number(second ?? 0)]}`;
    if (field.startsWith('sampleLight')) return 'conditions.illuminant';
    if (field.startsWith('referenceLight')) return 'conditions.referenceIlluminant';
    return field.startsWith('cmc') ? 'conditions.cmcL' : '';
  });
}
