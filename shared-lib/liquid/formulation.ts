import { InputError } from '../calculation/input-error.ts';

/** A component by mass, in parts or in percent of the whole. */
export interface Share {
  name: string;
  parts?: number | undefined;
  pct?: number | undefined;
  /** Its percentage stays while the others make up the rest. */
  hold?: boolean | undefined;
}

/** Percentages that differ from 100 by less than this are rounding. */
const ROUNDING_PCT = 0.005;

/**
 * Percent by mass of each component, in order, 100 in all. Held components keep their `pct`; the others share what is
 * left in the proportion of their parts (or of their percentages).
 * @throws InputError with field `components[INDEX].…`
 */
export function percentages(components: readonly Share[]): { pct: number[]; rebalanced: boolean } {
  components.forEach(checkShare);
  const held = sum(components.map((component) => (component.hold ? component.pct! : 0)));
  const free = components.map((component) => (component.hold ? 0 : (component.parts ?? component.pct!)));
  const freeSum = sum(free);
  refuseMixture(components);
  if (held > 100 + ROUNDING_PCT) throw new InputError('components', held, `The components held add up to ${shown(held)} %; at most 100 % can be held.`);
  if (freeSum === 0) {
    if (Math.abs(held - 100) > ROUNDING_PCT) {
      throw new InputError('components', held, held === 0 ? 'A formulation needs at least one component with parts above 0.' : `The components held add up to ${shown(held)} %, and no other is there to make up the rest to 100 %.`);
    }
    return { pct: components.map((component) => (component.hold ? (component.pct! * 100) / held : 0)), rebalanced: false };
  }
  const rest = Math.max(0, 100 - held);
  const pct = components.map((component, index) => (component.hold ? component.pct! : (free[index]! / freeSum) * rest));
  const inPercent = components.every((component) => component.pct !== undefined);
  return { pct, rebalanced: inPercent && Math.abs(freeSum - rest) > ROUNDING_PCT };
}

function checkShare({ name, parts, pct, hold }: Share, index: number): void {
  const field = `components[${index}]`;
  if ((parts === undefined) === (pct === undefined)) {
    throw new InputError(`${field}.parts`, parts ?? null, `${name} needs either parts or pct, and not both.`);
  }
  if (hold && pct === undefined) throw new InputError(`${field}.hold`, true, `${name} can only be held at a percentage; state its pct.`);
}

/** Parts and percentages do not add up, unless the percentages are those held. */
function refuseMixture(components: readonly Share[]): void {
  const free = components.filter((component) => !component.hold);
  const index = components.findIndex((component) => !component.hold && component.pct !== undefined);
  if (index !== -1 && free.some((component) => component.parts !== undefined)) {
    throw new InputError(`components[${index}].pct`, components[index]!.pct, `${components[index]!.name} is in percent and others are in parts; state all in one, or hold ${components[index]!.name} at its percentage.`);
  }
}

/** What is known of a quantity of the whole from that of its components: `open` percent of the whole do not state theirs. */
export function ofTheWhole(pct: readonly number[], values: readonly (number | undefined)[]): { known: number; openPct: number } {
  const known = sum(pct.map((share, index) => (share / 100) * (values[index] ?? 0)));
  const openPct = sum(pct.map((share, index) => (values[index] === undefined ? share : 0)));
  return { known, openPct };
}

export interface Difference {
  name: string;
  controlPct: number;
  pct: number;
  differencePct: number;
  change: 'added' | 'left out' | 'more' | 'less' | 'same';
}

/** Component by component against a control, by name; a name that stands twice is added up. In the formulation's order, what is left out last. */
export function differences(names: readonly string[], pct: readonly number[], controlNames: readonly string[], controlPct: readonly number[]): Difference[] {
  const own = byName(names, pct);
  const control = byName(controlNames, controlPct);
  return [...new Set([...own.keys(), ...control.keys()])].map((name) => {
    const has = own.get(name) ?? 0;
    const had = control.get(name) ?? 0;
    return { name, controlPct: had, pct: has, differencePct: has - had, change: changeOf(has, had) };
  });
}

function byName(names: readonly string[], pct: readonly number[]): Map<string, number> {
  const total = new Map<string, number>();
  names.forEach((name, index) => total.set(name, (total.get(name) ?? 0) + pct[index]!));
  return total;
}

function changeOf(has: number, had: number): Difference['change'] {
  if (Math.abs(has - had) <= ROUNDING_PCT) return 'same';
  if (had === 0) return 'added';
  if (has === 0) return 'left out';
  return has > had ? 'more' : 'less';
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

function shown(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}
