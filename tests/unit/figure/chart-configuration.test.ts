import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { axisRange } from '../../../shared-lib/figure/axis-range.ts';
import { chartConfiguration } from '../../../shared-lib/figure/chart-configuration.ts';
import { seriesLooks } from '../../../shared-lib/figure/series-look.ts';
import { tickText, ticks } from '../../../shared-lib/figure/ticks.ts';
import { darkTheme, lightTheme, printTheme } from '../../../shared-lib/figure/theme.ts';
import type { Figure } from '../../../shared-lib/figure/figure.ts';
import { chartSvg } from '../../../electron/report/chart-svg.ts';
import { allFigures, buildUp, fade, rubs, trace, trials } from './figures.ts';

const size = { width: 500, height: 270 };
const configure = (figure: Figure) => chartConfiguration(figure, lightTheme, size);

describe('axisRange', () => {
  it('holds points, error bars, bands and limits', () => {
    const { min, max } = axisRange(trials, 'y');
    expect(min).toBeLessThan(34.2);
    expect(max).toBeGreaterThan(42.9);
    const far: Figure = { ...trials, lines: [{ name: 'limit', axis: 'y', value: 90, role: 'limit' }] };
    expect(axisRange(far, 'y').max).toBeGreaterThan(90);
  });

  it('widens a stated range that would cut off data and keeps one that would not', () => {
    const y = { ...trials.y, min: 38, max: 60 };
    expect(axisRange({ ...trials, y }, 'y').min).toBeLessThan(34.2);
    expect(axisRange({ ...trials, y }, 'y').max).toBe(60);
  });

  it('starts bars at zero and does not pad quantities below zero', () => {
    expect(axisRange(rubs, 'y').min).toBe(0);
    expect(axisRange(buildUp, 'x').min).toBe(0);
  });

  it('falls back to a linear axis when a point would vanish on a log axis', () => {
    expect(axisRange(fade, 'x').scale).toBe('log');
    const withZero: Figure = { ...fade, series: [{ name: '', kind: 'points', role: 'reading', points: [{ x: 0, y: 1 }, { x: 10, y: 2 }] }] };
    expect(axisRange(withZero, 'x')).toMatchObject({ scale: 'linear', min: 0 });
  });

  it('is a proper range around anything', () => {
    const number = fc.double({ min: -1e12, max: 1e12, noNaN: true });
    fc.assert(
      fc.property(fc.array(number, { maxLength: 20 }), fc.constantFrom('linear' as const, 'log' as const), fc.option(number, { nil: undefined }), (values, scale, limit) => {
        const figure: Figure = {
          ...fade,
          y: { title: '', scale },
          series: [{ name: '', kind: 'points', role: 'reading', points: values.map((y, x) => ({ x, y })) }],
          lines: limit === undefined ? [] : [{ name: 'limit', axis: 'y', value: limit, role: 'limit' }],
        };
        const range = axisRange(figure, 'y');
        expect(range.max).toBeGreaterThan(range.min);
        for (const value of limit === undefined ? values : [...values, limit]) expect(value >= range.min && value <= range.max).toBe(true);
        if (range.scale === 'log') expect(range.min).toBeGreaterThan(0);
      }),
    );
  });
});

describe('chartConfiguration', () => {
  it('writes units in the axis titles', () => {
    const scales = configure(buildUp).options!.scales!;
    expect(scales.x).toMatchObject({ title: { text: 'Time after lamination (h)' } });
    expect(scales.y).toMatchObject({ title: { text: 'Bond strength (N/15 mm)' } });
  });

  it('shows a legend only where names are to be told apart', () => {
    expect(configure(buildUp).options!.plugins!.legend).toMatchObject({ display: true });
    expect(configure(trace).options!.plugins!.legend).toMatchObject({ display: false });
  });

  it('thins a long ordered line and no line that is broken or goes back', () => {
    const thinned = (figure: Figure) => (configure(figure).options!.plugins!.decimation as { enabled: boolean }).enabled;
    expect(thinned(trace)).toBe(true);
    const points = trace.series[0]!.points;
    expect(thinned({ ...trace, series: [{ ...trace.series[0]!, points: [...points, { x: 100.1, y: null }] }] })).toBe(false);
    expect(thinned({ ...trace, series: [{ ...trace.series[0]!, points: points.toReversed() }] })).toBe(false);
  });

  it('does not move and does not let readings be hidden', () => {
    const { options } = configure(buildUp);
    expect(options!.animation).toBe(false);
    expect(options!.plugins!.legend!.onClick).toBeTypeOf('function');
  });

  it('breaks a line at a missing value', () => {
    const data = configure({ ...trace, series: [{ ...trace.series[0]!, points: [{ x: 0, y: 1 }, { x: 1, y: null }] }] }).data.datasets[0]!.data;
    expect(data[1]!.y).toBeNaN();
  });

  it('sets points with error bars over the same category side by side', () => {
    const [first, second] = configure(trials).data.datasets;
    expect(first!.data[0]!.x).toBeLessThan(second!.data[0]!.x);
    expect(first!.data[0]!.source.x).toBe(0);
  });
});

