import type { ResultValue, TitledTable } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { formatNumber, formatValue, formatWithInterval } from '../quantity/format.ts';
import type { ColourFade } from './colour-fade.ts';
import { ratioOfLives } from './ratio-of-lives.ts';

/** Colours of a programme from the one that fades first. */
export interface Ranking {
  /** First comes the one whose exposure to the limit is the smallest; those without one by what is left of them. */
  ranked: ColourFade[];
  table: TitledTable;
  notes: string[];
}

/** The exposure to the limit of a colour; without a value while there is none. */
export function lifeOfColour({ life }: ColourFade, unit: string): ResultValue {
  return life?.results.exposureToLimit ?? valueWithoutInterval(null, unit, 0);
}

/**
 * Ranks two or more colours and says which can be told apart from the first.
 * @param fastness light fastness of each colour by the references beside it, in the order of `colours`; empty without any
 */
export function rankColours(colours: readonly ColourFade[], unit: string, fastness: readonly ResultValue[]): Ranking {
  const order = colours.map((colour, index) => ({ colour, life: lifeOfColour(colour, unit), fastness: fastness[index] })).sort((a, b) => byLife(a, b));
  const first = order[0]!;
  const ratios = order.map(({ life }, index) => (index === 0 ? null : ratioOfLives(life, first.life)));
  const rows = order.map(({ colour: { name, last }, life, fastness: rating }, index) => ({
    rank: index + 1,
    colour: name,
    exposureToLimit: formatValue(life).text,
    low: life.low,
    high: life.high,
    times: ratios[index]?.ratio ?? null,
    timesLow: ratios[index]?.low ?? null,
    timesHigh: ratios[index]?.high ?? null,
    retentionPct: last.results.retentionPct.value,
    deltaE00: last.results.deltaE00.value,
    greyScale: last.results.greyScale.value === null ? null : (last.results.greyScale.text ?? last.results.greyScale.value),
    blueWool: rating?.value == null ? null : formatValue(rating).text,
  }));
  return {
    ranked: order.map(({ colour }) => colour),
    table: {
      title: 'Colours, the one that fades first on top',
      columns: [
        { key: 'rank', title: 'Rank', decimals: 0 },
        { key: 'colour', title: 'Colour' },
        { key: 'exposureToLimit', title: 'Exposure to the endpoint' },
        { key: 'low', title: 'Low', unit },
        { key: 'high', title: 'High', unit },
        { key: 'times', title: 'Times the first', decimals: 2 },
        { key: 'timesLow', title: 'Low', decimals: 2 },
        { key: 'timesHigh', title: 'High', decimals: 2 },
        { key: 'retentionPct', title: 'Retention', unit: '%', decimals: 1 },
        { key: 'deltaE00', title: 'ΔE00', decimals: 2 },
        { key: 'greyScale', title: 'Grey scale' },
        { key: 'blueWool', title: 'Blue wool' },
      ].filter(({ key }) => rows.some((row) => row[key as keyof typeof row] !== null)),
      rows,
    },
    notes: [conclusion(order.map(({ colour, life }) => ({ name: colour.name, life })))],
  };
}

interface Ordered {
  colour: ColourFade;
  life: ResultValue;
}

/** An exposure or an upper bound before those that never came to the limit; among these, and without any, what is left decides. */
function byLife(a: Ordered, b: Ordered): number {
  const isKnown = ({ life }: Ordered) => life.value !== null && life.bound !== 'at-least';
  if (isKnown(a) !== isKnown(b)) return isKnown(a) ? -1 : 1;
  if (isKnown(a)) return a.life.value! - b.life.value!;
  return leftOf(a.colour) - leftOf(b.colour);
}

function leftOf({ last: { results } }: ColourFade): number {
  return results.retentionPct.value ?? 100 - (results.deltaE00.value ?? 0);
}

function conclusion(order: { name: string; life: ResultValue }[]): string {
  const first = order[0]!;
  if (first.life.value === null) return `Most faded at the last exposure: ${first.name}. No colour has come near enough to its endpoint to say when it will.`;
  const begun = `Fades first: ${first.name}, endpoint at ${formatWithInterval(first.life)}.`;
  const others = order.slice(1).map(({ name, life }) => comparison(name, life, first.name, first.life));
  return [begun, ...others].join(' ');
}

function comparison(colour: string, life: ResultValue, firstName: string, first: ResultValue): string {
  const name = `The colour ${colour}`;
  if (life.bound === 'at-least' && life.value !== null) {
    const longer = first.bound !== 'at-least' && life.value > (first.high ?? Infinity);
    return longer ? `${name} lasts longer, ${formatValue(life).text}.` : `${name} (${formatValue(life).text}) cannot be told from ${firstName} yet.`;
  }
  const ratio = ratioOfLives(life, first);
  if (!ratio) return `${name} cannot be compared with ${firstName} yet.`;
  const times = `${formatNumber(ratio.ratio, 2)} times as long (${ratio.low === null ? 'no lower end' : formatNumber(ratio.low, 2)} to ${ratio.high === null ? 'no upper end' : formatNumber(ratio.high, 2)})`;
  return ratio.low !== null && ratio.low > 1 ? `${name} lasts ${times}.` : `${name} cannot be told from ${firstName}: ${times}.`;
}
