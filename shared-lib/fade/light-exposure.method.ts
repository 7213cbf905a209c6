import { densityBasisField, paperDensityField } from '../colour/density-conditions.ts';
import { apparatusField, instrumentField } from '../method/instrument-field.ts';
import type { Method } from '../method/method.ts';
import { evaluateLightExposure } from './evaluate-light-exposure.ts';
import { nextExposure } from './next-exposure.ts';

/** A programme of light exposure: patches of one colour or several, under a lamp or outdoors, read again and again over weeks. */
export const lightExposureMethod: Method = {
  id: 'light-exposure',
  version: '1',
  title: 'Light exposure of printed patches',
  shortTitle: 'Light exposure',
  group: 'fade',
  standards: ['ASTM D3424', 'ISO 12040', 'ISO 105-B02', 'ISO 105-A05'],
  help: {
    shows:
      'How fast a print fades under a lamp or outdoors: what is left of the density, how far the colour has moved, and the exposure at ' +
      'which the endpoint is reached; of several colours, which fades first. It ranks prints against a control in the same light; it does not foretell life in use.',
    how: [
      'Choose solid patches of each colour, three or more; mark the place to be read on each and keep one unexposed in the dark.',
      'Read density and, if you can, CIELAB of each patch before exposure: that row, at exposure 0, is the reference of the patch.',
      'Expose with a control print and blue-wool references beside the patches. Note the lamp, its filter and the irradiance; outdoors the place, how the patches face the sky, and the first day.',
      'Plan the exposures to read at: Today then says when the next is due. Outdoors and in windows count days, or the dose if it is measured.',
      'Take the patches out at steps of exposure, let them cool, read the same places in the same way, and enter the exposure so far.',
      'Name the colour in the rows of each; a blue-wool reference has its number instead, and is read as a colour.',
      'Go on until the endpoint is passed, with at least five steps: only then is its exposure read and not extrapolated.',
    ],
    spoils: [
      'Another place, another backing or another filter than at the start.',
      'Patches read warm or damp: some colorants change with both and come back.',
      'Irradiance that drifts: a lamp or filter past its hours. Outdoors no two months are alike: only patches that hung there together compare.',
      'Different tests pooled: exposures under different lamps or filters do not compare.',
      'Shading by the holder, or patches at the edge of the field; change their places from step to step.',
    ],
  },
  cautions: [
    { hazard: 'uv', text: 'The lamp gives strong UV light: never look into it, never defeat an interlock, and wear what the maker prescribes. Local codes and the maker’s instructions hold.' },
    { hazard: 'ozone', text: 'Lamps of this kind make ozone: run them only with the exhaust on; stop and ventilate if you smell it. Local exposure limits hold.' },
    { hazard: 'heat', text: 'Lamp, filters and black panel are hot: let the chamber cool before reaching in. Lamps are changed by trained persons; some are under pressure.' },
  ],
  conditions: [
    {
      kind: 'choice',
      key: 'lamp',
      label: 'Lamp and filter',
      choices: [
        { value: 'xenon-window', label: 'Xenon, window glass', shortcut: 'w' },
        { value: 'xenon-daylight', label: 'Xenon, daylight', shortcut: 'd' },
        { value: 'fluorescent-window', label: 'Fluorescent, window glass', shortcut: 'f' },
        { value: 'cool-white', label: 'Cool-white fluorescent', shortcut: 'c' },
        { value: 'daylight', label: 'Daylight behind glass', shortcut: 'n' },
        { value: 'outdoors', label: 'Outdoors', shortcut: 'u' },
        { value: 'other', label: 'Other', shortcut: 'o' },
      ],
      default: 'xenon-window',
    },
    { kind: 'text', key: 'cycle', label: 'Filter and cycle', maxLength: 200, hint: 'e.g. 102 min light, 18 min light and spray' },
    { kind: 'text', key: 'place', label: 'Place', maxLength: 200, hint: 'Outdoors or window: where, facing which way, at what angle.' },
    { kind: 'text', key: 'exposedFrom', label: 'In the light since', maxLength: 10, format: 'date', hint: 'The first day of exposure.' },
    { kind: 'number', key: 'irradianceWPerM2', label: 'Irradiance', unit: 'W/m²', min: 0, minExclusive: true, max: 5000, usual: { min: 20, max: 150 }, hint: 'Needed to convert hours and kJ/m².' },
    { kind: 'text', key: 'band', label: 'Band of the irradiance', maxLength: 60, default: '300–400 nm', hint: 'Hours and doses compare only within one band.' },
    {
      kind: 'choice',
      key: 'exposureUnit',
      label: 'Unit of exposure',
      choices: [
        { value: 'h', label: 'h', shortcut: 'h' },
        { value: 'd', label: 'd', shortcut: 'd' },
        { value: 'kJ/m²', label: 'kJ/m²', shortcut: 'k' },
        { value: 'MJ/m²', label: 'MJ/m²', shortcut: 'm' },
      ],
      default: 'h',
      required: true,
    },
    { kind: 'text', key: 'readAt', label: 'Exposures to read at', maxLength: 300, hint: 'In the unit above, such as 24 48 96 192; Today tells when the next is due.' },
    { kind: 'number', key: 'hoursPerDay', label: 'Light in a day', unit: 'h', min: 0, minExclusive: true, max: 24, default: 24, hint: 'Of a lamp that is not always on.' },
    {
      kind: 'choice',
      key: 'endpointOn',
      label: 'Endpoint on',
      choices: [
        { value: 'retention', label: 'Density retained', shortcut: 'r' },
        { value: 'deltaE00', label: 'ΔE00', shortcut: 'e' },
      ],
      default: 'retention',
      required: true,
    },
    { kind: 'number', key: 'endpointRetentionPct', label: 'Faded at', unit: '% retained', min: 0, minExclusive: true, max: 99.9, default: 70, usual: { min: 50, max: 95 } },
    { kind: 'number', key: 'endpointDeltaE00', label: 'Faded at ΔE00', min: 0, minExclusive: true, max: 100, usual: { min: 1, max: 15 }, hint: 'As agreed with the customer.' },
    densityBasisField,
    paperDensityField,
    { kind: 'number', key: 'blackPanelC', label: 'Black panel or standard', unit: '°C', min: 0, max: 150, usual: { min: 45, max: 70 } },
    { kind: 'number', key: 'relativeHumidityPct', label: 'Relative humidity', unit: '%', min: 0, max: 100, usual: { min: 25, max: 60 } },
    instrumentField,
    apparatusField('exposedIn', 'Exposed in'),
  ],
  readings: {
    rowName: 'exposure',
    readOn: 'readOn',
    fields: [
      { kind: 'text', key: 'colour', label: 'Colour', maxLength: 100, carryDown: true, hint: 'Where several are compared.' },
      { kind: 'text', key: 'series', label: 'Patch', maxLength: 100, carryDown: true, hint: 'Replicate patches of one colour.' },
      { kind: 'number', key: 'exposure', label: 'Exposure so far', unitFrom: 'exposureUnit', min: 0, max: 1e9, hint: 'In the unit above; 0 for the reference.' },
      { kind: 'number', key: 'density', label: 'Density', min: -0.2, max: 6, usual: { min: 0.05, max: 3 } },
      { kind: 'number', key: 'L', label: 'L*', min: 0, max: 150, usual: { min: 0, max: 100 } },
      { kind: 'number', key: 'a', label: 'a*', min: -300, max: 300, usual: { min: -100, max: 110 } },
      { kind: 'number', key: 'b', label: 'b*', min: -300, max: 300, usual: { min: -100, max: 120 } },
      { kind: 'text', key: 'readOn', label: 'Read on', maxLength: 10, format: 'date', hint: 'Counts the days where the exposure is left out.' },
      { kind: 'number', key: 'blueWool', label: 'Blue wool', min: 1, max: 8, hint: 'Number of the reference, where the patch is one.' },
    ],
    startRows: 6,
    minRows: 2,
    maxRows: 2000,
  },
  calculation: 'light-exposure',
  properties: [
    { key: 'exposureToLimit', title: 'Exposure to the endpoint', unit: 'h', better: 'higher', limited: true, headline: true },
    { key: 'retentionPct', title: 'Retention at the last exposure', unit: '%', better: 'higher', limited: true, headline: true, readingsFigure: 'retention-at-last-exposure' },
    { key: 'deltaE00', title: 'ΔE00 at the last exposure', unit: '', better: 'lower', limited: true, headline: false },
    { key: 'greyScale', title: 'Grey scale at the last exposure', unit: '', better: 'higher', kind: 'grade', scale: { low: 1, high: 5 }, limited: true, headline: false },
    { key: 'lightFastness', title: 'Light fastness by blue wool', unit: '', better: 'higher', kind: 'grade', scale: { low: 1, high: 8 }, limited: true, headline: false },
  ],
  evaluate: evaluateLightExposure,
  dueWhileRunning: nextExposure,
};
