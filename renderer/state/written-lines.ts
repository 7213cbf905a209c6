import { z } from 'zod';
import { statistics, writtenMethodSchema, type WrittenMethod, type WrittenReading, type WrittenSetting } from '../../shared-lib/method/in-house/written-method.ts';
import { asTyped } from './optional-number.ts';

/** A line of what is held the same, as typed. A line with neither a value nor the tick is a suggestion that nobody took. */
const settingLineSchema = z.strictObject({
  key: z.string(),
  label: z.string(),
  value: z.string(),
  tolerance: z.string(),
  unit: z.string(),
  eachTime: z.boolean(),
  /** Which of the notebook's instruments it is, is asked each time. */
  instrument: z.boolean(),
});

const gradeLineSchema = z.strictObject({ grade: z.string(), meaning: z.string(), pictureSha256: z.string() });

const readingLineSchema = z.strictObject({
  /** Names it on the page, also before it has a key. */
  id: z.string(),
  key: z.string(),
  label: z.string(),
  kind: z.enum(['number', 'count', 'grade', 'yes-no']),
  unit: z.string(),
  lowest: z.string(),
  highest: z.string(),
  orMore: z.boolean(),
  grades: z.array(gradeLineSchema),
  yes: z.string(),
  no: z.string(),
});

const propertyLineSchema = z.strictObject({
  key: z.string(),
  /** '' takes the suggestion. */
  title: z.string(),
  /** `ReadingLine.id`. */
  reading: z.string(),
  statistic: z.enum(statistics),
  against: z.string(),
  passLower: z.string(),
  passUpper: z.string(),
  areaCm2: z.string(),
  better: z.enum(['higher', 'lower', 'within', 'none']),
  headline: z.boolean(),
  limitLower: z.string(),
  limitUpper: z.string(),
  limitSource: z.string(),
});

/** A method as it is being typed. */
export const writtenLinesSchema = z.strictObject({
  title: z.string(),
  shortTitle: z.string(),
  shows: z.string(),
  /** One line each. */
  how: z.string(),
  spoils: z.string(),
  /** With commas. */
  standards: z.string(),
  // Of any length and also empty while it is typed.
  cautions: z.array(z.strictObject({ hazard: writtenMethodSchema.shape.cautions.element.shape.hazard, text: z.string() })),
  settings: z.array(settingLineSchema),
  rowName: z.string(),
  replicates: z.string(),
  readings: z.array(readingLineSchema),
  properties: z.array(propertyLineSchema),
});

export type SettingLine = z.infer<typeof settingLineSchema>;
export type GradeLine = z.infer<typeof gradeLineSchema>;
export type ReadingLine = z.infer<typeof readingLineSchema>;
export type PropertyLineTyped = z.infer<typeof propertyLineSchema>;
export type WrittenLines = z.infer<typeof writtenLinesSchema>;

/** A method that there is, to go on typing. */
export function linesOf(written: WrittenMethod): WrittenLines {
  const { title, shortTitle, shows, how, spoils, standards, cautions, settings, rowName, replicates, readings, properties } = written;
  return {
    title,
    shortTitle,
    shows,
    how: how.join('\n'),
    spoils: spoils.join('\n'),
    standards: standards.join(', '),
    cautions: cautions.map((caution) => ({ ...caution })),
    settings: settings.map(settingLine),
    rowName,
    replicates: String(replicates),
    readings: readings.map((reading) => ({ ...blankReading(reading.key), ...readingTyped(reading) })),
    properties: properties.map(({ key, title: name, reading, statistic, against, passes, areaCm2, better, headline, limit }) => ({
      key,
      title: name,
      reading,
      statistic,
      against: against ?? '',
      passLower: asTyped(passes?.lower),
      passUpper: asTyped(passes?.upper),
      areaCm2: asTyped(areaCm2),
      better,
      headline,
      limitLower: asTyped(limit?.lower),
      limitUpper: asTyped(limit?.upper),
      limitSource: limit?.source ?? '',
    })),
  };
}

export function blankReading(id: string): ReadingLine {
  return { id, key: '', label: '', kind: 'number', unit: '', lowest: '', highest: '', orMore: false, grades: [], yes: 'passes', no: 'fails' };
}

export function blankProperty(reading: string): PropertyLineTyped {
  return { key: '', title: '', reading, statistic: 'mean', against: '', passLower: '', passUpper: '', areaCm2: '', better: 'none', headline: true, limitLower: '', limitUpper: '', limitSource: '' };
}

/** Six grades to begin with; what they mean is for the lab to say. */
export function blankGrades(): GradeLine[] {
  return [0, 1, 2, 3, 4, 5].map((grade) => ({ grade: String(grade), meaning: '', pictureSha256: '' }));
}

function settingLine(setting: WrittenSetting): SettingLine {
  const { key, label } = setting;
  const blank = { key, label, value: '', tolerance: '', unit: '', eachTime: false, instrument: false };
  if (setting.kind === 'instrument') return { ...blank, instrument: true };
  if (setting.kind === 'text') return { ...blank, value: setting.value, eachTime: setting.value === '' };
  return { ...blank, value: asTyped(setting.value), tolerance: asTyped(setting.tolerance), unit: setting.unit, eachTime: setting.value === null };
}

function readingTyped(reading: WrittenReading): Partial<ReadingLine> {
  const shared = { key: reading.key, label: reading.label, kind: reading.kind };
  switch (reading.kind) {
    case 'number':
      return { ...shared, unit: reading.unit, lowest: asTyped(reading.lowest), highest: asTyped(reading.highest), orMore: reading.orMore };
    case 'count':
      return { ...shared, unit: reading.unit, orMore: reading.orMore };
    case 'grade':
      return { ...shared, grades: reading.grades.map(({ grade, meaning, pictureSha256 }) => ({ grade: String(grade), meaning, pictureSha256: pictureSha256 ?? '' })) };
    case 'yes-no':
      return { ...shared, yes: reading.yes, no: reading.no };
  }
}
