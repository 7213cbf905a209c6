import type { Flag } from '../calculation/result.ts';

/** A density so low that instrument scatter of ±0.01 makes several percent of retention. */
const thin = 0.2;
/** Retention above this is more than instrument scatter. */
const rosePct = 102;

/** Flags of a density over the paper before exposure. */
export function startFlags(densityOverPaper: number, where: string): Flag[] {
  if (densityOverPaper >= thin) return [];
  const text = `Only ${densityOverPaper.toFixed(2)} of density to fade: an error of 0.01 is ${(1 / densityOverPaper).toFixed(0)} % of retention.`;
  return [{ code: 'thin-start', where, text }];
}

/** Flags of a retention that fading alone does not explain. */
export function retentionFlags(retainedPct: number, where: string): Flag[] {
  if (retainedPct > rosePct) {
    return [{ code: 'density-rose', where, text: `The density rose to ${retainedPct.toFixed(1)} %; check that the readings are not exchanged.` }];
  }
  if (retainedPct < 0) {
    return [{ code: 'below-paper', where, text: 'The density after exposure is below that of the paper: the paper itself bleached, or its reading is wrong.' }];
  }
  return [];
}

/** Says on which basis the densities were taken: to `notes` when it is sound, to `flags` when it is doubtful. */
export function stateBasis(density: { paper?: number | undefined; basis?: 'absolute' | 'minus-paper' | undefined }, flags: Flag[], notes: string[]): void {
  if (density.paper !== undefined) {
    notes.push(`Absolute densities; the paper's ${density.paper} was subtracted from both.`);
  } else if (density.basis === 'minus-paper') {
    notes.push('Densities read minus paper.');
  } else if (density.basis === 'absolute') {
    const text = "Absolute densities without the paper's: its share cannot fade and makes the retention look better than it is.";
    flags.push({ code: 'paper-not-subtracted', where: 'density', text });
  } else {
    const text = 'It is not stated whether the densities are absolute or minus paper; they were taken as minus paper.';
    flags.push({ code: 'basis-not-stated', where: 'density', text });
  }
}
