import type { Limit } from '../method/method.ts';

/** A limit as printed: '≥ 38 mN/m', '≤ 5 %', '3 to 5 N', or '' where none is set. */
export function limitText(limit: Limit | null | undefined, unit: string): string {
  if (!limit) return '';
  const withUnit = (text: string) => (unit ? `${text} ${unit}` : text);
  if (limit.lower !== null && limit.upper !== null) return withUnit(`${limit.lower} to ${limit.upper}`);
  if (limit.lower !== null) return withUnit(`≥ ${limit.lower}`);
  if (limit.upper !== null) return withUnit(`≤ ${limit.upper}`);
  return '';
}
