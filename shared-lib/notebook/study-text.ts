import type { ResultValue } from '../calculation/result.ts';
import { formatNumber } from '../quantity/format.ts';

/**
 * A measurement study on one line: 'gauge s 0.12 N/15 mm, 27 % of the spread, 2026-01-30', of a grade
 * 'agreement 86 %, weighted kappa 0.71, 2026-01-30'.
 * @param recordedAt ISO 8601
 */
export function studyText(results: Record<string, ResultValue>, recordedAt: string): string {
  const { gauge, gaugePct, agreementPct, weightedKappa } = results;
  const parts: string[] = [];
  if (gauge?.value != null) parts.push(`gauge s ${twoDigits(gauge.value)}${gauge.unit ? ` ${gauge.unit}` : ''}`);
  if (gaugePct?.value != null) parts.push(`${formatNumber(gaugePct.value, 0)} % of the spread`);
  if (agreementPct?.value != null) parts.push(`agreement ${formatNumber(agreementPct.value, 0)} %`);
  if (weightedKappa?.value != null) parts.push(`weighted kappa ${formatNumber(weightedKappa.value, 2)}`);
  return [...parts, recordedAt.slice(0, 10)].join(', ');
}

function twoDigits(value: number): string {
  return value === 0 ? '0' : String(Number(value.toPrecision(2)));
}
