import { statisticWords } from './statistic-words.ts';
import type { WrittenMethod, WrittenProperty, WrittenReading, WrittenSetting } from './written-method.ts';

/** What is different in a later version of a method, one sentence each; empty where nothing is. */
export function differencesInWords(before: WrittenMethod, after: WrittenMethod): string[] {
  return [
    ...text('Title', before.title, after.title),
    ...text('Short title', before.shortTitle, after.shortTitle),
    ...text('What it shows', before.shows, after.shows),
    ...listed('Settings', before.settings, after.settings, settingChanges),
    ...text('A row is called', before.rowName, after.rowName),
    ...text('Replicates', String(before.replicates), String(after.replicates)),
    ...listed('Readings', before.readings, after.readings, readingChanges),
    ...listed('Results', before.properties.map((property) => named(property, before)), after.properties.map((property) => named(property, after)), propertyChanges),
    ...lines('How it is done', before.how, after.how),
    ...lines('What spoils it', before.spoils, after.spoils),
    ...lines('Standards', before.standards, after.standards),
    ...lines('Cautions', before.cautions.map(({ hazard, text }) => `${hazard}: ${text}`), after.cautions.map(({ hazard, text }) => `${hazard}: ${text}`)),
  ];
}

function text(what: string, before: string, after: string): string[] {
  return before === after ? [] : [`${what}: ${before || 'nothing'} → ${after || 'nothing'}.`];
}

/** Lines that came and went; where none did, their order changed. */
function lines(what: string, before: readonly string[], after: readonly string[]): string[] {
  if (JSON.stringify(before) === JSON.stringify(after)) return [];
  const added = after.filter((line) => !before.includes(line)).map((line) => `${what}: added ‘${line}’`);
  const removed = before.filter((line) => !after.includes(line)).map((line) => `${what}: took out ‘${line}’`);
  return added.length + removed.length === 0 ? [`${what}: in another order.`] : [...removed, ...added];
}

interface Keyed {
  key: string;
  label: string;
}

function listed<Item extends Keyed>(what: string, before: readonly Item[], after: readonly Item[], changes: (before: Item, after: Item) => string[]): string[] {
  const earlier = (key: string) => before.find((item) => item.key === key);
  const found = [
    ...before.filter(({ key }) => !after.some((item) => item.key === key)).map(({ label }) => `${what}: took out ${label}.`),
    ...after.flatMap((item) => {
      const old = earlier(item.key);
      return old ? [...text(`${what}: the name`, old.label, item.label), ...changes(old, item)] : [`${what}: added ${item.label}.`];
    }),
  ];
  const order = (items: readonly Item[]) => items.map(({ key }) => key).join(' ');
  return found.length === 0 && order(before) !== order(after) ? [`${what}: in another order.`] : found;
}

function settingChanges(before: WrittenSetting, after: WrittenSetting): string[] {
  return text(after.label, settingText(before), settingText(after));
}

function settingText(setting: WrittenSetting): string {
  if (setting.kind === 'instrument') return 'an instrument, named each time';
  if (setting.kind === 'text') return setting.value || 'written down each time';
  const unit = setting.unit ? ` ${setting.unit}` : '';
  return setting.value === null ? `written down each time${unit && ` in${unit}`}` : `${setting.value}${setting.tolerance ? ` ± ${setting.tolerance}` : ''}${unit}`;
}

function readingChanges(before: WrittenReading, after: WrittenReading): string[] {
  if (before.kind === 'grade' && after.kind === 'grade') {
    return [
      ...before.grades.filter(({ grade }) => !after.grades.some((other) => other.grade === grade)).map(({ grade }) => `${after.label}: took out grade ${grade}.`),
      ...after.grades.flatMap(({ grade, meaning, pictureSha256 }) => {
        const old = before.grades.find((other) => other.grade === grade);
        if (!old) return [`${after.label}: added grade ${grade}, ${meaning}.`];
        return [...text(`${after.label}, grade ${grade}`, old.meaning, meaning), ...(old.pictureSha256 === pictureSha256 ? [] : [`${after.label}, grade ${grade}: another picture.`])];
      }),
    ];
  }
  return text(after.label, readingText(before), readingText(after));
}

function readingText(reading: WrittenReading): string {
  switch (reading.kind) {
    case 'number': {
      const range = reading.lowest === null && reading.highest === null ? '' : ` from ${reading.lowest ?? '−∞'} to ${reading.highest ?? '∞'}`;
      return `a number${reading.unit && ` in ${reading.unit}`}${range}${reading.orMore ? ', or more' : ''}`;
    }
    case 'count':
      return `a count${reading.unit && ` of ${reading.unit}`}${reading.orMore ? ', or more' : ''}`;
    case 'grade':
      return `a grade ${reading.grades.map(({ grade }) => grade).join(', ')}`;
    case 'yes-no':
      return `${reading.yes} or ${reading.no}`;
  }
}

/** A result with the readings that it is worked out from by their names; a reading that is only called otherwise is no change of it. */
type NamedProperty = WrittenProperty & Keyed & { readingLabel: string; againstLabel: string };

function named(property: WrittenProperty, { readings }: WrittenMethod): NamedProperty {
  const labelOf = (key: string | null) => readings.find((reading) => reading.key === key)?.label ?? '';
  return { ...property, label: property.title, readingLabel: labelOf(property.reading), againstLabel: labelOf(property.against) };
}

function propertyChanges(before: NamedProperty, after: NamedProperty): string[] {
  const { label } = after;
  return [
    ...(before.statistic === after.statistic && before.reading === after.reading ? [] : [`${label}, worked out as: ${statisticWords[before.statistic]} of ${before.readingLabel} → ${statisticWords[after.statistic]} of ${after.readingLabel}.`]),
    ...(before.against === after.against ? [] : text(`${label}, taken against`, before.againstLabel, after.againstLabel)),
    ...text(`${label}, passes`, rangeText(before.passes), rangeText(after.passes)),
    ...text(`${label}, area in cm²`, String(before.areaCm2 ?? ''), String(after.areaCm2 ?? '')),
    ...text(`${label}, better`, before.better, after.better),
    ...text(`${label}, limit`, rangeText(before.limit), rangeText(after.limit)),
    ...text(`${label}, source of the limit`, before.limit?.source ?? '', after.limit?.source ?? ''),
    ...(before.headline === after.headline ? [] : [`${label}: ${after.headline ? 'shown' : 'no longer shown'} in lists.`]),
  ];
}

function rangeText(range: { lower: number | null; upper: number | null } | null): string {
  if (!range) return '';
  if (range.lower !== null && range.upper !== null) return `${range.lower} to ${range.upper}`;
  return range.lower !== null ? `at least ${range.lower}` : range.upper !== null ? `at most ${range.upper}` : '';
}
