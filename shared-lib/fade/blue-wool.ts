import { greyScaleContinuous } from './grey-scale-change.ts';

/** A blue-wool reference exposed beside the specimen, and the ΔEF it changed by. */
export interface BlueWoolReference {
  /** 1 (fades fastest) to 8. */
  reference: number;
  deltaEF: number;
}

/**
 * The light fastness that blue-wool references give a specimen.
 * - `equal`: this reference changed as much (within a quarter of a grade).
 * - `between`: the change lies between those of two references.
 * - `more` / `less`: the specimen changed more than the least fast, or less than the fastest reference exposed.
 */
export type BlueWoolRating =
  | { kind: 'equal'; reference: number }
  | { kind: 'between'; low: number; high: number }
  | { kind: 'more' | 'less'; reference: number };

/** Closer than this on the continuous grey scale counts as the same contrast: half of the half-grade step. */
const sameContrast = 0.25;

/**
 * Rates a specimen by the references that changed as much under the same exposure (ISO 105-B02), contrasts compared on
 * the grey scale of ISO 105-A05.
 * @param references at least one, each number once, in any order.
 */
export function rateByBlueWool(specimenDeltaEF: number, references: BlueWoolReference[]): BlueWoolRating {
  const specimen = greyScaleContinuous(specimenDeltaEF);
  const byNumber = references
    .map(({ reference, deltaEF }) => ({ reference, away: greyScaleContinuous(deltaEF) - specimen }))
    .sort((a, b) => a.reference - b.reference);
  const equal = byNumber.filter(({ away }) => Math.abs(away) <= sameContrast).map(({ reference }) => reference);
  if (equal.length === 1) return { kind: 'equal', reference: equal[0]! };
  if (equal.length > 1) return { kind: 'between', low: equal[0]!, high: equal.at(-1)! };

  const fadedMore = byNumber.filter(({ away }) => away < 0);
  const fadedLess = byNumber.filter(({ away }) => away > 0);
  if (fadedMore.length === 0) return { kind: 'more', reference: byNumber[0]!.reference };
  if (fadedLess.length === 0) return { kind: 'less', reference: byNumber.at(-1)!.reference };
  const neighbours = [fadedMore.at(-1)!.reference, fadedLess[0]!.reference];
  return { kind: 'between', low: Math.min(...neighbours), high: Math.max(...neighbours) };
}

/** Pairs of references that changed against their order (the faster-fading one less): the exposure or a reading is doubtful. */
export function outOfOrder(references: BlueWoolReference[]): [BlueWoolReference, BlueWoolReference][] {
  const sorted = [...references].sort((a, b) => a.reference - b.reference);
  return sorted.slice(1).flatMap((faster, index) => {
    const slower = sorted[index]!;
    return faster.deltaEF > slower.deltaEF ? [[slower, faster] as [BlueWoolReference, BlueWoolReference]] : [];
  });
}
