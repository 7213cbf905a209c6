import type { StripSpec } from './strip.ts';

/**
 * The scale that holds every reading, bracket, interval and limit of `specs`, with 6 % of air at both ends (20 % where
 * an arrow points on), so that a column of strips can be compared by eye. Without any number: 0 to 1.
 */
export function commonDomain(specs: readonly StripSpec[]): [number, number] {
  let low = Infinity;
  let high = -Infinity;
  for (const value of specs.flatMap(numbersOf)) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  if (low > high) return [0, 1];
  if (low === high) {
    const air = Math.abs(low) * 0.05 || 1;
    return [finite(low - air), finite(high + air)];
  }
  const down = opens(specs, 'down', 'at-most') ? 0.2 : 0.06;
  const up = opens(specs, 'up', 'at-least') ? 0.2 : 0.06;
  return [finite(low - (high * down - low * down)), finite(high + (high * up - low * up))];
}

function opens(specs: readonly StripSpec[], side: 'up' | 'down', bound: StripSpec['bound']): boolean {
  return specs.some((spec) => spec.bound === bound || spec.readings.some((reading) => reading.open === side));
}

function numbersOf(spec: StripSpec): number[] {
  const readings = spec.readings.flatMap((reading) => [reading.value, reading.low, reading.high]);
  return [...readings, spec.value, spec.low, spec.high, spec.lowerLimit, spec.upperLimit].filter(
    (value): value is number => typeof value === 'number' && Number.isFinite(value),
  );
}

/** Air around the largest numbers that exist must not reach infinity. */
function finite(value: number): number {
  return Math.min(Number.MAX_VALUE, Math.max(-Number.MAX_VALUE, value));
}
