import { z } from 'zod';
import { envelope } from '../bond-strength/envelope.ts';
import { checkTrace, columnsFromPoints } from '../bond-strength/trace-columns.ts';
import { tracePointsSchema } from '../bond-strength/trace-points.ts';
import { defineCalculation } from '../calculation/calculation.ts';
import type { TableColumn } from '../calculation/table-column.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import type { Figure } from '../figure/figure.ts';
import { replicatesFigure } from '../figure/replicates-figure.ts';
import { formatNumber } from '../quantity/format.ts';
import { STANDARD_GRAVITY } from '../quantity/units.ts';
import { summarise } from '../statistics/summarise.ts';
import { sledForces } from './friction-trace.ts';

const LEVEL = 0.95;

const force = z.number().min(0);
const angle = z.number().positive().lt(90);

const input = z.strictObject({
  sledMassG: z.number().positive().max(100_000).optional(),
  specimens: z
    .array(z.strictObject({ staticN: force.optional(), kineticN: force.optional(), points: tracePointsSchema.optional(), angleDeg: angle.optional() }))
    .min(1)
    .max(100)
    .optional(),
  staticN: z.union([force, z.array(force).min(1).max(100)]).optional(),
  kineticN: z.union([force, z.array(force).min(1).max(100)]).optional(),
  points: tracePointsSchema.optional(),
  angleDeg: z.union([angle, z.array(angle).min(1).max(100)]).optional(),
  travelMm: z.number().positive().optional(),
});
type Input = z.output<typeof input>;
type Specimen = NonNullable<Input['specimens']>[number];

interface Coefficients {
  static: number | null;
  kinetic: number | null;
  flags: Flag[];
  figure: Figure | null;
}

const columns: TableColumn[] = [
  { key: 'specimen', title: 'Specimen', decimals: 0 },
  { key: 'static', title: 'Static', decimals: 3 },
  { key: 'kinetic', title: 'Kinetic', decimals: 3 },
];

/** Coefficients of friction from sled forces, sled traces, or the angle at which a sled begins to slide. */
export const frictionCalculation = defineCalculation({
  id: 'friction',
  version: '1',
  title: 'Coefficient of friction',
  input,
  compute: (values) => {
    const coefficients = specimensOf(values).map(({ specimen, path }, index) => coefficientsOf(specimen, path, index, values));
    const of = (kind: 'static' | 'kinetic') => coefficients.flatMap((each) => each[kind] ?? []);
    const results = { static: meanOf(of('static')), kinetic: meanOf(of('kinetic')) };
    return {
      results,
      table: coefficients.map((each, index) => ({ specimen: index + 1, static: each.static, kinetic: each.kinetic })),
      flags: [...coefficients.flatMap(({ flags }) => flags), ...sledFlags(values, results)],
      notes: notes(values, results),
      figures: [...coefficients.flatMap(({ figure }) => figure ?? []), ...(['static', 'kinetic'] as const).flatMap((kind) => readingsOf(kind, coefficients, results[kind]))],
    };
  },
  columns,
  cautions: [],
  sources: [
    'ASTM D1894; ISO 8295 (not equivalent to each other: compare only like with like). μ = F/(m·g₀), g₀ = 9.80665 m/s²',
    'Inclined plane: static coefficient = tan θ',
  ],
});

/** One list from the ways in which specimens may be given. @throws InputError for none or several ways, or unequal lists. */
function specimensOf(values: Input): { specimen: Specimen; path: string }[] {
  const ways = [
    values.specimens && 'specimens',
    (values.staticN !== undefined || values.kineticN !== undefined) && 'staticN',
    values.points && 'points',
    values.angleDeg !== undefined && 'angleDeg',
  ].filter((way) => typeof way === 'string');
  if (ways.length !== 1) {
    throw new InputError(ways[1] ?? 'specimens', null, `Give the specimens in one way: specimens, staticN with kineticN, points, or angleDeg; found ${ways.join(', ') || 'none'}.`);
  }
  if (values.specimens) return values.specimens.map((specimen, index) => ({ specimen, path: `specimens[${index}].` }));
  if (values.points) return [{ specimen: { points: values.points }, path: '' }];
  if (values.angleDeg !== undefined) return [values.angleDeg].flat().map((angleDeg) => ({ specimen: { angleDeg }, path: '' }));
  const [statics, kinetics] = [values.staticN, values.kineticN].map((given) => (given === undefined ? null : [given].flat()));
  if (statics && kinetics && statics.length !== kinetics.length) {
    throw new InputError('kineticN', kinetics.length, `Each specimen needs both forces: there are ${statics.length} static and ${kinetics.length} kinetic ones.`);
  }
  return (statics ?? kinetics!).map((_, index) => ({ specimen: { staticN: statics?.[index], kineticN: kinetics?.[index] }, path: '' }));
}

function coefficientsOf(specimen: Specimen, path: string, index: number, { sledMassG, travelMm }: Input): Coefficients {
  const given = [specimen.points, specimen.angleDeg, specimen.staticN ?? specimen.kineticN].filter((each) => each !== undefined);
  if (given.length !== 1) throw new InputError(`${path}staticN`, null, `Specimen ${index + 1} needs forces, or points, or an angle: one of them.`);
  if (specimen.angleDeg !== undefined) return { static: Math.tan((specimen.angleDeg * Math.PI) / 180), kinetic: null, flags: [], figure: null };
  if (sledMassG === undefined) throw new InputError('sledMassG', null, 'sledMassG is missing: a force becomes a coefficient by the mass of the sled in grams.');
  const normalN = (sledMassG / 1000) * STANDARD_GRAVITY;
  if (specimen.points) return fromTrace(specimen.points, path, index, normalN, travelMm);
  const over = (forceN: number | undefined) => (forceN === undefined ? null : forceN / normalN);
  const both = { static: over(specimen.staticN), kinetic: over(specimen.kineticN) };
  return { ...both, flags: order(both, `${path}kineticN`, index), figure: null };
}

