import type { CalculationResult } from '../../shared-lib/calculation/result.ts';
import { formatValue } from '../../shared-lib/quantity/format.ts';

/** What a measurement study found, in words. */
export const studyWords: Record<string, string> = {
  repeatability: 'One person, same part: standard deviation',
  reproducibility: 'Between persons: standard deviation',
  gauge: 'Both together, as two people would read one part',
  part: 'Between the parts: standard deviation',
  total: 'All together: standard deviation',
  gaugePct: 'Share of the measurement in the whole spread',
  distinctCategories: 'Kinds of part that can be told apart',
  icc: 'Share of the variance that is the parts’ own (intraclass correlation)',
  agreementPct: 'Pairs of grades that agree',
  kappa: 'Agreement beyond chance (kappa)',
  weightedKappa: 'The same, a near miss counted in part (weighted kappa)',
  fleissKappa: 'Agreement beyond chance of all persons at once (Fleiss’ kappa)',
};

/** What a capability study found, in words. */
export const capabilityWords: Record<string, string> = {
  cp: 'Cp, if it were centred',
  cpk: 'Cpk, as it lies',
  pp: 'Pp, if it were centred, by the spread of all tests',
  ppk: 'Ppk, as it lies, by the spread of all tests',
  cpm: 'Cpm, against the target',
  mean: 'Mean',
  sigmaWithin: 'Standard deviation, short-term',
  sigmaOverall: 'Standard deviation of all tests',
};

/** The results that have a value, each with its words; one without words keeps its own name. */
export function resultLines(results: CalculationResult['results'], words: Record<string, string>): { name: string; text: string; intervalText: string }[] {
  return Object.entries(results)
    .filter(([, result]) => result.value !== null)
    .map(([key, result]) => ({ name: words[key] ?? key, ...formatValue(result) }));
}
