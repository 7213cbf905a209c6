import { InputError } from '../calculation/input-error.ts';
import type { Flag } from '../calculation/result.ts';
import { retentionPct } from './retention.ts';

export interface DensityReadings {
  before: number | number[];
  after: number | number[];
  /** Density of the unprinted film or paper, for absolute densities. */
  paper?: number | undefined;
  basis?: 'absolute' | 'minus-paper' | undefined;
}

/** A density so low that instrument scatter of ±0.01 makes several percent of retention. */
const thin = 0.2;

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
  noteBasis(density, flags, notes);
  const paper = density.paper ?? 0;
  return before.map((start, index) => {
    const left = retentionPct(start, after[index]!, paper);
    const where = before.length === 1 ? 'density' : `density[${index}]`;
    if (start - paper < thin) {
      flags.push({ code: 'thin-start', where, text: `Only ${(start - paper).toFixed(2)} of density to fade: an error of 0.01 is ${(1 / (start - paper)).toFixed(0)} % of retention.` });
    }
    if (left > 100) flags.push({ code: 'density-rose', where, text: `The density rose to ${left.toFixed(1)} %; check that before and after are not exchanged.` });
    if (left < 0) flags.push({ code: 'below-paper', where, text: 'The density after exposure is below that of the paper: the paper itself bleached, or its reading is wrong.' });
    return left;
  });
}

function noteBasis(density: DensityReadings, flags: Flag[], notes: string[]): void {
  if (density.paper !== undefined) {
    notes.push(`Absolute densities; the paper's ${density.paper} was subtracted from both.`);
  } else if (density.basis === 'minus-paper') {
    notes.push('Densities read minus paper.');
  } else {
    flags.push({
      code: density.basis === 'absolute' ? 'paper-not-subtracted' : 'basis-not-stated',
      where: 'density',
      text:
        density.basis === 'absolute'
          ? "Absolute densities without the paper's: its share cannot fade and makes the retention look better than it is."
          : 'It is not stated whether the densities are absolute or minus paper; they were taken as minus paper.',
    });
  }
}
