import type { CalculationResult, ResultValue } from '../calculation/result.ts';
import type { Figure } from '../figure/figure.ts';
import type { StripSpec } from '../figure/strip.ts';
import { gradeDomain } from '../method/grade-scale.ts';
import type { Limit, Method, Property } from '../method/method.ts';
import type { MethodStudy } from '../method/method-study.ts';
import { judge } from '../method/verdict.ts';
import type { PropertyVerdict } from '../notebook/entry.ts';
import type { PropertyLine } from '../notebook/views.ts';
import { formatValue, NO_NUMBER } from '../quantity/format.ts';
import { limitText } from './limit-text.ts';

/**
 * The verdict on every property of a method that the result holds or a limit asks for, in the method's order.
 * @param studies the measurement studies of the method that verdicts are to take into account
 */
export function judgeProperties(
  method: Method,
  results: Record<string, ResultValue>,
  limits: Limit[],
  rule: 'simple' | 'guarded',
  studies: readonly MethodStudy[] = [],
): PropertyVerdict[] {
  return method.properties.flatMap((property) => {
    const limit = limits.find((candidate) => candidate.property === property.key) ?? null;
    const result = results[property.key];
    const study = studies.find((candidate) => candidate.property === property.key) ?? null;
    if (result && property.asRead) return [{ ...judge(result, limit, 'simple'), property: property.key, asRead: true as const }];
    if (result) return [{ ...judge(result, limit, rule, study, property.belowHighEnd), property: property.key }];
    return limit ? [{ property: property.key, limit, verdict: 'undecided' as const, probability: null }] : [];
  });
}

/**
 * The lines of a test in lists, on the bench sheet and in the report: value as text, limit, verdict and strip.
 * @param figures where the dots of the strips are taken from; empty for a list that has the stored results only.
 */
export function propertyLines(
  method: Method,
  results: Record<string, ResultValue>,
  verdicts: PropertyVerdict[],
  figures: Figure[],
): PropertyLine[] {
  return verdicts.flatMap((verdict) => {
    const property = method.properties.find((candidate) => candidate.key === verdict.property);
    return property ? [propertyLine(property, results[property.key], verdict, figures)] : [];
  });
}

/** Whether a line tells anything: a value, an interval, or that a limit asks for what there is not. */
export function isTelling(line: PropertyLine): boolean {
  return line.text !== NO_NUMBER || line.intervalText !== '' || line.verdict.verdict !== 'no limit';
}

/** Those lines of a test that lists show. */
export function headlineLines(method: Method, lines: PropertyLine[]): PropertyLine[] {
  const headline = new Set(method.properties.filter((property) => property.headline).map((property) => property.key));
  return lines.filter((line) => headline.has(line.key));
}

/** Live result → its lines; the one way from readings to verdicts. */
export function judgedLines(
  method: Method,
  result: CalculationResult,
  limits: Limit[],
  rule: 'simple' | 'guarded',
  studies: readonly MethodStudy[] = [],
): PropertyLine[] {
  return propertyLines(method, result.results, judgeProperties(method, result.results, limits, rule, studies), result.figures);
}

function propertyLine(
  property: Property,
  result: ResultValue | undefined,
  verdict: PropertyVerdict,
  figures: Figure[],
): PropertyLine {
  const unit = result?.unit ?? property.unit;
  const { text, intervalText } = result ? formatValue(result, limitsOf(verdict.limit)) : { text: NO_NUMBER, intervalText: '' };
  const line = {
    key: property.key,
    title: property.title,
    unit,
    text,
    intervalText: intervalText === '' && result && property.asRead ? 'as read, of these specimens' : intervalText,
    n: result?.n ?? 0,
    limitText: limitText(verdict.limit, unit),
    studyText: verdict.study ?? '',
    verdict,
  };
  return { ...line, strip: result ? strip(property, result, verdict.limit, figures, spoken(line)) : null };
}

function limitsOf(limit: Limit | null): number[] {
  return [limit?.lower, limit?.upper].filter((end) => end != null);
}

function strip(property: Property, result: ResultValue, limit: Limit | null, figures: Figure[], label: string): StripSpec | null {
  const readings = singleValues(figures.find((figure) => figure.id === property.readingsFigure));
  if (result.value === null && readings.length === 0) return null;
  // A mark on a scale of its own says no more than the number beside it.
  const alone = readings.length < 2 && result.low === null && result.high === null && limit === null && gradeDomain(property) === null;
  if (alone) return null;
  return {
    unit: result.unit,
    readings,
    value: result.value,
    low: result.low,
    high: result.high,
    bound: result.bound,
    lowerLimit: limit?.lower ?? null,
    upperLimit: limit?.upper ?? null,
    domain: gradeDomain(property),
    label,
  };
}

/** The readings that a figure shows, doubtful ones marked. */
export function singleValues(figure: Figure | undefined): StripSpec['readings'] {
  return (figure?.series ?? []).flatMap((series) => {
    if (series.role !== 'reading' && series.role !== 'doubtful') return [];
    return series.points.flatMap(({ y, open, low, high }) => {
      if (y === null) return [];
      return [
        {
          value: y,
          ...(open && { open }),
          ...(low !== undefined && { low }),
          ...(high !== undefined && { high }),
          ...(series.role === 'doubtful' && { doubtful: true }),
        },
      ];
    });
  });
}

function spoken(line: Omit<PropertyLine, 'strip'>): string {
  const parts = [`${line.title} ${line.text}`];
  if (line.intervalText) parts.push(line.intervalText);
  parts.push(`from ${line.n} ${line.n === 1 ? 'reading' : 'readings'}`);
  if (line.limitText) parts.push(`limit ${line.limitText}: ${line.verdict.verdict}`);
  if (line.limitText && line.studyText) parts.push(`measurement study: ${line.studyText}`);
  return `${parts.join(', ')}.`;
}
