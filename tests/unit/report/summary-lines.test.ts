import { describe, expect, it } from 'vitest';
import { laminationBondMethod } from '../../../shared-lib/bond-strength/lamination-bond.method.ts';
import type { PropertyLine } from '../../../shared-lib/notebook/views.ts';
import { onCommonScales, summaryLines } from '../../../shared-lib/report/summary-lines.ts';

function line(key: string, part: Partial<PropertyLine> = {}): PropertyLine {
  return { key, title: key, unit: 'N', text: '3 N', intervalText: '', n: 5, limitText: '', verdict: { property: key, limit: null, verdict: 'no limit', probability: null }, strip: null, ...part };
}

const limited = (key: string) => line(key, { verdict: { property: key, limit: null, verdict: 'meets', probability: 1 } });
const keys = (lines: PropertyLine[]) => summaryLines(laminationBondMethod, lines).map(({ key }) => key);

describe('the lines of a test in the summary', () => {
  it('are those with a limit, headline or not', () => {
    expect(keys([line('mean'), line('minimum'), limited('median')])).toEqual(['median']);
  });

  it('are the headline properties of a test without any limit, but no empty ones', () => {
    expect(keys([line('mean'), line('minimum', { text: '—' }), line('median')])).toEqual(['mean']);
  });
});

describe('strips of one property in the summary', () => {
  const spec = (low: number, high: number) => ({ unit: 'N', readings: [], value: (low + high) / 2, low, high, bound: 'exact' as const, lowerLimit: null, upperLimit: null, domain: null, label: '' });
  const item = (title: string, low: number, high: number, unit = 'N') => ({ sample: 'Q-1', product: '', method: 'Bond', line: line('mean', { title, unit, strip: spec(low, high) }) });
  const domains = (...items: ReturnType<typeof item>[]) => onCommonScales(items).map(({ line: { strip } }) => strip!.domain);

  it('share a scale that holds them all; another title or unit has its own', () => {
    const [first, second, third, fourth] = domains(item('mean', 1, 2), item('mean', 3, 4), item('least', 10, 20), item('mean', 1, 2, 'kN'));
    expect(first).toEqual(second);
    expect(first![0]).toBeLessThanOrEqual(1);
    expect(first![1]).toBeGreaterThanOrEqual(4);
    expect(third![0]).toBeGreaterThan(4);
    expect(fourth![1]).toBeLessThan(4);
  });

  it('keep each their own where one of them would shrink to nothing', () => {
    expect(domains(item('mean', 104, 120), item('mean', 700, 1300))).toEqual([null, null]);
  });
});
