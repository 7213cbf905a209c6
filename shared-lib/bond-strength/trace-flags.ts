import type { Flag } from '../calculation/result.ts';
import type { PlateauForce } from './plateau-statistics.ts';
import type { Plateau } from './plateau.ts';
import type { TraceColumns } from './trace-columns.ts';

/** Limits of doubt; common practice where nothing else is said. */
const DRIFT_SHARE = 0.1;
const DRIFT_T = 3;
const UNEVEN_SHARE = 0.01;
const FEW_POINTS = 20;
const SATURATED_RUN = 5;

/** What is doubtful about a trace and its plateau; nothing is left out of the result for it. */
export function traceFlags(trace: TraceColumns, plateau: Plateau, force: PlateauForce): Flag[] {
  const flags: Flag[] = [];
  const flag = (code: string, where: string, text: string) => flags.push({ code, where, text });
  if (force.mean <= 0) {
    flag('no-force', 'points', `The mean force over the plateau is ${newtons(force.mean)} N; a peel pulls with a force above zero: check the sign, the tare and the column.`);
  }
  const broke = suddenLoss(trace, plateau.levelN);
  if (broke) {
    flag(
      'film-broke',
      'points',
      `The force falls suddenly from ${newtons(broke.beforeN)} to ${newtons(broke.afterN)} N at ${broke.atMm.toFixed(1)} mm: the film tore or the plies came fully apart. If it tore, the strength is at least this.`,
    );
  }
  if (force.n < FEW_POINTS) {
    flag('few-points', 'points', `Only ${force.n} points lie on the plateau; from ${FEW_POINTS} on the mean gets an interval.`);
  }
  if (force.drift && Math.abs(force.drift.changeN) > DRIFT_SHARE * Math.abs(force.mean) && force.drift.t > DRIFT_T) {
    const { changeN } = force.drift;
    const share = force.mean === 0 ? '' : ` (${Math.round((100 * Math.abs(changeN)) / Math.abs(force.mean))} % of the mean)`;
    flag('drift', 'points', `The force ${changeN > 0 ? 'rises' : 'falls'} by ${newtons(Math.abs(changeN))} N${share} along the plateau: the mean depends on where it begins and ends.`);
  }
  const saturated = saturation(trace, plateau, force.maximum);
  if (saturated) {
    flag('saturation', 'points', `The force stays at exactly ${newtons(force.maximum)} N for ${saturated} points in a row, its highest value: the load cell may be at the end of its range.`);
  }
  if (Math.abs(force.meanOverTravel - force.mean) > UNEVEN_SHARE * Math.abs(force.mean)) {
    flag('uneven-steps', 'points', `The points are not evenly spaced: averaged over the travel the force is ${newtons(force.meanOverTravel)} N instead of ${newtons(force.mean)} N.`);
  }
  return flags;
}

/**
 * A loss of force from above half the typical force to below a fifth of it within three points or half a percent of the
 * travel, after which it stays low to the end for at least two points.
 */
function suddenLoss({ displacementMm, forceN }: TraceColumns, levelN: number): { atMm: number; beforeN: number; afterN: number } | null {
  if (levelN <= 0) return null;
  const last = forceN.length - 1;
  let before = last;
  while (before >= 0 && forceN[before]! < 0.5 * levelN) before -= 1;
  if (before < 0) return null;
  const travel = displacementMm[last]! - displacementMm[0]!;
  for (let after = before + 1; after < last; after += 1) {
    if (after - before > 3 && displacementMm[after]! - displacementMm[before]! > 0.005 * travel) return null;
    if (forceN[after]! < 0.2 * levelN) return { atMm: displacementMm[before]!, beforeN: forceN[before]!, afterN: forceN[after]! };
  }
  return null;
}

/**
 * Longest run of points at exactly the plateau's highest force, or 0 where that is no sign of clipping: fewer than five in
 * a row, or not three times as long as any other run of equal readings, which a coarse load cell gives everywhere.
 */
function saturation({ forceN }: TraceColumns, { steady }: Plateau, maximum: number): number {
  const { atMaximum, below } = longestRuns(forceN.subarray(steady.start, steady.end), maximum);
  return below > 0 && atMaximum >= SATURATED_RUN && atMaximum >= 3 * below ? atMaximum : 0;
}

/** Most equal readings in a row, at `maximum` and at any other force. */
function longestRuns(force: Float64Array, maximum: number): { atMaximum: number; below: number } {
  let run = 0;
  let atMaximum = 0;
  let below = 0;
  for (let index = 0; index < force.length; index += 1) {
    const value = force[index]!;
    run = index > 0 && value === force[index - 1] ? run + 1 : 1;
    if (value === maximum) {
      if (run > atMaximum) atMaximum = run;
    } else if (run > below) below = run;
  }
  return { atMaximum, below };
}

function newtons(value: number): string {
  return value.toFixed(Math.abs(value) < 10 ? 2 : 1);
}
