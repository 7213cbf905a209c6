import { z } from 'zod';
import { defineCalculation, type Outcome } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import { formatNumber } from '../quantity/format.ts';
import { cosineFromEquationOfState } from './equation-of-state.ts';
import { statedValue } from './stated-value.ts';

const part = z.number().min(0).max(100);
const surface = z.strictObject({
  totalMNm: z.number().gt(0).max(100).optional(),
  dispersiveMNm: part.optional(),
  polarMNm: part.optional(),
});
const input = z.strictObject({ film: surface, ink: surface });

/** Margin of film over ink that printers ask for: common practice, two articles of a print trade association. */
const usualMarginMNm = 10;

interface Surface {
  total: number;
  /** `null` when only the total is known. */
  parts: { dispersive: number; polar: number } | null;
}

/** How an ink or an adhesive suits a film by their surface energies. */
export const inkFitCalculation = defineCalculation({
  id: 'ink-fit',
  version: '1',
  title: 'Fit of an ink to a film',
  input,
  compute: (given): Outcome => {
    const film = surfaceOf(given.film, 'film');
    const ink = surfaceOf(given.ink, 'ink');
    const byParts = film.parts !== null && ink.parts !== null;
    const workOfAdhesion = byParts ? geometricWork(film.parts!, ink.parts!) : equationOfStateWork(film.total, ink.total);
    const spreadingCoefficient = workOfAdhesion - 2 * ink.total;
    const margin = film.total - ink.total;
    return {
      results: {
        workOfAdhesion: statedValue(workOfAdhesion, 'mJ/m²'),
        interfacialTension: statedValue(film.total + ink.total - workOfAdhesion, 'mN/m'),
        spreadingCoefficient: statedValue(spreadingCoefficient, 'mN/m'),
        margin: statedValue(margin, 'mN/m'),
      },
      table: [
        { surface: 'film', totalMNm: film.total, dispersiveMNm: film.parts?.dispersive ?? null, polarMNm: film.parts?.polar ?? null },
        { surface: 'ink', totalMNm: ink.total, dispersiveMNm: ink.parts?.dispersive ?? null, polarMNm: ink.parts?.polar ?? null },
      ],
      flags: [
        ...(margin < usualMarginMNm
          ? [
              {
                code: 'margin-below-usual',
                where: 'margin',
                text: `The film lies ${formatNumber(margin, 1)} mN/m above the ink; common practice asks for about ${usualMarginMNm}.`,
              },
            ]
          : []),
        ...(spreadingCoefficient < 0
          ? [
              {
                code: 'does-not-spread',
                where: 'spreadingCoefficient',
                text: 'The spreading coefficient is negative: at rest the ink draws together instead of spreading by itself.',
              },
            ]
          : []),
      ],
      notes: [
        byParts
          ? 'Work of adhesion by the geometric mean of the dispersive and polar parts.'
          : 'Only totals are known of film or ink, so the work of adhesion follows from the equation of state; parts of both would tell more.',
        `A margin of about ${usualMarginMNm} mN/m is common practice, not a standard. Good wetting is needed for adhesion but does not promise it.`,
        'The inputs carry no uncertainty here, so the results have no interval.',
      ],
    };
  },
  columns: [
    { key: 'surface', title: 'Surface' },
    { key: 'totalMNm', title: 'Total', unit: 'mN/m', decimals: 1 },
    { key: 'dispersiveMNm', title: 'Dispersive', unit: 'mN/m', decimals: 1 },
    { key: 'polarMNm', title: 'Polar', unit: 'mN/m', decimals: 1 },
  ],
  cautions: [],
  sources: [
    'Work of adhesion, interfacial tension and spreading coefficient: Dupré, Young and Harkins; geometric mean: Owens & Wendt, J. Appl. Polym. Sci. 13 (1969) 1741',
    'From totals alone: Li & Neumann, J. Colloid Interface Sci. 137 (1990) 304, exponential form',
    'Margin of about 10 mN/m: common practice',
  ],
});

/** Wa = 2√(γd γd) + 2√(γp γp), mJ/m². */
function geometricWork(film: NonNullable<Surface['parts']>, ink: NonNullable<Surface['parts']>): number {
  return 2 * (Math.sqrt(film.dispersive * ink.dispersive) + Math.sqrt(film.polar * ink.polar));
}

/** Wa = γL(1 + cos θ) with cos θ by the equation of state, mJ/m². */
function equationOfStateWork(film: number, ink: number): number {
  return ink * (1 + cosineFromEquationOfState(ink, film));
}

function surfaceOf(given: z.output<typeof surface>, field: 'film' | 'ink'): Surface {
  const { totalMNm, dispersiveMNm, polarMNm } = given;
  if (dispersiveMNm === undefined && polarMNm === undefined) {
    if (totalMNm === undefined) {
      throw new InputError(`${field}.totalMNm`, null, `Give the ${field} its dispersive and polar part, or its total.`);
    }
    return { total: totalMNm, parts: null };
  }
  const dispersive = dispersiveMNm ?? (totalMNm === undefined ? undefined : totalMNm - polarMNm!);
  const polar = polarMNm ?? (totalMNm === undefined ? undefined : totalMNm - dispersiveMNm!);
  if (dispersive === undefined || polar === undefined) {
    const missing = dispersive === undefined ? 'dispersiveMNm' : 'polarMNm';
    throw new InputError(`${field}.${missing}`, null, `The ${field} also needs its other part or its total.`);
  }
  const total = dispersive + polar;
  if (dispersive < 0 || polar < 0 || total <= 0 || (totalMNm !== undefined && Math.abs(totalMNm - total) > 0.15)) {
    throw new InputError(`${field}.totalMNm`, totalMNm ?? total, `The parts of the ${field} do not add up to a total above 0 that agrees with them.`);
  }
  return { total, parts: { dispersive, polar } };
}
