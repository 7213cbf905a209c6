import type { Limit } from '../method/method.ts';
import { momentText } from './moment-text.ts';
import type { Moment, PlanLine, PlanStress } from './plan.ts';
import type { Proposal, StressRule } from './stress-rule.ts';
import { stressRules } from './stress-rules.ts';

/**
 * The tests that stresses call for, in the order in which they fall due. Stresses that ask for the same test, at the same moment
 * after the same preparation, share one line: with every reason, the most replicates and the strictest limits.
 * @param chosen each stress once; one that is not known here calls for nothing
 */
export function proposeLines(chosen: readonly PlanStress[], rules: readonly StressRule[] = stressRules): PlanLine[] {
  const lines = new Map<string, PlanLine>();
  for (const { stress, proposals } of rules) {
    const asked = chosen.find((candidate) => candidate.stress === stress);
    if (!asked) continue;
    for (const proposal of proposals.filter((candidate) => applies(candidate, asked, chosen))) {
      const line = lineOf(proposal, stress);
      const other = lines.get(line.lineId);
      lines.set(line.lineId, other ? merged(other, line) : line);
    }
  }
  return [...lines.values()].sort((a, b) => order(a.moment) - order(b.moment));
}

function applies({ degrees, besides }: Proposal, asked: PlanStress, chosen: readonly PlanStress[]): boolean {
  if (degrees && !degrees.includes(asked.degree)) return false;
  return besides === undefined || chosen.some(({ stress }) => stress === besides);
}

function lineOf({ methodId, moment, preparation = '', conditions = {}, replicates, limits, reason }: Proposal, stress: string): PlanLine {
  return { lineId: lineIdOf(methodId, moment, preparation), methodId, moment, preparation, conditions, replicates, limits, reasons: [{ stress, text: reason }] };
}

/** A test is told from others by its method, its moment and what the specimens went through. */
export function lineIdOf(methodId: string, moment: Moment, preparation: string): string {
  return [methodId, momentText(moment), ...(preparation ? [preparation] : [])].join(', ').slice(0, 200);
}

function merged(one: PlanLine, other: PlanLine): PlanLine {
  return {
    ...one,
    conditions: { ...other.conditions, ...one.conditions },
    replicates: Math.max(one.replicates, other.replicates),
    limits: [...one.limits.map((limit) => strictest(limit, other.limits)), ...other.limits.filter(({ property }) => !one.limits.some((limit) => limit.property === property))],
    reasons: [...one.reasons, ...other.reasons],
  };
}

/** The narrower end on each side; who asks for it goes with the end. */
function strictest(limit: Limit, others: readonly Limit[]): Limit {
  const other = others.find(({ property }) => property === limit.property);
  if (!other) return limit;
  const lower = highest(limit.lower, other.lower);
  const upper = lowest(limit.upper, other.upper);
  const sources = [limit, other].filter((one) => (lower !== null && one.lower === lower) || (upper !== null && one.upper === upper)).map(({ source }) => source);
  return { property: limit.property, lower, upper, source: [...new Set(sources)].join('; ') };
}

function highest(one: number | null, other: number | null): number | null {
  return one === null || other === null ? (one ?? other) : Math.max(one, other);
}

function lowest(one: number | null, other: number | null): number | null {
  return one === null || other === null ? (one ?? other) : Math.min(one, other);
}

const places = { film: -1, printing: 0, lamination: 0.5 };

/** Film first, then by hours; at the same hours the press comes before the laminator. */
function order({ from, hours }: Moment): number {
  return places[from] + hours;
}
