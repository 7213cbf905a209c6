import { describe, expect, it } from 'vitest';
import { calculationById } from '../../../shared-lib/registry/calculations.ts';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { boundsOf, moved, pixelsInside } from '../../../shared-lib/picture/region.ts';
import type { Region } from '../../../shared-lib/picture/area-reading.ts';

const count = (region: Region) => pixelsInside(region, { width: 100, height: 100 }).reduce((sum, one) => sum + one, 0);

describe('the pixels of a region', () => {
  it('are those whose middle lies in it, counted by hand', () => {
    expect(count({ kind: 'rectangle', x: 3, y: 4, width: 20, height: 30 })).toBe(600);
    // A right triangle of 40 × 40: rows of 39.5 − y − 0.5 … leave 0 + 1 + … + 39, and the middles on the slanted side.
    expect(count({ kind: 'polygon', points: [[0, 0], [40, 0], [0, 40]] })).toBe((39 * 40) / 2);
    expect(count({ kind: 'polygon', points: [[10, 10], [50, 10], [50, 40], [10, 40]] })).toBe(1200);
    // The notch of an L is not part of it.
    expect(count({ kind: 'polygon', points: [[0, 0], [40, 0], [40, 10], [10, 10], [10, 40], [0, 40]] })).toBe(400 + 300);
  });

  it('do not depend on the corner that the polygon begins with, nor on where it lies', () => {
    const points: [number, number][] = [[12, 3], [80, 41], [33, 77], [5, 50]];
    const turned = points.map((_, index) => points[(index + 2) % 4]!);
    const shifted = moved({ kind: 'polygon', points }, { x: 7, y: 9 });
    expect(count({ kind: 'polygon', points: turned })).toBe(count({ kind: 'polygon', points }));
    expect(count(shifted)).toBe(count({ kind: 'polygon', points }));
    expect(boundsOf(shifted)).toEqual({ x: 12, y: 12, width: 75, height: 74 });
  });

  it('are refused beyond the picture', () => {
    expect(() => count({ kind: 'polygon', points: [[0, 0], [120, 0], [0, 40]] })).toThrow(/reaches beyond the picture, which is 100 × 100 pixels/);
  });
});

describe('laydown calc removed-area', () => {
  const run = (input: object) => runCalculation(calculationById('removed-area')!, input);
  /** 20 × 20 with a bare square of 8 × 5. */
  const grid = Array.from({ length: 20 }, (_, y) => Array.from({ length: 20 }, (__, x) => (x >= 4 && x < 12 && y >= 6 && y < 11 ? 210 : 60)));

  it('counts a small grid exactly', () => {
    const { results, table } = run({ grey: grid });
    expect(table).toEqual([{ pixels: 400, removedPixels: 40 }]);
    expect(results.removedPct).toMatchObject({ value: 10, unit: '%', level: 0.95 });
    expect(results.removedPct!.low!).toBeLessThan(10);
    expect(results.removedPct!.high!).toBeGreaterThan(10);
  });

  it('takes a region, dark patches and a threshold', () => {
    const dark = grid.map((row) => row.map((grey) => 255 - grey));
    const { table } = run({ grey: dark, removed: 'darker', region: { kind: 'rectangle', x: 0, y: 6, width: 20, height: 5 }, threshold: 120 });
    expect(table).toEqual([{ pixels: 100, removedPixels: 40 }]);
  });

  it.each<[string, object, RegExp]>([
    ['rows of different length', { grey: [...grid.slice(1), [1, 2]] }, /grey\[19\] has 2 values and the first row 20/],
    ['one pixel', { grey: [[7]] }, /holds 1 pixel; it needs at least 100/],
    ['values that are no grey', { grey: [[300]] }, /grey\[0\]\[0\]/],
    ['one grey all over', { grey: grid.map((row) => row.map(() => 90)) }, /too near the threshold/],
  ])('refuses %s', (_name, input, says) => {
    expect(() => run(input)).toThrow(says);
  });
});
