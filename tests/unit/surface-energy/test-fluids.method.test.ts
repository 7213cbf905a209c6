import { describe, expect, it } from 'vitest';
import type { BenchReadings, CellValue } from '../../../shared-lib/method/method.ts';
import { testFluidsMethod } from '../../../shared-lib/surface-energy/test-fluids.method.ts';
import { refusal } from './refusal.ts';

const bench = (rows: Record<string, CellValue>[], rest: Partial<BenchReadings> = {}): BenchReadings => ({
  conditions: { criterionS: 2 },
  rows: rows.map((values, index) => ({ row: `r${index + 1}`, values })),
  limits: [],
  traces: {},
  ...rest,
});

describe('test-fluids method', () => {
  it('asks for nothing it does not read: every property is a result of its calculation', () => {
    const { results } = testFluidsMethod.evaluate(bench([{ wetsMNm: 38, retractsMNm: 40 }]));
    for (const property of testFluidsMethod.properties) expect(Object.keys(results)).toContain(property.key);
  });

  it('leaves out rows without a reading and keeps the number of the others', () => {
    const result = testFluidsMethod.evaluate(bench([{}, { wetsMNm: 38 }, { label: 'edge' }, { label: 'edge', retractsMNm: 40 }]));
    expect(result.table.map((row) => row.position)).toEqual(['Position 2', 'edge']);
  });

  it('takes the lower limit on the wetting tension as the requirement', () => {
    const limits = [{ property: 'wettingTension', lower: 38, upper: null, source: 'customer' }];
    const result = testFluidsMethod.evaluate(bench([{ wetsMNm: 38, retractsMNm: 39 }], { limits }));
    expect(result.results.shareMeetingRequirement!.value).toBe(1);
    expect(result.figures[0]!.lines).toContainEqual({ name: 'Required 38 mN/m', axis: 'y', value: 38, role: 'limit' });
  });

  it.each([
    [[{}, {}], {}, 'rows[0].wetsMNm'],
    [[{}, { wetsMNm: 38, retractsMNm: 36 }], {}, 'rows[1].retractsMNm'],
    [[{}, {}, { wetsMNm: 99 }], {}, 'rows[2].wetsMNm'],
    [[{ wetsMNm: 38 }], { temperatureC: 300 }, 'conditions.temperatureC'],
  ])('names the cell at fault: %j with %j', (rows, conditions, field) => {
    const sheet = bench(rows as Record<string, CellValue>[], { conditions: conditions as Record<string, CellValue> });
    expect(refusal(() => testFluidsMethod.evaluate(sheet)).field).toBe(field);
  });

  it('names the figure whose readings are its dots', () => {
    const { figures } = testFluidsMethod.evaluate(bench([{ wetsMNm: 38, retractsMNm: 40 }]));
    expect(figures.map((figure) => figure.id)).toContain(testFluidsMethod.properties[0]!.readingsFigure);
  });
});
