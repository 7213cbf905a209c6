import { InputError } from '../calculation/input-error.ts';
import type { CalculationResult, Flag, TableRow } from '../calculation/result.ts';
import type { BenchReadings } from '../method/method.ts';
import { runOnBench } from '../method/run-on-bench.ts';
import { numberIn, textIn } from '../method/sheet.ts';
import { formatNumber } from '../quantity/format.ts';
import { flowCups, type FlowCup, type FlowCupId } from './flow-cups.ts';
import { formulationCalculation } from './formulation.calculation.ts';

/** Fewer trial additions leave the line nothing to be judged by. */
const LEAST_ADDITIONS = 3;

interface Addition {
  /** Of the row on the sheet. */
  index: number;
  pct: number;
  mm2S: number;
  seconds: number | undefined;
}

/**
 * Diluent for a target viscosity from trial additions, or for a target strength from drawdowns of the ink.
 * @throws InputError as the calculation `formulation`, and for a sheet that lacks target, masses or a cup
 */
export function evaluateLetDown(bench: BenchReadings): CalculationResult {
  const { conditions } = bench;
  const ink = { name: textIn(conditions, 'ink') ?? 'Ink', parts: 100, solidsPct: numberIn(conditions, 'inkSolidsPct'), costPerKg: numberIn(conditions, 'inkCostPerKg') };
  const diluent = { name: textIn(conditions, 'diluent') ?? 'Diluent', solidsPct: numberIn(conditions, 'diluentSolidsPct') ?? 0, costPerKg: numberIn(conditions, 'diluentCostPerKg') };
  const common = { components: [ink], batchKg: numberIn(conditions, 'batchKg') };
  const result = textIn(conditions, 'goal') === 'strength' ? toStrength(bench, common, diluent) : toViscosity(bench, common, diluent);
  return { ...result, table: mixtureOf(result, ink, diluent, common.batchKg) };
}

interface Part {
  name: string;
  solidsPct: number | undefined;
  costPerKg: number | undefined;
}

/** Ink and diluent as they go into the can: what the person at the scales reads. */
function mixtureOf({ results }: CalculationResult, ink: Part, diluent: Part, inkKg: number | undefined): TableRow[] {
  const diluentPct = results.letDownPct!.value!;
  const row = ({ name, solidsPct, costPerKg }: Part, pct: number, massKg: number | null): TableRow => ({ name, pct, massKg, solidsPct: solidsPct ?? null, costPerKg: costPerKg ?? null });
  return [row(ink, 100 - diluentPct, inkKg ?? null), row(diluent, diluentPct, results.letDownKg?.value ?? null)];
}

function toStrength({ conditions, rows }: BenchReadings, common: object, diluent: object): CalculationResult {
  const read = rows.flatMap(({ values }, index) => (numberIn(values, 'strengthPct') === undefined ? [] : [{ index, strengthPct: numberIn(values, 'strengthPct')! }]));
  if (read.length === 0) throw new InputError('rows[0].strengthPct', null, 'Enter the strength of the ink against the standard, from one drawdown or more.');
  const targetStrengthPct = numberIn(conditions, 'targetStrengthPct');
  if (targetStrengthPct === undefined) throw new InputError('conditions.targetStrengthPct', null, 'State the strength to let down to.');
  const letDown = { diluent, inkStrengthPct: read.map(({ strengthPct }) => strengthPct), targetStrengthPct };
  return runOnBench(formulationCalculation, { ...common, letDown }, (field) => {
    const place = /^letDown\.inkStrengthPct(?:\[(\d+)\])?/.exec(field);
    return place ? `rows[${read[Number(place[1] ?? 0)]!.index}].strengthPct` : conditionOf(field, 'targetStrengthPct');
  });
}

