import type { Statistic, WrittenMethod, WrittenProperty, WrittenReading, WrittenSetting } from '../../shared-lib/method/in-house/written-method.ts';
import { asTyped } from './optional-number.ts';

/** A line of what is held the same, as typed. A line with neither a value nor a tick is a suggestion that nobody took. */
export interface SettingLine {
  key: string;
  label: string;
  value: string;
  tolerance: string;
  unit: string;
  eachTime: boolean;
  /** Which of the notebook's instruments it is, is asked each time. */
  instrument: boolean;
}

export interface GradeLine {
  grade: string;
  meaning: string;
  pictureSha256: string;
}

export interface ReadingLine {
  /** Names it on the page, also before it has a key. */
  id: string;
  key: string;
  label: string;
  kind: WrittenReading['kind'];
  unit: string;
  lowest: string;
  highest: string;
  orMore: boolean;
  grades: GradeLine[];
  yes: string;
  no: string;
}

export interface PropertyLineTyped {
  key: string;
  /** '' takes the suggestion. */
  title: string;
  /** `ReadingLine.id`. */
  reading: string;
  statistic: Statistic;
  against: string;
  passLower: string;
  passUpper: string;
  areaCm2: string;
  better: WrittenProperty['better'];
  headline: boolean;
  limitLower: string;
  limitUpper: string;
  limitSource: string;
}

/** A method as it is being typed. */
export interface WrittenLines {
  title: string;
  shortTitle: string;
  shows: string;
  /** One line each. */
  how: string;
  spoils: string;
  /** With commas. */
  standards: string;
  cautions: WrittenMethod['cautions'];
  settings: SettingLine[];
  rowName: string;
  replicates: string;
  readings: ReadingLine[];
  properties: PropertyLineTyped[];
}

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
