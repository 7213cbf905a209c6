import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import type { TableColumn } from '../calculation/table-column.ts';
import type { ResultValue, TableRow } from '../calculation/result.ts';
import { clopperPearson } from '../statistics/clopper-pearson.ts';
import { bondFigure } from './bond-figure.ts';
import { bondFlags } from './bond-flags.ts';
import { bondStatistics, type BondSpecimen } from './bond-statistics.ts';
import { FAILURE_MODES, isLowerBound, MODE_WORDS } from './failure-mode.ts';
import { readStrength, strengthFields } from './strength-input.ts';

const LEVEL = 0.95;

const input = z.strictObject({
  specimens: z.array(z.strictObject({ ...strengthFields, mode: z.enum(FAILURE_MODES) })).min(1).max(1000),
  requiredNPer15mm: z.number().positive().optional(),
});

const columns: TableColumn[] = [
  { key: 'words', title: 'Failure mode' },
  { key: 'count', title: 'Specimens', decimals: 0 },
  { key: 'share', title: 'Share', unit: 'of 1', decimals: 3 },
  { key: 'low', title: 'Share, 95 % from', decimals: 3 },
  { key: 'high', title: 'Share, 95 % to', decimals: 3 },
];

/** Bond strength of a set of specimens, in some of which the film may have given way before the bond. */
export const bondStrengthCalculation = defineCalculation({
  id: 'bond-strength',
  version: '1',
  title: 'Bond strength',
  input,
  compute: ({ specimens: given, requiredNPer15mm }) => {
    const specimens = given.map((specimen, index): BondSpecimen => ({
      strength: readStrength(specimen, `specimens[${index}]`, `Specimen ${index + 1}`),
      mode: specimen.mode,
    }));
    const { results, notes } = bondStatistics(specimens, LEVEL);
    if (requiredNPer15mm !== undefined) results.shareMeetingRequirement = shareMeeting(specimens, requiredNPer15mm);
    return {
      results,
      table: modeTable(specimens),
      flags: bondFlags(specimens, requiredNPer15mm),
      notes,
      figures: [bondFigure(specimens, results.mean!, requiredNPer15mm)],
    };
  },
  columns,
  cautions: [],
  sources: [
    'Right-censored normal by maximum likelihood: W. Q. Meeker, L. A. Escobar, Statistical Methods for Reliability Data (1998)',
    'Median: E. L. Kaplan, P. Meier, J. Am. Stat. Assoc. 53 (1958) 457',
    'Exact interval of a share: C. J. Clopper, E. S. Pearson, Biometrika 26 (1934) 404',
    'Outlier test, flagged only: F. E. Grubbs, Technometrics 11 (1969) 1',
  ],
});

function modeTable(specimens: readonly BondSpecimen[]): TableRow[] {
  const n = specimens.length;
  return FAILURE_MODES.map((mode) => {
    const count = specimens.filter((specimen) => specimen.mode === mode).length;
    return { mode, words: MODE_WORDS[mode], count, share: count / n, ...clopperPearson(count, n, LEVEL) };
  });
}

/** A film that gave way below the requirement leaves it open whether its bond meets it: then the share is a range. */
function shareMeeting(specimens: readonly BondSpecimen[], required: number): ResultValue {
  const n = specimens.length;
  const meets = specimens.filter(({ strength }) => strength >= required).length;
  const open = specimens.filter(({ strength, mode }) => strength < required && isLowerBound(mode)).length;
  const { low } = clopperPearson(meets, n, LEVEL);
  const { high } = clopperPearson(meets + open, n, LEVEL);
  return { value: (meets + open / 2) / n, unit: '', low, high, level: LEVEL, n, bound: open === 0 ? 'exact' : 'between' };
}
