import { z } from 'zod';
import { InputError } from '../calculation/input-error.ts';
import { findProbeLiquid, liquidSets, type LiquidSetId, type ProbeLiquid } from './probe-liquids.ts';

const partMNm = z.number().min(0).max(100);

export const liquidSchema = z.strictObject({
  name: z.string().trim().min(1).max(100),
  /** One static angle per drop. */
  anglesDeg: z.array(z.number().min(0).max(180)).min(1).max(1000),
  totalMNm: z.number().gt(0).max(100).optional(),
  dispersiveMNm: partMNm.optional(),
  polarMNm: partMNm.optional(),
  lifshitzMNm: partMNm.optional(),
  acidMNm: partMNm.optional(),
  baseMNm: partMNm.optional(),
});
export type LiquidInput = z.output<typeof liquidSchema>;

/** The parts of a probe liquid that a model works with. */
export type LiquidParts = 'total' | 'dispersive-polar' | 'acid-base';

/** Rounding of published tables lets a total differ from its parts by this much, mN/m. */
const roundingMNm = 0.15;

/**
 * The probe liquid as the input states it, or by its name from a set; `fromSet` says which.
 * @throws InputError naming the field when parts are missing, do not add up, or the set does not have the liquid
 */
export function resolveLiquid(
  given: LiquidInput,
  parts: LiquidParts,
  set: LiquidSetId,
  field: string,
): { liquid: ProbeLiquid; fromSet: boolean } {
  const stated = statedLiquid(given, parts, field);
  if (stated) return { liquid: stated, fromSet: false };
  const known = findProbeLiquid(set, given.name);
  if (known && hasParts(known, parts)) return { liquid: known, fromSet: true };
  const names = Object.entries(liquidSets[set].liquids).filter(([, liquid]) => hasParts(liquid, parts)).map(([name]) => name);
  throw new InputError(
    `${field}.name`,
    given.name,
    `The liquid set ${liquidSets[set].title} gives no ${needed[parts]} for "${given.name}"; ` +
      (names.length > 0 ? `it has ${names.join(', ')}. Or enter the values of this liquid.` : 'choose another set or enter the values.'),
  );
}

const needed: Record<LiquidParts, string> = {
  total: 'surface tension',
  'dispersive-polar': 'dispersive and polar part',
  'acid-base': 'acid and base part',
};

function hasParts(liquid: ProbeLiquid, parts: LiquidParts): boolean {
  if (parts === 'dispersive-polar') return liquid.dispersiveMNm !== undefined && liquid.polarMNm !== undefined;
  if (parts === 'acid-base') return liquid.lifshitzMNm !== undefined;
  return true;
}

function statedLiquid(given: LiquidInput, parts: LiquidParts, field: string): ProbeLiquid | undefined {
  const split = dispersivePolar(given, field);
  const bases = acidBase(given, field);
  if (parts === 'dispersive-polar') {
    if (!split && given.totalMNm !== undefined) throw missing(field, 'dispersiveMNm', 'a dispersive or a polar part beside the total');
    return split;
  }
  if (parts === 'acid-base') {
    if (!bases && given.totalMNm !== undefined) throw missing(field, 'lifshitzMNm', 'lifshitzMNm, acidMNm and baseMNm beside the total');
    return bases;
  }
  return given.totalMNm === undefined ? (split ?? bases) : { totalMNm: given.totalMNm };
}

function dispersivePolar(given: LiquidInput, field: string): ProbeLiquid | undefined {
  const { totalMNm, dispersiveMNm, polarMNm } = given;
  if (dispersiveMNm === undefined && polarMNm === undefined) return undefined;
  const total = totalMNm ?? sumIfKnown(dispersiveMNm, polarMNm);
  if (total === undefined) {
    throw missing(field, dispersiveMNm === undefined ? 'dispersiveMNm' : 'polarMNm', 'its other part or the total');
  }
  const dispersive = dispersiveMNm ?? total - polarMNm!;
  const polar = polarMNm ?? total - dispersiveMNm!;
  if (dispersive < 0 || polar < 0 || Math.abs(dispersive + polar - total) > roundingMNm) {
    throw new InputError(`${field}.totalMNm`, total, `The parts of this liquid do not add up to its total of ${total} mN/m.`);
  }
  return refuseWithoutTension({ totalMNm: total, dispersiveMNm: dispersive, polarMNm: polar }, field);
}

function acidBase(given: LiquidInput, field: string): ProbeLiquid | undefined {
  const { totalMNm, lifshitzMNm, acidMNm, baseMNm } = given;
  if (lifshitzMNm === undefined && acidMNm === undefined && baseMNm === undefined) return undefined;
  if (lifshitzMNm === undefined) throw missing(field, 'lifshitzMNm', 'its Lifshitz–van der Waals part');
  if (acidMNm === undefined) throw missing(field, 'acidMNm', 'its acid part (0 where it has none)');
  if (baseMNm === undefined) throw missing(field, 'baseMNm', 'its base part (0 where it has none)');
  const total = lifshitzMNm + 2 * Math.sqrt(acidMNm * baseMNm);
  if (totalMNm !== undefined && Math.abs(totalMNm - total) > roundingMNm) {
    throw new InputError(
      `${field}.totalMNm`,
      totalMNm,
      `The parts of this liquid give ${total.toFixed(1)} mN/m (LW + 2 √(acid · base)), not ${totalMNm}.`,
    );
  }
  return refuseWithoutTension({ totalMNm: totalMNm ?? total, lifshitzMNm, acidMNm, baseMNm }, field);
}

function refuseWithoutTension(liquid: ProbeLiquid, field: string): ProbeLiquid {
  if (liquid.totalMNm > 0) return liquid;
  throw new InputError(`${field}.totalMNm`, liquid.totalMNm, 'A probe liquid has a surface tension above 0 mN/m.');
}

function sumIfKnown(a: number | undefined, b: number | undefined): number | undefined {
  return a === undefined || b === undefined ? undefined : a + b;
}

function missing(field: string, key: string, what: string): InputError {
  return new InputError(`${field}.${key}`, null, `This liquid also needs ${what}.`);
}
