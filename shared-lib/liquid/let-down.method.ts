import { instrumentField } from '../method/instrument-field.ts';
import type { Method } from '../method/method.ts';
import { cupField } from './cup-field.ts';
import { evaluateLetDown } from './evaluate-let-down.ts';

/** How much diluent brings an ink to press viscosity or to a strength, from trial additions or drawdowns. */
export const letDownMethod: Method = {
  id: 'let-down',
  version: '1',
  title: 'Let-down of an ink',
  shortTitle: 'Let-down',
  group: 'liquid',
  standards: [],
  help: {
    shows: 'How much diluent or extender brings an ink to a target viscosity or a target strength, with an interval, and what solids and cost are left.',
    how: [
      'To a viscosity: weigh out ink, add diluent in steps past the target, stir, and read the viscosity after each; the first row may be the ink alone, diluent 0.',
      'Enter the diluent in it so far, not that of the last step.',
      'Keep the temperature; all readings by one cup, or all in mm²/s.',
      'To a strength: draw the ink down beside the standard, several times, and enter its strength in percent of the standard.',
      'Draw the mixture down before the batch is let down.',
    ],
    spoils: ['Solvent that evaporates while you stir.', 'A target beyond the additions that were tried: it is refused.', 'A cup outside its range.', 'An ink that sets at rest: stir alike before each reading.'],
  },
  cautions: [
    { hazard: 'solvent', text: 'Inks, solvents and monomers: ventilation, gloves, eye protection, no flames; earth cans and cups; heed the safety data sheets and local codes.' },
    { hazard: 'food-contact', text: 'A formulation that is changed needs its own clearance where it may touch food: the food-contact law of the place and a licensed laboratory prevail.' },
  ],
  conditions: [
    {
      kind: 'choice',
      key: 'goal',
      label: 'Let down to',
      required: true,
      default: 'viscosity',
      choices: [
        { value: 'viscosity', label: 'A viscosity', shortcut: 'v' },
        { value: 'strength', label: 'A strength', shortcut: 's' },
      ],
    },
    { ...cupField, required: false, hint: 'Left empty, viscosities are in mm²/s.' },
    { kind: 'number', key: 'targetSeconds', label: 'Target flow time', unit: 's', min: 0, minExclusive: true, max: 10_000, usual: { min: 15, max: 60 }, hint: 'Of the cup above.' },
    { kind: 'number', key: 'targetMm2S', label: 'Target viscosity', unit: 'mm²/s', min: 0, minExclusive: true, max: 1e6 },
    { kind: 'number', key: 'targetStrengthPct', label: 'Target strength', unit: '%', min: 0, minExclusive: true, max: 10_000, usual: { min: 50, max: 120 } },
    { kind: 'number', key: 'inkG', label: 'Ink in the trial', unit: 'g', min: 0, minExclusive: true, max: 1e6, usual: { min: 50, max: 2000 } },
    { kind: 'number', key: 'batchKg', label: 'Ink in the batch', unit: 'kg', min: 0, minExclusive: true, max: 1e6, hint: 'For the kilograms to add.' },
    { kind: 'text', key: 'ink', label: 'Ink', maxLength: 200 },
    { kind: 'number', key: 'inkSolidsPct', label: 'Solids of the ink', unit: '%', min: 0, max: 100, usual: { min: 10, max: 60 } },
    { kind: 'number', key: 'inkCostPerKg', label: 'Cost of the ink', unit: '/kg', min: 0, max: 1e9 },
    { kind: 'text', key: 'diluent', label: 'Diluent', maxLength: 200 },
    { kind: 'number', key: 'diluentSolidsPct', label: 'Solids of the diluent', unit: '%', min: 0, max: 100, default: 0 },
    { kind: 'number', key: 'diluentCostPerKg', label: 'Cost of the diluent', unit: '/kg', min: 0, max: 1e9 },
    { kind: 'number', key: 'temperatureC', label: 'Temperature', unit: '°C', min: -50, max: 200, usual: { min: 18, max: 27 } },
    instrumentField,
  ],
  readings: {
    rowName: 'addition',
    fields: [
      { kind: 'number', key: 'diluentG', label: 'Diluent so far', unit: 'g', min: 0, max: 1e6 },
      { kind: 'number', key: 'seconds', label: 'Flow time', unit: 's', min: 0, minExclusive: true, max: 10_000, usual: { min: 15, max: 150 } },
      { kind: 'number', key: 'mm2S', label: 'Viscosity', unit: 'mm²/s', min: 0, minExclusive: true, max: 1e6, hint: 'Without a cup.' },
      { kind: 'number', key: 'strengthPct', label: 'Strength of the ink', unit: '%', min: 0, minExclusive: true, max: 10_000, usual: { min: 50, max: 200 }, hint: 'Of one drawdown, the standard being 100 %.' },
    ],
    startRows: 5,
    minRows: 1,
    maxRows: 100,
  },
  calculation: 'formulation',
  properties: [
    { key: 'letDownPct', title: 'Diluent in the mixture', unit: '%', better: 'lower', limited: true, headline: true },
    { key: 'letDownParts', title: 'Diluent to add', unit: 'per 100 parts of ink', better: 'none', limited: false, headline: true },
    { key: 'letDownKg', title: 'Diluent for the batch', unit: 'kg', better: 'none', limited: false, headline: false },
    { key: 'letDownSolidsPct', title: 'Solids when let down', unit: '%', better: 'higher', limited: true, headline: false },
    { key: 'letDownCostPerKg', title: 'Cost when let down', unit: '/kg', better: 'lower', limited: true, headline: false },
  ],
  evaluate: evaluateLetDown,
};