function toViscosity(bench: BenchReadings, common: object, diluent: object): CalculationResult {
  const { conditions } = bench;
  const id = textIn(conditions, 'cup') as FlowCupId | undefined;
  const cup = id === undefined ? undefined : flowCups[id];
  const additions = additionsOf(bench, cup);
  if (additions.length < LEAST_ADDITIONS) {
    throw new InputError('', additions.length, `A let-down to a viscosity needs at least ${LEAST_ADDITIONS} trial additions, each with its diluent and its viscosity; there ${additions.length === 1 ? 'is' : 'are'} ${additions.length}.`);
  }
  const targetKey = cup ? 'targetSeconds' : 'targetMm2S';
  const target = numberIn(conditions, targetKey);
  if (target === undefined) throw new InputError(`conditions.${targetKey}`, null, cup ? 'State the flow time to let down to.' : 'State the viscosity to let down to, or choose a cup and state its time.');
  const targetMm2S = cup ? cup.viscosity(target) : target;
  if (targetMm2S <= 0) throw new InputError(`conditions.${targetKey}`, target, `${formatNumber(target, 1)} s is too short for ${cup!.label}; take a cup with a narrower hole.`);
  const letDown = { diluent, targetMm2S, additions: additions.map(({ pct, mm2S }) => ({ pct, mm2S })) };
  const result = runOnBench(formulationCalculation, { ...common, letDown }, (field) => {
    const place = /^letDown\.additions\[(\d+)\]\.(\w+)/.exec(field);
    if (!place) return field === 'letDown.additions' ? '' : conditionOf(field, targetKey);
    return `rows[${additions[Number(place[1])]!.index}].${place[2] === 'pct' ? 'diluentG' : cup ? 'seconds' : 'mm2S'}`;
  });
  return { ...result, flags: [...result.flags, ...(cup ? rangeFlags(additions, cup) : [])] };
}

function additionsOf({ conditions, rows }: BenchReadings, cup: FlowCup | undefined): Addition[] {
  return rows.flatMap(({ values }, index) => {
    const [diluentG, seconds, typed] = [numberIn(values, 'diluentG'), numberIn(values, 'seconds'), numberIn(values, 'mm2S')];
    if (diluentG === undefined || (seconds === undefined && typed === undefined)) return [];
    const inkG = numberIn(conditions, 'inkG');
    if (inkG === undefined) throw new InputError('conditions.inkG', null, 'State the mass of ink that the diluent was added to.');
    if (seconds !== undefined && cup === undefined) throw new InputError('conditions.cup', null, 'Say which cup the seconds are of.');
    if (seconds === undefined && cup !== undefined) throw new InputError(`rows[${index}].seconds`, null, 'With a cup chosen, enter the flow time; for mm²/s clear the cup.');
    const mm2S = cup ? cup.viscosity(seconds!) : typed!;
    if (mm2S <= 0) throw new InputError(`rows[${index}].seconds`, seconds, `${formatNumber(seconds!, 1)} s is too short for ${cup!.label}; take a cup with a narrower hole.`);
    return [{ index, pct: (100 * diluentG) / (inkG + diluentG), mm2S, seconds }];
  });
}

function conditionOf(field: string, targetKey: string): string {
  if (field.startsWith('letDown.target')) return `conditions.${targetKey}`;
  if (field.startsWith('letDown.diluent.')) return `conditions.diluent${capitalised(field.slice('letDown.diluent.'.length))}`;
  if (field.startsWith('components[0].')) return `conditions.ink${capitalised(field.slice('components[0].'.length))}`;
  return `conditions.${field}`;
}

function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function rangeFlags(additions: readonly Addition[], cup: FlowCup): Flag[] {
  return additions.flatMap(({ index, seconds }): Flag[] =>
    seconds === undefined || (seconds >= cup.from && seconds <= cup.to)
      ? []
      : [{ code: 'outside-cup-range', where: `rows[${index}].seconds`, text: `${formatNumber(seconds, 1)} s lies outside the ${cup.from} to ${cup.to} s for which the formula of ${cup.label} holds.` }],
  );
}
