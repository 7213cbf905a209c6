import type { Outcome } from '../calculation/calculation.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import type { ColourFade, FadeQuestion } from './colour-fade.ts';
import { coloursFigure } from './colours-figure.ts';
import { leastExposed } from './fade-series.ts';
import { lifeOfColour, rankColours } from './rank-colours.ts';
import { retentionFigure } from './retention-figure.ts';

/**
 * Several colours in one programme, ranked. Every result is that of the colour which comes off worst by it: a print is as fast as its
 * weakest colour.
 * @param fastness light fastness of each, in the order of `colours`; empty without references
 */
export function severalColours(colours: ColourFade[], question: FadeQuestion, fastness: ResultValue[]): Outcome {
  const { exposureUnit } = question;
  const { ranked, table, notes } = rankColours(colours, exposureUnit, fastness);
  const least = comesOffWorst(colours, 'retentionPct', (a, b) => a < b);
  const figure = retentionFigure(least.last, exposureUnit);
  return {
    results: {
      ...ranked[0]!.life?.results,
      exposureToLimit: lifeOfColour(ranked[0]!, exposureUnit),
      retentionPct: least.last.results.retentionPct,
      deltaE00: comesOffWorst(colours, 'deltaE00', (a, b) => a > b).last.results.deltaE00,
      greyScale: comesOffWorst(colours, 'greyScale', (a, b) => a < b).last.results.greyScale,
      deltaEF: comesOffWorst(colours, 'deltaEF', (a, b) => a > b).last.results.deltaEF,
    },
    tables: [table],
    flags: [
      ...colours.flatMap(({ name, life }) => (life?.flags ?? []).map(({ code, where, text }) => ({ code, where: '', text: `Colour ${name}${/^series .+/.test(where) ? `, patch ${where.slice('series '.length)}` : ''}: ${text}` }))),
      ...openRanking(ranked, exposureUnit),
      ...readApart(colours, exposureUnit),
    ],
    notes: [
      ...notes,
      'Each result is that of the colour which comes off worst by it. The comparisons with the first are made one by one, each at its own level.',
      ...colours.flatMap(({ name, life }) => (life ? [] : [`Colour ${name}: no exposure to the limit yet; each patch needs ${leastExposed} readings after exposure 0.`])),
    ],
    figures: [coloursFigure(ranked, question), ...(figure ? [{ ...figure, title: `${figure.title}, ${least.name}` }] : [])],
  };
}

/** A colour that is only known to last so long may still fade before the first. */
function openRanking(ranked: ColourFade[], unit: string): Flag[] {
  const first = lifeOfColour(ranked[0]!, unit);
  if (first.value === null || first.bound === 'at-least') return [];
  return ranked
    .slice(1)
    .map((colour) => ({ name: colour.name, life: lifeOfColour(colour, unit) }))
    .filter(({ life }) => life.value === null || (life.bound === 'at-least' && life.value < first.value!))
    .map(({ name }) => ({ code: 'ranking-open', where: '', text: `The colour ${name} has not come to its endpoint and may still do so before ${ranked[0]!.name}; read on.` }));
}

function readApart(colours: ColourFade[], unit: string): Flag[] {
  const ends = [...new Set(colours.map(({ last }) => last.exposure))];
  if (ends.length === 1) return [];
  return [{ code: 'colours-read-apart', where: '', text: `The colours were read up to different exposures (${ends.join(', ')} ${unit}); what is left of them compares at one exposure only.` }];
}

/** Of the colours for which this was read; the first where it was read for none. */
function comesOffWorst(colours: ColourFade[], key: keyof ColourFade['last']['results'], isWorse: (a: number, b: number) => boolean): ColourFade {
  const valueOf = ({ last }: ColourFade) => last.results[key].value;
  const read = colours.filter((colour) => valueOf(colour) !== null);
  return read.length === 0 ? colours[0]! : read.reduce((worst, one) => (isWorse(valueOf(one)!, valueOf(worst)!) ? one : worst));
}
