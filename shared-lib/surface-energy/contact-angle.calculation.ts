import { z } from 'zod';
import { defineCalculation, type Outcome } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import { formatNumber } from '../quantity/format.ts';
import { angleFlags, misfitFlags } from './angle-flags.ts';
import { drawIntervals } from './angle-monte-carlo.ts';
import { angleScatter, type AngleScatter } from './angle-scatter.ts';
import { contactAngleFigures } from './contact-angle-figures.ts';
import { liquidSetIds, liquidSets, type ProbeLiquid } from './probe-liquids.ts';
import { liquidSchema, resolveLiquid, type LiquidParts } from './resolve-liquid.ts';
import { refuseIllConditioned } from './refuse-ill-conditioned.ts';
import type { WettingModel } from './wetting-model.ts';
import { wettingModelIds, wettingModels, type WettingModelId } from './wetting-models.ts';
import { wuPairwiseMean } from './wu.ts';

const level = 0.95;
const radians = Math.PI / 180;

const input = z.strictObject({
  model: z.enum(wettingModelIds),
  liquids: z.array(liquidSchema).min(1).max(30),
  /** Set from which liquids without values of their own are taken; default: the set of the model's authors. */
  liquidSet: z.enum(liquidSetIds).optional(),
  /** Seed of the Monte Carlo intervals. */
  seed: z.int().min(0).max(4_294_967_295).default(1),
});

/**
 * Surface energy of a solid from contact angles of known liquids, by one of five models. Intervals come from the scatter of
 * the drops and, with more liquids than a model has parameters, from its misfit.
 */
export const contactAngleCalculation = defineCalculation({
  id: 'contact-angle',
  version: '1',
  title: 'Surface energy from contact angles',
  input,
  compute: (given): Outcome => {
    const kind = wettingModels[given.model];
    const set = given.liquidSet ?? kind.defaultSet;
    if (given.liquids.length < kind.fewestLiquids) {
      throw new InputError(
        'liquids',
        given.liquids.length,
        `The ${kind.title} model needs at least ${kind.fewestLiquids} liquids, not ${given.liquids.length}.`,
      );
    }
    const resolved = given.liquids.map((liquid, index) => resolveLiquid(liquid, kind.parts, set, `liquids[${index}]`));
    const liquids = resolved.map(({ liquid }) => liquid);
    refuseWithoutDispersive(given.model, liquids, given.liquids);
    const model = kind.build(liquids);
    const conditionFlags = refuseIllConditioned(model.condition);
    const scatter = angleScatter(given.liquids.map((liquid) => liquid.anglesDeg));
    const cosines = Float64Array.from(scatter, ({ meanDeg }) => Math.cos(meanDeg * radians));
    const out = new Float64Array(model.outputs.length);
    const physical = model.solve(cosines, out);
    const names = given.liquids.map((liquid) => liquid.name);
    const fitted = physical ? liquids.map((_, index) => fittedAngle(model.predict(out, index))) : liquids.map(() => null);
    const fit = physical ? withIntervals(model, out, scatter, given.seed) : withoutSolution(model, scatter, kind.title);

    return {
      results: { ...fit.results, ...(given.model === 'wu' ? pairwise(liquids, cosines) : {}) },
      table: given.liquids.map((liquid, index) => {
        const { n, meanDeg, sdDeg } = scatter[index]!;
        const angle = fitted[index] ?? null;
        return {
          liquid: liquid.name,
          drops: n,
          angleDeg: meanDeg,
          sdDeg,
          fittedDeg: angle,
          residualDeg: angle === null ? null : meanDeg - angle,
          totalMNm: liquids[index]!.totalMNm,
          parts: partsText(liquids[index]!, kind.parts),
        };
      }),
      flags: [
        ...conditionFlags,
        ...fit.flags,
        ...(physical ? rootFlags(model.negativeRoots(cosines)) : []),
        ...(physical ? rangeFlags(model, out) : []),
        ...(physical ? misfitFlags(names, scatter, fitted as number[]) : []),
        ...angleFlags(names, scatter),
      ],
      notes: [...fit.notes, ...(physical ? misfitNote(model, scatter, fitted as number[]) : [])],
      figures: contactAngleFigures(given.model, { names, liquids, scatter, model, out: physical ? out : null, fitted }),
      sources: [
        kind.source,
        resolved.some(({ fromSet }) => fromSet) ? liquidSets[set].source : 'Probe liquids: values as entered with the angles',
      ],
    };
  },
  columns: [
    { key: 'liquid', title: 'Liquid' },
    { key: 'drops', title: 'Drops', decimals: 0 },
    { key: 'angleDeg', title: 'Mean angle', unit: '°', decimals: 1 },
    { key: 'sdDeg', title: 'Standard deviation', unit: '°', decimals: 1 },
    { key: 'fittedDeg', title: 'Angle by the model', unit: '°', decimals: 1 },
    { key: 'residualDeg', title: 'Difference', unit: '°', decimals: 1 },
    { key: 'totalMNm', title: 'Liquid tension', unit: 'mN/m', decimals: 1 },
    { key: 'parts', title: 'Its parts, mN/m' },
  ],
  cautions: [
    'Probe liquids: formamide and diiodomethane are hazardous to health; work with gloves and extraction, and go by their safety data sheets and local rules.',
  ],
  sources: [
    'Intervals: Monte Carlo after JCGM 101:2008, 10 000 draws from a fixed seed; degrees of freedom by Welch and Satterthwaite, JCGM 100:2008, G.4',
  ],
});

