import type { Flag, ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { meanOfReplicates } from '../statistics/mean-of-replicates.ts';
import type { ExposedReading } from './exposed-patches.ts';
import { greyScaleResult } from './grey-scale-result.ts';

export interface LastExposure {
  exposure: number;
  /** The readings at that exposure. */
  readings: ExposedReading[];
  results: Record<'retentionPct' | 'deltaE00' | 'greyScale' | 'deltaEF', ResultValue>;
}

/** Means over the patches read at the farthest exposure; patches that stop earlier are flagged. */
export function atLastExposure(patches: readonly ExposedReading[][], level: number, flags: Flag[]): LastExposure {
  const exposure = Math.max(...patches.flat().map((reading) => reading.exposure));
  const readings = patches.flat().filter((reading) => reading.exposure === exposure);
  for (const patch of patches) {
    const last = patch.at(-1)!;
    if (last.exposure < exposure) {
      flags.push({ code: 'patch-stops-early', where: `series ${last.series}`, text: `Patch ${last.series} was last read at ${last.exposure}, not at ${exposure}; it is not in the means at the last exposure.` });
    }
  }
  const mean = (key: 'retentionPct' | 'deltaE00' | 'deltaEF', unit: string, floor?: number) => {
    const values = readings.flatMap((reading) => reading[key] ?? []);
    return values.length === 0 ? valueWithoutInterval(null, unit, 0) : meanOfReplicates(values, unit, level, floor);
  };
  const change = mean('deltaEF', '', 0);
  return {
    exposure,
    readings,
    results: { retentionPct: mean('retentionPct', '%'), deltaE00: mean('deltaE00', '', 0), greyScale: greyScaleResult(change), deltaEF: change },
  };
}
