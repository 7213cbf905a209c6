import { z } from 'zod';
import { defineCalculation } from '../../calculation/calculation.ts';
import { InputError } from '../../calculation/input-error.ts';
import type { Flag, ResultValue, TableRow } from '../../calculation/result.ts';
import type { Figure } from '../../figure/figure.ts';
import { levelSchema } from '../../statistics/level.ts';
import { summarise } from '../../statistics/summarise.ts';
import { readingsFigure } from './readings-figure.ts';
import { propertyOutcome, type PropertyOutcome } from './property-outcome.ts';
import { checkColumn, type ReadingColumn } from './reading-column.ts';
import { statisticWords, statisticsFor, unitOf } from './statistic-words.ts';
import { statistics, type Statistic } from './written-method.ts';

const name = z.string().min(1).max(100);
const end = z.number().nullable().default(null);

const input = z.strictObject({
  /** One list of values per reading, in the order of the rows; `null` where a row has none. A yes is 1, a no 0. */
  readings: z
    .array(
      z.strictObject({
        key: name,
        label: name.optional(),
        unit: z.string().max(20).default(''),
        kind: z.enum(['number', 'count', 'grade', 'yes-no']).default('number'),
        values: z.array(z.number().nullable()).min(1).max(1000),
        /** Row by row: the end was not reached, the true value is this or higher. */
        orMore: z.array(z.boolean()).max(1000).optional(),
        /** The scale of a grade. */
        grades: z.array(z.strictObject({ grade: z.number(), meaning: z.string().max(300).default('') })).min(2).max(21).optional(),
      }),
    )
    .min(1)
    .max(12),
  /** One statistic each. */
  properties: z
    .array(
      z.strictObject({
        key: name,
        title: name.optional(),
        reading: name,
        statistic: z.enum(statistics),
        /** Of a change or a ratio: the reading before. */
        against: name.optional(),
        /** Of a share of numbers or grades: where a reading passes. */
        passes: z.strictObject({ lower: end, upper: end }).optional(),
        /** Of a count per area: what one row looks at. */
        areaCm2: z.number().positive().max(1e8).optional(),
      }),
    )
    .min(1)
    .max(20),
  /** Rows that the method asks for; fewer are flagged. */
  replicates: z.int().min(1).optional(),
  level: levelSchema,
});

type Given = z.output<typeof input>;

export const inHouseCalculation = defineCalculation({
  id: 'in-house',
  version: '1',
  title: 'Statistics of an in-house method',
  input,
  compute: (given) => {
    const columns = given.readings.map(columnOf);
    columns.forEach((column, index) => checkColumn(column, `readings[${index}]`));
    const results: Record<string, ResultValue> = {};
    const table: TableRow[] = [];
    const flags: Flag[] = fewReplicates(columns, given.replicates);
    const notes: string[] = [];
    const figures: Figure[] = [];
    given.properties.forEach((property, index) => {
      const { column, outcome, title, unit } = outcomeOf(property, index, columns, given);
      results[property.key] = outcome.result;
      table.push({ property: title, statistic: statisticWords[property.statistic], n: outcome.result.n, ...spreadOf(outcome, column) });
      for (const flag of outcome.flags) if (!flags.some(({ text }) => text === flag.text)) flags.push(flag);
      notes.push(...outcome.notes);
      if (outcome.values.length > 0) figures.push(readingsFigure(property.key, title, unit, column, outcome));
    });
    return { results, table, flags, notes, figures };
  },
  columns: [
    { key: 'property', title: 'Property' },
    { key: 'statistic', title: 'Statistic' },
    { key: 'n', title: 'n', decimals: 0 },
    { key: 'mean', title: 'Mean' },
    { key: 'standardDeviation', title: 'Standard deviation' },
    { key: 'minimum', title: 'Lowest' },
    { key: 'median', title: 'Median' },
    { key: 'maximum', title: 'Highest' },
  ],
  cautions: [],
  sources: [
    'Mean: Student’s t, ISO 2602; with readings that are ‘or more’ maximum likelihood, W. Q. Meeker, L. A. Escobar, Statistical Methods for Reliability Data (1998)',
    'Median and median grade: order statistics, W. J. Conover, Practical Nonparametric Statistics, 3rd ed. (1999), 3.2',
    'Share: C. J. Clopper, E. S. Pearson, Biometrika 26 (1934) 404. Count per area: F. Garwood, Biometrika 28 (1936) 437; clusters: R. A. Fisher, Statistical Methods for Research Workers (1925), index of dispersion',
    'What lies beyond the lowest or highest: S. S. Wilks, Ann. Math. Stat. 12 (1941) 91',
    'Doubtful readings: F. E. Grubbs, Technometrics 11 (1969) 1; ISO 5725-2',
  ],
});

