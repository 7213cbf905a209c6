import { describe, expect, it } from 'vitest';
import { factorKey } from '../../../renderer/state/factor-key.ts';
import { formulationRows } from '../../../renderer/state/formulation-rows.ts';
import type { TrialRow } from '../../../shared-lib/notebook/trial-views.ts';

type Compared = TrialRow['formulation']['againstControl'][number];
const trial = (control: boolean, parts: [string, number][], againstControl: Compared[] = []) =>
  ({ control, components: parts.map(([name]) => ({ name })), formulation: { percent: parts.map(([, percent]) => percent), againstControl } }) as unknown as TrialRow;

describe('formulations side by side', () => {
  it('lists the components of the control first and adds up one that stands twice', () => {
    const change = trial(
      false,
      [['Wax', 2], ['Promoter', 1], ['Wax', 3], ['Resin', 94]],
      [
        { name: 'Wax', controlPct: 5, pct: 5, differencePct: 0, change: 'same' },
        { name: 'Promoter', controlPct: 0, pct: 1, differencePct: 1, change: 'added' },
        { name: 'Resin', controlPct: 95, pct: 94, differencePct: -1, change: 'less' },
      ],
    );
    const rows = formulationRows([change, trial(true, [['Resin', 95], ['Wax', 5]])]);
    expect(rows).toEqual([
      { name: 'Resin', shares: [{ pct: 94, differencePct: -1 }, { pct: 95, differencePct: null }] },
      { name: 'Wax', shares: [{ pct: 5, differencePct: null }, { pct: 5, differencePct: null }] },
      { name: 'Promoter', shares: [{ pct: 1, differencePct: 1 }, { pct: null, differencePct: null }] },
    ]);
  });
});

describe('the key of a factor', () => {
  it('follows from its label and is unlike the others', () => {
    expect(factorKey('Wax, %', [])).toBe('wax');
    expect(factorKey('Wax, %', [{ key: 'wax' }, { key: 'wax-2' }])).toBe('wax-3');
    expect(factorKey('温度', [])).toBe('factor');
  });
});
