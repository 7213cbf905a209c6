import { z } from 'zod';
import { defineCalculation } from '../calculation/calculation.ts';
import type { TableColumn } from '../calculation/table-column.ts';
import { InputError } from '../calculation/input-error.ts';
import type { ResultValue, TableRow } from '../calculation/result.ts';
import { scaleResult } from '../calculation/scale-result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { levelSchema } from '../statistics/level.ts';
import { differences, ofTheWhole, percentages } from './formulation.ts';
import { letDownFigure } from './let-down-figure.ts';
import { letDownByMixingRule, letDownByTrial, letDownToStrength, type LetDown } from './let-down.ts';

const name = z.string().trim().min(1).max(200);
const share = { name, parts: z.number().min(0).max(1e9).optional(), pct: z.number().min(0).max(100).optional() };
const solidsPct = z.number().min(0).max(100).optional();
const costPerKg = z.number().min(0).max(1e9).optional();
const viscosity = z.number().positive().max(1e9);
const strength = z.number().positive().max(10_000);

const letDown = z.strictObject({
  diluent: z.strictObject({ name: name.default('Diluent'), solidsPct: z.number().min(0).max(100).default(0), costPerKg }).default({ name: 'Diluent', solidsPct: 0 }),
  /** By colour strength, 100 % being the standard; of one drawdown or of several. */
  inkStrengthPct: z.union([strength, z.array(strength).min(1).max(1000)]).optional(),
  targetStrengthPct: strength.optional(),
  /** By viscosity: from those of ink and diluent, or from trial additions (percent of the mixture, 0 being the ink alone). */
  targetMm2S: viscosity.optional(),
  inkMm2S: viscosity.optional(),
  diluentMm2S: viscosity.optional(),
  additions: z.array(z.strictObject({ pct: z.number().min(0).lt(100), mm2S: viscosity })).min(3).max(100).optional(),
});

const input = z.strictObject({
  components: z.array(z.strictObject({ ...share, hold: z.boolean().optional(), solidsPct, costPerKg })).min(1).max(100),
  control: z.array(z.strictObject(share)).min(1).max(100).optional(),
  batchKg: z.number().positive().max(1e6).optional(),
  letDown: letDown.optional(),
  level: levelSchema,
});

type Input = z.output<typeof input>;

const columns: TableColumn[] = [
  { key: 'name', title: 'Component' },
  { key: 'pct', title: 'Share', unit: '%', decimals: 2 },
  { key: 'massKg', title: 'Mass', unit: 'kg', decimals: 3 },
  { key: 'solidsPct', title: 'Solids', unit: '%', decimals: 1 },
  { key: 'costPerKg', title: 'Cost', unit: '/kg', decimals: 2 },
  { key: 'controlPct', title: 'Control', unit: '%', decimals: 2 },
  { key: 'differencePct', title: 'Difference', unit: '%', decimals: 2 },
  { key: 'change', title: 'Against the control' },
];

/** Formulation arithmetic by mass: percentages, solids, cost, let-down and the difference against a control. */
export const formulationCalculation = defineCalculation({
  id: 'formulation',
  version: '1',
  title: 'Formulation',
  input,
  compute: (given) => {
    const { components, control, batchKg } = given;
    const { pct, rebalanced } = percentages(components);
    const solids = ofTheWhole(pct, components.map((component) => component.solidsPct));
    const cost = ofTheWhole(pct, components.map((component) => component.costPerKg));
    const total = components.every(({ parts }) => parts !== undefined) ? components.reduce((sum, { parts }) => sum + parts!, 0) : 100;
    const down = given.letDown && { ...given.letDown, added: letDownOf(given.letDown, given.level) };
    return {
      results: {
        totalParts: valueWithoutInterval(total, '', components.length),
        solidsPct: solidsResult(solids, components.length),
        costPerKg: costResult(cost, components.length),
        ...(down && letDownResults(down, solids, cost, given)),
      },
      table: rows(given, pct, control && percentagesOfControl(control)),
      notes: [
        ...(rebalanced ? ['The percentages did not add up to 100 %; they were brought to 100 % in proportion, held ones left as they are.'] : []),
        ...(solids.openPct > 0 ? [`Components that make up ${round(solids.openPct)} % of the formulation do not state their solids: the solids are only known within a range.`] : []),
        ...(cost.openPct > 0 && cost.openPct < 100 ? [`Components that make up ${round(cost.openPct)} % of the formulation do not state their cost: the cost is a lower bound.`] : []),
        ...(batchKg === undefined ? [] : [`Masses are for a batch of ${batchKg} kg${down ? ' before the let-down' : ''}.`]),
        ...(down ? letDownNotes(down) : []),
      ],
      figures: down?.additions && down.targetMm2S !== undefined ? [letDownFigure(down.additions, down.targetMm2S, down.added)] : [],
    };
  },
  columns,
  cautions: ['Solvents, monomers and initiators: heed their safety data sheets, ventilate, wear gloves and eye protection; for food contact the formulation needs its own clearance.'],
  sources: [
    'Mass balance',
    'Mixing of viscosities: S. Arrhenius, Z. Phys. Chem. 1 (1887) 285 (a first guess for inks: common practice)',
    'Let-down by strength: P. Kubelka, F. Munk, Z. Tech. Phys. 12 (1931) 593, K/S in proportion to concentration',
    'Interval of the let-down from trial additions: E. C. Fieller, J. R. Stat. Soc. B 16 (1954) 175',
  ],
});

