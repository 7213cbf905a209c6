import { InputError } from '../../shared-lib/calculation/input-error.ts';
import { keyFromLabel } from '../../shared-lib/method/in-house/key-from-label.ts';
import { statisticsFor } from '../../shared-lib/method/in-house/statistic-words.ts';
import type { Statistic, WrittenGrade, WrittenMethod, WrittenProperty, WrittenReading, WrittenSetting } from '../../shared-lib/method/in-house/written-method.ts';
import { readDecimal } from '../../shared-lib/quantity/decimal.ts';
import { asTyped, readOptional } from './optional-number.ts';

/** A line of what is held the same, as typed. A line with neither a value nor the tick is a suggestion that nobody took. */
export interface SettingLine {
  key: string;
  label: string;
  value: string;
  tolerance: string;
  unit: string;
  eachTime: boolean;
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
  if (setting.kind === 'text') return { key, label, value: setting.value, tolerance: '', unit: '', eachTime: setting.value === '' };
  return { key, label, value: asTyped(setting.value), tolerance: asTyped(setting.tolerance), unit: setting.unit, eachTime: setting.value === null };
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

/**
 * What was typed as a method, without the checks that the schema makes.
 * @throws InputError with the field of the written method for what is no number
 */
export function writtenOf(lines: WrittenLines): WrittenMethod {
  const taken: string[] = [...lines.settings, ...lines.readings].map(({ key }) => key).filter(Boolean);
  const keyFor = (key: string, label: string, otherwise: string): string => {
    if (key) return key;
    const made = keyFromLabel(label, taken, otherwise);
    taken.push(made);
    return made;
  };
  const settings = lines.settings.filter(isTaken).map((line, index) => settingOf(line, keyFor(line.key, line.label, 'setting'), `settings[${index}]`));
  const readings = lines.readings.map((line, index) => readingOf(line, keyFor(line.key, line.label, 'reading'), `readings[${index}]`));
  const keyOf = (id: string) => readings[lines.readings.findIndex((line) => line.id === id)]?.key ?? '';
  const propertyKeys = lines.properties.map(({ key }) => key).filter(Boolean);
  const properties = lines.properties.map((line, index) => {
    const title = line.title.trim() || suggestedTitle(line, lines.readings);
    const key = line.key || keyFromLabel(title, propertyKeys, 'result');
    propertyKeys.push(key);
    return propertyOf(line, { key, title, reading: keyOf(line.reading), against: keyOf(line.against) }, lines.readings, `properties[${index}]`);
  });
  return {
    title: lines.title.trim(),
    shortTitle: lines.shortTitle.trim(),
    shows: lines.shows.trim(),
    how: linesIn(lines.how),
    spoils: linesIn(lines.spoils),
    standards: lines.standards.split(',').map((one) => one.trim()).filter(Boolean),
    cautions: lines.cautions.filter(({ text }) => text.trim() !== '').map(({ hazard, text }) => ({ hazard, text: text.trim() })),
    settings,
    rowName: lines.rowName.trim(),
    replicates: numberFor(lines.replicates, 'replicates') ?? 1,
    readings,
    properties,
  };
}

/** What a property is called when nobody says so. */
export function suggestedTitle({ reading: id, statistic }: PropertyLineTyped, readings: readonly ReadingLine[]): string {
  const label = readings.find((line) => line.id === id)?.label.trim() ?? '';
  if (!label) return '';
  const small = label.charAt(0).toLowerCase() + label.slice(1);
  switch (statistic) {
    case 'mean':
      return `Mean ${small}`;
    case 'median':
    case 'median-grade':
      return `Median ${small}`;
    case 'minimum':
      return `Lowest ${small}`;
    case 'maximum':
      return `Highest ${small}`;
    case 'share-passing':
      return `Share that passes, ${small}`;
    case 'change-pct':
      return `Change of ${small}`;
    case 'ratio':
      return `Ratio of ${small}`;
    case 'count-per-area':
      return `${label} per area`;
  }
}

function isTaken({ label, value, eachTime }: SettingLine): boolean {
  return label.trim() !== '' && (value.trim() !== '' || eachTime);
}

function settingOf({ label, value, tolerance, unit, eachTime }: SettingLine, key: string, field: string): WrittenSetting {
  const name = label.trim();
  const read = readDecimal(value);
  const text = value.trim();
  if ('value' in read || (text === '' && eachTime && unit.trim() !== '')) {
    return { kind: 'number', key, label: name, unit: unit.trim(), value: 'value' in read ? read.value : null, tolerance: numberFor(tolerance, `${field}.tolerance`) };
  }
  return { kind: 'text', key, label: name, value: text };
}

function readingOf(line: ReadingLine, key: string, field: string): WrittenReading {
  const label = line.label.trim();
  switch (line.kind) {
    case 'number':
      return { kind: 'number', key, label, unit: line.unit.trim(), lowest: numberFor(line.lowest, `${field}.lowest`), highest: numberFor(line.highest, `${field}.highest`), orMore: line.orMore };
    case 'count':
      return { kind: 'count', key, label, unit: line.unit.trim(), orMore: line.orMore };
    case 'grade':
      return { kind: 'grade', key, label, grades: line.grades.filter(({ grade, meaning }) => grade.trim() !== '' || meaning.trim() !== '').map((one, index) => gradeOf(one, `${field}.grades[${index}]`)) };
    case 'yes-no':
      return { kind: 'yes-no', key, label, yes: line.yes.trim(), no: line.no.trim() };
  }
}

function gradeOf({ grade, meaning, pictureSha256 }: GradeLine, field: string): WrittenGrade {
  const value = numberFor(grade, `${field}.grade`);
  if (value === null) throw new InputError(`${field}.grade`, null, 'A grade needs its number.');
  return { grade: value, meaning: meaning.trim(), ...(pictureSha256 && { pictureSha256 }) };
}

function propertyOf(line: PropertyLineTyped, { key, title, reading, against }: { key: string; title: string; reading: string; against: string }, readings: readonly ReadingLine[], field: string): WrittenProperty {
  const kind = readings.find(({ id }) => id === line.reading)?.kind ?? 'number';
  const statistic = statisticsFor(kind).includes(line.statistic) ? line.statistic : statisticsFor(kind)[0]!;
  const asksPasses = statistic === 'share-passing' && kind !== 'yes-no';
  const paired = statistic === 'change-pct' || statistic === 'ratio';
  const limit = { lower: numberFor(line.limitLower, `${field}.limit.lower`), upper: numberFor(line.limitUpper, `${field}.limit.upper`), source: line.limitSource.trim() };
  return {
    key,
    title,
    reading,
    statistic,
    against: paired ? against || null : null,
    passes: asksPasses ? { lower: numberFor(line.passLower, `${field}.passes.lower`), upper: numberFor(line.passUpper, `${field}.passes.upper`) } : null,
    areaCm2: statistic === 'count-per-area' ? numberFor(line.areaCm2, `${field}.areaCm2`) : null,
    better: line.better,
    headline: line.headline,
    limit: limit.lower === null && limit.upper === null ? null : limit,
  };
}

function numberFor(typed: string, field: string): number | null {
  const read = readOptional(typed);
  if ('problem' in read) throw new InputError(field, typed, read.problem);
  return read.value;
}

function linesIn(text: string): string[] {
  return text.split('\n').map((line) => line.trim()).filter(Boolean);
}
