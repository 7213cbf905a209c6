import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import type { Flag, TableRow } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import type { Figure } from '../figure/figure.ts';
import { formatNumber } from '../quantity/format.ts';
import { levelSchema } from './level.ts';
import { refuseAs } from './refuse-as.ts';
import { summarise } from './summarise.ts';
import { twoFactorAnova } from './two-factor-anova.ts';
import type { AnovaTerm, FactorReading, TwoFactorAnova } from './two-factor-anova.ts';

const name = z.union([z.string().min(1).max(60), z.number()]).transform(String);

const input = z.strictObject({
  /** One row per reading: level of each factor and the value. */
  readings: z.array(z.strictObject({ a: name, b: name, value: z.number() })).min(4).max(5000),
  nameA: z.string().max(60).default('factor A'),
  nameB: z.string().max(60).default('factor B'),
  /** For unequal counts, see `twoFactorAnova`. */
  type: z.enum(['II', 'III']).default('II'),
  unit: z.string().max(20).default(''),
  level: levelSchema,
});

export const twoFactorCalculation = defineCalculation({
  id: 'two-factor',
  version: '1',
  title: 'Two factors and their interaction',
  input,
  compute: ({ readings, nameA, nameB, type, unit, level }) => {
    const anova = refuseAs('readings', readings.length, () => twoFactorAnova(readings, type));
    const n = readings.length;
    const plain = (value: number | null, of = '') => valueWithoutInterval(value, of, n);
    const { a, b, interaction, residual } = anova;
    const sentences = [
      ...(interaction ? [effectSentence(`the effect of ${nameA} depends on ${nameB}`, interaction, level)] : []),
      effectSentence(`${nameA} has an effect`, a, level),
      effectSentence(`${nameB} has an effect`, b, level),
    ];
    const linked = interaction?.p != null && interaction.p < 1 - level;
    return {
      results: {
        fA: plain(a.f),
        pA: plain(a.p),
        fB: plain(b.f),
        pB: plain(b.p),
        fInteraction: plain(interaction?.f ?? null),
        pInteraction: plain(interaction?.p ?? null),
        residualSd: plain(residual.meanSquare === null ? null : Math.sqrt(residual.meanSquare), unit),
      },
      table: [row(nameA, a), row(nameB, b), ...(interaction ? [row(`${nameA} × ${nameB}`, interaction)] : []), row('residual', { ...residual, f: null, p: null })],
      flags: flagsOf(anova),
      notes: [
        ...sentences,
        ...(linked ? [`As ${nameA} and ${nameB} act together, look at the combinations, not at the factors alone.`] : []),
        ...(anova.balanced ? [] : [`The combinations have unequal counts; sums of squares of type ${type}.`]),
        ...(residual.degreesOfFreedom === 0 ? ['No reading is left to judge the effects by; repeat at least one combination.'] : residual.meanSquare === 0 ? ['The readings of each combination agree exactly, so F has no finite value.'] : []),
      ],
      figures: [interactionFigure(readings, anova, { nameA, nameB, unit, level, finding: sentences[0]! })],
    };
  },
  columns: [
    { key: 'term', title: 'Term' },
    { key: 'sumOfSquares', title: 'Sum of squares' },
    { key: 'df', title: 'Degrees of freedom', decimals: 0 },
    { key: 'meanSquare', title: 'Mean square' },
    { key: 'F', title: 'F', decimals: 2 },
    { key: 'p', title: 'p', decimals: 4 },
  ],
  cautions: [],
  sources: ['F. Yates, J. Am. Stat. Assoc. 29 (1934) 51; S. R. Searle, Linear Models for Unbalanced Data (1987), chapter 4'],
});

function row(term: string, { sumOfSquares, degreesOfFreedom, meanSquare, f, p }: Omit<AnovaTerm, 'meanSquare'> & { meanSquare: number | null }): TableRow {
  return { term, sumOfSquares, df: degreesOfFreedom, meanSquare, F: f, p };
}

function effectSentence(what: string, { f, p }: AnovaTerm, level: number): string {
  if (f === null || p === null) return `Whether ${what} cannot be judged from these readings.`;
  const figures = `(F = ${formatNumber(f, 2)}, p ${p < 0.0001 ? 'below 0.0001' : `= ${formatNumber(p, 4)}`})`;
  return p < 1 - level ? `These readings show that ${what} ${figures}.` : `These readings do not show that ${what} ${figures}.`;
}

function flagsOf({ missing, interaction }: TwoFactorAnova): Flag[] {
  if (missing.length > 0) {
    const list = missing.slice(0, 6).map(({ a, b }) => `${a} with ${b}`).join(', ');
    return [{ code: 'missing-cells', where: 'readings', text: `No reading for ${list}${missing.length > 6 ? ` and ${missing.length - 6} more` : ''}; the interaction cannot be judged and is left out.` }];
  }
  return interaction === null ? [{ code: 'single-readings', where: 'readings', text: 'Each combination has one reading, so the interaction cannot be told from scatter and is left out.' }] : [];
}

/** A line per level of factor b over the levels of factor a: parallel lines mean no interaction. */
function interactionFigure(readings: FactorReading[], { levelsA, levelsB }: TwoFactorAnova, { nameA, nameB, unit, level, finding }: { nameA: string; nameB: string; unit: string; level: number; finding: string }): Figure {
  return {
    id: 'interaction',
    title: `${nameA} and ${nameB}`,
    finding: `Means of the combinations. ${finding}`,
    x: { title: nameA, scale: 'category', categories: levelsA },
    y: { title: 'Mean', ...(unit && { unit }), scale: 'linear' },
    series: levelsB.map((b) => ({
      name: `${nameB} ${b}`,
      kind: 'line' as const,
      role: 'reading' as const,
      points: levelsA.map((a, x) => {
        const values = readings.filter((reading) => reading.a === a && reading.b === b).map(({ value }) => value);
        if (values.length === 0) return { x, y: null };
        const { mean, low, high } = summarise(values, level);
        return { x, y: mean, ...(low !== null && high !== null && { low, high }) };
      }),
    })),
  };
}
