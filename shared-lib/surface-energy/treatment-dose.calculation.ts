import { z } from 'zod';
import { defineCalculation, type Outcome } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import { convertDose } from '../quantity/units.ts';
import { formatNumber } from '../quantity/format.ts';
import { statedValue } from './stated-value.ts';

const input = z.strictObject({
  powerW: z.number().gt(0).max(1_000_000).optional(),
  widthMm: z.number().gt(0).max(20_000).optional(),
  speedMPerMin: z.number().gt(0).max(5000).optional(),
  doseWMinPerM2: z.number().gt(0).max(100_000).optional(),
  /** Sides of the film that share the power. */
  sides: z.union([z.literal(1), z.literal(2)]).default(1),
});

const quantities = ['powerW', 'widthMm', 'speedMPerMin', 'doseWMinPerM2'] as const;

/** Corona dose: power over treated width, web speed and sides. Of power, width, speed and dose, three give the fourth. */
export const treatmentDoseCalculation = defineCalculation({
  id: 'treatment-dose',
  version: '1',
  title: 'Treatment dose',
  input,
  compute: (given): Outcome => {
    const known = quantities.filter((key) => given[key] !== undefined);
    if (known.length !== 3) {
      const missing = quantities.find((key) => given[key] === undefined) ?? 'doseWMinPerM2';
      throw new InputError(
        missing,
        given[missing] ?? null,
        `Give exactly three of power, width, speed and dose (found ${known.length}); the fourth is calculated.`,
      );
    }
    const { sides } = given;
    const widthM = given.widthMm === undefined ? undefined : given.widthMm / 1000;
    // dose = power / (width · speed · sides), solved for whichever is missing
    const dose = given.doseWMinPerM2 ?? given.powerW! / (widthM! * given.speedMPerMin! * sides);
    const power = given.powerW ?? dose * widthM! * given.speedMPerMin! * sides;
    const speed = given.speedMPerMin ?? power / (dose * widthM! * sides);
    const width = widthM ?? power / (dose * speed * sides);
    return {
      results: {
        dose: statedValue(dose, 'W·min/m²'),
        energy: statedValue(convertDose(dose, 'W·min/m²', 'kJ/m²'), 'kJ/m²'),
        powerW: statedValue(power, 'W'),
        speedMPerMin: statedValue(speed, 'm/min'),
        widthMm: statedValue(width * 1000, 'mm'),
      },
      notes: [
        `That is ${formatNumber(convertDose(dose, 'W·min/m²', 'W·min/ft²'), 2)} W·min/ft² on ${sides === 1 ? 'one side' : 'each of two sides'}.`,
        'Usual for fresh film (common practice, from memory): PE 15–30, PP 25–50, PET 10–20 W·min/m². The dose that suits a film is found by test.',
        'The set power is not the power in the air gap: the loss of the generator is not known here, and the result has no interval.',
      ],
    };
  },
  columns: [],
  cautions: [
    'Corona makes ozone: run it only with its extraction. The station is live at high voltage: it is for trained people, by its manual and local rules.',
  ],
  sources: ['Watt density: power over width, speed and sides (definition used in the trade); 1 W·min/m² = 0.06 kJ/m² (exact)'],
});