function columnOf({ key, label, unit, kind, values, orMore, grades }: Given['readings'][number], index: number): ReadingColumn {
  const field = `readings[${index}]`;
  if (orMore && orMore.length !== values.length) throw new InputError(`${field}.orMore`, orMore.length, `${field}.orMore must say it for each of the ${values.length} values.`);
  if (orMore?.some(Boolean) && kind !== 'number' && kind !== 'count') throw new InputError(`${field}.orMore`, null, `${field}: only a number or a count can be ‘or more’.`);
  if (kind === 'grade' && !grades) throw new InputError(`${field}.grades`, null, `${field}.grades is missing; a grade needs its scale.`);
  return {
    key,
    label: label ?? key,
    unit,
    kind,
    grades: [...(grades ?? [])].sort((a, b) => a.grade - b.grade),
    read: values.flatMap((value, row) => (value === null ? [] : [{ index: row, value, orMore: orMore?.[row] ?? false }])),
  };
}

function outcomeOf(property: Given['properties'][number], index: number, columns: ReadingColumn[], { readings, level, properties }: Given) {
  const field = `properties[${index}]`;
  const { key, reading, statistic, against, passes, areaCm2 } = property;
  const title = property.title ?? key;
  if (properties.findIndex((other) => other.key === key) !== index) throw new InputError(`${field}.key`, key, `${field}.key ${key} stands twice.`);
  const at = columns.findIndex((column) => column.key === reading);
  const column = columns[at];
  if (!column) throw new InputError(`${field}.reading`, reading, `${field}.reading is none of ${readings.map((one) => one.key).join(', ')}.`);
  if (!statisticsFor(column.kind).includes(statistic)) throw new InputError(`${field}.statistic`, statistic, `${field}.statistic: ${statistic} cannot be taken of ${column.label}, a ${column.kind}; it allows ${statisticsFor(column.kind).join(', ')}.`);
  const before = against === undefined ? null : (columns.find((other) => other.key === against) ?? null);
  const paired = statistic === 'change-pct' || statistic === 'ratio';
  if (paired && (before === null || before === column)) throw new InputError(`${field}.against`, against ?? null, `${field}.against must name the reading before.`);
  if (paired && before!.kind !== 'number' && before!.kind !== 'count') throw new InputError(`${field}.against`, against, `${field}.against must name numbers; ${before!.label} is a ${before!.kind}.`);
  if (statistic === 'count-per-area' && areaCm2 === undefined) throw new InputError(`${field}.areaCm2`, null, `${field}.areaCm2 is missing: the area that one row looks at.`);
  if (statistic === 'share-passing' && column.kind !== 'yes-no' && (passes?.lower ?? null) === null && (passes?.upper ?? null) === null) {
    throw new InputError(`${field}.passes`, null, `${field}.passes is missing: from which value, or up to which, a reading passes.`);
  }
  if (passes?.lower != null && passes.upper != null && passes.lower > passes.upper) throw new InputError(`${field}.passes.lower`, passes.lower, `${field}.passes begins at ${passes.lower}, above its end at ${passes.upper}.`);
  refuseOrMore(statistic, [column, before], field, title);
  const unit = unitOf(statistic, column.unit);
  const outcome = propertyOutcome({ title, statistic, unit, column, field: `readings[${at}]`, against: before, againstField: `readings[${columns.indexOf(before ?? column)}]`, passes: passes ?? null, areaCm2: areaCm2 ?? null }, level);
  return { column, outcome, title, unit };
}

function refuseOrMore(statistic: Statistic, columns: (ReadingColumn | null)[], field: string, title: string): void {
  if (!['change-pct', 'ratio', 'count-per-area'].includes(statistic)) return;
  const open = columns.find((column) => column?.read.some(({ orMore }) => orMore));
  if (open) throw new InputError(`${field}.statistic`, statistic, `${title}: ${open.label} has readings that are ‘or more’, from which no ${statisticWords[statistic]} follows.`);
}

function fewReplicates(columns: ReadingColumn[], replicates: number | undefined): Flag[] {
  const n = new Set(columns.flatMap(({ read }) => read.map(({ index }) => index))).size;
  if (replicates === undefined || n >= replicates) return [];
  return [{ code: 'few-replicates', where: '', text: `${n} of the ${replicates} replicates that the method asks for.` }];
}

/** Grades have no mean and no spread; what is ‘or more’ has neither in plain arithmetic. */
function spreadOf({ values }: PropertyOutcome, { kind }: ReadingColumn): TableRow {
  if (values.length === 0) return { mean: null, standardDeviation: null, minimum: null, median: null, maximum: null };
  const { mean, standardDeviation, minimum, median, maximum } = summarise(values.map(({ value }) => value));
  const arithmetic = kind !== 'grade' && values.every(({ orMore }) => !orMore);
  return { mean: arithmetic ? mean : null, standardDeviation: arithmetic ? standardDeviation : null, minimum, median, maximum };
}
