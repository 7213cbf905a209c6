import { describe, expect, test } from 'vitest';
import { peelTraceCalculation } from '../../../shared-lib/bond-strength/peel-trace.calculation.ts';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';

const run = (input: unknown) => runCalculation(peelTraceCalculation, input);

/** A line from valley to peak to valley …: one peak every 10 mm, ten points to the millimetre, valleys at `valley` N. */
function zigzag(peaks: number[], valley: number): [number, number][] {
  return Array.from({ length: peaks.length * 100 + 1 }, (_, index) => {
    const mm = index / 10;
    const peak = peaks[Math.min(peaks.length - 1, Math.floor(mm / 10))]!;
    const along = (mm % 10) / 10;
    const share = mm === peaks.length * 10 ? 0 : 1 - Math.abs(2 * along - 1);
    return [mm, valley + (peak - valley) * share];
  });
}

const result = (peaks: number[], method: string, more: object = {}) => run({ widthMm: 15, points: zigzag(peaks, 3), peaks: method, ...more });

/*
 * ISO 6133:2015: the result is the median of the chosen peaks with their range, by five methods of which the number of
 * peaks decides (published scope, read in two catalogues). The rules of the methods and their limits are from memory of the
 * standard; worked numbers of the standard itself were not found. The expected values follow from the definition by hand.
 */
describe('ISO 6133 on traces with known peaks', () => {
  test('A, four peaks 5.2 6.0 5.6 6.4: median 5.8, range 1.2', () => {
    const { results, flags } = result([5.2, 6.0, 5.6, 6.4], 'A');
    expect(results.peakMedian!.value).toBeCloseTo(5.8, 10);
    expect(results.peakRange!.value).toBeCloseTo(1.2, 10);
    expect(results.peakMedian!.n).toBe(4);
    expect(flags.filter(({ code }) => code === 'peak-count')).toEqual([]);
  });

  test('A, one peak 7.1: median 7.1, range 0', () => {
    const { results } = result([7.1], 'A');
    expect(results.peakMedian!.value).toBeCloseTo(7.1, 10);
    expect(results.peakRange!.value).toBe(0);
  });

  test('B, nine peaks all in the central 80 %: median 5.1, range 0.8, and not the mean 5.144', () => {
    const nine = [4.8, 5.1, 5.0, 5.6, 5.3, 4.9, 5.4, 5.2, 5.0];
    // Peaks at 5, 15 … 85 mm on a trace drawn out to 90 mm; steady pulls of 10 mm before and 15 mm after put all nine within.
    const middle = zigzag(nine, 3);
    const points = [
      ...Array.from({ length: 150 }, (_, index): [number, number] => [index / 10 - 15, 3]),
      ...middle,
      ...Array.from({ length: 150 }, (_, index): [number, number] => [90.1 + index / 10, 3]),
    ];
    const { results } = run({ widthMm: 15, points, peaks: 'B', discardStartMm: 0 });
    expect(results.peakMedian!.n).toBe(9);
    expect(results.peakMedian!.value).toBeCloseTo(5.1, 10);
    expect(results.peakRange!.value).toBeCloseTo(0.8, 10);
  });

  test('B leaves out the peaks of the first and last tenth', () => {
    // Ten peaks at 5, 15 … 95 of 100 mm: the first and the last lie outside 10 … 90 mm.
    const { results } = result([9, 5, 5.2, 5.4, 5.6, 5.8, 6, 6.2, 6.4, 9], 'B', { discardStartMm: 0 });
    expect(results.peakMedian!.n).toBe(8);
    expect(results.peakMedian!.value).toBeCloseTo(5.7, 10);
    expect(results.peakRange!.value).toBeCloseTo(1.4, 10);
  });

  test('C takes the peak nearest to each of nine lines through the central 80 %', () => {
    // 50 peaks at 5, 15 … 495 mm, the k-th of 5 + k/100 N. Lines at 90, 130 … 410 mm: nearest peaks at 85 or 95, 125 or 135 …
    const fifty = Array.from({ length: 50 }, (_, index) => 5 + index / 100);
    const { results, flags } = result(fifty, 'C', { discardStartMm: 0 });
    expect(results.peakMedian!.n).toBe(9);
    // The middle line stands at 250 mm, between the peaks at 245 and 255 mm (5.24 and 5.25 N).
    expect(results.peakMedian!.value!).toBeGreaterThanOrEqual(5.24 - 1e-9);
    expect(results.peakMedian!.value!).toBeLessThanOrEqual(5.25 + 1e-9);
    // From the line at 90 to that at 410 mm are 32 peaks.
    expect(results.peakRange!.value).toBeCloseTo(0.32, 10);
    expect(flags.filter(({ code }) => code === 'peak-count')).toEqual([]);
  });

  test('D reads the middle of a near-continuous line', () => {
    const points = Array.from({ length: 1001 }, (_, index): [number, number] => [index / 10, 4 + 0.01 * Math.sin(index)]);
    const { results } = run({ widthMm: 15, points, peaks: 'D' });
    expect(results.peakMedian!.value).toBeCloseTo(4, 2);
    expect(results.peakRange!.value).toBeCloseTo(0.02, 3);
  });

  test('E takes every peak of the central 80 %', () => {
    const thirty = Array.from({ length: 30 }, (_, index) => 5 + (index % 2) / 2);
    const { results } = result(thirty, 'E', { discardStartMm: 0 });
    // Peaks at 35 … 265 mm of 300 mm: twenty-four, half of 5.0 and half of 5.5 N.
    expect(results.peakMedian).toMatchObject({ value: 5.25, n: 24 });
  });

  test.each([
    ['A', 9, 'B'],
    ['B', 4, 'A'],
    ['B', 30, 'C'],
    ['C', 12, 'B'],
    ['E', 3, 'A'],
  ])('method %s with %i peaks is flagged and method %s named', (method, count, fitting) => {
    const { flags } = result(Array.from({ length: count }, (_, index) => 5 + (index % 3) / 10), method);
    expect(flags.find(({ code }) => code === 'peak-count')!.text).toMatch(new RegExp(`has ${count}: method ${fitting} fits`));
  });

  test('ripples below a tenth of the plateau’s range are no peaks', () => {
    const points = zigzag([5.2, 6.0, 5.6, 6.4], 3).map(([mm, force], index): [number, number] => [mm, force + 0.02 * (index % 2)]);
    expect(run({ widthMm: 15, points, peaks: 'A' }).results.peakMedian!.n).toBe(4);
  });
});

