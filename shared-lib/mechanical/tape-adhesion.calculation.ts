import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import type { Figure } from '../figure/figure.ts';
import { formatPlain, formatWithInterval } from '../quantity/format.ts';
import { clopperPearson } from '../statistics/clopper-pearson.ts';
import { levelSchema } from '../statistics/level.ts';
import { medianGrade } from '../statistics/median-grade.ts';
import { gradeD3359, gradeISO2409, isAtBandEdge, textD3359 } from './cross-cut-grade.ts';
import { gradesFigure } from '../figure/grades-figure.ts';
import { removedFields, removedPctOf, removedShare, type Removed } from './removed-share.ts';

const input = z.strictObject({
  /** One specimen in short; several go under `specimens`. */
  ...removedFields,
  specimens: z.array(z.strictObject({ label: z.string().max(100).optional(), ...removedFields })).min(1).max(1000).optional(),
  /** `none`: tape on the uncut print. */
  cuts: z.enum(['cross-cut', 'none']).default('cross-cut'),
  level: levelSchema,
});
type Input = z.output<typeof input>;

export const tapeAdhesionCalculation = defineCalculation({
  id: 'tape-adhesion',
  version: '1',
  title: 'Tape adhesion: area removed, graded',
  input,
  compute: (given) => {
    const { cuts, level } = given;
    const specimens = specimensOf(given);
    const percents = specimens.map((specimen, index) => removedPctOf(specimen, given.specimens ? `specimens[${index}].` : ''));
    const names = specimens.map(({ label }, index) => label ?? `${index + 1}`);
    const { removed, uneven, counted } = removedShare(specimens, percents, level);
    const grades = percents.map(gradeD3359);
    const median = inB(medianGrade(grades, 'higher'));
    const retained: ResultValue = { ...removed, value: rest(removed.value), low: rest(removed.high), high: rest(removed.low) };
    return {
      results: { gradeD3359: median, gradeISO2409: medianGrade(percents.map(gradeISO2409), 'lower'), retainedPct: retained },
      table: specimens.map((specimen, index) => ({ specimen: names[index]!, removedPct: percents[index]!, ...countedEnds(specimen, level), gradeD3359: textD3359(grades[index]!), gradeISO2409: gradeISO2409(percents[index]!) })),
      flags: [...edgeFlags(percents, given.specimens !== undefined), ...(uneven ? [UNEVEN] : [])],
      notes: [
        specimens.length === 1 ? 'One specimen: its grade, without a range.' : 'The grades are the median of the specimens and their range; of two middle grades the worse counts.',
        shareNote(specimens.length, counted, uneven, removed),
        'At 5 % exactly the grade is 3B (4B is for less) and class 1; at 15, 35 and 65 % exactly the better band of both scales counts.',
        ...(cuts === 'none' ? ['The bands belong to a lattice of cuts; on an uncut print they serve as a scale only.'] : []),
      ],
      figures: [gradesFigure('grades-d3359', 'Grades by ASTM D3359', names, grades, median), retainedFigure(names, percents, retained)],
    };
  },
  columns: [
    { key: 'specimen', title: 'Specimen' },
    { key: 'removedPct', title: 'Removed', unit: '%' },
    { key: 'low', title: 'From', unit: '%', decimals: 1 },
    { key: 'high', title: 'To', unit: '%', decimals: 1 },
    { key: 'gradeD3359', title: 'ASTM D3359' },
    { key: 'gradeISO2409', title: 'ISO 2409', decimals: 0 },
  ],
  cautions: [],
  sources: [
    'ASTM D3359, method B (bands of area lost; shared ends decided here)',
    'ISO 2409 (classes 0–3 seen in two public tables, 4 and 5 from memory)',
    'ASTM F2252 (tape on ink on flexible film; sets no limits). Percent retained: common practice',
    'Clopper & Pearson 1934 (exact interval of squares counted)',
  ],
});

/** The grade as it is written, '4B'. */
function inB(grade: ResultValue): ResultValue {
  return { ...grade, text: textD3359(grade.value!) };
}

/** @throws InputError when the short form and the list are mixed */
function specimensOf({ specimens, removedPct, removedLowPct, removedHighPct, squares }: Input): (Removed & { label?: string | undefined })[] {
  if (specimens === undefined) return [{ removedPct, removedLowPct, removedHighPct, squares }];
  if (removedPct !== undefined || squares !== undefined) {
    throw new InputError('specimens', null, 'Give one specimen by removedPct or squares, or several under specimens, not both.');
  }
  return specimens;
}

const UNEVEN: Flag = { code: 'uneven-specimens', where: '', text: 'The specimens differ more than counts of squares do by chance; the interval is that of the specimens, not of the squares.' };

function rest(pct: number | null): number | null {
  return pct === null ? null : 100 - pct;
}

function countedEnds({ squares, removedLowPct, removedHighPct }: Removed, level: number): { low: number | null; high: number | null } {
  if (!squares) return { low: removedLowPct ?? null, high: removedHighPct ?? null };
  const { low, high } = clopperPearson(squares.removed, squares.total, level);
  return { low: 100 * low, high: 100 * high };
}

function edgeFlags(percents: readonly number[], listed: boolean): Flag[] {
  return percents.flatMap((pct, index) =>
    isAtBandEdge(pct)
      ? [
          {
            code: 'band-edge',
            where: listed ? `specimens[${index}]` : '',
            text: `Specimen ${index + 1} lost exactly ${formatPlain(pct)} %, the end of a band: other readers of ASTM D3359 may give the next grade.`,
          },
        ]
      : [],
  );
}

function shareNote(count: number, counted: boolean, uneven: boolean, removed: ResultValue): string {
  if (counted && !uneven) return `Retained: share of ${removed.n} squares, exact interval; it takes the squares as independent of one another.`;
  if (count === 1 && removed.low !== null) return 'Retained: one specimen; the interval says how well its picture was read, not how far specimens differ.';
  if (count === 1) return 'Retained: one specimen in percent has no interval; count squares or test more specimens.';
  const alike = removed.low === removed.high ? ' All read the same, so the interval shows no width; it does not know how finely the percent was judged.' : '';
  return `Retained: mean of ${count} specimens with t interval, kept within 0 to 100 %.${alike}`;
}

function retainedFigure(names: string[], percents: number[], retained: ResultValue): Figure {
  const ends = [
    [95, '4B'],
    [85, '3B'],
    [65, '2B'],
    [35, '1B'],
  ] as const;
  const lowest = Math.min(...percents.map((pct) => 100 - pct));
  return {
    id: 'retained',
    title: 'Print retained under the tape',
    finding: `Retained: ${formatWithInterval(retained)}, ${percents.length} ${percents.length === 1 ? 'specimen' : 'specimens'}.`,
    x: { title: 'Specimen', scale: 'category', categories: names },
    y: { title: 'Retained', unit: '%', scale: 'linear', max: 100 },
    series: [{ name: 'retained', kind: 'points', role: 'reading', points: percents.map((pct, x) => ({ x, y: 100 - pct })) }],
    // Bands far below every specimen would squeeze the readings.
    lines: ends.filter(([, grade], index) => grade === '4B' || ends[index - 1]![0] >= lowest).map(([value, grade]) => ({ name: `${grade} from here`, axis: 'y', value, role: 'mark' })),
  };
}
