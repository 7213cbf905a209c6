import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { wettingFluidCalculation } from '../../../shared-lib/surface-energy/wetting-fluid.calculation.ts';
import { fluidSteps, fluidTable } from '../../../shared-lib/surface-energy/fluid-table.ts';
import { refusal } from './refusal.ts';

const run = (input: unknown) => runCalculation(wettingFluidCalculation, input);
const brackets = (...pairs: [number | null, number | null][]) =>
  pairs.map(([low, high]) => ({ ...(low === null ? {} : { wetsMNm: low }), ...(high === null ? {} : { retractsMNm: high }) }));
const codes = (input: unknown) => run(input).flags.map((flag) => flag.code);

describe('brackets from raw readings', () => {
  it('takes the highest fluid that held and the lowest that retracted, 2.0 s counting as held', () => {
    const readings = [
      { fluidMNm: 36, heldS: 5 },
      { fluidMNm: 38, heldS: 2 },
      { fluidMNm: 40, heldS: 1.9 },
      { fluidMNm: 42, heldS: 0.5 },
    ];
    expect(run({ positions: [{ label: 'edge', readings }] }).table[0]).toMatchObject({ wetsMNm: 38, retractsMNm: 40 });
  });

  it('widens and flags the bracket when a higher fluid held while a lower one retracted', () => {
    const readings = [
      { fluidMNm: 36, heldS: 4 },
      { fluidMNm: 38, heldS: 1 },
      { fluidMNm: 40, heldS: 3 },
      { fluidMNm: 42, heldS: 1 },
    ];
    const result = run({ positions: [{ label: 'edge', readings }] });
    expect(result.table[0]).toMatchObject({ wetsMNm: 36, retractsMNm: 42 });
    expect(result.flags[0]).toMatchObject({ code: 'fluids-contradict', where: 'edge' });
    expect(result.figures[0]!.series.map((series) => series.role)).toEqual(['doubtful']);
  });

  it('gives nothing for a position whose readings only contradict, and says so', () => {
    const readings = [
      { fluidMNm: 38, heldS: 1 },
      { fluidMNm: 40, heldS: 3 },
    ];
    const result = run({ positions: [{ label: 'edge', readings }], requiredMNm: 38 });
    expect(result.results.wettingTension!.value).toBeNull();
    expect(result.table[0]!.requirement).toBe('undecided');
    expect(result.flags.map((flag) => flag.code)).toContain('fluids-contradict');
    expect(result.notes[0]).toContain('No position gives a bracket');
  });
});

describe('few or one-sided brackets', () => {
  it('answers with the bracket itself for a single position', () => {
    expect(run({ positions: brackets([38, 40]) }).results.wettingTension).toEqual({
      value: 39, unit: 'mN/m', low: 38, high: 40, level: null, n: 1, bound: 'between',
    });
  });

  it('answers with the bracket itself when all are identical, and gives no spread', () => {
    const result = run({ positions: brackets([38, 40], [38, 40], [38, 40], [38, 40]) });
    expect(result.results.wettingTension).toMatchObject({ low: 38, high: 40, bound: 'between', n: 4 });
    expect(result.results.spread!.value).toBeNull();
    expect(result.notes[0]).toMatch(/no spread/);
  });

  it('gives a lower bound when every fluid held and an upper bound when none did', () => {
    expect(run({ positions: brackets([56, null], [56, null], [54, null]) }).results.wettingTension).toMatchObject({
      bound: 'at-least', high: null, level: null,
    });
    expect(run({ positions: brackets([null, 30], [null, 30]) }).results.wettingTension).toMatchObject({
      value: 30, bound: 'at-most', low: null, level: null,
    });
  });

  it('reports no D2578 value where no fluid held, and a bound where none retracted', () => {
    expect(run({ positions: brackets([null, 30], [30, 31]) }).results.reported).toMatchObject({ value: null });
    expect(run({ positions: brackets([44, null], [44, 45]) }).results.reported).toMatchObject({ value: 44, bound: 'at-least' });
  });
});

