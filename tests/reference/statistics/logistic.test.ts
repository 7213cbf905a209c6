import { describe, expect, it } from 'vitest';
import { findRoot } from '../../../shared-lib/statistics/find-root.ts';
import { fitLogistic, logisticLogLikelihood, type EventStep } from '../../../shared-lib/statistics/logistic-fit.ts';
import { logisticQuantile } from '../../../shared-lib/statistics/logistic-quantile.ts';
import { minimise } from '../../../shared-lib/statistics/minimise.ts';

/* Hours of study and exams passed, the example of the encyclopaedia article on logistic regression as worked in R (glm);
   data, coefficients and standard errors read in a public copy: −4.077713, 1.504645; 1.7610, 0.6287. */
const hours = [0.5, 0.75, 1, 1.25, 1.5, 1.75, 1.75, 2, 2.25, 2.5, 2.75, 3, 3.25, 3.5, 4, 4.25, 4.5, 4.75, 5, 5.5];
const passed = [0, 0, 0, 0, 0, 0, 1, 0, 1, 0, 1, 0, 1, 0, 1, 1, 1, 1, 1, 1];
const exams: EventStep[] = hours.map((x, index) => ({ x, tried: 1, events: passed[index]! }));

/* Beetles after five hours of carbon disulphide, C. I. Bliss, Ann. Appl. Biol. 22 (1935) 134, as in A. J. Dobson, An
   Introduction to Generalized Linear Models, table 7.2: data read in public texts; results −60.72 (5.18), 34.27 (2.91),
   deviance 11.23 from memory of the book. */
const log10Dose = [1.6907, 1.7242, 1.7552, 1.7842, 1.8113, 1.8369, 1.861, 1.8839];
const exposed = [59, 60, 62, 56, 63, 59, 62, 60];
const killed = [6, 13, 18, 28, 52, 53, 61, 60];
const beetles: EventStep[] = log10Dose.map((x, index) => ({ x, tried: exposed[index]!, events: killed[index]! }));

describe('logistic regression against published fits', () => {
  it('hours of study: coefficients and standard errors', () => {
    const { intercept, slope, covariance } = fitLogistic(exams)!;
    expect(intercept).toBeCloseTo(-4.077713, 6);
    expect(slope).toBeCloseTo(1.504645, 6);
    expect(Math.sqrt(covariance[0][0])).toBeCloseTo(1.761, 4);
    expect(Math.sqrt(covariance[1][1])).toBeCloseTo(0.6287, 4);
  });

  it('beetles: coefficients, standard errors, deviance and the dose that kills half', () => {
    const fit = fitLogistic(beetles)!;
    expect(fit.intercept).toBeCloseTo(-60.72, 2);
    expect(fit.slope).toBeCloseTo(34.27, 2);
    expect(Math.sqrt(fit.covariance[0][0])).toBeCloseTo(5.18, 2);
    expect(Math.sqrt(fit.covariance[1][1])).toBeCloseTo(2.91, 2);
    expect(fit.deviance).toBeCloseTo(11.23, 2);
    expect(fit.degreesOfFreedom).toBe(6);
    expect(logisticQuantile(beetles, fit, 0.5).value).toBeCloseTo(60.717 / 34.27, 4);
  });
});

/* The same likelihood written out anew and climbed without derivatives: another way to the same top. */
describe.each([['exams', exams], ['beetles', beetles]] as const)('%s, by an independent search', (_, steps) => {
  const centre = steps.reduce((sum, { x }) => sum + x, 0) / steps.length;
  const minusLog = ([at, slope]: readonly number[]) =>
    -steps.reduce((sum, { x, tried, events }) => {
      const p = 1 / (1 + Math.exp(-(slope! * (x - at!))));
      return sum + events * Math.log(p) + (tried - events) * Math.log1p(-p);
    }, 0);
  const found = minimise(minusLog, [centre, 1 / (Math.max(...steps.map(({ x }) => x)) - Math.min(...steps.map(({ x }) => x)))]);

  it('finds the same middle, slope and likelihood', () => {
    const fit = fitLogistic(steps)!;
    expect(-fit.intercept / fit.slope).toBeCloseTo(found.point[0]!, 6);
    expect(fit.slope / found.point[1]!).toBeCloseTo(1, 6);
    expect(fit.logLikelihood).toBeCloseTo(-found.value, 9);
    expect(fit.logLikelihood).toBeCloseTo(logisticLogLikelihood(steps, (x) => fit.intercept + fit.slope * x), 9);
  });

  /* 3.841459: 95 % of chi-square with one degree of freedom, any table. */
  it.each([0.5, 0.05])('finds the ends of the interval for a share of %f where the best curve falls short by 3.8415 / 2', (q) => {
    const { low, high } = logisticQuantile(steps, fitLogistic(steps)!, q);
    const shift = Math.log(q / (1 - q));
    for (const end of [low!, high!]) {
      const through = (slope: number) => minusLog([end - shift / slope, slope]);
      const best = minimise(([slope]) => (slope! > 0 ? through(slope!) : Infinity), [found.point[1]!]);
      expect(2 * (best.value - found.value)).toBeCloseTo(3.841459, 4);
    }
  });
});

it('a curve through two steps goes through their shares exactly', () => {
  // Two parameters, two steps: logit(1/4) at 10, logit(3/4) at 20; so half at 15, and ln 3 per 5.
  const fit = fitLogistic([{ x: 10, tried: 4, events: 1 }, { x: 20, tried: 4, events: 3 }])!;
  expect(-fit.intercept / fit.slope).toBeCloseTo(15, 10);
  expect(fit.slope).toBeCloseTo(Math.log(3) / 5, 10);
  expect(findRoot((x) => fit.intercept + fit.slope * x, 0, 30)).toBeCloseTo(15, 10);
});
