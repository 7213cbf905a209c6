import type { BenchReadings, Field } from '../method/method.ts';
import { textIn } from '../method/sheet.ts';
import type { MeasurementLight } from './measurement-light.ts';

const names = { illuminant: 'illuminant', observer: 'observer', condition: 'measurementCondition', geometry: 'geometry' };

/** Illuminant, observer and ISO 13655 condition; `prefix` sets those of the reference apart from those of the sample. */
export function measurementLightFields(prefix: '' | 'reference'): Field[] {
  const of = prefix === '' ? '' : ' of the reference';
  const fields: Field[] = [
    {
      kind: 'choice',
      key: keyOf(prefix, 'illuminant'),
      label: `Illuminant${of}`,
      choices: ['D50', 'D65', 'A', 'F2', 'F11', 'C'].map((value, index) => ({ value, label: value, shortcut: String(index + 1) })),
      default: 'D50',
      required: true,
    },
    {
      kind: 'choice',
      key: keyOf(prefix, 'observer'),
      label: `Observer${of}`,
      choices: [
        { value: '2', label: '2°, CIE 1931', shortcut: '2' },
        { value: '10', label: '10°, CIE 1964', shortcut: '0' },
      ],
      default: '2',
      required: true,
    },
    {
      kind: 'choice',
      key: keyOf(prefix, 'condition'),
      label: `Measurement condition${of}`,
      choices: [
        { value: 'M0', label: 'M0, UV share not stated', shortcut: '0' },
        { value: 'M1', label: 'M1, UV as in D50', shortcut: '1' },
        { value: 'M2', label: 'M2, no UV', shortcut: '2' },
        { value: 'M3', label: 'M3, polarised', shortcut: '3' },
      ],
    },
    {
      kind: 'choice',
      key: keyOf(prefix, 'geometry'),
      label: `Geometry${of}`,
      choices: [
        { value: '45:0', label: '45°:0°', shortcut: '4' },
        { value: 'd:8 without gloss', label: 'd:8°, gloss left out', shortcut: 'o' },
        { value: 'd:8 with gloss', label: 'd:8°, gloss taken in', shortcut: 'i' },
      ],
    },
  ];
  // A reference colour of the notebook says its own light.
  return prefix === '' ? fields : fields.map((field) => ({ ...field, unlessFrom: 'reference' }));
}

/** The light as entered. */
export function measurementLightOf(bench: Pick<BenchReadings, 'conditions'>, prefix: '' | 'reference'): MeasurementLight | undefined {
  const illuminant = textIn(bench.conditions, keyOf(prefix, 'illuminant'));
  const observer = textIn(bench.conditions, keyOf(prefix, 'observer'));
  if (illuminant === undefined || observer === undefined) return undefined;
  return { illuminant, observer: Number(observer), condition: textIn(bench.conditions, keyOf(prefix, 'condition')), geometry: textIn(bench.conditions, keyOf(prefix, 'geometry')) } as MeasurementLight;
}

function keyOf(prefix: '' | 'reference', part: keyof typeof names): string {
  return prefix === '' ? names[part] : `${prefix}${names[part][0]!.toUpperCase()}${names[part].slice(1)}`;
}
