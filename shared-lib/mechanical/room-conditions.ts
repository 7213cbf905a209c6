import type { Field } from '../method/method.ts';

/** The room of a mechanical test: films and inks are softer when warm. */
export const roomConditions: Field[] = [
  { kind: 'number', key: 'temperatureC', label: 'Temperature', unit: '°C', min: -50, max: 150, usual: { min: 21, max: 25 } },
  { kind: 'number', key: 'relativeHumidityPct', label: 'Relative humidity', unit: '%', min: 0, max: 100, usual: { min: 45, max: 55 } },
];

/** Inks go on hardening after the press. */
export const hoursSincePrinting: Field = { kind: 'number', key: 'hoursSincePrinting', label: 'Since printing', unit: 'h', min: 0, max: 100_000 };
