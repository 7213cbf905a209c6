import { InputError } from '../../calculation/input-error.ts';
import { statisticWords, statisticsFor } from './statistic-words.ts';
import type { WrittenMethod, WrittenProperty, WrittenReading } from './written-method.ts';

/**
 * What the schema cannot see: that keys and names stand once, that each property can be worked out from its reading.
 * @throws InputError for the first thing at fault, its field within the written method
 */
export function checkWrittenMethod(written: WrittenMethod): void {
  const { settings, readings, properties } = written;
  refuseTwice('settings', settings);
  refuseTwice('readings', readings);
  refuseTwice('properties', properties.map(({ key, title }) => ({ key, label: title })));
  const shared = readings.findIndex(({ key }) => settings.some((setting) => setting.key === key));
  if (shared !== -1) throw new InputError(`readings[${shared}].key`, readings[shared]!.key, `${readings[shared]!.label} is a setting already; what is read needs a name of its own.`);
  readings.forEach((reading, index) => checkReading(reading, `readings[${index}]`));
  properties.forEach((property, index) => checkProperty(property, `properties[${index}]`, readings));
}

function refuseTwice(list: string, items: readonly { key: string; label: string }[]): void {
  items.forEach(({ key, label }, index) => {
    const same = (name: string) => name.trim().toLowerCase();
    const earlier = items.findIndex((other) => other.key === key || same(other.label) === same(label));
    if (earlier !== index) throw new InputError(`${list}[${index}].label`, label, `‘${label}’ stands twice; each needs a name of its own.`);
  });
}

function checkReading(reading: WrittenReading, field: string): void {
  if (reading.kind === 'number' && reading.lowest !== null && reading.highest !== null && reading.lowest >= reading.highest) {
    throw new InputError(`${field}.lowest`, reading.lowest, `The lowest ${reading.label} (${reading.lowest}) must lie below the highest (${reading.highest}).`);
  }
  if (reading.kind === 'grade') {
    const { grades } = reading;
    grades.forEach(({ grade }, index) => {
      if (grades.findIndex((other) => other.grade === grade) !== index) throw new InputError(`${field}.grades[${index}].grade`, grade, `Grade ${grade} stands twice on the scale of ${reading.label}.`);
    });
  }
  if (reading.kind === 'yes-no' && reading.yes.toLowerCase() === reading.no.toLowerCase()) {
    throw new InputError(`${field}.no`, reading.no, `What passes and what does not must be different words; both are ‘${reading.yes}’.`);
  }
}

function checkProperty(property: WrittenProperty, field: string, readings: readonly WrittenReading[]): void {
  const { title, statistic, against, passes, areaCm2, limit } = property;
  const reading = readings.find(({ key }) => key === property.reading);
  if (!reading) throw new InputError(`${field}.reading`, property.reading, `${title} is worked out from a reading that is not on the sheet.`);
  if (!statisticsFor(reading.kind).includes(statistic)) {
    throw new InputError(`${field}.statistic`, statistic, `${title}: a ${statisticWords[statistic]} cannot be taken of ${reading.label}, which is read as a ${reading.kind === 'yes-no' ? 'yes or no' : reading.kind}.`);
  }
  const paired = statistic === 'change-pct' || statistic === 'ratio';
  if (paired) checkPair(property, field, readings);
  else if (against !== null) throw new InputError(`${field}.against`, against, `${title}: only a change or a ratio is taken against a second reading.`);
  if ((statistic === 'count-per-area') !== (areaCm2 !== null)) {
    throw new InputError(`${field}.areaCm2`, areaCm2, areaCm2 === null ? `${title} needs the area in cm² that is looked at in one row.` : `${title}: only a count per area has an area.`);
  }
  if ('orMore' in reading && reading.orMore && (paired || statistic === 'count-per-area')) {
    throw new InputError(`${field}.statistic`, statistic, `${title}: ${reading.label} may be ‘or more’, from which no ${statisticWords[statistic]} follows; take the mean or the median.`);
  }
  const asksForEnds = statistic === 'share-passing' && reading.kind !== 'yes-no';
  const ends = passes !== null && (passes.lower !== null || passes.upper !== null);
  if (asksForEnds !== ends) {
    throw new InputError(`${field}.passes`, null, asksForEnds ? `${title} needs the value from which, or up to which, a reading passes.` : `${title}: only a share of numbers or grades has values that pass.`);
  }
  if (passes) {
    refuseDisorder(passes, `${field}.passes`, `What passes for ${title}`);
    refuseBeyond(passes, `${field}.passes`, `What passes for ${title}`, scaleOf(reading));
  }
  if (limit) {
    if (limit.lower === null && limit.upper === null) throw new InputError(`${field}.limit`, null, `The limit of ${title} has neither end; leave it out or give one.`);
    refuseDisorder(limit, `${field}.limit`, `The limit of ${title}`);
    refuseBeyond(limit, `${field}.limit`, `The limit of ${title}`, statistic === 'share-passing' ? { low: 0, high: 100 } : scaleOf(reading));
  }
}

function checkPair({ title, reading: key, against }: WrittenProperty, field: string, readings: readonly WrittenReading[]): void {
  const before = readings.find((candidate) => candidate.key === against);
  if (!before || before.key === key) throw new InputError(`${field}.against`, against, `${title} needs a second reading, the one before, to be taken against.`);
  if (before.kind !== 'number' && before.kind !== 'count') throw new InputError(`${field}.against`, against, `${title} needs numbers; ${before.label} is none.`);
  if (before.orMore) throw new InputError(`${field}.against`, against, `${title}: ${before.label} may be ‘or more’, and cannot be what another reading is taken against.`);
}

function refuseDisorder({ lower, upper }: { lower: number | null; upper: number | null }, field: string, what: string): void {
  if (lower !== null && upper !== null && lower > upper) throw new InputError(`${field}.lower`, lower, `${what} begins at ${lower}, above its end at ${upper}.`);
}

/** The scale of a grade; `null` for what has none. */
function scaleOf(reading: WrittenReading): { low: number; high: number } | null {
  if (reading.kind !== 'grade') return null;
  const grades = reading.grades.map(({ grade }) => grade);
  return { low: Math.min(...grades), high: Math.max(...grades) };
}

/** A limit beyond what can be read would always be met, or never. */
function refuseBeyond(range: { lower: number | null; upper: number | null }, field: string, what: string, scale: { low: number; high: number } | null): void {
  if (!scale) return;
  for (const end of ['lower', 'upper'] as const) {
    const value = range[end];
    if (value !== null && (value < scale.low || value > scale.high)) throw new InputError(`${field}.${end}`, value, `${what} must lie between ${scale.low} and ${scale.high}; ${value} is outside.`);
  }
}
