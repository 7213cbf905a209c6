import { InputError } from '../calculation/input-error.ts';
import type { Flag } from '../calculation/result.ts';
import { retentionFlags, startFlags, stateBasis } from './density-flags.ts';
import { retentionPct } from './retention.ts';

export interface DensityReadings {
  before: number | number[];
  after: number | number[];
  /** Density of the unprinted film or paper, for absolute densities. */
  paper?: number | undefined;
  basis?: 'absolute' | 'minus-paper' | undefined;
}

/**
 * Retention in percent of each pair of densities; what is doubtful goes to `flags`, what was assumed to `notes`.
 * @throws InputError when the lists differ in length, the basis contradicts `paper`, or there was nothing to fade.
 */
export function densityPairs(density: DensityReadings, flags: Flag[], notes: string[]): number[] {
  const before = [density.before].flat();
  const after = [density.after].flat();
  if (before.length !== after.length) {
    throw new InputError('density.after', after.length, `density.after has ${after.length} readings and density.before ${before.length}; each needs its partner.`);
  }
  if (density.basis === 'minus-paper' && density.paper !== undefined) {
    throw new InputError('density.paper', density.paper, 'Densities read minus paper take no density.paper; it would be subtracted twice.');
  }
  stateBasis(density, flags, notes);
  const paper = density.paper ?? 0;
  return before.map((start, index) => {
    const left = retentionPct(start, after[index]!, paper);
    const where = before.length === 1 ? 'density' : `density[${index}]`;
    flags.push(...startFlags(start - paper, where), ...retentionFlags(left, where));
    return left;
  });
}
