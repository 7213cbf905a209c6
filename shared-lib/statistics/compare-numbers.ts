import type { Flag } from '../calculation/result.ts';
import { formatNumber } from '../quantity/format.ts';
import { dunnett, dunnettUnequalSpread } from './dunnett.ts';
import { bartlettTest } from './equal-spread.ts';
import { gamesHowell } from './games-howell.ts';
import { oneWayAnova } from './one-way-anova.ts';
import { shapiroWilk } from './shapiro-wilk.ts';
import { summarise } from './summarise.ts';
import { tamhane } from './tamhane.ts';
import type { Trial, TrialComparison } from './trial-comparison.ts';
import { tukeyKramer } from './tukey-kramer.ts';
import { welchAnova } from './welch-anova.ts';
import { MOST_SIMULATED_PAIRS, welchSimulated } from './welch-simulated.ts';

/**
 * Below this p of Bartlett's test spreads are taken as unequal: lenient, since a wrong common spread misleads more, and
 * more so where few readings let the test see little.
 */
const SPREAD_DOUBT = 0.2;
const SPREAD_DOUBT_OF_FEW = 0.5;
const FEW_FOR_SPREAD = 10;
/** Below it unequal spreads are called so. */
const NOT_ALIKE = 0.05;
/** Counts that differ by more than this factor make a common spread risky. */
const UNEVEN = 1.5;
/** With fewer readings than this, many or uneven groups make Games and Howell's comparison too ready. */
const FEW = 6;
const NOT_NORMAL = 0.01;
const ENOUGH_FOR_SHAPE = 10;

interface Choice {
  separate: boolean;
  reason: string;
}

/**
 * Compares trials of measured numbers: all pairs, or each with the control. Chooses between a common and separate
 * spreads and says why. The choice costs a little of the level: of equal trials with five readings 6 % are told apart at
 * 5 %, and 6 to 7 % where a single one of eleven scatters three times as much (`tests/slow/comparisons.test.ts`).
 * @param control place of the control, or `null` for all pairs.
 */
export function compareNumbers(trials: readonly Trial[], control: number | null, level: number): TrialComparison {
  const groups = trials.map(({ values }) => values);
  const anova = oneWayAnova(groups);
  const welch = welchAnova(groups);
  const { separate, reason } = chooseSpread(trials);
  const [method, pairs] = separate ? withSeparateSpreads(groups, control, level) : withCommonSpread(groups, control, level);
  return {
    levels: groups.map((values) => {
      const { mean, low, high } = summarise(values, level);
      return { value: mean, low, high };
    }),
    pairs,
    method,
    f: anova?.f ?? null,
    p: anova?.p ?? null,
    welchF: welch?.f ?? null,
    welchP: welch?.p ?? null,
    spread: anova?.residualSd || null,
    notes: [reason, ...(anova === null ? ['One reading per trial shows no spread, so no difference can be judged; at least one trial needs a second reading.'] : [])],
    flags: [...spreadFlags(trials), ...shapeFlags(groups, separate)],
  };
}

function chooseSpread(trials: readonly Trial[]): Choice {
  const counts = trials.map(({ values }) => values.length);
  const constant = trials.filter(({ values }) => values.every((value) => value === values[0]));
  if (Math.min(...counts) < 2 || constant.length > 0) {
    return { separate: false, reason: 'Compared with one common spread: a trial without spread of its own borrows that of the others.' };
  }
  if (Math.max(...counts) > UNEVEN * Math.min(...counts)) {
    return { separate: true, reason: 'The trials have very different numbers of readings, so each difference is judged by the spread of its own two trials.' };
  }
  const bartlett = bartlettTest(trials.map(({ values }) => values));
  const doubt = Math.min(...counts) < FEW_FOR_SPREAD ? SPREAD_DOUBT_OF_FEW : SPREAD_DOUBT;
  if (bartlett && bartlett.p < doubt) {
    return { separate: true, reason: `The trials ${bartlett.p < NOT_ALIKE ? 'scatter differently' : 'do not clearly scatter alike'} (Bartlett p = ${formatNumber(bartlett.p, 3)}), so each difference is judged by the spread of its own two trials.` };
  }
  return { separate: false, reason: `The trials scatter alike${bartlett ? ` (Bartlett p = ${formatNumber(bartlett.p, 2)})` : ''}, so all of them together tell the spread.` };
}

function withCommonSpread(groups: number[][], control: number | null, level: number): [string, TrialComparison['pairs']] {
  return control === null ? ['Tukey–Kramer', tukeyKramer(groups, level)] : ['Dunnett', dunnett(groups, control, level)];
}

function withSeparateSpreads(groups: number[][], control: number | null, level: number): [string, TrialComparison['pairs']] {
  if (control !== null) return ['Dunnett, separate spreads', dunnettUnequalSpread(groups, control, level)];
  const counts = groups.map((values) => values.length);
  const risky = Math.min(...counts) < FEW && (groups.length > 4 || Math.max(...counts) > UNEVEN * Math.min(...counts));
  if (!risky) return ['Games–Howell', gamesHowell(groups, level)];
  return (groups.length * (groups.length - 1)) / 2 > MOST_SIMULATED_PAIRS ? ['Tamhane', tamhane(groups, level)] : ['Welch, simulated', welchSimulated(groups, level)];
}

function spreadFlags(trials: readonly Trial[]): Flag[] {
  return trials.flatMap(({ name, values }, index): Flag[] => {
    const where = `groups[${index}]`;
    if (values.length === 1) return [{ code: 'one-reading', where, text: `${name} has one reading and no spread of its own; it borrows that of the others.` }];
    if (values.every((value) => value === values[0])) return [{ code: 'no-spread', where, text: `All ${values.length} readings of ${name} are equal; check the resolution of the instrument and that they were read afresh.` }];
    return [];
  });
}

/** Shape of the residuals of all trials together; not judged where few readings would each be measured by their own spread. */
function shapeFlags(groups: number[][], separate: boolean): Flag[] {
  if (separate && groups.some(({ length }) => length < ENOUGH_FOR_SHAPE)) return [];
  const residuals = groups.flatMap((values) => {
    const { mean, standardDeviation } = summarise(values);
    return values.length < 3 || !standardDeviation ? [] : values.map((value) => (value - mean) / (separate ? standardDeviation : 1));
  });
  const shape = shapiroWilk(residuals);
  if (shape === null || shape.p >= NOT_NORMAL) return [];
  return [{ code: 'not-normal', where: 'groups', text: `The readings scatter about their means in a way that is unlikely for normal ones (Shapiro–Wilk p = ${formatNumber(shape.p, 4)}); look for outliers, and take close calls with care.` }];
}
