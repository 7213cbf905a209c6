import type { Flag } from '../calculation/result.ts';
import { formatNumber } from '../quantity/format.ts';
import { decayAt } from './decay-fit.ts';
import { daysUntil, type Decay } from './decay-profile.ts';

/** Flags what makes the chosen curve and its day doubtful. */
export function decayFlags(chosen: Decay, other: Decay | undefined, requiredMNm: number): Flag[] {
  const { model, fit: best, readings } = chosen;
  const flags: Flag[] = [];
  const last = Math.max(...readings.map((reading) => reading.days));
  const days = daysUntil(chosen, requiredMNm);
  if (decayAt(model, best, last) >= decayAt(model, best, 0)) {
    flags.push({ code: 'no-decay', where: '', text: 'The readings do not fall with time, so they say little about a decay.' });
  }
  if (days === 'never' || (typeof days === 'number' && days > last)) {
    flags.push({
      code: 'extrapolated',
      where: 'daysUntilRequired',
      text: `The answer goes beyond the last reading (day ${formatNumber(last, 0)}) and holds only while the decay keeps its course.`,
    });
  }
  const otherDays = other && daysUntil(other, requiredMNm);
  if (otherDays !== undefined && disagree(days, otherDays)) {
    const text = typeof otherDays === 'number' ? `${formatNumber(otherDays, 0)} days` : otherDays === 'never' ? 'no such day' : 'a start below it';
    flags.push({
      code: 'models-disagree',
      where: 'daysUntilRequired',
      text: `The ${other!.model.title} model gives ${text}; only later readings can decide between them.`,
    });
  }
  return [...flags, ...strayFlags(chosen)];
}

type Until = ReturnType<typeof daysUntil>;

/** One has no day, or their days differ by more than twice. */
function disagree(one: Until, other: Until): boolean {
  if (typeof one !== 'number' || typeof other !== 'number') return one !== other;
  return Math.max(one, other) > 2 * Math.min(one, other);
}

/** Readings that lie three times the scatter off the curve or more. */
function strayFlags({ model, fit: best, readings }: Decay): Flag[] {
  return readings.flatMap(({ days, low, high }) => {
    const curve = decayAt(model, best, days);
    const off = Math.max(low - curve, curve - high);
    if (off < 3 * best.standardDeviation) return [];
    return [{ code: 'far-from-curve', where: `day ${days}`, text: `The reading of day ${days} lies ${formatNumber(off, 1)} mN/m off the curve; look for a cause, it still counts.` }];
  });
}
