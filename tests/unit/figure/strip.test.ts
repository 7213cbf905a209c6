import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { commonDomain } from '../../../shared-lib/figure/strip-domain.ts';
import { layoutStrip } from '../../../shared-lib/figure/strip-layout.ts';
import { stripSvg } from '../../../shared-lib/figure/strip-svg.ts';
import type { StripDrawing, StripShape, StripSpec } from '../../../shared-lib/figure/strip.ts';
import { lightTheme, printTheme } from '../../../shared-lib/figure/theme.ts';
import { allStrips } from './strips.ts';

const spec = (name: string) => allStrips[name]!;

function corners(shape: StripShape): [number, number][] {
  switch (shape.kind) {
    case 'line':
      return [[shape.x1, shape.y1], [shape.x2, shape.y2]];
    case 'rect':
      return [[shape.x, shape.y], [shape.x + shape.width, shape.y + shape.height]];
    case 'circle':
      return [[shape.x - shape.radius, shape.y - shape.radius], [shape.x + shape.radius, shape.y + shape.radius]];
    case 'path':
      return shape.points;
    case 'text': {
      const width = shape.text.length * shape.size * 0.5;
      const left = shape.x - { start: 0, middle: width / 2, end: width }[shape.anchor];
      return [[left, shape.y - shape.size * 0.7], [left + width, shape.y]];
    }
  }
}

function outside(drawing: StripDrawing): StripShape[] {
  const inside = ([x, y]: [number, number]) => x >= 0 && x <= drawing.width && y >= 0 && y <= drawing.height;
  return drawing.shapes.filter((shape) => !corners(shape).every(inside));
}

const of = (drawing: StripDrawing, role: StripShape['role']) => drawing.shapes.filter((shape) => shape.role === role);

const number = fc.double({ noNaN: true, noDefaultInfinity: true });
const modest = fc.double({ min: -1e6, max: 1e6, noNaN: true });
const anySpec: fc.Arbitrary<StripSpec> = fc.oneof(number, modest).chain(() =>
  fc.record({
    unit: fc.constant('N'),
    readings: fc.array(
      fc.record(
        { value: fc.oneof(number, modest), open: fc.constantFrom('up' as const, 'down' as const), low: modest, high: modest, doubtful: fc.boolean() },
        { requiredKeys: ['value'] },
      ),
      { maxLength: 60 },
    ),
    value: fc.option(fc.oneof(number, modest)),
    low: fc.option(modest),
    high: fc.option(modest),
    bound: fc.constantFrom('exact' as const, 'at-least' as const, 'at-most' as const, 'between' as const),
    lowerLimit: fc.option(modest),
    upperLimit: fc.option(fc.oneof(number, modest)),
    domain: fc.option(fc.tuple(modest, modest).map(([a, b]): [number, number] => [Math.min(a, b), Math.max(a, b)])),
    label: fc.constant('a strip'),
  }),
);

