import { instrumentField } from '../method/instrument-field.ts';
import type { Method } from '../method/method.ts';
import { evaluateResidualSolvent } from './evaluate-residual-solvent.ts';

/** Solvents left in a print, by headspace gas chromatography, several in one run. */
export const residualSolventMethod: Method = {
  id: 'residual-solvent',
  version: '1',
  title: 'Residual solvents by gas chromatography',
  shortTitle: 'Residual solvents',
  group: 'release',
  standards: ['EN 13628-1', 'EN 13628-2', 'ASTM F1884', 'ICH Q2'],
  help: {
    shows: 'How much of each solvent a print still gives off, per square metre, and all of them together. A high figure means smell and taint; it does not say which solvent would migrate.',
    how: [
      'Take the specimens from the roll at once, wrap them in foil, and note place and hour: solvent leaves as you watch.',
      'Cut pieces of known area, close each in a vial and heat it as the method says.',
      'Inject standards of five amounts or more around what you expect, best on unprinted film, then blanks, then the specimens.',
      'Enter one row for each peak: solvent, kind of vial, and for a standard its amount. No peak: area 0.',
      'Injections of one specimen share its number; another piece of print has another number.',
      'Multiple extraction: inject the same vial again and again; enter the steps of specimen and standard in their order.',
    ],
    spoils: [
      'Specimens left open, or from the outer wraps only.',
      'Standards without film in the vial: film and ink hold solvent back, and the print seems cleaner than it is.',
      'One extraction taken for all of it. The industrial method does not apply below 0.5 mg/m².',
      'Two solvents under one peak; a blank that is not clean.',
      'A specimen beyond the standards: the line is not known to hold there.',
    ],
  },
  cautions: [
    { hazard: 'solvent', text: 'Solvents and standards burn and harm: ventilation, gloves, no flames near; heed the safety data sheets and local codes. Carrier gases and pressure as the maker of the instrument prescribes.' },
    { hazard: 'food-contact', text: 'Whether a print may touch food is decided by the food-contact law of the place and a licensed laboratory; this sheet does not replace them.' },
    { hazard: 'heat', text: 'Heated vials are under pressure and hot: let them cool before they are opened.' },
  ],
  conditions: [
    {
      kind: 'choice',
      key: 'quantification',
      label: 'Quantified by',
      required: true,
      default: 'standards',
      choices: [
        { value: 'standards', label: 'External standards', shortcut: 's' },
        { value: 'headspace', label: 'Multiple extraction', shortcut: 'm' },
      ],
    },
    { kind: 'number', key: 'areaCm2', label: 'Area of each specimen', unit: 'cm²', min: 0, minExclusive: true, max: 100_000, default: 100, usual: { min: 10, max: 2000 }, required: true },
    {
      kind: 'choice',
      key: 'weighting',
      label: 'Weights of the standards',
      required: true,
      default: 'none',
      choices: [
        { value: 'none', label: 'All alike', shortcut: 'n' },
        { value: '1/x', label: '1/amount', shortcut: 'x' },
      ],
      hint: '1/amount where larger peaks scatter more.',
    },
    {
      kind: 'choice',
      key: 'sigma',
      label: 'Detection limit by the scatter of',
      required: true,
      default: 'residual',
      choices: [
        { value: 'residual', label: 'Standards about the line', shortcut: 'r' },
        { value: 'intercept', label: 'Intercept', shortcut: 'i' },
        { value: 'blanks', label: 'Blanks', shortcut: 'b' },
      ],
    },
    { kind: 'number', key: 'vialC', label: 'Vial', unit: '°C', min: 0, max: 300, usual: { min: 80, max: 150 } },
    { kind: 'number', key: 'minutes', label: 'Heated for', unit: 'min', min: 0, max: 10_000, usual: { min: 10, max: 90 } },
    { kind: 'text', key: 'column', label: 'Column and detector', maxLength: 200 },
    { kind: 'text', key: 'takenAt', label: 'Specimens taken', maxLength: 200, hint: 'where and when, hours after printing' },
    instrumentField,
  ],
  readings: {
    rowName: 'peak',
    fields: [
      { kind: 'text', key: 'solvent', label: 'Solvent', maxLength: 100, required: true, carryDown: true },
      {
        kind: 'choice',
        key: 'vial',
        label: 'Vial',
        required: true,
        carryDown: true,
        choices: [
          { value: 'standard', label: 'Standard', shortcut: 's' },
          { value: 'specimen', label: 'Specimen', shortcut: 'p' },
          { value: 'blank', label: 'Blank', shortcut: 'b' },
        ],
      },
      { kind: 'text', key: 'specimen', label: 'Specimen', maxLength: 100, hint: 'Its number; injections of one piece share it.' },
      { kind: 'number', key: 'amountUg', label: 'Amount', unit: 'µg', min: 0, max: 1e9, hint: 'Of a standard: solvent in the vial.' },
      { kind: 'number', key: 'area', label: 'Peak area', min: 0, max: 1e15, required: true, hint: '0 where there is no peak.' },
      { kind: 'number', key: 'limitMgM2', label: 'Limit', unit: 'mg/m²', min: 0, minExclusive: true, max: 1e6, hint: 'Of this solvent alone, once.' },
    ],
    startRows: 8,
    minRows: 3,
    maxRows: 2000,
  },
  calculation: 'residual-solvent',
  properties: [
    { key: 'total', title: 'Residual solvents, total', unit: 'mg/m²', better: 'lower', limited: true, headline: true, readingsFigure: 'specimen-totals' },
    { key: 'shareOfLimitPct', title: 'Largest share of its own limit', unit: '%', better: 'lower', limited: true, headline: true },
  ],
  evaluate: evaluateResidualSolvent,
};
