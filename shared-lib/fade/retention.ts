import { InputError } from '../calculation/input-error.ts';

/**
 * Density that is left, in percent of the density before exposure, both over the paper: 100·(after − paper)/(before − paper).
 * Above 100 where the density rose, below 0 where the print ended lighter than the paper reading; the caller flags both.
 * @param paper density of the unprinted film or paper; 0 where the densities were read minus paper.
 * @throws InputError when there was no density over the paper to lose.
 */
export function retentionPct(before: number, after: number, paper: number): number {
  if (before - paper <= 0) {
    const than = paper === 0 ? '0' : `that of the paper (${paper})`;
    throw new InputError('density.before', before, `The density before exposure (${before}) must be more than ${than}; otherwise nothing can fade.`);
  }
  return (100 * (after - paper)) / (before - paper);
}
