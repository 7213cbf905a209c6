import type { ResultValue } from '../calculation/result.ts';
import { knownRegion } from './known-region.ts';
import type { PropertyVerdict, VerdictRule } from './property-verdict.ts';

/** One sentence that says why a verdict is what it is, for the screen, the report and `laydown calc verdict`. */
export function verdictReason(result: ResultValue, verdict: PropertyVerdict, rule: VerdictRule): string {
  if (verdict.verdict === 'no limit') return 'No limit is set.';
  const subject = subjectOf(result, rule);
  if (knownRegion(result, rule) === null) {
    return result.value === null
      ? 'Undecided: the result has no value.'
      : 'Undecided: the guarded rule compares the interval with the limit, and this result has none; more readings may give one, the simple rule does without.';
  }
  switch (verdict.verdict) {
    case 'meets':
      return `Meets: ${subject} lies within the limit.`;
    case 'falls short':
      return `Falls short: ${subject} lies outside the limit.`;
    case 'undecided':
      return `Undecided: ${subject} reaches across the limit; ${remedy(result)}.`;
  }
}

function subjectOf(result: ResultValue, rule: VerdictRule): string {
  if (result.bound === 'between') return 'the whole bracket';
  if (result.bound === 'at-least') return 'everything from the lower bound upwards';
  if (result.bound === 'at-most') return 'everything from the upper bound downwards';
  return rule === 'simple' ? 'the value' : 'the whole interval';
}

function remedy(result: ResultValue): string {
  if (result.bound === 'exact') return 'more readings would narrow it';
  if (result.bound === 'between') return 'a narrower bracket would decide it';
  return 'readings that close the open side would decide it';
}
