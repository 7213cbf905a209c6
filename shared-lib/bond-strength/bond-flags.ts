import type { Flag } from '../calculation/result.ts';
import { formatNumber } from '../quantity/format.ts';
import { grubbsTest } from '../statistics/grubbs.ts';
import { isLowerBound, MODE_WORDS } from './failure-mode.ts';
import type { BondSpecimen } from './bond-statistics.ts';

/** What is doubtful about a set of bond specimens; none is left out for it. */
export function bondFlags(specimens: readonly BondSpecimen[], requiredNPer15mm: number | undefined): Flag[] {
  const flags: Flag[] = [];
  const exact = specimens.map((specimen, index) => ({ ...specimen, index })).filter(({ mode }) => !isLowerBound(mode));
  if (exact.length === 0) {
    flags.push({ code: 'all-torn', where: '', text: 'The film gave way in every specimen: the bond is stronger than the film, and each strength is a lower bound.' });
  }
  // Of three readings two that happen to agree would make the third an outlier, however near it is.
  const grubbs = exact.length < 4 ? null : grubbsTest(exact.map(({ strength }) => strength));
  if (grubbs?.outlying) {
    const { index, strength } = exact[grubbs.index]!;
    flags.push({
      code: 'outlier',
      where: `specimens[${index}]`,
      text: `Specimen ${index + 1} with ${formatNumber(strength, 2)} N/15 mm lies ${formatNumber(grubbs.statistic, 2)} standard deviations from the mean (Grubbs limit ${formatNumber(grubbs.critical, 2)}); it counts until a person voids it with a reason.`,
    });
  }
  const modes = [...new Set(exact.map(({ mode }) => mode))];
  if (modes.length > 1) {
    flags.push({
      code: 'mixed-modes',
      where: '',
      text: `The bond failed in ${modes.length} ways (${modes.map((mode) => MODE_WORDS[mode]).join(', ')}): the mean mixes strengths of different layers.`,
    });
  }
  specimens.forEach(({ strength, mode }, index) => {
    if (requiredNPer15mm !== undefined && isLowerBound(mode) && strength < requiredNPer15mm) {
      flags.push({
        code: 'torn-below-requirement',
        where: `specimens[${index}]`,
        text: `In specimen ${index + 1} the film gave way at ${formatNumber(strength, 2)} N/15 mm, below the required ${formatNumber(requiredNPer15mm, 2)}: it cannot show whether the bond meets it.`,
      });
    }
  });
  return flags;
}
