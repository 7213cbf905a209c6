import { InputError } from '../../shared-lib/calculation/input-error.ts';
import { keyFromLabel } from '../../shared-lib/method/in-house/key-from-label.ts';
import { statisticsFor } from '../../shared-lib/method/in-house/statistic-words.ts';
import type { WrittenGrade, WrittenMethod, WrittenProperty, WrittenReading, WrittenSetting } from '../../shared-lib/method/in-house/written-method.ts';
import { writtenSetting } from '../../shared-lib/method/in-house/written-setting.ts';
import { inSentence } from '../../shared-lib/quantity/words.ts';
import { readOptional } from './optional-number.ts';
import type { GradeLine, PropertyLineTyped, ReadingLine, SettingLine, WrittenLines } from './written-lines.ts';

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
  const settings = lines.settings.filter(isKept.setting).map((line, index) => settingOf(line, keyFor(line.key, line.label, 'setting'), `settings[${index}]`));
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
    cautions: lines.cautions.filter(isKept.caution).map(({ hazard, text }) => ({ hazard, text: text.trim() })),
    settings,
    rowName: lines.rowName.trim(),
    replicates: needed(lines.replicates, 'replicates', 'replicates is missing: how many rows does the method ask for?'),
    readings,
    properties,
  };
}

/** What a property is called when nobody says so. */
export function suggestedTitle({ reading: id, statistic }: PropertyLineTyped, readings: readonly ReadingLine[]): string {
  const label = readings.find((line) => line.id === id)?.label.trim() ?? '';
  if (!label) return '';
  const small = inSentence(label);
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

/** Lines that nobody filled in are left out of the method. */
export const isKept = {
  setting: ({ value, tolerance, eachTime, instrument }: SettingLine) => value.trim() !== '' || tolerance.trim() !== '' || eachTime || instrument,
  grade: ({ grade, meaning, pictureSha256 }: GradeLine) => grade.trim() !== '' || meaning.trim() !== '' || pictureSha256 !== '',
  caution: ({ text }: { text: string }) => text.trim() !== '',
};

/** The place in the method of what is typed on a line, by which refusals name it; −1 where the line is left out. */
export function placeOf<Line>(lines: readonly Line[], kept: (line: Line) => boolean, index: number): number {
  return kept(lines[index]!) ? lines.slice(0, index).filter(kept).length : -1;
}

function settingOf({ label, value, tolerance, unit, instrument }: SettingLine, key: string, field: string): WrittenSetting {
  if (instrument) return { kind: 'instrument', key, label: label.trim() };
  const setting = writtenSetting(key, label.trim(), value.trim(), unit.trim());
  if (setting.kind === 'number' && setting.value !== null) return { ...setting, tolerance: numberFor(tolerance, `${field}.tolerance`) };
  if (tolerance.trim() !== '') throw new InputError(`${field}.tolerance`, tolerance, `${setting.label || 'A tolerance'} needs a number to be held at, or no tolerance.`);
  return setting;
}

function readingOf(line: ReadingLine, key: string, field: string): WrittenReading {
  const label = line.label.trim();
  switch (line.kind) {
    case 'number':
      return { kind: 'number', key, label, unit: line.unit.trim(), lowest: numberFor(line.lowest, `${field}.lowest`), highest: numberFor(line.highest, `${field}.highest`), orMore: line.orMore };
    case 'count':
      return { kind: 'count', key, label, unit: line.unit.trim(), orMore: line.orMore };
    case 'grade':
      return { kind: 'grade', key, label, grades: line.grades.filter(isKept.grade).map((one, index) => gradeOf(one, `${field}.grades[${index}]`)) };
    case 'yes-no':
      return { kind: 'yes-no', key, label, yes: line.yes.trim(), no: line.no.trim() };
  }
}

function gradeOf({ grade, meaning, pictureSha256 }: GradeLine, field: string): WrittenGrade {
  return { grade: needed(grade, `${field}.grade`, 'A grade needs its number.'), meaning: meaning.trim(), ...(pictureSha256 && { pictureSha256 }) };
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
    // Who asks for it alone is no limit yet; the check says so rather than drop it.
    limit: limit.lower === null && limit.upper === null && limit.source === '' ? null : limit,
  };
}

function numberFor(typed: string, field: string): number | null {
  const read = readOptional(typed);
  if ('problem' in read) throw new InputError(field, typed, read.problem);
  return read.value;
}

function needed(typed: string, field: string, missing: string): number {
  const value = numberFor(typed, field);
  if (value === null) throw new InputError(field, null, missing);
  return value;
}

function linesIn(text: string): string[] {
  return text.split('\n').map((line) => line.trim()).filter(Boolean);
}