function fromTrace(given: [number, number][], path: string, index: number, normalN: number, travelMm: number | undefined): Coefficients {
  const where = `${path}points`;
  const trace = columnsFromPoints(given);
  checkTrace(trace, (point, column) => `${where}[${point}][${column}]`);
  const { staticN, kineticN, fromMm, toMm, stickSlip } = sledForces(trace, travelMm);
  const both = { static: staticN === null ? null : staticN / normalN, kinetic: kineticN / normalN };
  const flags = order(both, where, index);
  if (staticN === null) flags.push({ code: 'no-first-peak', where, text: `Specimen ${index + 1}: the force never falls back after rising, so there is no static peak to read.` });
  if (stickSlip) flags.push({ code: 'stick-slip', where, text: `Specimen ${index + 1}: the sled stuck and slipped; the mean force says little about sliding.` });
  if (kineticN <= 0) flags.push({ code: 'no-force', where, text: `Specimen ${index + 1}: the mean force is not above zero; check sign and column.` });
  const figure: Figure = {
    id: `sled-${index + 1}`,
    title: `Sled force, specimen ${index + 1}`,
    finding: `Mean force from ${formatNumber(fromMm, 1)} to ${formatNumber(toMm, 1)} mm: ${formatNumber(kineticN, 3)} N${staticN === null ? '' : `; first peak ${formatNumber(staticN, 3)} N`}.`,
    x: { title: 'Travel', unit: 'mm', scale: 'linear' },
    y: { title: 'Force', unit: 'N', scale: 'linear' },
    series: [{ name: 'force', kind: 'line', role: 'reading', points: envelope(trace, 2000) }],
    lines: [
      { name: 'mean from', axis: 'x', value: fromMm, role: 'mark' },
      { name: 'mean to', axis: 'x', value: toMm, role: 'mark' },
      { name: 'mean', axis: 'y', value: kineticN, role: 'mean' },
    ],
  };
  return { ...both, flags, figure };
}

function order(both: Pick<Coefficients, 'static' | 'kinetic'>, where: string, index: number): Flag[] {
  if (both.static === null || both.kinetic === null || both.kinetic <= both.static) return [];
  return [{ code: 'kinetic-above-static', where, text: `Specimen ${index + 1}: the kinetic coefficient ${formatNumber(both.kinetic, 3)} is above the static ${formatNumber(both.static, 3)}; check that the forces are not exchanged.` }];
}

/** The specimens' values side by side, `static-readings` or `kinetic-readings`; none where no specimen gives it. */
function readingsOf(kind: 'static' | 'kinetic', coefficients: readonly Coefficients[], mean: ResultValue): Figure[] {
  const given = coefficients.map((each, index) => ({ value: each[kind], name: `${index + 1}` })).filter(({ value }) => value !== null);
  if (given.length === 0) return [];
  const title = kind === 'static' ? 'Static coefficient' : 'Kinetic coefficient';
  return [replicatesFigure(`${kind}-readings`, title, '', given.map(({ value }) => value!), mean, given.map(({ name }) => name))];
}

function meanOf(values: number[]): ResultValue {
  if (values.length === 0) return { value: null, unit: '', low: null, high: null, level: null, n: 0, bound: 'exact' };
  const { n, mean, low, high } = summarise(values, LEVEL);
  return { value: mean, unit: '', low, high, level: low === null ? null : LEVEL, n, bound: 'exact' };
}

/** Film on film lies between about 0.05 and 2; a mix-up of newtons and grams misses by a hundred. */
function sledFlags({ sledMassG }: Input, results: Record<'static' | 'kinetic', ResultValue>): Flag[] {
  const found: Flag[] = [];
  if (sledMassG !== undefined && (sledMassG < 195 || sledMassG > 205)) {
    found.push({ code: 'sled-mass', where: 'sledMassG', text: `The sled has ${sledMassG} g; ASTM D1894 asks for 200 ± 5 g, ISO 8295 for 200 ± 2 g.` });
  }
  const values = [results.static.value, results.kinetic.value].filter((value) => value !== null);
  if (values.some((value) => value > 5 || value < 0.01)) {
    found.push({ code: 'unlikely', where: '', text: 'A coefficient above 5 or below 0.01 is unlikely: check that forces are in newtons and the sled in grams.' });
  }
  return found;
}

function notes({ points: trace, specimens, travelMm }: Input, results: Record<'static' | 'kinetic', ResultValue>): string[] {
  const all: string[] = [];
  const traced = trace !== undefined || specimens?.some((specimen) => specimen.points !== undefined);
  if (traced) {
    all.push(`Static: the first peak. Kinetic: the mean ${travelMm === undefined ? 'from there to the end of the trace' : `over ${travelMm} mm after it`}; ISO 8295 takes the first 60 mm, ASTM D1894 about 130 mm.`);
  }
  for (const kind of ['static', 'kinetic'] as const) {
    if (results[kind].n === 0) all.push(`No specimen gives a ${kind} coefficient.`);
    else if (results[kind].n === 1) all.push(`One specimen shows no spread: the ${kind} coefficient has no interval.`);
  }
  return all;
}
