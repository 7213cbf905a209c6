import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import type { Limit } from './method.ts';
import { verdictRuleSchema, type VerdictWord } from './property-verdict.ts';
import { verdictReason } from './verdict-reason.ts';
import { judge } from './verdict.ts';

const input = z.strictObject({
  value: z.number().nullable(),
  low: z.number().nullable().default(null),
  high: z.number().nullable().default(null),
  lowerLimit: z.number().nullable().default(null),
  upperLimit: z.number().nullable().default(null),
  rule: verdictRuleSchema,
  /** Confidence level of `low`–`high`; `null` for a stated range, which gives no probability. */
  level: z.number().gt(0).lt(1).nullable().default(0.95),
  /** Readings behind the value: from 2 on the interval is read as a t interval with n − 1 degrees of freedom. */
  n: z.int().min(1).optional(),
  bound: z.enum(['exact', 'at-least', 'at-most', 'between']).default('exact'),
});

/** `results.verdict.value`: 1 meets, 0 falls short, null undecided; its `text` is the word. */
const codes: Partial<Record<VerdictWord, number>> = { meets: 1, 'falls short': 0 };

export const verdictCalculation = defineCalculation({
  id: 'verdict',
  version: '1',
  title: 'Verdict against a limit',
  input,
  compute: (given) => {
    refuseDisorder(given);
    const result: ResultValue = {
      value: given.value,
      unit: '',
      low: given.low,
      high: given.high,
      level: given.level,
      n: given.n ?? 0,
      bound: given.bound,
    };
    const limit: Limit = { property: 'value', lower: given.lowerLimit, upper: given.upperLimit, source: '' };
    const outcome = judge(result, limit, given.rule);
    return {
      results: {
        verdict: { ...valueWithoutInterval(codes[outcome.verdict] ?? null, '', result.n), text: outcome.verdict },
        probability: valueWithoutInterval(outcome.probability, '', result.n),
      },
      table: [{ verdict: outcome.verdict, probability: outcome.probability, rule: given.rule, ...shown(given) }],
      notes: [verdictReason(result, outcome, given.rule), probabilityNote(outcome.probability, given.n)],
    };
  },
  columns: [
    { key: 'verdict', title: 'Verdict' },
    { key: 'probability', title: 'Probability of conformity', decimals: 3 },
    { key: 'rule', title: 'Rule' },
    { key: 'value', title: 'Value' },
    { key: 'low', title: 'Low' },
    { key: 'high', title: 'High' },
    { key: 'lowerLimit', title: 'Lower limit' },
    { key: 'upperLimit', title: 'Upper limit' },
  ],
  cautions: [],
  sources: [
    'JCGM 106:2012, 7.2–7.4 (probability of conformity), 8.2 (simple acceptance), 8.3 (guard bands); clauses from memory',
  ],
});

type Given = z.output<typeof input>;

function shown({ value, low, high, lowerLimit, upperLimit }: Given) {
  return { value, low, high, lowerLimit, upperLimit };
}

function probabilityNote(probability: number | null, n: number | undefined): string {
  if (probability === null) {
    return 'No probability of conformity: it needs a value and an interval with a level on each side that the limits ask for.';
  }
  const distribution = n !== undefined && n >= 2 ? `Student's t with ${n - 1} degrees of freedom` : 'a normal distribution';
  return `Probability of conformity from ${distribution}; each side of the value is scaled to its own interval end.`;
}

function refuseDisorder({ value, low, high, lowerLimit, upperLimit }: Given): void {
  if (lowerLimit === null && upperLimit === null) {
    throw new InputError('lowerLimit', null, 'A verdict needs a lowerLimit, an upperLimit or both.');
  }
  if (lowerLimit !== null && upperLimit !== null && lowerLimit > upperLimit) {
    throw new InputError('lowerLimit', lowerLimit, `lowerLimit (${lowerLimit}) must not lie above upperLimit (${upperLimit}).`);
  }
  if (low !== null && high !== null && low > high) {
    throw new InputError('low', low, `low (${low}) must not lie above high (${high}).`);
  }
  if (value !== null && low !== null && low > value) {
    throw new InputError('low', low, `low (${low}) must not lie above the value (${value}).`);
  }
  if (value !== null && high !== null && high < value) {
    throw new InputError('high', high, `high (${high}) must not lie below the value (${value}).`);
  }
}
