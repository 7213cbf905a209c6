import { describe, expect, test } from 'vitest';
import { bondBuildMethod } from '../../../shared-lib/bond-strength/bond-build.method.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import type { BenchReadings, CellValue } from '../../../shared-lib/method/method.ts';

function bench(rows: Record<string, CellValue>[], conditions: BenchReadings['conditions'] = { stripWidthMm: 30, requiredNPer15mm: 2 }): BenchReadings {
  return { conditions, rows: rows.map((values, index) => ({ row: `r${index + 1}`, values })), limits: [], traces: {} };
}

/** 0.4 to 3 N/15 mm at 0.08 per hour, on strips of 30 mm: twice the force. */
const rows: Record<string, CellValue>[] = [1, 3, 6, 12, 24, 48, 72].map((hours, index) => ({
  hours,
  forceN: 2 * (3 - 2.6 * Math.exp(-0.08 * hours)) + (index % 2 ? 0.04 : -0.04),
  mode: 'adhesive',
}));

describe('the bond build-up sheet', () => {
  test('turns forces into strengths and yields every property that it promises', () => {
    const { results, flags } = bondBuildMethod.evaluate(bench([...rows, { hours: 72, mode: 'adhesive' }]));
    for (const { key, unit } of bondBuildMethod.properties) expect(results[key]!.unit).toBe(unit);
    expect(results.plateau!.n).toBe(7);
    expect(results.plateau!.low!).toBeLessThan(3);
    expect(results.plateau!.high!).toBeGreaterThan(3);
    expect(results.hoursUntilRequired!.value!).toBeCloseTo(11.9, 0);
    expect(flags).toEqual([]);
  });

  test('takes 15 mm with a flag where no width stands', () => {
    expect(bondBuildMethod.evaluate(bench(rows, {})).flags.map(({ code }) => code)).toContain('width-assumed');
  });

  test.each([
    ['too few readings', bench(rows.slice(0, 3)), 'rows[3].forceN'],
    ['no hours', bench([...rows, { forceN: 2, mode: 'adhesive' }]), 'rows[7].hours'],
    ['negative hours', bench([...rows, { hours: -2, forceN: 2, mode: 'adhesive' }]), 'rows[7].hours'],
    ['no failure mode', bench([...rows, { hours: 2, forceN: 2 }]), 'rows[7].mode'],
  ])('says what is missing or wrong: %s', (_, readings, field) => {
    try {
      bondBuildMethod.evaluate(readings);
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(InputError);
      expect((error as InputError).field).toBe(field);
    }
  });
});