describe('weakest position', () => {
  it.each([
    [[[36, 40], [37, 38]], { low: 36, high: 38, bound: 'between' }],
    [[[36, 40], [null, 38]], { low: null, high: 38, value: 38, bound: 'at-most' }],
    [[[44, null], [42, null]], { low: 42, high: null, value: 42, bound: 'at-least' }],
    [[[44, null], [42, 44]], { low: 42, high: 44, bound: 'between' }],
  ] as const)('of %j is %j', (pairs, expected) => {
    const positions = brackets(...(pairs as unknown as [number | null, number | null][]));
    expect(run({ positions }).results.weakestPosition).toMatchObject(expected);
  });
});

describe('requirement', () => {
  it('counts undecided positions neither way and tells how many', () => {
    const result = run({ positions: brackets([38, 39], [39, 40], [37, 39], [36, 37]), requiredMNm: 38 });
    expect(result.table.map((row) => row.requirement)).toEqual(['meets', 'meets', 'undecided', 'falls short']);
    expect(result.results.shareMeetingRequirement).toMatchObject({ value: 2 / 3, n: 3, level: 0.95 });
    expect(result.notes.join(' ')).toContain('1 of 4 positions');
    expect(result.flags.find((flag) => flag.code === 'steps-too-coarse')).toMatchObject({ where: 'Position 3' });
  });

  it('counts a fluid at the requirement that retracted as falling short', () => {
    expect(run({ positions: brackets([37, 38]), requiredMNm: 38 }).table[0]!.requirement).toBe('falls short');
  });

  it('gives no share when nothing is decided or nothing is required', () => {
    expect(run({ positions: brackets([37, 39]), requiredMNm: 38 }).results.shareMeetingRequirement!.value).toBeNull();
    expect(run({ positions: brackets([37, 39]) }).results.shareMeetingRequirement!.value).toBeNull();
  });
});

describe('conditions', () => {
  const positions = brackets([38, 40]);
  it('flags a room outside 23 ± 2 °C or 50 ± 5 %, not one at its edge', () => {
    expect(codes({ positions, temperatureC: 25, relativeHumidityPct: 45 })).toEqual([]);
    expect(codes({ positions, temperatureC: 25.1, relativeHumidityPct: 44.9 })).toEqual(['temperature-outside', 'humidity-outside']);
  });

  it('flags another criterion than 2 s', () => {
    expect(codes({ positions, criterionS: 3 })).toEqual(['criterion-differs']);
  });

  it('flags uneven treatment only above 1 mN/m, whatever decimals do', () => {
    expect(codes({ positions: brackets([37.1, 40], [38.1, 40]) })).toEqual([]);
    expect(codes({ positions: brackets([37, 38], [38.5, 40]) })).toEqual(['uneven-treatment']);
  });

  it('does not call a treatment uneven where one wetting tension could have given every bracket', () => {
    expect(codes({ positions: brackets([36, 38], [38, 40], [38, 40]) })).toEqual(['steps-hide-unevenness']);
    expect(codes({ positions: brackets([36, 40], [38, 40]) })).toEqual(['steps-hide-unevenness']);
    expect(codes({ positions: brackets([36, 38], [40, 42]) })).toEqual(['uneven-treatment']);
  });
});

describe('refusals name the field', () => {
  it.each([
    [{ positions: [] }, 'positions'],
    [{}, 'positions'],
    [{ positions: [{ label: 'edge' }] }, 'positions[0].wetsMNm'],
    [{ positions: brackets([38, 40], [40, 38]) }, 'positions[1].retractsMNm'],
    [{ positions: brackets([38, 38]) }, 'positions[0].retractsMNm'],
    [{ positions: [{ wetsMNm: NaN }] }, 'positions[0].wetsMNm'],
    [{ positions: [{ wetsMNm: '38' }] }, 'positions[0].wetsMNm'],
    [{ positions: [{ wetsMNm: 380 }] }, 'positions[0].wetsMNm'],
    [{ positions: [{ readings: [] }] }, 'positions[0].readings'],
    [{ positions: [{ readings: [{ fluidMNm: 38, heldS: -1 }] }] }, 'positions[0].readings[0].heldS'],
    [{ positions: [{ wetsMNm: 38, readings: [{ fluidMNm: 38, heldS: 2 }] }] }, 'positions[0].readings'],
    [{ positions: brackets([38, 40]), requiredMNm: -1 }, 'requiredMNm'],
    [{ positions: brackets([38, 40]), relativeHumidityPct: 120 }, 'relativeHumidityPct'],
  ])('%j', (input, field) => {
    expect(refusal(() => run(input)).field).toBe(field);
  });
});

