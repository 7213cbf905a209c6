import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { formatPlain } from '../quantity/format.ts';
import { chiSquareUpperTail } from '../statistics/distributions.ts';
import { levelSchema } from '../statistics/level.ts';
import { meanOfReplicates } from '../statistics/mean-of-replicates.ts';
import { poissonInterval } from '../statistics/poisson-interval.ts';
import { rateRatio } from '../statistics/rate-ratio.ts';
import { linkToCoverage, type CoverageLink } from './lamination-coverage.ts';
import { coverageFigure, growthFigure, sketchFigure } from './lamination-figures.ts';
import { areaM2, checksOf, defectsOf, laminationPlace, refuseBeyondWeb, type Check, type DefectKind } from './lamination-places.ts';

const input = z.strictObject({
  places: z.array(laminationPlace).min(1).max(1000),
  webWidthMm: z.number().positive().max(20_000).optional(),
  level: levelSchema,
});

/** Beyond this chance, places that differ do so by more than counting. */
const CLUSTERED_P = 0.01;

export const laminationRecheckCalculation = defineCalculation({
  id: 'lamination-recheck',
  version: '1',
  title: 'Lamination checked again: defects per area',
  input,
  compute: ({ places, webWidthMm, level }) => {
    refuseBeyondWeb(places, webWidthMm);
    const checks = checksOf(places);
    const first = checks[0]!;
    const last = checks[checks.length - 1]!;
    const defects = rateOf(last, level);
    const growth = checks.length === 1 ? valueWithoutInterval(null, '', 1) : growthOf(first, last, level);
    const link = linkToCoverage(last.places, level);
    const curls = last.places.flatMap(({ curlMm }) => (curlMm === undefined ? [] : [curlMm]));
    return {
      results: {
        defects,
        bubbles: rateOf(last, level, 'bubbles'),
        tunnels: rateOf(last, level, 'tunnels'),
        delaminations: rateOf(last, level, 'delaminations'),
        growth,
        coverageFactor: link.factor,
        curl: curls.length === 0 ? valueWithoutInterval(null, 'mm', 0) : meanOfReplicates(curls, 'mm', level),
        lastCheckH: valueWithoutInterval(last.hours, 'h', checks.length),
      },
      table: checks.map((check) => {
        const { value, low, high } = rateOf(check, level);
        return { hours: check.hours, places: check.places.length, areaM2: check.areaM2, bubbles: defectsOf(check.places, 'bubbles'), tunnels: defectsOf(check.places, 'tunnels'), delaminations: defectsOf(check.places, 'delaminations'), perM2: value, low, high };
      }),
      flags: clusteredFlag(last, link),
      notes: [
        `Rates are of the last check, after ${formatPlain(last.hours)} h, over ${formatPlain(last.areaM2)} m²; exact interval of a count that falls by chance.`,
        growthNote(checks, growth),
        link.statement,
        ...(curls.length > 0 ? ['Curl: mean of the places of the last check, above 0 towards the outer ply.'] : []),
      ],
      figures: [sketchFigure(last, webWidthMm), growthFigure(checks, defects, growth, level), coverageFigure(last, link, level)].filter((figure) => figure !== null),
    };
  },
  columns: [
    { key: 'hours', title: 'Since lamination', unit: 'h' },
    { key: 'places', title: 'Places', decimals: 0 },
    { key: 'areaM2', title: 'Area', unit: 'm²' },
    { key: 'bubbles', title: 'Bubbles', decimals: 0 },
    { key: 'tunnels', title: 'Tunnels', decimals: 0 },
    { key: 'delaminations', title: 'Delamination', decimals: 0 },
    { key: 'perM2', title: 'Defects', unit: 'per m²' },
    { key: 'low', title: 'From', unit: 'per m²' },
    { key: 'high', title: 'To', unit: 'per m²' },
  ],
  cautions: [],
  sources: [
    'F. Garwood, Biometrika 28 (1936) 437 (exact interval of a count)',
    'J. Przyborowski, H. Wilenski, Biometrika 31 (1940) 313 (ratio of two rates, conditional on their sum)',
    'P. McCullagh, J. A. Nelder, Generalized Linear Models (1989), chapter 6 (log-linear trend of counts, allowance for more scatter)',
    'Counting defects of a laminate per area after hours and days: common practice, no standard',
  ],
});

function rateOf({ places, areaM2: area }: Check, level: number, kind?: DefectKind): ResultValue {
  const count = defectsOf(places, kind);
  const { low, high } = poissonInterval(count, level);
  return { value: count / area, unit: 'per m²', low: low / area, high: high / area, level, n: places.length, bound: 'exact' };
}

/** Last check ÷ first check; `at-least` where the first counted nothing. */
function growthOf(first: Check, last: Check, level: number): ResultValue {
  const n = first.places.length + last.places.length;
  const counted = ({ places, areaM2: exposure }: Check) => ({ count: defectsOf(places), exposure });
  const ratio = rateRatio(counted(first), counted(last), level);
  if (ratio === null) return valueWithoutInterval(null, '', n);
  if (ratio.value === null) return { value: ratio.low, unit: '', low: ratio.low, high: null, level, n, bound: 'at-least' };
  return { value: ratio.value, unit: '', low: ratio.low, high: ratio.high, level, n, bound: 'exact' };
}

function growthNote(checks: readonly Check[], growth: ResultValue): string {
  if (checks.length === 1) return 'Growth: only one check so far; look again after 24 h and after 7 days.';
  if (growth.value === null) return 'Growth: nothing was counted at either check.';
  const grows = growth.low !== null && growth.low > 1;
  const shrinks = growth.high !== null && growth.high < 1;
  const word = grows ? 'the counts show that defects grow in number' : shrinks ? 'the counts show that defects become fewer' : 'the counts cannot show whether defects grow in number';
  return `Growth from ${formatPlain(checks[0]!.hours)} to ${formatPlain(checks[checks.length - 1]!.hours)} h: ${word}. Both checks count as independent; where the same places were counted twice the interval is rather too wide.`;
}

/**
 * Defects that come in groups are counted with less certainty than their number says. What ink coverage explains is no grouping, where
 * all places have one.
 */
function clusteredFlag({ places }: Check, { trend }: CoverageLink): Flag[] {
  const explained = places.every(({ coveragePct }) => coveragePct !== undefined) ? (trend?.fitP ?? null) : null;
  const p = explained ?? sameRateP(places);
  if (p === null || p >= CLUSTERED_P) return [];
  return [{ code: 'clustered', where: '', text: 'The places differ more than chance does: the defects come in groups. The intervals of the rates and of the growth are then too narrow; look at more places.' }];
}

/** Pearson's test of one rate for all places; `null` where nothing can differ. */
function sameRateP(places: Check['places']): number | null {
  const total = defectsOf(places);
  const area = places.reduce((sum, place) => sum + areaM2(place), 0);
  if (places.length < 2 || total === 0) return null;
  const statistic = places.reduce((sum, place) => {
    const expected = (total * areaM2(place)) / area;
    return sum + (defectsOf([place]) - expected) ** 2 / expected;
  }, 0);
  return chiSquareUpperTail(statistic, places.length - 1);
}
