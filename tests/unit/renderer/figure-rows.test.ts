import { describe, expect, it } from 'vitest';
import { figureRows } from '../../../renderer/state/figure-rows.ts';
import { tableCells } from '../../../renderer/state/table-cells.ts';
import type { Figure } from '../../../shared-lib/figure/figure.ts';

describe('the numbers of a figure', () => {
  const figure: Figure = {
    id: 'f',
    title: '',
    finding: '',
    x: { title: '', scale: 'category', categories: ['edge', 'centre'] },
    y: { title: '', scale: 'linear' },
    series: [
      {
        name: 'Bracket',
        kind: 'points',
        role: 'reading',
        points: [
          { x: 0, y: 38.5, low: 38, high: 39 },
          { x: 1, y: 3, open: 'up' },
          { x: 1, y: null },
        ],
      },
    ],
  };

  it('names categories, gives the ends of brackets and marks open readings', () => {
    expect(figureRows(figure).shown.map((row) => [row.x, row.y])).toEqual([
      ['edge', '38.5 (38 to 39)'],
      ['centre', '≥ 3'],
      ['centre', '—'],
    ]);
  });

  it('says how many points of a long trace it leaves out', () => {
    const points = Array.from({ length: 250 }, (_, x) => ({ x, y: x }));
    const long = figureRows({ ...figure, series: [{ ...figure.series[0]!, points }] });
    expect([long.shown.length, long.left]).toEqual([200, 50]);
  });
});

describe('the cells of a table', () => {
  it('keeps the decimals of a column, and has words for what is no number', () => {
    const columns = [
      { key: 'label', title: '' },
      { key: 'value', title: '', decimals: 1 },
      { key: 'torn', title: '' },
    ];
    const cells = tableCells(columns, [
      { label: 'edge', value: -3, torn: true },
      { label: null, value: 38.25, torn: false },
    ]);
    expect(cells.rows).toEqual([
      ['edge', '−3.0', 'yes'],
      ['—', '38.3', 'no'],
    ]);
    expect(cells.numeric).toEqual([false, true, false]);
  });
});