describe('properties', () => {
  const step = fc.integer({ min: 0, max: fluidSteps.length - 2 });
  const bracket = fc.tuple(step, fc.integer({ min: 1, max: 4 })).map(([from, width]): [number, number] => [
    fluidSteps[from]!,
    fluidSteps[Math.min(from + width, fluidSteps.length - 1)]!,
  ]);
  const film = fc.array(bracket, { minLength: 1, maxLength: 12 });

  it('does not depend on the order of the positions', () => {
    fc.assert(
      fc.property(film.chain((pairs) => fc.tuple(fc.constant(pairs), fc.shuffledSubarray(pairs, { minLength: pairs.length }))), ([pairs, shuffled]) => {
        const one = run({ positions: brackets(...pairs), requiredMNm: 40 }).results;
        const other = run({ positions: brackets(...shuffled), requiredMNm: 40 }).results;
        for (const key of Object.keys(one)) {
          expect(other[key]!.bound).toBe(one[key]!.bound);
          for (const end of ['value', 'low', 'high'] as const) {
            if (one[key]![end] === null) expect(other[key]![end]).toBeNull();
            else expect(other[key]![end]).toBeCloseTo(one[key]![end]!, 3);
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  it('never narrows the weakest position or decides more positions when a bracket widens', () => {
    fc.assert(
      fc.property(film, fc.nat(), (pairs, pick) => {
        const index = pick % pairs.length;
        const wider = pairs.map((pair, i): [number, number] => (i === index ? [pair[0] - 2, pair[1] + 2] : pair));
        const before = run({ positions: brackets(...pairs), requiredMNm: 40 });
        const after = run({ positions: brackets(...wider), requiredMNm: 40 });
        expect(after.results.weakestPosition!.low!).toBeLessThanOrEqual(before.results.weakestPosition!.low!);
        expect(after.results.weakestPosition!.high!).toBeGreaterThanOrEqual(before.results.weakestPosition!.high!);
        expect(after.results.shareMeetingRequirement!.n).toBeLessThanOrEqual(before.results.shareMeetingRequirement!.n);
      }),
      { numRuns: 100 },
    );
  });

  it('never narrows the interval of the mean when every bracket of a film widens alike', () => {
    fc.assert(
      fc.property(bracket, fc.integer({ min: 3, max: 8 }), ([low, high], n) => {
        const same = (pair: [number, number]) => run({ positions: brackets(...Array.from({ length: n }, () => pair)) }).results.wettingTension!;
        const narrow = same([low, high]);
        const wide = same([low - 1, high + 1]);
        expect(wide.low!).toBeLessThanOrEqual(narrow.low!);
        expect(wide.high!).toBeGreaterThanOrEqual(narrow.high!);
      }),
      { numRuns: 40 },
    );
  });

  it('keeps the mean within the outermost ends of its brackets', () => {
    fc.assert(
      fc.property(film, (pairs) => {
        const { value } = run({ positions: brackets(...pairs) }).results.wettingTension!;
        expect(value!).toBeGreaterThanOrEqual(Math.min(...pairs.map((pair) => pair[0])));
        expect(value!).toBeLessThanOrEqual(Math.max(...pairs.map((pair) => pair[1])));
      }),
      { numRuns: 100 },
    );
  });
});

describe('fluid table', () => {
  it('rises in tension and in formamide', () => {
    for (let i = 1; i < fluidTable.length; i++) {
      expect(fluidTable[i]!.tensionMNm).toBeGreaterThan(fluidTable[i - 1]!.tensionMNm);
      expect(fluidTable[i]!.formamidePct).toBeGreaterThan(fluidTable[i - 1]!.formamidePct);
    }
  });
});
