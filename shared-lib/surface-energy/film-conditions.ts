import type { Field } from '../method/method.ts';

/** What is asked once about the film and the room, whichever way its surface is tested. */
export const filmConditions: Field[] = [
  { kind: 'number', key: 'temperatureC', label: 'Temperature', unit: '°C', min: -30, max: 80, usual: { min: 21, max: 25 } },
  { kind: 'number', key: 'relativeHumidityPct', label: 'Relative humidity', unit: '%', min: 0, max: 100, usual: { min: 45, max: 55 } },
  {
    kind: 'choice',
    key: 'side',
    label: 'Side tested',
    choices: [
      { value: 'inside', label: 'inside of the roll', shortcut: 'i' },
      { value: 'outside', label: 'outside of the roll', shortcut: 'o' },
      { value: 'unknown', label: 'not known', shortcut: 'n' },
    ],
  },
];

/** Treatment fades with time, so a wetting tension is only known together with its age. */
export const daysSinceTreatment: Field = {
  kind: 'number',
  key: 'daysSinceTreatment',
  label: 'Days since treatment',
  unit: 'd',
  min: 0,
  max: 3650,
  daysSince: 'treatment',
};
