import { z } from 'zod';
import type { ResultValue } from '../calculation/result.ts';

/** When a print counts as faded: any of these is enough. */
export const endpointSchema = z.strictObject({
  /** Density left, percent. */
  retentionPct: z.number().gt(0).lt(100).optional(),
  deltaE00: z.number().gt(0).max(100).optional(),
  /** ISO 105-A05 grade. */
  greyScale: z.number().min(1).max(5).multipleOf(0.5).optional(),
});

export type Endpoint = z.output<typeof endpointSchema>;

/** One sentence for each endpoint whose property has a value: reached or not. */
export function endpointsReached(results: Record<string, ResultValue>, endpoint: Endpoint): string[] {
  const sentences: (string | null)[] = [
    sentence('Retention', results.retentionPct, endpoint.retentionPct, ' %', 'falls to'),
    sentence('ΔE00', results.deltaE00, endpoint.deltaE00, '', 'rises to'),
    sentence('Grey-scale grade', results.greyScale, endpoint.greyScale, '', 'falls to'),
  ];
  return sentences.filter((text) => text !== null);
}

function sentence(title: string, result: ResultValue | undefined, limit: number | undefined, unit: string, direction: 'falls to' | 'rises to'): string | null {
  if (limit === undefined || result?.value == null) return null;
  const reached = direction === 'falls to' ? result.value <= limit : result.value >= limit;
  return `Endpoint ${title} ${limit}${unit}: ${reached ? 'reached' : 'not reached'}.`;
}
