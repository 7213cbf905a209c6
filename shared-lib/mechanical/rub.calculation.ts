import { z } from 'zod';
import { defineCalculation, type Outcome } from '../calculation/calculation.ts';
import type { TableColumn } from '../calculation/table-column.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Flag, ResultValue, TableRow } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { replicatesFigure } from '../figure/replicates-figure.ts';
import { lastingFigure } from '../statistics/lasting-figure.ts';
import { summariseLasting } from '../statistics/lasting.ts';
import type { Lasting } from '../statistics/least-lasting.ts';
import { levelSchema } from '../statistics/level.ts';
import { meanOfReplicates } from '../statistics/mean-of-replicates.ts';
import { rubFigure } from './rub-figure.ts';
import { rubFlags, rubSpecimens, strokesTo, type RubSeries, type RubSpecimen } from './rub-specimens.ts';

const density = z.number().min(-0.5).max(8);

const input = z.strictObject({
  /** One look at a specimen; `strokes` so far, 0 before rubbing. */
  readings: z
    .array(
      z.strictObject({
        specimen: z.string().max(100).optional(),
        strokes: z.int().min(0).max(10_000_000),
        density: density.optional(),
        /** Density of the receptor, all that has come off so far. */
        transferred: density.optional(),
      }),
    )
    .min(1)
    .max(5000),
  /** Of the unprinted film and of the clean receptor, where the densities were not read above these. */
  filmDensity: density.default(0),
  receptorDensity: density.default(0),
  /** A specimen has reached its end at whichever of these comes first. */
  lostLimitPct: z.number().positive().max(100).optional(),
  transferredLimit: z.number().positive().max(8).optional(),
  level: levelSchema,
});
type Input = z.output<typeof input>;

const columns: TableColumn[] = [
  { key: 'specimen', title: 'Specimen' },
  { key: 'strokes', title: 'Strokes', decimals: 0 },
  { key: 'lost', title: 'Density lost', decimals: 3 },
  { key: 'lostPct', title: 'Density lost', unit: '%', decimals: 1 },
  { key: 'transferred', title: 'Density transferred', decimals: 3 },
];

type Kind = 'lost' | 'lostPct' | 'transferred';
const KINDS: { kind: Kind; title: string; unit: string }[] = [
  { kind: 'lostPct', title: 'Density lost', unit: '%' },
  { kind: 'lost', title: 'Density lost', unit: 'D' },
  { kind: 'transferred', title: 'Density transferred', unit: 'D' },
];

/** Density that a print loses and gives off by rubbing, and the strokes that it stands to a limit. */
export const rubCalculation = defineCalculation({
  id: 'rub',
  version: '1',
  title: 'Rub resistance',
  input,
  compute: (values) => {
    const specimens = rubSpecimens(values.readings, values.filmDensity, values.receptorDensity);
    const ends = endsOf(specimens, values);
    const strokes = ends.results;
    const last = Object.fromEntries(KINDS.map(({ kind, unit }) => [kind, atLast(specimens, kind, unit, values.level)])) as Record<Kind, AtLast>;
    const shared = last.lostPct.strokes ?? last.transferred.strokes;
    return {
      results: { lostPct: last.lostPct.result, lost: last.lost.result, transferred: last.transferred.result, ...strokes },
      table: specimens.flatMap(tableOf),
      flags: [...rubFlags(specimens), ...sharedFlags(specimens, shared)],
      notes: [
        shared === null ? 'There is no count of strokes at which every specimen was read, so no loss is given for all of them.' : `Losses are those after ${shared} strokes, the most at which every specimen was read.`,
        ...(last.transferred.strokes === null || last.transferred.strokes === shared ? [] : [`What was transferred was read after ${last.transferred.strokes} strokes at most.`]),
        ...ends.notes,
        'It shows how the print stands this rubbing, dry or wet as stated; other receptors, loads and strokes do not compare.',
      ],
      figures: [...figuresOf(specimens, last, values), ...ends.figures],
    };
  },
  columns,
  cautions: [],
  sources: [
    'ASTM D5264 (rub tester; load and strokes as agreed; from memory)',
    'Strokes to a limit, some only lower bounds: W. Q. Meeker, L. A. Escobar, Statistical Methods for Reliability Data (1998); median: E. L. Kaplan, P. Meier, J. Am. Stat. Assoc. 53 (1958) 457',
    'Curve chosen by AICc: C. M. Hurvich, C.-L. Tsai, Biometrika 76 (1989) 297',
  ],
});

interface AtLast {
  result: ResultValue;
  values: number[];
  names: string[];
  strokes: number | null;
}

