import { InputError } from '../calculation/input-error.ts';

/** A force–displacement trace as two columns of equal length, mm and N, by rising displacement. */
export interface TraceColumns {
  displacementMm: Float64Array;
  forceN: Float64Array;
}

/** How a fault at a point is named: `points[3][1]` for typed points, `rows[2].trace` for a trace from a file. */
export type PointField = (index: number, column: 0 | 1) => string;

/** `[displacementMm, forceN]` pairs as columns. */
export function columnsFromPoints(points: readonly (readonly [number, number])[]): TraceColumns {
  const displacementMm = new Float64Array(points.length);
  const forceN = new Float64Array(points.length);
  for (let index = 0; index < points.length; index += 1) {
    displacementMm[index] = points[index]![0];
    forceN[index] = points[index]![1];
  }
  return { displacementMm, forceN };
}

/**
 * Makes sure that a trace can be evaluated at all.
 * @param field names the point at fault in the caller's words.
 * @throws InputError for fewer than two points, columns of different length, a number that is not finite, or a
 *   displacement that does not rise from point to point.
 */
export function checkTrace({ displacementMm, forceN }: TraceColumns, field: PointField): void {
  if (displacementMm.length !== forceN.length) {
    throw new InputError(
      field(0, 1),
      forceN.length,
      `A trace needs one force for each displacement; it has ${displacementMm.length} displacements and ${forceN.length} forces.`,
    );
  }
  if (displacementMm.length < 2) {
    throw new InputError(field(0, 0), displacementMm.length, `A trace needs at least 2 points, not ${displacementMm.length}.`);
  }
  for (let index = 0; index < displacementMm.length; index += 1) {
    const at = displacementMm[index]!;
    const force = forceN[index]!;
    if (!Number.isFinite(at)) throw notFinite(field(index, 0), at, 'displacement');
    if (!Number.isFinite(force)) throw notFinite(field(index, 1), force, 'force');
    if (index > 0 && at <= displacementMm[index - 1]!) {
      throw new InputError(
        field(index, 0),
        at,
        `The displacement must rise from point to point: point ${index + 1} is at ${at} mm, the one before at ${displacementMm[index - 1]} mm.`,
      );
    }
  }
}

function notFinite(field: string, value: number, what: string): InputError {
  return new InputError(field, String(value), `The ${what} must be a finite number, not ${value}.`);
}