describe('seriesLooks', () => {
  it('never gives two readings the same colour with the same marker and dash', () => {
    const series = Array.from({ length: 20 }, (_, index) => ({ name: `s${index}`, kind: 'points' as const, role: 'reading' as const, points: [] }));
    const looks = seriesLooks(series, lightTheme).map(({ colour, marker, dash }) => `${colour} ${marker} ${dash.join()}`);
    expect(new Set(looks).size).toBe(20);
  });

  it('gives a fit the colour of its readings and doubtful readings a cross', () => {
    const looks = seriesLooks(buildUp.series, lightTheme);
    expect(looks[3]!.colour).toBe(looks[0]!.colour);
    expect(looks[2]!.marker).toBe('crossRot');
  });
});

describe('ticks', () => {
  it('are round, inside and carry the decimals of their step', () => {
    expect(ticks(0.12, 0.47, 4).map((tick) => tick.text)).toEqual(['0.2', '0.3', '0.4']);
    expect(ticks(-12, 11, 5).map((tick) => tick.text)).toEqual(['−10', '−5', '0', '5', '10']);
    expect(ticks(3, 3, 5)).toEqual([]);
  });

  it('write very large and very small numbers as powers', () => {
    expect(tickText(2e8, 2e8)).toBe('2×10⁸');
    expect(tickText(-1.5e-7, 5e-8)).toBe('−1.5×10⁻⁷');
    expect(tickText(0, 2e8)).toBe('0');
  });
});

describe('chartSvg', () => {
  it.each(Object.entries(allFigures))('draws %s as vectors, text as outlines, without a number that is none', (_name, figure) => {
    for (const theme of [lightTheme, darkTheme, printTheme]) {
      const svg = chartSvg(figure, 480, 240, theme);
      expect(svg).toContain('<svg');
      expect(svg).toMatch(/<path/);
      expect(svg).not.toMatch(/NaN|Infinity|<image|<text/i);
    }
  });

  it('is the same each time', () => {
    expect(chartSvg(buildUp, 480, 240)).toBe(chartSvg(buildUp, 480, 240));
  });

  it('draws figures at the edge: empty, one point, zero on a log error bar', () => {
    const empty: Figure = { ...buildUp, series: [], bands: [], lines: [] };
    const one: Figure = { ...empty, series: [{ name: 'a', kind: 'points', role: 'reading', points: [{ x: 1, y: 1 }] }] };
    const log: Figure = { ...empty, y: { title: 'y', scale: 'log' }, series: [{ name: 'a', kind: 'points', role: 'reading', points: [{ x: 1, y: 5, low: 0, high: 20 }, { x: 2, y: 9 }] }] };
    for (const figure of [empty, one, log]) expect(chartSvg(figure, 480, 240)).not.toMatch(/NaN|Infinity/i);
  });

  it('keeps the peak of a trace of 20 000 points when it thins it', () => {
    const points = Array.from({ length: 20_000 }, (_, index) => ({ x: index, y: index === 7777 ? 100 : 1 }));
    const spiked: Figure = { ...trace, lines: [], series: [{ ...trace.series[0]!, points }] };
    const flat: Figure = { ...spiked, y: { ...trace.y, max: 106 }, series: [{ ...trace.series[0]!, points: points.map(({ x }) => ({ x, y: x === 0 ? 0.999 : 1 })) }] };
    // The accent-coloured path reaches near the top of the plot only when the peak is drawn.
    const top = (svg: string) => Math.min(...[...svg.matchAll(/<path[^>]*stroke="#0B6B72"[^>]*d="([^"]*)"/gi), ...svg.matchAll(/<path[^>]*d="([^"]*)"[^>]*stroke="#0B6B72"/gi)].flatMap((match) => [...match[1]!.matchAll(/[ML]?([\d.]+)[ ,]([\d.]+)/g)].map((pair) => Number(pair[2]))));
    expect(top(chartSvg(spiked, 480, 240))).toBeLessThan(40);
    expect(top(chartSvg(flat, 480, 240))).toBeGreaterThan(100);
  });
});
