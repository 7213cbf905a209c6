import type { ResultValue } from '../calculation/result.ts';
import type { Figure, FigurePoint } from '../figure/figure.ts';
import { formatNumber } from '../quantity/format.ts';
import { decayAt, type DecayReading } from './decay-fit.ts';
import { tensionInterval, type Decay } from './decay-profile.ts';

const linePoints = 60;
const bandPoints = 11;

/** Readings with their brackets, the chosen curve with its band, the other curve and the required tension. */
export function treatmentDecayFigure(
  chosen: Decay,
  other: Decay | undefined,
  requiredMNm: number,
  until: ResultValue,
  level: number,
): Figure {
  const last = Math.max(...chosen.readings.map((reading) => reading.days));
  const wanted = until.bound === 'exact' ? (until.high ?? until.value ?? last) : last;
  // Days far beyond the readings would press them against the axis.
  const end = Math.min(Math.max(last, wanted) * 1.1, last * 4);
  const curve = (decay: Decay) =>
    spread(end, linePoints).map((x) => ({ x, y: decayAt(decay.model, decay.fit, x) }));
  return {
    id: 'decay',
    title: 'Wetting tension after treatment',
    finding: finding(until, requiredMNm),
    x: { title: 'Days since treatment', unit: 'd', scale: 'linear', min: 0, max: end },
    y: { title: 'Wetting tension', unit: 'mN/m', scale: 'linear' },
    series: [
      { name: 'Readings', kind: 'points', role: 'reading', points: chosen.readings.map(point) },
      { name: chosen.model.title, kind: 'line', role: 'fit', points: curve(chosen) },
      ...(other ? [{ name: other.model.title, kind: 'line' as const, role: 'reference' as const, points: curve(other) }] : []),
    ],
    bands: [{ name: `Curve, ${formatNumber(level * 100, 0)} % interval`, points: band(chosen, end) }],
    lines: [
      { name: `Required ${requiredMNm} mN/m`, axis: 'y', value: requiredMNm, role: 'limit' },
      ...(until.bound === 'exact' && until.value !== null && until.value <= end
        ? [{ name: 'Falls to it', axis: 'x' as const, value: until.value, role: 'mark' as const }]
        : []),
    ],
  };
}

/** Places from 0 to `end`, closer together where the curve bends, at the start. */
function spread(end: number, count: number): number[] {
  return Array.from({ length: count }, (_, index) => end * (index / (count - 1)) ** 2);
}

function band(decay: Decay, end: number): { x: number; low: number; high: number }[] {
  return spread(end, bandPoints).flatMap((x) => {
    const { low, high } = tensionInterval(decay, x);
    return low === null || high === null ? [] : [{ x, low, high }];
  });
}

function point({ days, low, high }: DecayReading): FigurePoint {
  if (low === high) return { x: days, y: low };
  if (high === Infinity) return { x: days, y: low, open: 'up' };
  if (low === -Infinity) return { x: days, y: high, open: 'down' };
  return { x: days, y: (low + high) / 2, low, high };
}

function finding(until: ResultValue, requiredMNm: number): string {
  const days = formatNumber(until.value ?? 0, 0);
  if (until.bound === 'at-least') return `The film stays above ${requiredMNm} mN/m for at least ${days} days.`;
  if (until.bound === 'at-most') return `The film was above ${requiredMNm} mN/m for at most ${days} days.`;
  const range = until.high === null ? `from ${formatNumber(until.low ?? 0, 0)} days on` : `${formatNumber(until.low ?? 0, 0)} to ${formatNumber(until.high, 0)} days`;
  return `The film falls to ${requiredMNm} mN/m after about ${days} days (interval ${range}).`;
}
