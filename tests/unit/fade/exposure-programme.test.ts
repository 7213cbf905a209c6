import { describe, expect, it } from 'vitest';
import { runCalculation } from '../../../shared-lib/calculation/calculation.ts';
import type { ResultValue } from '../../../shared-lib/calculation/result.ts';
import { lightExposureCalculation } from '../../../shared-lib/fade/light-exposure.calculation.ts';
import { lightExposureMethod } from '../../../shared-lib/fade/light-exposure.method.ts';
import { nextExposure } from '../../../shared-lib/fade/next-exposure.ts';
import { plannedExposures } from '../../../shared-lib/fade/planned-exposures.ts';
import { convertExposure } from '../../../shared-lib/fade/radiant-exposure.ts';
import { ratioOfLives } from '../../../shared-lib/fade/ratio-of-lives.ts';
import type { CellValue } from '../../../shared-lib/method/method.ts';
import { benchOf } from '../release/bench.ts';

const run = (input: object) => runCalculation(lightExposureCalculation, { densityBasis: 'minus-paper', ...input });

const EXPOSURES = [0, 50, 100, 150, 200, 250];
/** A little up and down, in turn, so that there is scatter to judge by. */
const NOISE = [0, 0.004, -0.005, 0.003, -0.004, 0.005];

/** Two patches that lose 30 % of their density at `hours`, first order. */
function fading(colour: string, hours: number, exposures = EXPOSURES) {
  return ['1', '2'].flatMap((series, patch) =>
    exposures.map((exposure, i) => ({ colour, series, exposure, density: (1.4 + 0.05 * patch) * Math.exp((Math.log(0.7) * exposure) / hours) + (patch === 0 ? 1 : -1) * NOISE[i]! })),
  );
}

describe('several colours in one programme', () => {
  const readings = [...fading('cyan', 600), ...fading('yellow', 100), ...fading('magenta', 160)];
  const result = run({ readings });

  it('ranks them, the one that fades first on top, each with its interval', () => {
    const { title, rows, columns } = result.tables![0]!;
    expect(title).toContain('fades first');
    expect(rows.map(({ rank, colour }) => [rank, colour])).toEqual([[1, 'yellow'], [2, 'magenta'], [3, 'cyan']]);
    for (const { low, high } of rows) expect(high as number).toBeGreaterThan(low as number);
    expect(columns.map(({ key }) => key)).not.toContain('deltaE00');
  });

  it('gives the exposure of the first as the result, and what is left of the worst', () => {
    expect(Math.abs(result.results.exposureToLimit!.value! - 100)).toBeLessThan(5);
    // 0.7^(250/100) = 41.0 %.
    expect(Math.abs(result.results.retentionPct!.value! - 41)).toBeLessThan(1);
    expect(result.results.lightFastness!.value).toBeNull();
  });

  it('says how many times as long the others last', () => {
    const magenta = result.tables![0]!.rows[1]!;
    expect(Math.abs((magenta.times as number) - 1.6)).toBeLessThan(0.1);
    expect(magenta.timesLow as number).toBeGreaterThan(1);
    expect(result.notes.join(' ')).toMatch(/Fades first: yellow, endpoint at .*magenta lasts 1\.\d+ times as long/);
  });

  it('does not tell apart what the readings do not', () => {
    const { notes } = run({ readings: [...fading('yellow', 100, [0, 50, 100, 150]), ...fading('magenta', 101, [0, 50, 100, 150])] });
    expect(notes.join(' ')).toContain('magenta cannot be told from yellow');
  });

  it('draws all colours in one figure, readings and curve of one colour in the same place of their list', () => {
    const { series } = result.figures[0]!;
    expect(result.figures[0]!.id).toBe('fade-of-colours');
    expect(series.map(({ name, role }) => [name.split(',')[0], role])).toEqual([
      ['yellow', 'reading'], ['magenta', 'reading'], ['cyan', 'reading'], ['yellow', 'fit'], ['magenta', 'fit'], ['cyan', 'fit'],
    ]);
    expect(series[3]!.points[0]!.y).toBeCloseTo(100, 6);
  });

  it('keeps the readings of every colour in its table', () => {
    expect(result.table).toHaveLength(36);
    expect(result.table[12]).toMatchObject({ colour: 'yellow', series: '1', exposure: 0, retentionPct: 100 });
  });

  it('gives a single named colour what it gave without a name', () => {
    const named = run({ readings: fading('yellow', 100) });
    const plain = run({ readings: fading('yellow', 100).map(({ colour: _colour, ...reading }) => reading) });
    expect(named.results).toEqual(plain.results);
    expect(named.tables).toBeUndefined();
  });

  it('flags a colour that may yet fade before the first, one read less far, and one not exposed', () => {
    const early = run({ readings: [...fading('yellow', 100), ...fading('violet', 300, [0, 50])] });
    expect(early.flags.map(({ code }) => code)).toEqual(expect.arrayContaining(['ranking-open', 'colours-read-apart']));
    expect(early.tables![0]!.rows[1]).toMatchObject({ colour: 'violet', exposureToLimit: '—' });
    const unexposed = run({ readings: [...fading('yellow', 100), ...fading('violet', 300, [0])] });
    expect(unexposed.flags).toContainEqual(expect.objectContaining({ code: 'colour-not-exposed', text: expect.stringContaining('violet') }));
    expect(() => run({ readings: fading('yellow', 100, [0]) })).toThrow(expect.objectContaining({ field: 'readings' }));
  });

  it('names the reading at fault among those of all colours', () => {
    expect(() => run({ readings: [...fading('yellow', 100), { colour: 'cyan', exposure: 5, density: 1 }, { colour: 'cyan', exposure: 9, density: 1 }] })).toThrow(
      expect.objectContaining({ field: 'readings[12].exposure' }),
    );
  });
});

