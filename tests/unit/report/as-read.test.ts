import { expect, it } from 'vitest';
import type { Limit, Method, Property } from '../../../shared-lib/method/method.ts';
import { judgeProperties, propertyLines } from '../../../shared-lib/report/property-line.ts';
import { testFluidsMethod } from '../../../shared-lib/surface-energy/test-fluids.method.ts';

const property: Property = { key: 'least', title: 'Weakest specimen', unit: 'N/15 mm', better: 'higher', limited: true, headline: true };
const limit: Limit = { property: 'least', lower: 2, upper: null, source: 'customer' };
const results = { least: { value: 2.4, unit: 'N/15 mm', low: null, high: null, level: null, n: 5, bound: 'exact' as const } };
const methodWith = (asRead: boolean) => ({ properties: [{ ...property, ...(asRead && { asRead: true }) }] }) as unknown as Method;

it('a specimen as read decides under the guarded rule too, and says that it is of these specimens', () => {
  const method = methodWith(true);
  const verdicts = judgeProperties(method, results, [limit], 'guarded');
  expect(verdicts).toEqual([{ property: 'least', limit, verdict: 'meets', probability: null, asRead: true }]);
  expect(propertyLines(method, results, verdicts, [])[0]).toMatchObject({ intervalText: 'as read, of these specimens' });
  expect(judgeProperties(method, results, [{ ...limit, lower: 2.5 }], 'guarded')[0]).toMatchObject({ verdict: 'falls short' });
});

it('an estimate without an interval stays undecided under the guarded rule', () => {
  expect(judgeProperties(methodWith(false), results, [limit], 'guarded')[0]).toMatchObject({ verdict: 'undecided' });
});

it('a film whose weakest place let the fluid at the limit retract falls short of it', () => {
  const between = { value: 37, unit: 'mN/m', low: 36, high: 38, level: null, n: 3, bound: 'between' as const };
  const at38: Limit = { property: 'weakestPosition', lower: 38, upper: null, source: 'customer' };
  const verdictOf = (results: Record<string, typeof between>) => judgeProperties(testFluidsMethod, results, [at38], 'guarded').find((verdict) => verdict.property === 'weakestPosition')?.verdict;
  expect(verdictOf({ weakestPosition: between })).toBe('falls short');
});
