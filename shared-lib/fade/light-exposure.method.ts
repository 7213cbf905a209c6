import { densityBasisField, paperDensityField } from '../colour/density-conditions.ts';
import type { Method } from '../method/method.ts';
import { evaluateLightExposure } from './evaluate-light-exposure.ts';

/** Fading of printed patches under a lamp, read as density, as colour or as both. */
export const lightExposureMethod: Method = {
  id: 'light-exposure',
  version: '1',
  title: 'Light exposure of printed patches',
  shortTitle: 'Light exposure',
  group: 'fade',
  standards: ['ASTM D3424', 'ISO 12040', 'ISO 105-B02', 'ISO 105-A05'],
  help: {
    shows:
      'How fast a print fades under a lamp: what is left of the density, how far the colour has moved, and the exposure at which ' +
      'the endpoint is reached. It ranks prints against a control under the same lamp; it does not foretell life in use.',
    how: [
      'Choose solid patches of one print, three or more; mark the place to be read on each and keep one unexposed in the dark.',
      'Read density and, if you can, CIELAB of each patch before exposure: that row, at exposure 0, is the reference of the patch.',
      'Expose with a control print and blue-wool references beside the patches. Note the lamp, its filter and the irradiance.',
      'Take the patches out at steps of exposure, let them cool, read the same places in the same way, and enter the exposure so far.',
      'Go on until the endpoint is passed, with at least five steps: only then is its exposure read and not extrapolated.',
    ],
    spoils: [
      'Another place, another backing or another filter than at the start.',
      'Patches read warm or damp: some colorants change with both and come back.',
      'Irradiance that drifts: a lamp or filter past its hours.',
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
        { value: 'other', label: 'Other', shortcut: 'o' },
      ],
      default: 'xenon-window',
    },
    { kind: 'number', key: 'irradianceWPerM2', label: 'Irradiance', unit: 'W/m²', min: 0, minExclusive: true, max: 5000, usual: { min: 20, max: 150 }, hint: 'Needed to convert hours and kJ/m².' },
    { kind: 'text', key: 'band', label: 'Band of the irradiance', maxLength: 60, default: '300–400 nm', hint: 'Hours and doses compare only within one band.' },
    {
      kind: 'choice',
      key: 'exposureUnit',
      label: 'Unit of exposure',
      choices: [
        { value: 'h', label: 'h', shortcut: 'h' },
        { value: 'kJ/m²', label: 'kJ/m²', shortcut: 'k' },
        { value: 'MJ/m²', label: 'MJ/m²', shortcut: 'm' },
      ],
      default: 'h',
      required: true,
    },
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
    { kind: 'number', key: 'blackPanelC', label: 'Black panel', unit: '°C', min: 0, max: 150, usual: { min: 45, max: 70 } },
    { kind: 'number', key: 'relativeHumidityPct', label: 'Relative humidity', unit: '%', min: 0, max: 100, usual: { min: 25, max: 60 } },
  ],
  readings: {
    rowName: 'exposure',
    fields: [
      { kind: 'text', key: 'series', label: 'Patch', maxLength: 100, carryDown: true, hint: 'Replicate patches of one print.' },
      { kind: 'number', key: 'exposure', label: 'Exposure so far', unitFrom: 'exposureUnit', min: 0, max: 1e9, required: true, hint: 'In the unit above; 0 for the reference.' },
      { kind: 'number', key: 'density', label: 'Density', min: -0.2, max: 6, usual: { min: 0.05, max: 3 } },
      { kind: 'number', key: 'L', label: 'L*', min: 0, max: 150, usual: { min: 0, max: 100 } },
      { kind: 'number', key: 'a', label: 'a*', min: -300, max: 300, usual: { min: -100, max: 110 } },
      { kind: 'number', key: 'b', label: 'b*', min: -300, max: 300, usual: { min: -100, max: 120 } },
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
    { key: 'greyScale', title: 'Grey scale at the last exposure', unit: '', better: 'higher', kind: 'grade', limited: true, headline: false },
  ],
  evaluate: evaluateLightExposure,
};