describe('readings out of order', () => {
  it('are taken in the order of exposure and flagged', () => {
    const ordered = fading('', 100);
    const mixed = [...ordered.slice(0, 2), ordered[3]!, ordered[2]!, ...ordered.slice(4)];
    const { flags, results } = run({ readings: mixed });
    expect(results).toEqual(run({ readings: ordered }).results);
    expect(flags).toContainEqual(expect.objectContaining({ code: 'exposures-out-of-order', where: 'readings[3].exposure' }));
    expect(run({ readings: ordered }).flags.map(({ code }) => code)).not.toContain('exposures-out-of-order');
  });

  it('are flagged on the sheet by their days as well', () => {
    const rows = [
      { exposure: 0, density: 1.4, readOn: '2026-03-01' },
      { exposure: 48, density: 1.3, readOn: '2026-03-09' },
      { exposure: 96, density: 1.2, readOn: '2026-03-05' },
    ];
    const { flags } = lightExposureMethod.evaluate(benchOf(lightExposureMethod, rows));
    expect(flags).toContainEqual(expect.objectContaining({ code: 'dates-out-of-order', where: 'rows[1].readOn' }));
  });
});

describe('blue-wool references beside the prints', () => {
  /** A colour that changes in lightness alone: its ΔEF is that change. */
  const patch = (name: object, changes: number[]) => changes.map((change, i) => ({ ...name, exposure: 40 * i, lab: [50 + change, 0, 0] }));
  const references = [...patch({ blueWool: 3 }, [0, 6.8, 13.6]), ...patch({ blueWool: 4 }, [0, 1.7, 6.8]), ...patch({ blueWool: 5 }, [0, 0.8, 1.7])];

  it('rate each colour by those that changed as much at the same exposure', () => {
    const readings = [...patch({ colour: 'yellow' }, [0, 1.7, 6.8]), ...patch({ colour: 'cyan' }, [0, 0.4, 1.7]), ...references];
    const { results, tables, table } = run({ readings, densityBasis: undefined, endpointOn: 'deltaE00', endpoint: { deltaE00: 5 } });
    expect(results.lightFastness).toMatchObject({ value: 4, bound: 'exact' });
    expect(tables![0]!.rows.map(({ colour, blueWool }) => [colour, blueWool])).toEqual([['yellow', '4'], ['cyan', '5']]);
    expect(table.filter(({ colour }) => colour === 'blue wool 3')).toHaveLength(3);
  });

  it('do not fade as a print does: they are in no mean', () => {
    const { results } = run({ readings: [...patch({}, [0, 1.7, 6.8]), ...references], densityBasis: undefined });
    expect(results.deltaEF!.n).toBe(1);
    expect(results.deltaEF!.value).toBeCloseTo(6.8, 6);
  });

  it('say so where they were not read at the last exposure, and are refused without a colour', () => {
    const { results, notes } = run({ readings: [...patch({}, [0, 1.7, 6.8]), ...patch({ blueWool: 4 }, [0, 1.7])], densityBasis: undefined });
    expect(results.lightFastness!.value).toBeNull();
    expect(notes.join(' ')).toContain('same exposure, 80');
    expect(() => run({ readings: [...patch({}, [0, 1.7, 6.8]), { blueWool: 4, exposure: 0, density: 1 }] })).toThrow(expect.objectContaining({ field: 'readings[3].lab' }));
  });
});