type Known = ReturnType<typeof ofTheWhole>;
type Down = z.output<typeof letDown> & { added: LetDown };

function rows({ components, batchKg }: Input, pct: number[], control: { names: string[]; pct: number[] } | undefined): TableRow[] {
  const own = components.map(({ name, solidsPct, costPerKg }, index): TableRow => ({
    name,
    pct: pct[index]!,
    massKg: batchKg === undefined ? null : (pct[index]! / 100) * batchKg,
    solidsPct: solidsPct ?? null,
    costPerKg: costPerKg ?? null,
  }));
  if (!control) return own;
  const compared = differences(components.map(({ name }) => name), pct, control.names, control.pct);
  // A name that stands twice is compared once, where it stands first.
  const first = own.map((row, index) => (own.findIndex(({ name }) => name === row.name) === index ? compared.find(({ name }) => name === row.name) : undefined));
  return [
    ...own.map((row, index) => ({ ...row, controlPct: first[index]?.controlPct ?? null, differencePct: first[index]?.differencePct ?? null, change: first[index]?.change ?? '' })),
    ...compared
      .filter(({ name }) => !own.some((row) => row.name === name))
      .map(({ name, pct: share, controlPct, differencePct, change }): TableRow => ({ name, pct: share, massKg: null, solidsPct: null, costPerKg: null, controlPct, differencePct, change })),
  ];
}

function percentagesOfControl(control: NonNullable<Input['control']>): { names: string[]; pct: number[] } {
  try {
    return { names: control.map(({ name }) => name), pct: percentages(control).pct };
  } catch (error) {
    if (error instanceof InputError) throw new InputError(error.field.replace('components', 'control'), error.value, `Control: ${error.message}`);
    throw error;
  }
}

function solidsResult({ known, openPct }: Known, n: number): ResultValue {
  if (openPct === 0) return valueWithoutInterval(known, '%', n);
  return { value: known + openPct / 2, unit: '%', low: known, high: known + openPct, level: null, n, bound: 'between' };
}

function costResult({ known, openPct }: Known, n: number): ResultValue {
  if (openPct === 0) return valueWithoutInterval(known, '/kg', n);
  return { value: openPct === 100 ? null : known, unit: '/kg', low: openPct === 100 ? null : known, high: null, level: null, n, bound: 'at-least' };
}

function letDownOf(given: z.output<typeof letDown>, level: number): LetDown {
  const { inkStrengthPct, targetStrengthPct, targetMm2S, inkMm2S, diluentMm2S, additions } = given;
  if (targetStrengthPct !== undefined && targetMm2S !== undefined) {
    throw new InputError('letDown.targetMm2S', targetMm2S, 'Let down to a strength or to a viscosity, not to both at once.');
  }
  if (targetStrengthPct !== undefined) {
    if (inkStrengthPct === undefined) throw new InputError('letDown.inkStrengthPct', null, 'letDown.inkStrengthPct is missing: the strength of the ink before the let-down.');
    return letDownToStrength([inkStrengthPct].flat(), targetStrengthPct, level);
  }
  if (targetMm2S === undefined) throw new InputError('letDown', null, 'A let-down needs a targetStrengthPct or a targetMm2S.');
  if (additions) return letDownByTrial(additions, targetMm2S, level);
  if (inkMm2S === undefined || diluentMm2S === undefined) {
    throw new InputError('letDown.inkMm2S', inkMm2S ?? null, 'A let-down to a viscosity needs inkMm2S and diluentMm2S, or trial additions.');
  }
  return letDownByMixingRule(inkMm2S, diluentMm2S, targetMm2S);
}

function letDownResults({ diluent, added }: Down, solids: Known, cost: Known, { batchKg, level }: Input): Record<string, ResultValue> {
  const { pct, low, high, n } = added;
  const ink = 1 - pct / 100;
  const interval = { low, high, level: low === null ? null : level, n };
  const perHundred = (share: number) => (100 * share) / (100 - share);
  const results: Record<string, ResultValue> = { letDownPct: { value: pct, unit: '%', ...interval, bound: 'exact' } };
  if (pct < 100) {
    const partsHigh = high === null || high >= 100 ? null : perHundred(high);
    const parts: ResultValue = { value: perHundred(pct), unit: 'per 100 parts of ink', ...interval, low: low === null ? null : perHundred(low), high: partsHigh, bound: 'exact' };
    results.letDownParts = parts;
    if (batchKg !== undefined) results.letDownKg = scaleResult(parts, batchKg / 100, 'kg');
  }
  results.letDownSolidsPct = solidsResult({ known: solids.known * ink + (diluent.solidsPct * pct) / 100, openPct: solids.openPct * ink }, n);
  const open = cost.openPct * ink + (diluent.costPerKg === undefined ? pct : 0);
  results.letDownCostPerKg = costResult({ known: cost.known * ink + ((diluent.costPerKg ?? 0) * pct) / 100, openPct: open }, n);
  return results;
}

function letDownNotes({ diluent, added, targetStrengthPct, additions }: Down): string[] {
  const how =
    targetStrengthPct !== undefined
      ? 'Strength taken in proportion to the share of ink; draw it down beside the standard before it is used.'
      : additions
        ? 'From a straight line of the logarithm of viscosity through the trial additions.'
        : 'From the viscosities of ink and diluent alone: a first guess, for inks thin faster than they mix ideally. Measure and enter trial additions.';
  return [`Let down with ${diluent.name}: ${round(added.pct)} % of the mixture.`, how];
}

function round(value: number): string {
  return String(Number(value.toPrecision(4)));
}
