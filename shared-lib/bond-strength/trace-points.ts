import { z } from 'zod';

type Point = [displacementMm: number, forceN: number];

/**
 * Schema of a typed trace: `[[displacementMm, forceN], …]`. Its points are checked in one plain loop, since a schema object
 * for each of a million numbers costs more than the evaluation; its JSON Schema is that of a list of pairs all the same.
 */
export const tracePointsSchema = z
  .array(z.any().meta({ type: 'array', prefixItems: [{ type: 'number' }, { type: 'number' }], items: false, minItems: 2, maxItems: 2 }))
  .min(2)
  .max(2_000_000)
  .check(({ value, issues }) => {
    const fault = firstFault(value);
    if (fault) issues.push(fault);
  }) as unknown as z.ZodType<Point[]>;

function firstFault(points: unknown[]): z.core.$ZodRawIssue | null {
  for (let index = 0; index < points.length; index += 1) {
    const point = points[index];
    if (!Array.isArray(point)) return { code: 'invalid_type', expected: 'array', input: point, path: [index] };
    if (point.length < 2) return { code: 'too_small', origin: 'array', minimum: 2, inclusive: true, input: point, path: [index] };
    if (point.length > 2) return { code: 'too_big', origin: 'array', maximum: 2, inclusive: true, input: point, path: [index] };
    // Number.isFinite is false for all that is no number.
    const column = Number.isFinite(point[0]) ? (Number.isFinite(point[1]) ? -1 : 1) : 0;
    if (column >= 0) return { code: 'invalid_type', expected: 'number', input: point[column], path: [index, column] };
  }
  return null;
}
