import type { Limit } from '../method/method.ts';

/** A limit as printed, to the digits it was set with: '≥ 38 mN/m', '≤ 5 %', '3 to 5 N', or '' where none is set. */
export function limitText(limit: Limit | null | undefined, unit: string): string {
  if (!limit) return '';
  const withUnit = (text: string) => (unit ? `${text} ${unit}` : text);
  const shown = (end: number) => String(end).replaceAll('-', '−');
  if (limit.lower !== null && limit.upper !== null) return withUnit(`${shown(limit.lower)} to ${shown(limit.upper)}`);
  if (limit.lower !== null) return withUnit(`≥ ${shown(limit.lower)}`);
  if (limit.upper !== null) return withUnit(`≤ ${shown(limit.upper)}`);
  return '';
}
