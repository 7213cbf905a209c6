import type { Flag } from '../calculation/result.ts';
import { formatNumber } from '../quantity/format.ts';
import type { AngleScatter } from './angle-scatter.ts';

/** Common practice: drops on an even film agree within about 2 to 3°. */
const scatterAboveDeg = 3;
/** Near 0° the cosine hardly changes: the liquid spreads, and its angle says only that γS is at least about its tension. */
const spreadingBelowDeg = 5;
/** Our own choice: a mean of several drops misses a model that fits by less. */
const misfitAboveDeg = 5;

/** Flags liquids whose mean angle lies far from the angle of the fitted model. */
export function misfitFlags(names: readonly string[], scatter: readonly AngleScatter[], fittedDeg: readonly number[]): Flag[] {
  return scatter.flatMap(({ meanDeg }, index) => {
    const difference = meanDeg - fittedDeg[index]!;
    if (Math.abs(difference) <= misfitAboveDeg) return [];
    return [
      {
        code: 'model-misfit',
        where: names[index]!,
        text: `The model misses the angle of ${names[index]} by ${formatNumber(Math.abs(difference), 1)}°; the liquid may swell or dissolve the film, or the angle is wrong.`,
      },
    ];
  });
}

/** Flags what makes the angles of a liquid doubtful. */
export function angleFlags(names: readonly string[], scatter: readonly AngleScatter[]): Flag[] {
  return scatter.flatMap(({ n, meanDeg, sdDeg }, index) => {
    const name = names[index]!;
    const flags: Flag[] = [];
    if (sdDeg !== null && sdDeg > scatterAboveDeg) {
      flags.push({
        code: 'angle-scatter',
        where: name,
        text: `The drops of ${name} scatter by ${formatNumber(sdDeg, 1)}° (standard deviation); more than ${scatterAboveDeg}° points to an uneven or soiled film.`,
      });
    }
    if (meanDeg < spreadingBelowDeg) {
      flags.push({
        code: 'spreads',
        where: name,
        text: `${name} all but spreads (${formatNumber(meanDeg, 1)}°); such an angle carries little information, use a liquid of higher tension.`,
      });
    }
    if (n === 1) {
      flags.push({ code: 'single-drop', where: name, text: `${name} stands on one drop; its scatter is unknown.` });
    }
    return flags;
  });
}
