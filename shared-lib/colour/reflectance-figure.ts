import type { Figure, Series } from '../figure/figure.ts';

/** A named curve of reflectance, 0–1. */
export interface ReflectanceCurve {
  name: string;
  role: Series['role'];
  values: readonly number[];
}

/** Reflectance curves in percent over wavelength. */
export function reflectanceFigure(wavelengthsNm: readonly number[], curves: readonly ReflectanceCurve[], finding: string): Figure {
  return spectralFigure('reflectance', 'Reflectance', finding, wavelengthsNm, curves);
}

/** The difference sample − reference in percent points over wavelength, with the line of no difference. */
export function reflectanceDifferenceFigure(wavelengthsNm: readonly number[], sample: readonly number[], reference: readonly number[]): Figure {
  const difference = sample.map((value, index) => value - reference[index]!);
  const widest = difference.reduce((at, value, index) => (Math.abs(value) > Math.abs(difference[at]!) ? index : at), 0);
  const finding = `The curves part most at ${wavelengthsNm[widest]} nm: the sample reflects ${Math.abs(100 * difference[widest]!).toFixed(2)} percent points ${difference[widest]! < 0 ? 'less' : 'more'} than the reference.`;
  const figure = spectralFigure('reflectance-difference', 'Difference in reflectance', finding, wavelengthsNm, [{ name: 'sample − reference', role: 'reading', values: difference }]);
  return { ...figure, lines: [{ name: 'no difference', axis: 'y', value: 0, role: 'mark' }] };
}

function spectralFigure(id: string, title: string, finding: string, wavelengthsNm: readonly number[], curves: readonly ReflectanceCurve[]): Figure {
  return {
    id,
    title,
    finding,
    x: { title: 'Wavelength', unit: 'nm', scale: 'linear', min: wavelengthsNm[0]!, max: wavelengthsNm.at(-1)! },
    y: { title, unit: '%', scale: 'linear' },
    series: curves.map(({ name, role, values }) => ({
      name,
      kind: 'line',
      role,
      points: values.map((value, index) => ({ x: wavelengthsNm[index]!, y: 100 * value })),
    })),
  };
}
