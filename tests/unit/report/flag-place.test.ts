import { describe, expect, it } from 'vitest';
import { laminationBondMethod } from '../../../shared-lib/bond-strength/lamination-bond.method.ts';
import { flagInWords, flagPlace } from '../../../shared-lib/report/flag-place.ts';

describe('where a flag applies, in words', () => {
  it.each([
    ['rows[5].forceN', 'specimen 6'],
    ['rows[0]', 'specimen 1'],
    ['conditions.stripWidthMm', 'Strip width'],
    ['stripWidthMm', 'Strip width'],
    ['median', 'Median bond strength'],
    ['series cyan 1', 'series cyan 1'],
    ['Position 3', 'Position 3'],
    ['density', 'density'],
    // The third specimen that was measured need not stand in the third row.
    ['specimens[2]', ''],
    ['readings[2].density', ''],
    ['requiredNPer15mm', ''],
    ['', ''],
  ])('%s → %s', (where, words) => expect(flagPlace(laminationBondMethod, where)).toBe(words));

  it('is left out where the text names it, not where it names another', () => {
    const where = (text: string) => flagInWords(laminationBondMethod, { code: 'outlier', where: 'rows[0].forceN', text }).where;
    expect(where('Specimen 1 lies far from the mean.')).toBe('');
    expect(where('Specimen 12 lies far from the mean.')).toBe('specimen 1');
    expect(where('It lies far from the mean.')).toBe('specimen 1');
  });
});
