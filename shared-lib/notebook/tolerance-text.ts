import { differenceFormulas } from '../colour/difference-formulas.ts';
import type { ToleranceView } from './colour-views.ts';

/** A tolerance in words, e.g. 'ΔE CMC (2:1) ≤ 1.5, ΔL* ±0.8'. */
export function toleranceText({ formula, limit, cmcL, cmcC, deltaL, deltaC, deltaH }: Omit<ToleranceView, 'customer' | 'text'>): string {
  const title = `${differenceFormulas[formula].title}${formula === 'deltaECMC' ? ` (${cmcL}:${cmcC})` : ''}`;
  const parts = [['ΔL*', deltaL], ['ΔC*', deltaC], ['ΔH*', deltaH]] as const;
  return [`${title} ≤ ${limit}`, ...parts.flatMap(([name, value]) => (value === null ? [] : [`${name} ±${value}`]))].join(', ');
}
