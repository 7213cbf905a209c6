import { chiSquareUpperTail } from './distributions.ts';
import { midranks } from './ranks.ts';

/**
 * Do treatments differ when each block (assessor, sheet) has tried them all? Ranks within blocks, corrected for ties.
 * @param blocks one list per block, a value per treatment.
 * @returns `null` where no block tells any treatments apart.
 * @throws RangeError for fewer than two blocks or treatments, blocks of different length or a value that is not finite.
 * Source: M. Friedman, J. Am. Stat. Assoc. 32 (1937) 675.
 */
export function friedmanTest(blocks: readonly (readonly number[])[]): { statistic: number; degreesOfFreedom: number; p: number } | null {
  const k = blocks[0]?.length ?? 0;
  if (blocks.length < 2 || k < 2 || blocks.some((block) => block.length !== k || !block.every(Number.isFinite))) {
    throw new RangeError('The test needs at least two blocks, each with a value for every one of at least two treatments.');
  }
  const ranked = blocks.map(midranks);
  const n = blocks.length;
  const ties = ranked.reduce((sum, block) => sum + block.ties, 0);
  const scale = n * k * (k + 1) - ties / (k - 1);
  if (!(scale > 0)) return null;
  const squares = Array.from({ length: k }, (_, j) => ranked.reduce((sum, { ranks }) => sum + ranks[j]! - (k + 1) / 2, 0) ** 2).reduce((a, b) => a + b, 0);
  const statistic = (12 * squares) / scale;
  return { statistic, degreesOfFreedom: k - 1, p: chiSquareUpperTail(statistic, k - 1) };
}
