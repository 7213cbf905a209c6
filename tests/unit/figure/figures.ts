import type { Figure } from '../../../shared-lib/figure/figure.ts';

/** Invented figures that between them use every feature. */
export const buildUp: Figure = {
  id: 'bond-build-up',
  title: 'Bond strength after lamination',
  finding: 'The bond reaches 2.5 N/15 mm after 31 h (95 % interval 26 h to 38 h).',
  x: { title: 'Time after lamination', unit: 'h', scale: 'linear', min: 0 },
  y: { title: 'Bond strength', unit: 'N/15 mm', scale: 'linear' },
  series: [
    { name: 'readings', kind: 'points', role: 'reading', points: [[2, 0.4, 0.3, 0.5], [6, 0.9, 0.75, 1.05], [12, 1.5, 1.3, 1.7], [24, 2.2, 2, 2.4], [48, 2.9, 2.6, 3.2], [72, 3.1, 2.8, 3.4]].map(([x, y, low, high]) => ({ x: x!, y: y!, low, high })) },
    { name: 'film tore', kind: 'points', role: 'reading', points: [{ x: 60, y: 3.0, open: 'up' }, { x: 96, y: 3.2, open: 'up' }] },
    { name: 'doubtful', kind: 'points', role: 'doubtful', points: [{ x: 36, y: 1.4 }] },
    { name: 'first order with lag', kind: 'line', role: 'fit', points: Array.from({ length: 80 }, (_, i) => ({ x: i * 1.25, y: 3.25 * (1 - Math.exp(-(i * 1.25) / 22)) })) },
  ],
  bands: [{ name: '95 % interval', points: Array.from({ length: 80 }, (_, i) => ({ x: i * 1.25, low: 3.05 * (1 - Math.exp(-(i * 1.25) / 23)), high: 3.45 * (1 - Math.exp(-(i * 1.25) / 20.5)) })) }],
  lines: [
    { name: 'limit 2.5 N/15 mm', axis: 'y', value: 2.5, role: 'limit' },
    { name: 'reached after 31 h', axis: 'x', value: 31, role: 'mark' },
  ],
};

export const trials: Figure = {
  id: 'trials',
  title: 'Wetting tension by trial',
  finding: 'R3 and R7 stay below 38 mN/m.',
  x: { title: 'Trial', scale: 'category', categories: ['R0', 'R1', 'R2', 'R3', 'R4', 'R5', 'R6', 'R7'] },
  y: { title: 'Wetting tension', unit: 'mN/m', scale: 'linear' },
  series: [
    { name: 'fresh', kind: 'points', role: 'reading', points: [42, 41, 40.5, 37.4, 41, 40, 39.6, 36.9].map((y, x) => ({ x, y, low: y - 0.8, high: y + 0.9 })) },
    { name: 'after 14 days', kind: 'points', role: 'reading', points: [40, 39.5, 38.5, 36, 39, 38.8, 38.2, 35].map((y, x) => ({ x, y, low: y - 0.8, high: y + 0.9, open: x === 7 ? ('down' as const) : undefined })) },
  ],
  lines: [{ name: 'limit 38 mN/m', axis: 'y', value: 38, role: 'limit' }, { name: 'mean 39.1', axis: 'y', value: 39.1, role: 'mean' }],
};

export const rubs: Figure = {
  id: 'rubs',
  title: 'Density lost',
  finding: 'R2 loses most.',
  x: { title: 'Trial', scale: 'category', categories: ['R0 (control)', 'R1', 'R2'] },
  y: { title: 'Density lost', unit: '%', scale: 'linear' },
  series: [
    { name: 'dry', kind: 'bars', role: 'reading', points: [{ x: 0, y: 4, low: 3, high: 5 }, { x: 1, y: 6, low: 5, high: 7.4 }, { x: 2, y: 11, low: 8, high: 14 }] },
    { name: 'wet', kind: 'bars', role: 'reading', points: [{ x: 0, y: 7 }, { x: 1, y: 9 }, { x: 2, y: 17, low: 15, high: 19 }] },
    { name: 'oily', kind: 'bars', role: 'reading', points: [{ x: 0, y: 9 }, { x: 1, y: 8 }, { x: 2, y: 12 }] },
  ],
};

export const fade: Figure = {
  id: 'fade-life',
  title: 'Density kept',
  finding: 'Half of the density is left after 410 h.',
  x: { title: 'Exposure', unit: 'h', scale: 'log' },
  y: { title: 'Density kept', unit: '%', scale: 'linear', min: 0, max: 100 },
  series: ['first order', 'stretched'].map((name, k) => ({ name, kind: 'line' as const, role: 'fit' as const, points: Array.from({ length: 60 }, (_, i) => { const x = 3 * 10 ** (i / 20); return { x, y: 100 * Math.exp(-((x / 600) ** (k ? 0.7 : 1))) }; }) })).concat([
    { name: 'magenta', kind: 'points' as never, role: 'reading' as never, points: [4, 10, 24, 72, 168, 336, 672].map((x) => ({ x, y: 100 * Math.exp(-((x / 600) ** 0.8)) + Math.sin(x) })) },
    { name: 'still whole', kind: 'steps' as never, role: 'reference' as never, points: [4, 72, 336, 900].map((x, i) => ({ x, y: 100 - i * 25 })) },
  ]),
};

export const trace: Figure = {
  id: 'trace',
  title: 'Peel trace',
  finding: 'Mean force 3.1 N over 20 mm to 90 mm.',
  x: { title: 'Displacement', unit: 'mm', scale: 'linear' },
  y: { title: 'Force', unit: 'N', scale: 'linear' },
  series: [{ name: 'specimen 1', kind: 'line', role: 'reading', points: Array.from({ length: 20_000 }, (_, i) => ({ x: i / 200, y: i < 1500 ? i / 480 : 3.1 + 0.35 * Math.sin(i / 37) + 0.12 * Math.sin(i * 1.7) })) }],
  lines: [{ name: 'mean 3.1 N', axis: 'y', value: 3.1, role: 'mean' }, { name: 'from 20 mm', axis: 'x', value: 20, role: 'mark' }, { name: 'to 90 mm', axis: 'x', value: 90, role: 'mark' }],
};

export const allFigures = { buildUp, trials, rubs, fade, trace };
