import type { CalculationResult, Flag } from '../../calculation/result.ts';
import { apparatusField } from '../instrument-field.ts';
import type { BenchReadings, ChoiceField, Field, Limit, Method, Property } from '../method.ts';
import { runOnBench } from '../run-on-bench.ts';
import { inHouseCalculation } from './in-house.calculation.ts';
import { readingsFigureId } from './readings-figure.ts';
import { isGrade, unitOf } from './statistic-words.ts';
import type { WrittenMethod, WrittenProperty, WrittenReading, WrittenSetting } from './written-method.ts';

/** A method that a lab has written down, as the rest of the program takes any method. */
export interface InHouseMethod extends Method {
  group: 'in-house';
  written: WrittenMethod;
  /** What a new test starts with. */
  limits: Limit[];
}

/** The cell beside a reading that may be 'or more'. Keys that are written down have no such sign. */
const endKey = (key: string) => `${key}_end`;
const MOST_ROWS = 500;
const LARGEST = 1e9;

/** @param written checked (`checkWrittenMethod`) */
export function inHouseMethod(id: string, version: string, written: WrittenMethod): InHouseMethod {
  const { title, shortTitle, standards, shows, spoils, cautions, settings, readings, properties, replicates, rowName } = written;
  const readingOf = (key: string) => readings.find((reading) => reading.key === key)!;
  return {
    id,
    version,
    title,
    shortTitle: shortTitle || title,
    group: 'in-house',
    standards,
    help: { shows, how: [...written.how, ...readings.flatMap(scaleInWords)], spoils },
    cautions,
    conditions: settings.map(conditionOf),
    readings: {
      rowName,
      fields: readings.flatMap((reading) => fieldsOf(reading, properties)),
      startRows: Math.min(replicates, MOST_ROWS),
      minRows: 1,
      maxRows: MOST_ROWS,
    },
    calculation: inHouseCalculation.id,
    properties: properties.map((property) => propertyOf(property, readingOf(property.reading))),
    evaluate: (bench) => evaluate(written, bench),
    written,
    limits: properties.flatMap(({ key, limit }) => (limit ? [{ property: key, ...limit }] : [])),
  };
}

function scaleInWords(reading: WrittenReading): string[] {
  if (reading.kind !== 'grade') return [];
  return [`${reading.label}: ${reading.grades.map(({ grade, meaning }) => `${grade} ${meaning.replace(/[.;]$/, '')}`).join('; ')}.`];
}

/** What is held the same stands there already; what is not must be written down. */
function conditionOf(setting: WrittenSetting): Field {
  const { key, label } = setting;
  if (setting.kind === 'instrument') return apparatusField(key, label);
  if (setting.kind === 'text') {
    return { kind: 'text', key, label, maxLength: 200, required: true, ...(setting.value && { default: setting.value, hint: 'as the method has it; write down what was different' }) };
  }
  const { unit, value, tolerance } = setting;
  return {
    kind: 'number',
    key,
    label,
    ...(unit && { unit }),
    min: -LARGEST,
    max: LARGEST,
    required: true,
    ...(value !== null && { default: value, usual: { min: value - (tolerance ?? 0), max: value + (tolerance ?? 0) }, hint: `the method has ${value}${tolerance ? ` ± ${tolerance}` : ''}${unit && ` ${unit}`}` }),
  };
}

function fieldsOf(reading: WrittenReading, properties: readonly WrittenProperty[]): Field[] {
  const { key, label } = reading;
  const required = properties.some((property) => property.reading === key || property.against === key);
  switch (reading.kind) {
    case 'number': {
      const { unit, lowest, highest } = reading;
      return [{ kind: 'number', key, label, ...(unit && { unit }), min: lowest ?? -LARGEST, max: highest ?? LARGEST, required }, ...endField(reading)];
    }
    case 'count':
      return [{ kind: 'number', key, label, ...(reading.unit && { unit: reading.unit }), min: 0, max: LARGEST, required }, ...endField(reading)];
    case 'grade': {
      const grades = [...reading.grades].sort((a, b) => a.grade - b.grade);
      return [{ kind: 'choice', key, label, required, choices: grades.map(({ grade, meaning, pictureSha256 }, index) => ({ value: String(grade), label: `${grade} ${meaning}`, shortcut: shortcutOf(grade, index), ...(pictureSha256 && { pictureSha256 }) })) }];
    }
    case 'yes-no': {
      const shortcuts = twoShortcuts(reading.yes, reading.no);
      return [{ kind: 'choice', key, label, required, choices: [{ value: 'yes', label: reading.yes, shortcut: shortcuts[0] }, { value: 'no', label: reading.no, shortcut: shortcuts[1] }] }];
    }
  }
}

