import { fQuantile } from './distributions.ts';
import { meanOf, squaresAbout } from './summarise.ts';

/**
 * Intraclass correlation for absolute agreement of single readings, parts and appraisers random: ICC(2,1).
 * @param table per part, one reading of each appraiser.
 * @returns `null` where the readings do not vary; ends `null` where the appraisers differ so much that none can be given.
 * @throws RangeError for fewer than two parts or appraisers, or a table with gaps.
 * Source: P. E. Shrout, J. L. Fleiss, Psychol. Bull. 86 (1979) 420; interval: K. O. McGraw, S. P. Wong, Psychol. Methods
 * 1 (1996) 30.
 */
export function intraclassCorrelation(table: readonly (readonly number[])[], level = 0.95): { value: number; low: number | null; high: number | null } | null {
  const [n, k] = [table.length, table[0]?.length ?? 0];
  if (n < 2 || k < 2 || table.some((row) => row.length !== k)) throw new RangeError('The intraclass correlation needs at least two parts, each read by the same two or more appraisers.');
  const grand = meanOf(table.flat());
  const parts = k * squaresAbout(table.map(meanOf), grand);
  const appraisers = n * squaresAbout(table[0]!.map((_, j) => meanOf(table.map((row) => row[j]!))), grand);
  const rest = Math.max(0, squaresAbout(table.flat(), grand) - parts - appraisers);
  const [msParts, msAppraisers, msRest] = [parts / (n - 1), appraisers / (k - 1), rest / ((n - 1) * (k - 1))];
  const denominator = msParts + (k - 1) * msRest + (k * (msAppraisers - msRest)) / n;
  if (!(denominator > 0)) return null;
  const value = (msParts - msRest) / denominator;
  if (msRest === 0 && msAppraisers === 0) return { value, low: value, high: value };
  const a = (k * value) / (n * (1 - value));
  const b = 1 + (k * value * (n - 1)) / (n * (1 - value));
  const df = (a * msAppraisers + b * msRest) ** 2 / ((a * msAppraisers) ** 2 / (k - 1) + (b * msRest) ** 2 / ((n - 1) * (k - 1)));
  const p = (1 + level) / 2;
  const own = k * msAppraisers + (k * n - k - n) * msRest;
  const [fLow, fHigh] = [fQuantile(p, n - 1, df), fQuantile(p, df, n - 1)];
  const low = (n * (msParts - fLow * msRest)) / (fLow * own + n * msParts);
  const high = (n * (fHigh * msParts - msRest)) / (own + n * fHigh * msParts);
  return Number.isFinite(low) && Number.isFinite(high) ? { value, low, high } : { value, low: null, high: null };
}
