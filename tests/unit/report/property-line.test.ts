import { describe, expect, it } from 'vitest';
import type { CalculationResult, ResultValue } from '../../../shared-lib/calculation/result.ts';
import type { Limit } from '../../../shared-lib/method/method.ts';
import { laminationBondMethod } from '../../../shared-lib/bond-strength/lamination-bond.method.ts';
import { headlineLines, isTelling, judgedLines, judgeProperties, propertyLines } from '../../../shared-lib/report/property-line.ts';
import { limitText } from '../../../shared-lib/report/limit-text.ts';
import { worstVerdict } from '../../../shared-lib/report/worst-verdict.ts';

const limit = (lower: number | null, upper: number | null, property = 'mean'): Limit => ({ property, lower, upper, source: 'customer' });
const mean: ResultValue = { value: 3, unit: 'N/15 mm', low: 2.8, high: 3.2, level: 0.95, n: 6, bound: 'exact' };

function result(results: Record<string, ResultValue>): CalculationResult {
  return {
    calculation: 'bond-strength',
    version: '1',
    results,
    table: [],
    flags: [],
    notes: [],
    cautions: [],
    sources: [],
    figures: [
      {
        id: 'specimens',
        title: '',
        finding: '',
        x: { title: '', scale: 'linear' },
        y: { title: '', scale: 'linear' },
        series: [
          { name: 'peeled', kind: 'points', role: 'reading', points: [{ x: 0, y: 2.9 }, { x: 1, y: null }] },
          { name: 'tore', kind: 'points', role: 'reading', points: [{ x: 2, y: 3.4, open: 'up' }] },
          { name: 'doubtful', kind: 'points', role: 'doubtful', points: [{ x: 3, y: 1.1, low: 1, high: 1.2 }] },
          { name: 'fit', kind: 'line', role: 'fit', points: [{ x: 0, y: 9 }] },
        ],
      },
    ],
  };
}

describe('a property line', () => {
  it('says value, interval, n, limit and verdict, and draws the readings on its strip', () => {
    const [line] = judgedLines(laminationBondMethod, result({ mean }), [limit(2.5, null)], 'guarded');
    expect(line).toMatchObject({
      key: 'mean',
      title: 'Mean bond strength',
      text: '3.00 N/15 mm',
      intervalText: '95 % interval 2.80 to 3.20',
      n: 6,
      limitText: '≥ 2.5 N/15 mm',
      verdict: { property: 'mean', verdict: 'meets' },
    });
    expect(line!.strip).toEqual({
      unit: 'N/15 mm',
      readings: [{ value: 2.9 }, { value: 3.4, open: 'up' }, { value: 1.1, low: 1, high: 1.2, doubtful: true }],
      value: 3,
      low: 2.8,
      high: 3.2,
      bound: 'exact',
      lowerLimit: 2.5,
      upperLimit: null,
      domain: null,
      label: 'Mean bond strength 3.00 N/15 mm, 95 % interval 2.80 to 3.20, from 6 readings, limit ≥ 2.5 N/15 mm: meets.',
    });
  });

  // JCGM 106:2012, 8.3.3: guarded acceptance asks the whole interval to lie inside, simple acceptance (8.2) only the value.
  it('takes the verdict by the rule of the test', () => {
    const word = (rule: 'simple' | 'guarded', lower: number) => judgeProperties(laminationBondMethod, { mean }, [limit(lower, null)], rule)[0]!.verdict;
    expect(word('guarded', 2.9)).toBe('undecided');
    expect(word('simple', 2.9)).toBe('meets');
    expect(word('guarded', 3.3)).toBe('falls short');
  });

  it('is undecided, not left out, where a limit asks for what the result does not hold', () => {
    const lines = judgedLines(laminationBondMethod, result({ mean }), [limit(2, null, 'minimum')], 'guarded');
    expect(lines.map(({ key, verdict, text, strip }) => [key, verdict.verdict, text, strip === null])).toEqual([
      ['mean', 'no limit', '3.00 N/15 mm', false],
      ['minimum', 'undecided', '—', true],
    ]);
  });

  it('draws no strip of nothing, and no dots from a list that has no figures', () => {
    const none = judgedLines(laminationBondMethod, { ...result({ mean: { ...mean, value: null, low: null, high: null, level: null, n: 0 } }), figures: [] }, [], 'guarded');
    expect(none[0]).toMatchObject({ text: '—', strip: null });
    const verdicts = judgeProperties(laminationBondMethod, { mean }, [], 'guarded');
    expect(propertyLines(laminationBondMethod, { mean }, verdicts, [])[0]!.strip!.readings).toEqual([]);
  });

  it('prints an interval end that differs from the limit so that it differs in print', () => {
    const near: ResultValue = { ...mean, value: 3.08, low: 2.4959, high: 3.66 };
    const [line] = judgedLines(laminationBondMethod, result({ mean: near }), [limit(2.5, null)], 'guarded');
    expect(line).toMatchObject({ text: '3.080 N/15 mm', intervalText: '95 % interval 2.496 to 3.660', limitText: '≥ 2.5 N/15 mm', verdict: { verdict: 'undecided' } });
  });

  it('tells something when it has a value, an interval or a limit', () => {
    const nothing: ResultValue = { ...mean, value: null, low: null, high: null, level: null, n: 0 };
    const telling = (results: Record<string, ResultValue>, limits: Limit[]) => judgedLines(laminationBondMethod, result(results), limits, 'guarded').map(isTelling);
    expect(telling({ mean, median: nothing }, [])).toEqual([true, false]);
    expect(telling({ mean: nothing }, [limit(2.5, null)])).toEqual([true]);
    expect(telling({ mean: { ...nothing, low: 2 } }, [])).toEqual([true]);
  });

  it('is a headline where the method says so', () => {
    const lines = judgedLines(laminationBondMethod, result({ mean, median: mean }), [], 'guarded');
    expect(lines.map(({ key }) => key)).toEqual(['mean', 'median']);
    expect(headlineLines(laminationBondMethod, lines).map(({ key }) => key)).toEqual(['mean']);
  });
});

describe('a limit in words', () => {
  it.each([
    [limit(38, null), 'mN/m', '≥ 38 mN/m'],
    [limit(null, 5), '%', '≤ 5 %'],
    [limit(3, 5), '', '3 to 5'],
    [limit(null, null), 'N', ''],
    [limit(-3.5, null), '°C', '≥ −3.5 °C'],
    [null, 'N', ''],
  ])('%j in %j is %j', (given, unit, text) => expect(limitText(given, unit)).toBe(text));
});

describe('the verdict of a whole', () => {
  it.each([
    [['meets', 'falls short', 'undecided'], 'falls short'],
    [['meets', 'undecided', 'no limit'], 'undecided'],
    [['no limit', 'meets'], 'meets'],
    [['no limit'], 'no limit'],
    [[], 'no limit'],
  ] as const)('%j → %s', (words, verdict) => expect(worstVerdict([...words])).toBe(verdict));
});
