import { normalQuantile } from './distributions.ts';

export type KappaWeights = 'none' | 'linear' | 'quadratic';

export interface Kappa {
  value: number;
  standardError: number;
  low: number;
  high: number;
}

/**
 * Cohen's kappa of two appraisers: agreement beyond what chance gives. Weighted, a near miss counts in part.
 * @param table readings counted by the grade of the first (row) and of the second appraiser (column), grades in order;
 *   weights go by the places of the grades in the table.
 * @returns `null` where both gave one and the same grade throughout, so that chance alone would agree.
 * @throws RangeError for a table that is not square or empty.
 * Source: J. Cohen, Psychol. Bull. 70 (1968) 213; standard error: J. L. Fleiss, J. Cohen, B. S. Everitt, Psychol. Bull.
 * 72 (1969) 323.
 */
export function cohenKappa(table: readonly (readonly number[])[], weights: KappaWeights, level = 0.95): Kappa | null {
  const k = table.length;
  const total = table.flat().reduce((sum, count) => sum + count, 0);
  if (k === 0 || total === 0 || table.some((row) => row.length !== k)) throw new RangeError('Agreement needs a square table with at least one reading.');
  const share = table.map((row) => row.map((count) => count / total));
  const rows = share.map((row) => row.reduce((sum, value) => sum + value, 0));
  const columns = share.map((_, j) => share.reduce((sum, row) => sum + row[j]!, 0));
  const weight = (i: number, j: number) => {
    if (weights === 'none') return i === j ? 1 : 0;
    const distance = k > 1 ? Math.abs(i - j) / (k - 1) : 0;
    return 1 - (weights === 'linear' ? distance : distance * distance);
  };
  const over = (f: (i: number, j: number) => number) => share.reduce((sum, row, i) => sum + row.reduce((part, _, j) => part + f(i, j), 0), 0);
  const seen = over((i, j) => weight(i, j) * share[i]![j]!);
  const chance = over((i, j) => weight(i, j) * rows[i]! * columns[j]!);
  if (1 - chance < 1e-12) return null;
  const value = (seen - chance) / (1 - chance);
  const rowWeight = rows.map((_, i) => columns.reduce((sum, c, j) => sum + c * weight(i, j), 0));
  const columnWeight = columns.map((_, j) => rows.reduce((sum, c, i) => sum + c * weight(i, j), 0));
  const spread = over((i, j) => share[i]![j]! * (weight(i, j) * (1 - chance) - (rowWeight[i]! + columnWeight[j]!) * (1 - seen)) ** 2);
  const variance = (spread - (seen * chance - 2 * chance + seen) ** 2) / (total * (1 - chance) ** 4);
  const standardError = Math.sqrt(Math.max(0, variance));
  const reach = normalQuantile((1 + level) / 2) * standardError;
  return { value, standardError, low: Math.max(-1, value - reach), high: Math.min(1, value + reach) };
}

/**
 * Fleiss' kappa of several appraisers.
 * @param counts per part, how many gave each grade; every part read as often.
 * @returns `null` where one grade was given throughout.
 * @throws RangeError for parts read once or a different number of times.
 * Source: J. L. Fleiss, Psychol. Bull. 76 (1971) 378.
 */
export function fleissKappa(counts: readonly (readonly number[])[]): number | null {
  const perPart = counts.map((row) => row.reduce((sum, count) => sum + count, 0));
  const n = perPart[0] ?? 0;
  if (n < 2 || perPart.some((count) => count !== n)) throw new RangeError('Each part must be read the same number of times, at least twice.');
  const shares = counts[0]!.map((_, j) => counts.reduce((sum, row) => sum + row[j]!, 0) / (counts.length * n));
  const chance = shares.reduce((sum, share) => sum + share * share, 0);
  if (1 - chance < 1e-12) return null;
  const seen = counts.reduce((sum, row) => sum + row.reduce((part, count) => part + count * (count - 1), 0) / (n * (n - 1)), 0) / counts.length;
  return (seen - chance) / (1 - chance);
}