describe('the ratio of two lives', () => {
  const life = (value: number, low: number | null, high: number | null, bound: ResultValue['bound'] = 'exact'): ResultValue => ({ value, low, high, level: 0.95, unit: 'h', n: 3, bound });

  it('recovers the scatter of both from their limits (G. Y. Zou, A. Donner 2008)', () => {
    // Both ±10.536 % on the logarithm: 2·exp(∓√2·0.105361) = 1.7231 and 2.3214.
    const ratio = ratioOfLives(life(200, 180, 222.2222), life(100, 90, 111.1111))!;
    expect(ratio.ratio).toBe(2);
    expect(ratio.low!).toBeCloseTo(1.7231, 3);
    expect(ratio.high!).toBeCloseTo(2.3214, 3);
  });

  it('is open where a life is, and nothing where one is a bound', () => {
    expect(ratioOfLives(life(200, 180, null), life(100, 90, 110))!.high).toBeNull();
    expect(ratioOfLives(life(200, null, null, 'at-least'), life(100, 90, 110))).toBeNull();
  });
});

describe('a programme outdoors', () => {
  const sheet = (rows: Record<string, CellValue>[], conditions: Record<string, CellValue> = {}) =>
    lightExposureMethod.evaluate(benchOf(lightExposureMethod, rows, { lamp: 'outdoors', exposureUnit: 'd', exposedFrom: '2026-03-01', ...conditions }));

  it('counts the days from the first of exposure', () => {
    const { table, results } = sheet([{ exposure: 0, density: 1.4 }, { readOn: '2026-03-15', density: 1.2 }, { readOn: '2026-04-12', density: 1 }]);
    expect(table.map(({ exposure }) => exposure)).toEqual([0, 14, 42]);
    expect(results.exposureToLimit!.unit).toBe('d');
  });

  it('asks for the day, and refuses one before the exposure', () => {
    expect(() => sheet([{ exposure: 0, density: 1.4 }, { density: 1.2 }])).toThrow(expect.objectContaining({ field: 'rows[1].exposure', message: expect.stringContaining('day of the reading') }));
    expect(() => sheet([{ exposure: 0, density: 1.4 }, { readOn: '2026-02-15', density: 1.2 }])).toThrow(expect.objectContaining({ field: 'rows[1].readOn' }));
  });

  it('takes a day for 24 hours', () => {
    expect(convertExposure(2, 'd', 'h', undefined)).toBe(48);
    expect(convertExposure(48, 'h', 'd', undefined)).toBe(2);
    // 60 W/m² for 24 h = 5.184 MJ/m².
    expect(convertExposure(1, 'd', 'MJ/m²', 60)).toBeCloseTo(5.184, 10);
    expect(convertExposure(5.184, 'MJ/m²', 'd', 60)).toBeCloseTo(1, 10);
    expect(convertExposure(1, 'd', 'kJ/m²', undefined)).toBeNull();
  });
});