/** A grade of one digit is its own key; others take a letter in the order of the scale. */
function shortcutOf(grade: number, index: number): string {
  return /^\d$/.test(String(grade)) ? String(grade) : String.fromCharCode('a'.charCodeAt(0) + index);
}

/** First letters, or y and n where they are the same. */
function twoShortcuts(yes: string, no: string): [string, string] {
  const [first, second] = [yes, no].map((word) => word.charAt(0).toLowerCase()) as [string, string];
  return first !== second && /^[a-z]{2}$/.test(first + second) ? [first, second] : ['y', 'n'];
}

function endField({ key, label, orMore }: Extract<WrittenReading, { kind: 'number' | 'count' }>): ChoiceField[] {
  if (!orMore) return [];
  return [
    {
      kind: 'choice',
      key: endKey(key),
      label: `${label}: end`,
      default: 'reached',
      choices: [
        { value: 'reached', label: 'reached', shortcut: 'r' },
        { value: 'or-more', label: 'not reached: or more', shortcut: 'm' },
      ],
    },
  ];
}

function propertyOf({ key, title, statistic, better, headline }: WrittenProperty, reading: WrittenReading): Property {
  const grades = reading.kind === 'grade' ? reading.grades.map(({ grade }) => grade) : [];
  const single = statistic !== 'share-passing' && statistic !== 'count-per-area';
  return {
    key,
    title,
    unit: unitOf(statistic, 'unit' in reading ? reading.unit : ''),
    better,
    ...(isGrade(statistic, reading) && { kind: 'grade', scale: { low: Math.min(...grades), high: Math.max(...grades) } }),
    limited: true,
    headline,
    ...((statistic === 'minimum' || statistic === 'maximum') && { asRead: true as const }),
    ...(single && { readingsFigure: readingsFigureId(key) }),
  };
}

function evaluate(written: WrittenMethod, bench: BenchReadings): CalculationResult {
  const rows = bench.rows.flatMap(({ values }, index) => (written.readings.some(({ key }) => values[key] != null) ? [{ values, index }] : []));
  const readings = written.readings.map((reading) => ({
    key: reading.key,
    label: reading.label,
    unit: 'unit' in reading ? reading.unit : '',
    kind: reading.kind,
    values: rows.map(({ values }) => numberOf(values[reading.key])),
    ...('orMore' in reading && reading.orMore && { orMore: rows.map(({ values }) => values[endKey(reading.key)] === 'or-more') }),
    ...(reading.kind === 'grade' && { grades: reading.grades.map(({ grade, meaning }) => ({ grade, meaning })) }),
  }));
  const properties = written.properties.map(({ key, title, reading, statistic, against, passes, areaCm2 }) => ({
    key,
    title,
    reading,
    statistic,
    ...(against !== null && { against }),
    ...(passes !== null && { passes }),
    ...(areaCm2 !== null && { areaCm2 }),
  }));
  const cellOf = (field: string): string => {
    const [, reading, place] = /^readings\[(\d+)\]\.values\[(\d+)\]$/.exec(field) ?? [];
    return reading === undefined ? '' : `rows[${rows[Number(place)]!.index}].${readings[Number(reading)]!.key}`;
  };
  const result = runOnBench(inHouseCalculation, { readings, properties, replicates: written.replicates }, cellOf);
  const inPlace = result.flags.map((flag) => ({ ...flag, where: flag.where && cellOf(flag.where) }));
  return { ...result, flags: [...written.settings.flatMap((setting) => departure(setting, bench)), ...inPlace] };
}

/** A cell as the calculation takes it: a choice is a grade, a yes or a no. */
function numberOf(value: BenchReadings['conditions'][string] | undefined): number | null {
  if (value === 'yes') return 1;
  if (value === 'no') return 0;
  return value == null ? null : Number(value);
}

/** A test that was not made as the method is written says so wherever its result goes. */
function departure(setting: WrittenSetting, { conditions }: BenchReadings): Flag[] {
  const found = conditions[setting.key];
  if (setting.kind === 'instrument' || found == null || setting.value === null || setting.value === '') return [];
  const unit = setting.kind === 'number' && setting.unit ? ` ${setting.unit}` : '';
  const tolerance = setting.kind === 'number' ? (setting.tolerance ?? 0) : 0;
  const departs = setting.kind === 'number' ? Math.abs(Number(found) - setting.value!) > tolerance * (1 + 1e-9) : found !== setting.value;
  if (!departs) return [];
  return [{ code: 'not-as-written', where: `conditions.${setting.key}`, text: `${setting.label} was ${found}${unit}; the method has ${setting.value}${tolerance ? ` ± ${tolerance}` : ''}${unit}.` }];
}
