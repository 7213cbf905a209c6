import type { GaugeAnova } from './gauge-anova.ts';
import type { MeanSquareTerm } from './mean-square-interval.ts';
import { quantile } from './quantile.ts';
import { seededRandom } from './random.ts';
import type { Random } from './random.ts';

const DRAWS = 10_000;
const SEED = 20260102;

/**
 * Interval of the ratio gauge variance / part variance: generalized confidence interval, each mean square drawn over its
 * chi-square distribution (fixed seed).
 * @returns ends of the ratio; `high` is Infinity where the parts may not differ at all.
 * Source: R. K. Burdick, C. M. Borror, D. C. Montgomery, Design and Analysis of
 * Gauge R&R Studies (2005), 2.4.
 */
export function gaugeToPartInterval({ terms }: GaugeAnova, level: number): { low: number; high: number } {
  const random = seededRandom(SEED);
  const sources = distinctSources([...terms.gauge, ...terms.part]);
  const ratios = new Float64Array(DRAWS);
  for (let draw = 0; draw < DRAWS; draw++) {
    const drawn = new Map(sources.map(({ meanSquare, degreesOfFreedom }) => [`${meanSquare} ${degreesOfFreedom}`, (meanSquare * degreesOfFreedom) / chiSquareDraw(degreesOfFreedom, random)]));
    const sum = (parts: MeanSquareTerm[]) => Math.max(0, parts.reduce((total, { coefficient, meanSquare, degreesOfFreedom }) => total + coefficient * drawn.get(`${meanSquare} ${degreesOfFreedom}`)!, 0));
    ratios[draw] = Math.min(LARGEST, sum(terms.gauge) / sum(terms.part));
  }
  const open = (ratio: number) => (ratio >= LARGEST ? Infinity : ratio);
  return { low: open(quantile(ratios, (1 - level) / 2)), high: open(quantile(ratios, (1 + level) / 2)) };
}

/** Stands for a ratio without bound. */
const LARGEST = 1e12;

function distinctSources(terms: MeanSquareTerm[]): MeanSquareTerm[] {
  return [...new Map(terms.map((term) => [`${term.meanSquare} ${term.degreesOfFreedom}`, term])).values()];
}

/** G. Marsaglia, W. W. Tsang, ACM Trans. Math. Softw. 26 (2000) 363; shapes below 1 are raised by one. */
function chiSquareDraw(df: number, random: Random): number {
  const raised = df < 2;
  const d = (raised ? df / 2 + 1 : df / 2) - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const x = random.normal();
    const v = (1 + c * x) ** 3;
    if (v <= 0 || Math.log(1 - random.uniform()) >= 0.5 * x * x + d - d * v + d * Math.log(v)) continue;
    return 2 * d * v * (raised ? (1 - random.uniform()) ** (2 / df) : 1);
  }
}