interface Fit {
  results: Record<string, ResultValue>;
  flags: Flag[];
  notes: string[];
}

function withIntervals(model: WettingModel, out: Float64Array, scatter: AngleScatter[], seed: number): Fit {
  const { intervals, unphysicalShare, misfitCounts } = drawIntervals(model, scatter, level, seed);
  const n = scatter.reduce((sum, { n: drops }) => sum + drops, 0);
  const notes: string[] = [];
  if (!intervals) {
    notes.push(
      unphysicalShare > 0
        ? 'No interval: more than half of the draws within the scatter of the angles have no physical solution.'
        : 'No interval: one angle per liquid and no liquid more than the model needs. Measure several drops of each.',
    );
  } else if (unphysicalShare > 0.001) {
    notes.push(`${formatNumber(unphysicalShare * 100, 1)} % of the draws have no physical solution; the interval stands on the others.`);
  }
  const results = Object.fromEntries(
    model.outputs.map(({ key, unit }, index): [string, ResultValue] => {
      const value = out[index]!;
      const ends = intervals?.[index];
      // A value at the edge of what is physical can lie beside its own draws; the interval always holds it.
      const low = ends ? Math.min(ends.low, value) : null;
      const high = ends ? Math.max(ends.high, value) : null;
      return [key, { value, unit, low, high, level: ends ? level : null, n, bound: 'exact' }];
    }),
  );
  const df = scatter.length - model.parameters;
  if (intervals && df > 0) {
    notes.push(
      misfitCounts
        ? `The drops do not explain the misfit of the model; it is in the intervals with ${df} ${df === 1 ? 'degree' : 'degrees'} of freedom.`
        : 'The scatter of the drops explains the misfit of the model; the intervals stand on the drops.',
    );
  }
  return { results, notes, flags: [] };
}

function withoutSolution(model: WettingModel, scatter: AngleScatter[], title: string): Fit {
  const n = scatter.reduce((sum, { n: drops }) => sum + drops, 0);
  const nothing = { value: null, low: null, high: null, level: null, n, bound: 'exact' as const };
  const text = `These angles have no physical solution in the ${title} model; check them, or use another model.`;
  return {
    results: Object.fromEntries(model.outputs.map(({ key, unit }) => [key, { ...nothing, unit }])),
    flags: [{ code: 'no-physical-solution', where: 'liquids', text }],
    notes: [text],
  };
}

/** The mean of Wu's pairwise solutions beside the regression, as his followers report it. */
function pairwise(liquids: ProbeLiquid[], cosines: Float64Array): Record<string, ResultValue> {
  if (liquids.length < 3) return {};
  const { solved, mean } = wuPairwiseMean(liquids, cosines);
  const value = (number: number | null): ResultValue => ({
    value: number,
    unit: 'mN/m',
    low: null,
    high: null,
    level: null,
    n: solved,
    bound: 'exact',
  });
  return {
    pairwiseTotal: value(mean && mean.dispersive + mean.polar),
    pairwiseDispersive: value(mean && mean.dispersive),
    pairwisePolar: value(mean && mean.polar),
  };
}

function refuseWithoutDispersive(modelId: WettingModelId, liquids: ProbeLiquid[], given: { name: string }[]): void {
  if (modelId !== 'owens-wendt' && modelId !== 'wu') return;
  const index = liquids.findIndex((liquid) => !(liquid.dispersiveMNm! > 0));
  if (index < 0) return;
  throw new InputError(
    `liquids[${index}].dispersiveMNm`,
    liquids[index]!.dispersiveMNm,
    `${given[index]!.name} needs a dispersive part above 0 mN/m.`,
  );
}

function fittedAngle(cosine: number): number {
  return Math.acos(Math.min(1, Math.max(-1, cosine))) / radians;
}

function rootFlags(components: string[]): Flag[] {
  return components.map((component) => ({
    code: 'negative-root',
    where: component,
    text: `The root of the ${component} part comes out negative, which squaring would hide; it was set to 0 and the rest fitted again.`,
  }));
}

function rangeFlags(model: WettingModel, out: Float64Array): Flag[] {
  const index = model.outputs.findIndex(({ key }) => key === 'total' || key === 'critical');
  const value = out[index]!;
  if (value >= 10 && value <= 80) return [];
  return [
    {
      code: 'outside-usual-range',
      where: model.outputs[index]!.key,
      text: `${formatNumber(value, 1)} mN/m is outside 10 to 80 mN/m, where polymer films lie; check angles and liquids.`,
    },
  ];
}

function misfitNote(model: WettingModel, scatter: AngleScatter[], fitted: number[]): string[] {
  const df = scatter.length - model.parameters;
  if (df <= 0) return [];
  const squares = scatter.reduce((sum, { meanDeg }, index) => sum + (meanDeg - fitted[index]!) ** 2, 0);
  return [`The model repeats the mean angles to ${formatNumber(Math.sqrt(squares / scatter.length), 1)}° (root mean square).`];
}

function partsText(liquid: ProbeLiquid, parts: LiquidParts): string {
  const one = (value: number | undefined) => formatNumber(value ?? 0, 1);
  if (parts === 'dispersive-polar') return `${one(liquid.dispersiveMNm)} dispersive, ${one(liquid.polarMNm)} polar`;
  if (parts === 'acid-base') {
    return `${one(liquid.lifshitzMNm)} LW, ${formatNumber(liquid.acidMNm ?? 0, 2)} acid, ${one(liquid.baseMNm)} base`;
  }
  return '';
}
