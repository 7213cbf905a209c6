import { z } from 'zod';
import { InputError } from '../calculation/input-error.ts';

const defectCount = z.int().min(0).max(100_000);

/** Kinds of defect, worst last: field name → word. */
export const DEFECT_KINDS = { bubbles: 'bubbles', tunnels: 'tunnels', delaminations: 'delamination' } as const;
export type DefectKind = keyof typeof DEFECT_KINDS;
export const defectKinds = Object.keys(DEFECT_KINDS) as DefectKind[];

/** A place of the web in which defects were counted. */
export const laminationPlace = z.strictObject({
  /** Since lamination. */
  hours: z.number().min(0).max(100_000),
  /** Area looked at. */
  areaCm2: z.number().positive().max(1e7),
  bubbles: defectCount,
  tunnels: defectCount,
  delaminations: defectCount,
  /** Share of the area that is printed; several inks over each other add up. */
  coveragePct: z.number().min(0).max(400).optional(),
  /** From the operator side. */
  acrossMm: z.number().min(0).max(20_000).optional(),
  /** From the outside of the roll. */
  alongM: z.number().min(0).max(1e6).optional(),
  /** Height of the edge of a square cut from the web, above 0 towards the outer ply. */
  curlMm: z.number().min(-500).max(500).optional(),
});
export type LaminationPlace = z.output<typeof laminationPlace>;

/** The places that were looked at the same time after lamination. */
export interface Check {
  hours: number;
  places: LaminationPlace[];
  areaM2: number;
}

/** Checks in the order of time. */
export function checksOf(places: readonly LaminationPlace[]): Check[] {
  const times = [...new Set(places.map(({ hours }) => hours))].sort((a, b) => a - b);
  return times.map((hours) => {
    const seen = places.filter((place) => place.hours === hours);
    return { hours, places: seen, areaM2: seen.reduce((sum, place) => sum + areaM2(place), 0) };
  });
}

/** Of one kind, or of all. */
export function defectsOf(places: readonly LaminationPlace[], kind?: DefectKind): number {
  return places.reduce((sum, place) => sum + (kind ? place[kind] : defectKinds.reduce((all, each) => all + place[each], 0)), 0);
}

export function areaM2({ areaCm2 }: LaminationPlace): number {
  return areaCm2 / 10_000;
}

/** @throws InputError for a place beyond the web */
export function refuseBeyondWeb(places: readonly LaminationPlace[], webWidthMm: number | undefined): void {
  const beyond = places.findIndex(({ acrossMm }) => webWidthMm !== undefined && acrossMm !== undefined && acrossMm > webWidthMm);
  if (beyond >= 0) {
    const { acrossMm } = places[beyond]!;
    throw new InputError(`places[${beyond}].acrossMm`, acrossMm, `${acrossMm} mm across lies beyond the web, which is ${webWidthMm} mm wide.`);
  }
}