describe('layoutStrip', () => {
  it('keeps every shape finite and inside the box, whatever the numbers', () => {
    fc.assert(
      fc.property(anySpec, fc.integer({ min: 100, max: 600 }), fc.integer({ min: 16, max: 80 }), (any, width, height) => {
        expect(outside(layoutStrip(any, width, height))).toEqual([]);
      }),
      { numRuns: 500 },
    );
  });

  it.each(Object.keys(allStrips))('fits 160 × 22 and 300 × 44: %s', (name) => {
    expect(outside(layoutStrip(spec(name), 160, 22))).toEqual([]);
    expect(outside(layoutStrip(spec(name), 300, 44))).toEqual([]);
  });

  it('keeps the marks of bounds apart where they stand close', () => {
    const bound = (value: number) => ({ value, open: 'up' as const });
    const close: StripSpec = { ...spec('all equal'), domain: [0, 7], readings: [bound(1), bound(1.1), bound(1.2), bound(1.3), { value: 0.9 }], value: 1.4, low: 0.5, high: 6 };
    const { shapes } = layoutStrip(close, 170, 22);
    const marks = shapes.filter((shape) => shape.kind === 'circle');
    expect(marks).toHaveLength(5);
    for (const [index, one] of marks.entries()) {
      for (const other of marks.slice(index + 1)) expect(Math.hypot(one.x - other.x, one.y - other.y)).toBeGreaterThanOrEqual(one.radius + other.radius);
      // No stroke of another runs through it.
      for (const line of shapes) {
        if (line.kind !== 'line' || line.role !== 'censored' || Math.abs(line.y1 - one.y) > one.radius) continue;
        expect(line.x1 > one.x || line.x2 <= one.x - one.radius + 1).toBe(true);
      }
    }
  });

  it('draws every reading once, equal ones stacked above one another', () => {
    const dots = of(layoutStrip(spec('all equal'), 160, 22), 'reading') as Extract<StripShape, { kind: 'circle' }>[];
    expect(dots).toHaveLength(8);
    expect(new Set(dots.map((dot) => dot.x)).size).toBe(1);
    expect(new Set(dots.map((dot) => dot.y)).size).toBe(8);
    expect(of(layoutStrip(spec('many readings'), 160, 22), 'reading')).toHaveLength(150);
  });

  it('places values in proportion to the scale', () => {
    const drawing = layoutStrip({ ...spec('one reading, no limit'), value: 50, readings: [{ value: 25 }], domain: [0, 100] }, 160, 22);
    const value = of(drawing, 'value')[0] as Extract<StripShape, { kind: 'line' }>;
    const dot = of(drawing, 'reading')[0] as Extract<StripShape, { kind: 'circle' }>;
    expect(value.x1).toBeCloseTo(80);
    expect(dot.x - 6).toBeCloseTo((value.x1 - 6) / 2);
  });

  it('shades the allowed side of a lower, an upper and a double limit', () => {
    const allowed = (name: string) => of(layoutStrip(spec(name), 160, 22), 'allowed')[0] as Extract<StripShape, { kind: 'rect' }>;
    expect(allowed('meets a lower limit').x + allowed('meets a lower limit').width).toBe(160);
    expect(allowed('upper limit, a doubtful reading').x).toBe(0);
    const both = allowed('within two limits');
    expect(both.x).toBeGreaterThan(0);
    expect(both.x + both.width).toBeLessThan(160);
    expect(of(layoutStrip(spec('no limit'), 160, 22), 'limit')).toEqual([]);
  });

  it('opens the limit bracket to the allowed side, so that grey print shows the side', () => {
    const limit = (name: string) => (of(layoutStrip(spec(name), 160, 22), 'limit')[0] as Extract<StripShape, { kind: 'path' }>).points;
    expect(limit('meets a lower limit')[0]![0]).toBeGreaterThan(limit('meets a lower limit')[1]![0]);
    expect(limit('upper limit, a doubtful reading')[0]![0]).toBeLessThan(limit('upper limit, a doubtful reading')[1]![0]);
  });

  it('shows a bound by an arrow to the end, a bracket by a hollow bar without a value mark', () => {
    const atLeast = layoutStrip(spec('at least (all torn)'), 160, 22);
    expect(Math.max(...of(atLeast, 'interval').flatMap(corners).map(([x]) => x))).toBe(159);
    const atMost = layoutStrip(spec('at most (below detection)'), 160, 22);
    expect(Math.min(...of(atMost, 'interval').flatMap(corners).map(([x]) => x))).toBe(1);
    const between = layoutStrip(spec('between (brackets only)'), 160, 22);
    expect(of(between, 'between')).toHaveLength(1);
    expect(of(between, 'value')).toEqual([]);
    expect(of(between, 'bracket')).toHaveLength(2);
  });

  it('marks doubtful, censored and off-scale readings by shape', () => {
    expect(of(layoutStrip(spec('upper limit, a doubtful reading'), 160, 22), 'doubtful')).toHaveLength(2);
    expect(of(layoutStrip(spec('torn specimens'), 160, 22), 'censored').filter(({ kind }) => kind === 'circle')).toHaveLength(3);
    // Two readings and the limit lie outside the common scale.
    expect(of(layoutStrip(spec('outside a common scale'), 160, 22), 'beyond')).toHaveLength(3);
  });
});

describe('commonDomain', () => {
  it('holds every number of every strip', () => {
    const [low, high] = commonDomain([spec('meets a lower limit'), spec('falls short')]);
    expect(low).toBeLessThan(35.2);
    expect(high).toBeGreaterThan(41.3);
  });

  it('is 0 to 1 without numbers and has width around a single one', () => {
    expect(commonDomain([])).toEqual([0, 1]);
    expect(commonDomain([spec('one reading, no limit')])).toEqual([38, 42]);
  });
});

describe('stripSvg', () => {
  it('writes every shape, in the colours of the theme only', () => {
    for (const one of Object.values(allStrips)) {
      const drawing = layoutStrip(one, 300, 44);
      const svg = stripSvg(drawing, printTheme);
      expect(svg.match(/<(line|rect|circle|path|text) /g)).toHaveLength(drawing.shapes.length);
      expect(svg).not.toMatch(/NaN|Infinity|undefined/);
      const colours: string[] = Object.values(printTheme).filter((value): value is string => typeof value === 'string');
      for (const colour of svg.match(/#[0-9a-f]{6}/g) ?? []) expect(colours).toContain(colour);
    }
    expect(stripSvg(layoutStrip(spec('no limit'), 160, 22), lightTheme)).toContain(lightTheme.accent);
  });
});
