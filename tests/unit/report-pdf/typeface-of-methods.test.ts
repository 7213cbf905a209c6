import { describe, expect, it } from 'vitest';
import { printable } from '../../../electron/report/printable.ts';
import { allCalculations } from '../../../shared-lib/registry/calculations.ts';
import { allMethods } from '../../../shared-lib/registry/methods.ts';

/** What a report prints of a method as it stands in the source: a character that the typeface lacks would become a box. */
describe('the typeface of the report', () => {
  it('has every character of the methods', () => {
    expect(printable(allMethods.map((method) => JSON.parse(JSON.stringify(method)) as unknown)).missing).toEqual([]);
  });

  it('has every character of the calculations', () => {
    expect(printable(allCalculations.map(({ title, columns, cautions, sources }) => ({ title, columns, cautions, sources }))).missing).toEqual([]);
  });
});
