import type { ResultValue } from '../calculation/result.ts';
import type { Figure, Series } from '../figure/figure.ts';
import { formatPlain, formatValue } from '../quantity/format.ts';
import { poissonInterval } from '../statistics/poisson-interval.ts';
import type { CoverageLink } from './lamination-coverage.ts';
import { areaM2, DEFECT_KINDS, defectKinds, defectsOf, type Check } from './lamination-places.ts';

const UNIT = 'per m²';
const CURVE_POINTS = 40;

/** The web from above, across × along, with what was found at each place of one check. `null` without located places. */
export function sketchFigure({ hours, places }: Check, webWidthMm: number | undefined): Figure | null {
  const located = places.filter(({ acrossMm, alongM }) => acrossMm !== undefined && alongM !== undefined);
  if (located.length === 0) return null;
  // Of a place where several kinds were found one mark would hide another.
  const found = (place: (typeof located)[number]) => defectKinds.filter((kind) => place[kind] > 0).map((kind) => DEFECT_KINDS[kind]).join(' and ');
  const kinds = [...new Set(located.map(found))].sort((a, b) => a.length - b.length);
  const series = kinds.map((kind): Series => ({
    name: kind || 'nothing found',
    kind: 'points',
    role: kind === '' ? 'reference' : 'reading',
    points: located.filter((place) => found(place) === kind).map((place) => ({ x: place.acrossMm!, y: place.alongM!, label: `${defectsOf([place])} counted` })),
  }));
  const marked = located.filter((place) => defectsOf([place]) > 0).length;
  return {
    id: 'web-sketch',
    title: `Sketch of the web after ${formatPlain(hours)} h`,
    finding: `Defects at ${marked} of ${located.length} located places after ${formatPlain(hours)} h; operator side on the left, outside of the roll at the bottom.`,
    x: { title: 'Across the web', unit: 'mm', scale: 'linear', min: 0, ...(webWidthMm !== undefined && { max: webWidthMm }) },
    y: { title: 'Along the web', unit: 'm', scale: 'linear', min: 0 },
    series,
    ...(webWidthMm !== undefined && { lines: [{ name: 'edge', axis: 'x' as const, value: webWidthMm, role: 'mark' as const }] }),
  };
}

/** Defects per m² of each kind at each check, with exact intervals. */
export function growthFigure(checks: readonly Check[], defects: ResultValue, growth: ResultValue, level: number): Figure {
  const last = checks[checks.length - 1]!;
  const { text, intervalText } = formatValue(growth);
  const total = formatValue(defects).text;
  return {
    id: 'defects-over-time',
    title: 'Defects after lamination',
    finding:
      checks.length === 1
        ? `Defects: ${total} after ${formatPlain(last.hours)} h.`
        : `Defects: ${total} after ${formatPlain(last.hours)} h; ${growth.value === null ? 'growth cannot be given' : `${text} times the first check${intervalText === '' ? '' : ` (${intervalText})`}`}.`,
    x: { title: 'Since lamination', unit: 'h', scale: 'linear', min: 0 },
    y: { title: 'Defects', unit: UNIT, scale: 'linear', min: 0 },
    series: defectKinds.map((kind) => ({
      name: DEFECT_KINDS[kind],
      kind: 'points',
      role: 'reading',
      points: checks.map((check) => {
        const count = defectsOf(check.places, kind);
        const { low, high } = poissonInterval(count, level);
        return { x: check.hours, y: count / check.areaM2, low: low / check.areaM2, high: high / check.areaM2, label: `${count} counted` };
      }),
    })),
  };
}

/** Rate of each place against its ink coverage, with exact intervals and the fitted curve. `null` without a coverage. */
export function coverageFigure({ places }: Check, { factor, trend }: CoverageLink, level: number): Figure | null {
  const covered = places.filter(({ coveragePct }) => coveragePct !== undefined);
  if (covered.length === 0) return null;
  const coverages = covered.map(({ coveragePct }) => coveragePct!);
  const [from, to] = [Math.min(...coverages), Math.max(...coverages)];
  const { text, intervalText } = formatValue(factor);
  const curve = trend?.rateAt;
  return {
    id: 'defects-over-coverage',
    title: 'Defects and ink coverage',
    finding: factor.value === null ? 'No link to ink coverage can be given.' : `Factor ${text} for every 10 % of coverage${intervalText === '' ? '' : ` (${intervalText})`}.`,
    x: { title: 'Ink coverage', unit: '%', scale: 'linear', min: 0 },
    y: { title: 'Defects', unit: UNIT, scale: 'linear', min: 0 },
    series: [
      {
        name: 'places',
        kind: 'points',
        role: 'reading',
        points: covered.map((place) => {
          const count = defectsOf([place]);
          const { low, high } = poissonInterval(count, level);
          return { x: place.coveragePct!, y: count / areaM2(place), low: low / areaM2(place), high: high / areaM2(place), label: `${count} counted` };
        }),
      },
      ...(curve
        ? [{ name: 'log-linear trend', kind: 'line' as const, role: 'fit' as const, points: Array.from({ length: CURVE_POINTS + 1 }, (_, index) => from + ((to - from) * index) / CURVE_POINTS).map((x) => ({ x, y: curve(x) })) }]
        : []),
    ],
  };
}
