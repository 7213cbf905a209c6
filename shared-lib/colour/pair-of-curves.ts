import { runCalculation, type Outcome } from '../calculation/calculation.ts';
import type { ResultValue, TitledTable } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import type { Figure } from '../figure/figure.ts';
import { onCommonGrid, type GridCurve } from './common-grid.ts';
import type { Illuminant } from './illuminants.ts';
import type { MeasurementLight } from './measurement-light.ts';
import { metamerismCalculation } from './metamerism.calculation.ts';
import { partingBand } from './parting-band.ts';
import { reflectanceDifferenceFigure, reflectanceFigure } from './reflectance-figure.ts';
import { wavelengthsOf } from './spectral-grid.ts';

interface Pair {
  reference: { name: string; curve: GridCurve | null };
  sample: GridCurve | null;
  light: MeasurementLight | undefined;
  secondIlluminant: Illuminant;
}

/** What two curves of reflectance say beyond the colour under one light: where they part, and whether the match holds under another. */
export function pairOfCurves(pair: Pair): { results: Record<string, ResultValue>; figures: Figure[]; tables: TitledTable[]; notes: string[] } {
  const { reference, sample, light } = pair;
  if (sample === null) return { results: {}, figures: [], tables: [], notes: [] };
  if (reference.curve === null || light === undefined) {
    const finding = 'The reference is known by its L*, a*, b* only; its curve cannot be drawn.';
    return { results: {}, figures: [reflectanceFigure(wavelengthsOf(sample.grid), [{ name: 'this print', role: 'reading', values: sample.values }], finding)], tables: [], notes: ['Without the spectrum of the reference nothing can be said of the match under another light.'] };
  }
  const common = onCommonGrid([reference.curve, sample]);
  const [standard, print] = common.curves as [number[], number[]];
  const wavelengths = wavelengthsOf(common.grid);
  const band = partingBand(wavelengths, print, standard);
  const bandText = band === null ? 'nowhere by 0.2 % or more' : band.fromNm === band.toNm ? `at ${band.atNm} nm` : `${band.fromNm}–${band.toNm} nm`;
  const metamerism = metamerismOf(pair, standard, print, wavelengths);
  return {
    results: { partingBand: { ...valueWithoutInterval(null, '', 1), text: bandText }, ...metamerism.results },
    figures: [
      reflectanceFigure(
        wavelengths,
        [{ name: reference.name, role: 'reference', values: standard }, { name: 'this print', role: 'reading', values: print }],
        band === null ? 'The curves nowhere differ by 0.2 % or more.' : `The curves part most at ${band.atNm} nm, and by half of that and more ${band.fromNm === band.toNm ? 'there only' : `from ${band.fromNm} to ${band.toNm} nm`}.`,
      ),
      reflectanceDifferenceFigure(wavelengths, print, standard),
    ],
    tables: metamerism.tables,
    notes: metamerism.notes,
  };
}

function metamerismOf({ light, secondIlluminant }: Pair, standard: number[], sample: number[], wavelengthsNm: number[]): { results: Record<string, ResultValue>; tables: TitledTable[]; notes: string[] } {
  const reference = light!.illuminant;
  if (reference === 'C' || reference === secondIlluminant) {
    return { results: {}, tables: [], notes: [`No metamerism: the second illuminant must be another than ${reference}.`] };
  }
  const { results, table, flags, notes } = runCalculation(metamerismCalculation, { wavelengthsNm, standard, sample, scale: 'fraction', reference, test: secondIlluminant, observer: light!.observer });
  const columns: Outcome['tables'] = [{ title: 'The pair under each light', columns: metamerismCalculation.columns, rows: table }];
  return {
    results: { metamerismIndex: results.index!, deltaEabSecond: results.deltaEabTest! },
    tables: columns,
    notes: [...flags.filter(({ code }) => code === 'no-match').map(({ text }) => text), `Metamerism: ${notes.find((note) => note.startsWith('ΔE*ab under'))}`],
  };
}
