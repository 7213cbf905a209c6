import { instrumentField } from '../method/instrument-field.ts';
import type { Method } from '../method/method.ts';
import { evaluateLaminationBond } from './evaluate-lamination-bond.ts';
import { MODE_CHOICES } from './mode-choices.ts';

const UNIT = 'N/15 mm';

/** Lamination bond: strips peeled in T-peel, at 180° or at 90°, from typed forces or traces. */
export const laminationBondMethod: Method = {
  id: 'lamination-bond',
  version: '1',
  title: 'Lamination bond strength',
  shortTitle: 'Lamination bond',
  group: 'bond-strength',
  standards: ['ASTM F904', 'DIN 55543-5', 'ISO 11339', 'ISO 6133'],
  help: {
    shows: 'The force that peels the plies of a laminate apart, per 15 mm of width, and where the laminate gives way.',
    how: [
      'Cut strips of the stated width across the web, at least five, with clean edges; mark the machine direction.',
      'Start the peel by hand at one end: a little solvent at the very edge or warmth may help, then let it dry.',
      'Clamp both tails without slack and peel at constant speed; note the geometry and which web is pulled.',
      'Average the steady part; leave out the initial peak and the end. A trace is evaluated here; a force may be typed instead.',
      'Look at both faces of every strip and choose the failure mode. If the film tears or stretches instead of peeling, choose that: the force is then a lower bound.',
    ],
    spoils: [
      'Nicked edges: the film tears early.',
      'A tail that is not held straight, or another speed, angle or width: only like may be compared with like.',
      'Strips tested before the adhesive has cured: state the hours since lamination.',
      'A strip that stretches: its force tells of the film, not of the bond.',
    ],
  },
  cautions: [
    { hazard: 'blade', text: 'Strips are cut with bare blades: cut away from the hand, keep the guard on, follow the shop’s rules for blades.' },
    { hazard: 'solvent', text: 'If solvent is used to start the peel: little of it, with ventilation and gloves; heed its safety data sheet and local codes.' },
  ],
  conditions: [
    { kind: 'number', key: 'stripWidthMm', label: 'Strip width', unit: 'mm', min: 0, minExclusive: true, max: 200, default: 15, usual: { min: 10, max: 26 } },
    { kind: 'number', key: 'speedMmPerMin', label: 'Speed of the grips', unit: 'mm/min', min: 0, minExclusive: true, max: 5000, usual: { min: 50, max: 300 } },
    {
      kind: 'choice',
      key: 'geometry',
      label: 'Peel geometry',
      choices: [
        { value: 't-peel', label: 'T-peel', shortcut: 't' },
        { value: '180-degree', label: '180°', shortcut: '1' },
        { value: '90-degree', label: '90°', shortcut: '9' },
      ],
      default: 't-peel',
    },
    { kind: 'text', key: 'pulledWeb', label: 'Web pulled', maxLength: 200, hint: 'e.g. outer PET' },
    { kind: 'number', key: 'hoursSinceLamination', label: 'Since lamination', unit: 'h', min: 0, max: 100_000 },
    { kind: 'number', key: 'temperatureC', label: 'Temperature', unit: '°C', min: -50, max: 150, usual: { min: 21, max: 25 } },
    { kind: 'number', key: 'relativeHumidityPct', label: 'Relative humidity', unit: '%', min: 0, max: 100, usual: { min: 40, max: 60 } },
    { kind: 'number', key: 'discardStartMm', label: 'Leave out at the start of each trace', unit: 'mm', min: 0, max: 1000, hint: 'Empty: the plateau is found from the trace.' },
    { kind: 'number', key: 'discardEndMm', label: 'Leave out at the end of each trace', unit: 'mm', min: 0, max: 1000, hint: 'Empty: the plateau is found from the trace.' },
    instrumentField,
  ],
  readings: {
    rowName: 'specimen',
    fields: [
      { kind: 'number', key: 'widthMm', label: 'Width', unit: 'mm', min: 0, minExclusive: true, max: 200, carryDown: true, hint: 'Empty: the strip width stated above.' },
      { kind: 'number', key: 'forceN', label: 'Mean force', unit: 'N', min: 0, max: 1000, hint: 'Or read a trace.' },
      { kind: 'trace', key: 'trace', label: 'Trace' },
      { kind: 'choice', key: 'mode', label: 'Failure', required: true, choices: MODE_CHOICES },
    ],
    startRows: 5,
    minRows: 1,
    maxRows: 100,
  },
  calculation: 'bond-strength',
  properties: [
    { key: 'mean', title: 'Mean bond strength', unit: UNIT, better: 'higher', limited: true, headline: true, readingsFigure: 'specimens' },
    { key: 'minimum', title: 'Weakest specimen', unit: UNIT, better: 'higher', limited: true, asRead: true, headline: true },
    { key: 'median', title: 'Median bond strength', unit: UNIT, better: 'higher', limited: true, headline: false },
    { key: 'shareTorn', title: 'Share in which the film gave way', unit: '', better: 'none', limited: false, headline: false },
    { key: 'standardDeviation', title: 'Standard deviation', unit: UNIT, better: 'lower', limited: true, headline: false },
  ],
  evaluate: evaluateLaminationBond,
};
