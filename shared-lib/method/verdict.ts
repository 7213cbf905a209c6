import { InputError } from '../calculation/input-error.ts';
import type { ResultValue } from '../calculation/result.ts';
import { conformityProbability } from './conformity.ts';
import { knownRegion } from './known-region.ts';
import { allowForStudy, type MethodStudy } from './method-study.ts';
import { formatValue } from '../quantity/format.ts';
import type { Limit } from './method.ts';
import type { PropertyVerdict, VerdictRule, VerdictWord } from './property-verdict.ts';

/**
 * Compares a result with the limit set on it (JCGM 106:2012, 8.2 simple and 8.3 guarded acceptance, from memory; the
 * interval is the guard band). A limit belongs to what is allowed: a value, or an interval end, exactly on it meets.
 * - simple: the value decides; a bound or a bracket decides only where it lies wholly on one side.
 * - guarded: meets when the whole interval lies inside, falls short when it lies wholly outside, else undecided;
 *   without an interval undecided. `verdictReason` says why in words. Where the method has a measurement study, the
 *   interval counts no narrower than that allows (`allowForStudy`).
 * Without a limit, or with both sides open, the word is 'no limit'; `property` is then the limit's, or ''.
 * @param belowHighEnd the value lies below the high end of a bracket or upper bound, never on it
 * @throws InputError when the lower limit lies above the upper one.
 */
export function judge(result: ResultValue, limit: Limit | null, rule: VerdictRule, study: MethodStudy | null = null, belowHighEnd = false): PropertyVerdict {
  if (limit === null || (limit.lower === null && limit.upper === null)) {
    return { property: limit?.property ?? '', limit, verdict: 'no limit', probability: null, ...(study && { study: study.text }) };
  }
  if (limit.lower !== null && limit.upper !== null && limit.lower > limit.upper) {
    throw new InputError('limit', limit.lower, `The lower limit (${limit.lower}) must not lie above the upper limit (${limit.upper}).`);
  }
  const allowed = allowForStudy(result, study);
  return {
    property: limit.property,
    limit,
    verdict: compare(allowed, limit, rule, belowHighEnd),
    probability: conformityProbability(allowed, limit),
    ...(study && { study: allowed === result || rule === 'simple' ? study.text : `${study.text}; counts as ${rangeText(allowed)} against the limit` }),
  };
}

function compare(result: ResultValue, limit: Limit, rule: VerdictRule, belowHighEnd: boolean): VerdictWord {
  const known = knownRegion(result, rule);
  if (known === null) return 'undecided';
  const lower = limit.lower ?? -Infinity;
  const upper = limit.upper ?? Infinity;
  if (known.low >= lower && known.high <= upper) return 'meets';
  if (known.high < lower || known.low > upper) return 'falls short';
  if (belowHighEnd && result.bound !== 'exact' && known.high === lower) return 'falls short';
  return 'undecided';
}

function rangeText(result: ResultValue): string {
  return formatValue({ ...result, level: null }).intervalText.replace(/^range /, '');
}