/** Mean over the specimens at the most strokes at which each was read. */
function atLast(specimens: readonly RubSpecimen[], kind: Kind, unit: string, level: number): AtLast {
  const read = specimens.filter((specimen) => specimen[kind] !== null);
  const shared = (read[0]?.[kind]!.strokes ?? []).filter((strokes) => strokes > 0 && read.every((specimen) => specimen[kind]!.strokes.includes(strokes)));
  const strokes = shared.length === 0 ? null : Math.max(...shared);
  if (strokes === null) return { result: valueWithoutInterval(null, unit, 0), values: [], names: [], strokes };
  const values = read.map((specimen) => valueAt(specimen[kind]!, strokes));
  return { result: meanOfReplicates(values, unit, level), values, names: read.map(({ name }) => name), strokes };
}

function valueAt({ strokes, values }: RubSeries, at: number): number {
  return values[strokes.indexOf(at)]!;
}

/** Strokes to the limit, with median and least; without a limit none. */
function endsOf(specimens: readonly RubSpecimen[], { lostLimitPct, transferredLimit, level }: Input): Pick<Outcome, 'results'> & { notes: string[]; figures: NonNullable<Outcome['figures']> } {
  const unit = 'strokes';
  if (lostLimitPct === undefined && transferredLimit === undefined) {
    const none = () => valueWithoutInterval(null, unit, 0);
    return { results: { strokesToLimit: none(), median: none(), least: none() }, notes: ['No limit of loss or transfer is stated, so no strokes are counted to it.'], figures: [] };
  }
  const judged = specimens.flatMap((specimen) => {
    const ends = [
      ...(lostLimitPct !== undefined && specimen.lostPct ? [strokesTo(specimen.lostPct, lostLimitPct)] : []),
      ...(transferredLimit !== undefined && specimen.transferred ? [strokesTo(specimen.transferred, transferredLimit)] : []),
    ];
    return ends.length === 0 ? [] : [{ name: specimen.name, end: first(ends) }];
  });
  if (judged.length === 0) {
    const [field, what] = lostLimitPct === undefined ? ['transferredLimit', 'transferred'] : ['lostLimitPct', 'density'];
    throw new InputError(field, lostLimitPct ?? transferredLimit, `${field} is a limit of what was never read: no reading has ${what}.`);
  }
  const readings = judged.map(({ end }) => end);
  const { typical, median, least, notes } = summariseLasting(readings, unit, level);
  const limits = [lostLimitPct !== undefined && `${lostLimitPct} % of the density lost`, transferredLimit !== undefined && `a density of ${transferredLimit} transferred`].filter((part) => part !== false);
  return {
    results: { strokesToLimit: typical, median, least },
    notes: [`The limit is ${limits.join(' or ')}; between two readings the strokes are read off a straight line.`, ...notes],
    figures: [lastingFigure('Strokes to the limit', unit, judged.map(({ name }) => name), readings, typical)],
  };
}

/** The limit that is reached first; where none is, the specimen stood as long as both were watched. */
function first(ends: readonly Lasting[]): Lasting {
  const reached = ends.filter(({ ended }) => ended);
  const of = reached.length > 0 ? reached : ends;
  return of.reduce((a, b) => (b.value < a.value ? b : a));
}

function tableOf({ name, lost, lostPct, transferred }: RubSpecimen): TableRow[] {
  const counts = [...new Set([...(lost?.strokes ?? []), ...(transferred?.strokes ?? [])])].sort((a, b) => a - b);
  const at = (series: RubSeries | null, strokes: number) => (series?.strokes.includes(strokes) ? valueAt(series, strokes) : null);
  return counts.map((strokes) => ({ specimen: name, strokes, lost: at(lost, strokes), lostPct: at(lostPct, strokes), transferred: at(transferred, strokes) }));
}

function sharedFlags(specimens: readonly RubSpecimen[], shared: number | null): Flag[] {
  const farther = specimens.filter(({ strokes }) => shared !== null && strokes > shared);
  if (farther.length === 0) return [];
  return [{ code: 'unequal-strokes', where: 'readings', text: `Specimen${farther.length === 1 ? '' : 's'} ${farther.map(({ name }) => name).join(', ')} went beyond the ${shared} strokes at which all were read; the losses there count for the strokes to the limit only.` }];
}

function figuresOf(specimens: readonly RubSpecimen[], last: Record<Kind, AtLast>, { lostLimitPct, transferredLimit }: Input) {
  const limits: Partial<Record<Kind, number | undefined>> = { lostPct: lostLimitPct, transferred: transferredLimit };
  return KINDS.flatMap(({ kind, title, unit }) => {
    const { result, values, names, strokes } = last[kind];
    const curve = kind === 'lost' ? null : rubFigure(specimens, { id: `${kind}-curve`, title, unit, of: (specimen) => specimen[kind], limit: limits[kind], result, strokes });
    const dots = kind === 'lost' || values.length === 0 ? [] : [replicatesFigure(`${kind}-readings`, `${title} after ${strokes} strokes`, unit, values, result, names)];
    return [...(curve ? [curve] : []), ...dots];
  });
}