/* Exact definitions: g₀ = 9.80665 m/s², 1 in = 25.4 mm, 1 lbf = 4.4482216152605 N; computed from them. */
describe('units of strength', () => {
  const flat: [number, number][] = Array.from({ length: 101 }, (_, index) => [index, 1]);
  test.each([
    ['N/15 mm', 1],
    ['N/25 mm', 1.6666667],
    ['N/25.4 mm', 1.6933333],
    ['N/m', 66.6666667],
    ['gf/25 mm', 169.952702],
    ['gf/in', 172.671945],
    ['lbf/in', 0.380676477],
  ])('1 N on 15 mm is %s %f', (unit, expected) => {
    const strength = run({ widthMm: 15, points: flat, unit }).results.strength!;
    expect(strength.unit).toBe(unit);
    expect(Math.abs(strength.value! / expected - 1)).toBeLessThan(1e-6);
  });

  test('200 gf on 25 mm are 1.176798 N/15 mm', () => {
    const points = flat.map(([mm]): [number, number] => [mm, 0.2 * 9.80665]);
    expect(run({ widthMm: 25, points }).results.strength!.value).toBeCloseTo(1.176798, 6);
  });
});

/* Textbook (from memory): G = 2F/b for a steady T-peel and at 180°, F/b at 90°. */
test('3 N on 15 mm open a bond with 400 J/m² in T-peel and 200 J/m² at 90°', () => {
  const points = Array.from({ length: 101 }, (_, index): [number, number] => [index, 3]);
  expect(run({ widthMm: 15, points, geometry: 't-peel' }).results.peelEnergy).toMatchObject({ value: 400, unit: 'J/m²' });
  expect(run({ widthMm: 15, points, geometry: '180-degree' }).results.peelEnergy!.value).toBe(400);
  expect(run({ widthMm: 15, points, geometry: '90-degree' }).results.peelEnergy!.value).toBe(200);
});
