/** Numbers at and beyond the ends of what can be computed with. */
const ODD_NUMBERS = [0, -0, -1, 1, 0.5, 1e-9, -1e-9, 1e9, 1e30, -1e30, 1e-100, 1e31, -1e31, 1e-101, 1e308, 5e-324, Number.MAX_SAFE_INTEGER, Number.EPSILON];
/** What stands where something else was meant. */
const ODD_VALUES: unknown[] = [null, 'NaN', 'Infinity', '12', '', ' ', '1,5', true, false, [], {}, [null], [[]], { value: 1 }, '\u0000', '×'.repeat(300)];

type Path = (string | number)[];

/**
 * A copy of an input with up to three things wrong in it: a number swapped, negated or of another size, something of another
 * kind in its place, a field or an item left out or twice, a list emptied, a field that does not exist.
 * @param random uniform on [0, 1)
 */
export function oddVariant(input: unknown, random: () => number): unknown {
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  const oddValue = () => structuredClone(pick(ODD_VALUES));
  const odd = { input: structuredClone(input) };
  for (let left = 1 + Math.floor(random() * 3); left > 0; left--) {
    const [...path] = pick(places(odd));
    const key = path.pop()!;
    const holder = path.reduce<unknown>((value, step) => (value as Record<string | number, unknown>)[step], odd) as Record<string | number, unknown>;
    const old = holder[key];
    if (typeof old === 'number') holder[key] = pick<() => unknown>([() => -old, () => old * 10 ** Math.round(random() * 40 - 20), () => pick(ODD_NUMBERS), () => pick(ODD_NUMBERS), oddValue, () => old + 0.5])();
    else if (Array.isArray(old)) holder[key] = pick<() => unknown>([() => [], () => old.slice(1), () => [...old, ...old], () => old.map(() => old[0] as unknown), () => [...(old as unknown[])].reverse(), oddValue])();
    else if (random() < 0.3 && Array.isArray(holder)) holder.splice(Number(key), 1);
    else if (random() < 0.3 && path.length > 0 && !Array.isArray(holder)) delete holder[key];
    else if (random() < 0.2 && old !== null && typeof old === 'object') (old as Record<string, unknown>).surprise = 1;
    else holder[key] = random() < 0.5 ? pick(ODD_NUMBERS) : oddValue();
  }
  return odd.input;
}

/** Every place in a value, `input` itself first. */
function places(value: unknown, at: Path = []): Path[] {
  if (value === null || typeof value !== 'object') return [at];
  const below = Object.entries(value).flatMap(([key, item]) => places(item, [...at, Array.isArray(value) ? Number(key) : key]));
  return at.length === 0 ? below : [at, ...below];
}
