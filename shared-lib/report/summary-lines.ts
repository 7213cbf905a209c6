import { commonDomain } from '../figure/strip-domain.ts';
import type { Method } from '../method/method.ts';
import type { PropertyLine } from '../notebook/views.ts';
import type { ReportContent } from './content.ts';
import { headlineLines, isTelling } from './property-line.ts';

type SummaryLine = ReportContent['summary'][number];

/** The lines of one test in the summary: those with a limit; of a test without any limit its headline properties. */
export function summaryLines(method: Method, lines: PropertyLine[]): PropertyLine[] {
  const limited = lines.filter((line) => line.verdict.verdict !== 'no limit');
  return limited.length > 0 ? limited : headlineLines(method, lines).filter(isTelling);
}

/** No strip may shrink below this part of the width for the sake of a common scale: its limit could not be told from its interval. */
const LEAST_SHARE = 0.1;

/** The summary with all strips of one property, by title and unit, on one scale, where that leaves each of them readable. */
export function onCommonScales(summary: SummaryLine[]): SummaryLine[] {
  const groups = new Map<string, [number, number] | null>();
  return summary.map((item) => {
    const { line } = item;
    if (line.strip === null) return item;
    const group = groupOf(line);
    if (!groups.has(group)) groups.set(group, scaleOf(summary.filter((other) => groupOf(other.line) === group).flatMap((other) => other.line.strip ?? [])));
    return { ...item, line: { ...line, strip: { ...line.strip, domain: groups.get(group)! } } };
  });
}

function groupOf({ title, unit }: PropertyLine): string {
  return `${title} (${unit})`;
}

function scaleOf(strips: NonNullable<PropertyLine['strip']>[]): [number, number] | null {
  const common = commonDomain(strips);
  const width = ([low, high]: [number, number]) => high - low;
  return strips.every((strip) => width(commonDomain([strip])) >= LEAST_SHARE * width(common)) ? common : null;
}
