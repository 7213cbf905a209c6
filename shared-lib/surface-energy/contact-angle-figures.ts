import type { Figure, FigurePoint } from '../figure/figure.ts';
import { formatNumber } from '../quantity/format.ts';
import type { AngleScatter } from './angle-scatter.ts';
import { owensWendtOrdinate } from './owens-wendt.ts';
import type { ProbeLiquid } from './probe-liquids.ts';
import type { WettingModel } from './wetting-model.ts';

export interface ContactAnglePlot {
  names: string[];
  liquids: ProbeLiquid[];
  scatter: AngleScatter[];
  model: WettingModel;
  /** Outputs of the model, `null` without a physical solution. */
  out: Float64Array | null;
  fitted: (number | null)[];
}

const radians = Math.PI / 180;

/** The plot that belongs to the model: its straight line where it has one, else measured beside modelled angles. */
export function contactAngleFigures(modelId: string, plot: ContactAnglePlot): Figure[] {
  if (modelId === 'owens-wendt') return [owensWendtFigure(plot)];
  if (modelId === 'zisman') return [zismanFigure(plot)];
  return [angleFigure(plot)];
}

function owensWendtFigure({ names, liquids, scatter, out }: ContactAnglePlot): Figure {
  const at = liquids.map((liquid) => Math.sqrt(liquid.polarMNm! / liquid.dispersiveMNm!));
  const ordinate = (index: number, deg: number) =>
    owensWendtOrdinate(liquids[index]!.totalMNm, liquids[index]!.dispersiveMNm!, Math.cos(deg * radians));
  const far = Math.max(...at) * 1.05;
  const line = (x: number) => Math.sqrt(out![1]!) + Math.sqrt(out![2]!) * x;
  return {
    id: 'owens-wendt-plot',
    title: 'Owens–Wendt plot',
    finding: out
      ? `The line meets the axis at the root of the dispersive part, ${mnm(out[1]!)}, and its slope is the root of the polar part, ${mnm(out[2]!)}.`
      : 'No line fits these angles.',
    x: { title: '√(polar ∕ dispersive) of the liquid', scale: 'linear', min: 0 },
    y: { title: 'γ(1 + cos θ) ∕ 2√(disp.)', unit: '√(mN/m)', scale: 'linear' },
    series: [
      { name: 'Liquids, ± 1 standard deviation', kind: 'points', role: 'reading', points: points(names, scatter, at, ordinate) },
      ...(out ? [{ name: 'Owens–Wendt', kind: 'line' as const, role: 'fit' as const, points: [0, far].map((x) => ({ x, y: line(x) })) }] : []),
    ],
  };
}

function zismanFigure({ names, liquids, scatter, out }: ContactAnglePlot): Figure {
  const at = liquids.map((liquid) => liquid.totalMNm);
  const line = (x: number) => 1 + out![1]! * (x - out![0]!);
  const ends = out ? [Math.min(out[0]!, ...at), Math.max(...at)] : [];
  return {
    id: 'zisman-plot',
    title: 'Zisman plot',
    finding: out ? `The line reaches cos θ = 1 at the critical surface tension, ${mnm(out[0]!)}.` : 'cos θ does not fall with the tension of the liquid.',
    x: { title: 'Liquid tension', unit: 'mN/m', scale: 'linear' },
    y: { title: 'cos θ', scale: 'linear' },
    series: [
      {
        name: 'Liquids, ± 1 standard deviation',
        kind: 'points',
        role: 'reading',
        points: points(names, scatter, at, (_, deg) => Math.cos(deg * radians)),
      },
      ...(out ? [{ name: 'Regression', kind: 'line' as const, role: 'fit' as const, points: ends.map((x) => ({ x, y: line(x) })) }] : []),
    ],
    lines: [
      { name: 'Spreads', axis: 'y', value: 1, role: 'mark' },
      ...(out ? [{ name: 'Critical tension', axis: 'x' as const, value: out[0]!, role: 'mark' as const }] : []),
    ],
  };
}

function angleFigure({ names, scatter, fitted }: ContactAnglePlot): Figure {
  const differences = scatter.map(({ meanDeg }, index) => (fitted[index] === null ? 0 : Math.abs(meanDeg - fitted[index]!)));
  return {
    id: 'angles',
    title: 'Angles measured and by the model',
    finding: fitted.includes(null)
      ? 'No solution of the model to set beside the angles.'
      : `The largest difference between a measured angle and the model is ${formatNumber(Math.max(...differences), 1)}°.`,
    x: { title: 'Liquid', scale: 'category', categories: names },
    y: { title: 'Contact angle', unit: '°', scale: 'linear' },
    series: [
      {
        name: 'Measured, ± 1 standard deviation',
        kind: 'points',
        role: 'reading',
        points: points(names, scatter, names.map((_, index) => index), (_, deg) => deg),
      },
      ...(fitted.includes(null)
        ? []
        : [{ name: 'By the model', kind: 'points' as const, role: 'fit' as const, points: fitted.map((y, x) => ({ x, y })) }]),
    ],
  };
}

/** One point per liquid at its mean angle, with one standard deviation of its drops to each side. */
function points(
  names: string[],
  scatter: AngleScatter[],
  at: number[],
  ordinate: (index: number, deg: number) => number,
): FigurePoint[] {
  return scatter.map(({ meanDeg, sdDeg }, index) => {
    const point: FigurePoint = { x: at[index]!, y: ordinate(index, meanDeg), label: names[index]! };
    if (sdDeg === null || sdDeg === 0) return point;
    const ends = [ordinate(index, Math.max(0, meanDeg - sdDeg)), ordinate(index, Math.min(180, meanDeg + sdDeg))];
    return { ...point, low: Math.min(...ends), high: Math.max(...ends) };
  });
}

function mnm(value: number): string {
  return `${formatNumber(value, 1)} mN/m`;
}
