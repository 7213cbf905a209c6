import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { defineCalculation } from '../../../shared-lib/calculation/calculation.ts';
import { readRows } from '../../../shared-lib/method/read-rows.ts';
import { runOnRows, type FromRows } from '../../../shared-lib/method/run-on-rows.ts';
import { bench } from '../colour/bench.ts';
import { refusal } from '../surface-energy/refusal.ts';

/** Flags and refuses what its input says. */
const echo = defineCalculation({
  id: 'echo',
  version: '1',
  title: 'Echo',
  input: z.strictObject({ specimens: z.array(z.strictObject({ load: z.number().max(9), area: z.strictObject({ cm2: z.number() }) })), total: z.number().max(9).optional() }),
  compute: () => ({
    results: {},
    flags: ['specimens[0].load', 'specimens[1]', 'specimens[1].area.cm2', 'total', 'grade'].map((where, index) => ({ code: `f${index}`, where, text: 'Specimen 1 and Specimen 2 differ.' })),
  }),
  columns: [],
  cautions: [],
  sources: [],
});

/** The second row is voided, the first says only where it was cut. */
const rows = readRows(bench([{ label: 'edge' }, {}, { load: 1 }, { load: null, note: '' }, { load: 0 }]), ['load', 'note']);
const from: FromRows = { list: 'specimens', rows, first: 'note', conditions: ['total'], cells: { 'area.cm2': 'conditions.areaCm2' } };
const entries = (loads: number[]) => loads.map((load) => ({ load, area: { cm2: 1 } }));

describe('a calculation run on the rows of a sheet', () => {
  it('takes the rows in which something was read, 0 among it, and no others', () => {
    expect(rows.map(({ index }) => index)).toEqual([2, 4]);
  });

  it('names in its flags the cells and conditions of the sheet, and the specimen by its number there', () => {
    expect(runOnRows(echo, { specimens: entries([1, 0]) }, from).flags.map(({ where, text }) => [where, text])).toEqual([
      ['rows[2].load', 'Specimen 3 and Specimen 2 differ.'],
      ['rows[4].note', 'Specimen 1 and Specimen 5 differ.'],
      ['conditions.areaCm2', 'Specimen 1 and Specimen 2 differ.'],
      ['conditions.total', 'Specimen 1 and Specimen 2 differ.'],
      ['grade', 'Specimen 1 and Specimen 2 differ.'],
    ]);
  });

  it('names the cell in its refusals', () => {
    expect(refusal(() => runOnRows(echo, { specimens: entries([1, 10]) }, from)).field).toBe('rows[4].load');
    expect(refusal(() => runOnRows(echo, { specimens: entries([1, 1]), total: 10 }, from)).field).toBe('conditions.total');
  });
});