describe('the next reading of a running programme', () => {
  const row = (values: Record<string, CellValue>, index = 0) => ({ row: `r${index + 1}`, values });
  const conditions = { exposureUnit: 'h', readAt: '24 48 96 192', exposedFrom: '2026-03-02', hoursPerDay: 24 };
  const due = (rows: Record<string, CellValue>[], changed: Record<string, CellValue> = {}) => nextExposure({ conditions: { ...conditions, ...changed }, rows: rows.map(row), startedOn: '2026-03-01' });

  it('is due on the day on which its exposure is reached', () => {
    expect(due([{ exposure: 0, density: 1.4 }])).toMatchObject([{ what: 'Read the patches at 24 h', dueOn: '2026-03-03' }]);
    expect(due([{ exposure: 0, density: 1.4 }, { exposure: 48.2, density: 1.3 }])).toMatchObject([{ what: 'Read the patches at 96 h', dueOn: '2026-03-06' }]);
  });

  it('waits for the last patch of a step, and names it', () => {
    const rows = [{ colour: 'cyan', exposure: 24, density: 1 }, { colour: 'yellow', exposure: 24, density: 1 }, { colour: 'cyan', exposure: 48, density: 1 }];
    expect(due(rows)).toMatchObject([{ what: 'Read the patches at 48 h', why: expect.stringContaining('Not read yet: yellow.') }]);
  });

  it('takes a reading two percent short for the planned one', () => {
    expect(due([{ exposure: 95, density: 1 }])[0]!.what).toContain('192');
    expect(due([{ exposure: 90, density: 1 }])[0]!.what).toContain('96');
  });

  it('counts the hours of a lamp that is not always on, days, and doses by the irradiance', () => {
    expect(due([], { hoursPerDay: 8 })[0]!.dueOn).toBe('2026-03-05');
    expect(due([], { exposureUnit: 'd', readAt: '14 28', hoursPerDay: 8 })[0]!.dueOn).toBe('2026-03-16');
    // 60 W/m²: 10368 kJ/m² in 48 h.
    expect(due([], { exposureUnit: 'kJ/m²', readAt: '10368', irradianceWPerM2: 60 })[0]!.dueOn).toBe('2026-03-04');
    expect(due([], { exposureUnit: 'MJ/m²', readAt: '10' })).toEqual([]);
  });

  it('is nothing without a plan, after its last step, or by a plan that cannot be read', () => {
    expect(due([], { readAt: null })).toEqual([]);
    expect(due([{ exposure: 192, density: 1 }])).toEqual([]);
    expect(due([], { readAt: 'weekly' })).toEqual([]);
  });

  it('counts from the start of the test where no first day is given', () => {
    expect(due([], { exposedFrom: null })[0]!.dueOn).toBe('2026-03-02');
  });

  it('reads a plan with spaces, semicolons or commas between, in any order', () => {
    expect(plannedExposures('96 24;48  24')).toEqual([24, 48, 96]);
    expect(plannedExposures('24, 48, 1,5')).toEqual([1.5, 24, 48]);
    expect(plannedExposures('')).toEqual([]);
    expect(() => plannedExposures('24 -5')).toThrow(expect.objectContaining({ field: 'conditions.readAt', value: '-5' }));
    const bad = () => lightExposureMethod.evaluate(benchOf(lightExposureMethod, [{ exposure: 0, density: 1 }, { exposure: 5, density: 0.9 }], { readAt: 'weekly' }));
    expect(bad).toThrow(expect.objectContaining({ field: 'conditions.readAt' }));
  });
});

it('says that a limit in hours counts in the unit of a test that has another', () => {
  const rows = [0, 20, 40, 60].map((exposure) => ({ exposure, density: 1.4 * 0.99 ** exposure }));
  const limits = [{ property: 'exposureToLimit', lower: 120, upper: null, source: 'customer' }];
  const flagsIn = (exposureUnit: string) => lightExposureMethod.evaluate({ ...benchOf(lightExposureMethod, rows, { exposureUnit }), limits }).flags.filter(({ code }) => code === 'limit-in-other-unit');
  expect(flagsIn('h')).toEqual([]);
  expect(flagsIn('d')).toMatchObject([{ where: 'exposureToLimit', text: expect.stringContaining('counts in d, the unit of this test') as string }]);
});
