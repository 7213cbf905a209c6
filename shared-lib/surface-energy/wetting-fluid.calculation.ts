import { z } from 'zod';
import { defineCalculation, type Outcome } from '../calculation/calculation.ts';
import type { ResultValue } from '../calculation/result.ts';
import { formatNumber, plainDecimals } from '../quantity/format.ts';
import { clopperPearson } from '../statistics/clopper-pearson.ts';
import { againstRequirement, type RequirementWord } from './against-requirement.ts';
import { bracketValue } from './bracket-value.ts';
import { filmMean } from './film-mean.ts';
import { filmPosition, filmPositionSchema, tensionMNm, type FilmPosition } from './film-position.ts';
import { fluidCautions } from './fluid-cautions.ts';
import { heldRange, reportedWettingTension, unevenAboveMNm } from './reported-wetting-tension.ts';
import { atmosphereFlags } from './test-atmosphere.ts';
import { weakestBracket } from './weakest-bracket.ts';
import { wettingFluidFigure } from './wetting-fluid-figure.ts';

const level = 0.95;

const input = z.strictObject({
  positions: z.array(filmPositionSchema).min(1).max(1000),
  /** A fluid holds when its film stays whole for at least this long. */
  criterionS: z.number().min(0.1).max(60).default(2),
  requiredMNm: tensionMNm.optional(),
  temperatureC: z.number().min(-30).max(80).optional(),
  relativeHumidityPct: z.number().min(0).max(100).optional(),
});

/**
 * Wetting tension of a film from test fluids. Each position gives a bracket; the film's mean and spread follow from all
 * brackets together by maximum likelihood, so that neither the steps of the fluids nor an open end is taken for a value.
 */
export const wettingFluidCalculation = defineCalculation({
  id: 'wetting-fluid',
  version: '1',
  title: 'Wetting tension with test fluids',
  input,
  compute: (given): Outcome => {
    const positions = given.positions.map((position, index) => filmPosition(position, index, given.criterionS));
    const required = given.requiredMNm;
    const words = positions.map((position) => (required === undefined ? null : againstRequirement(position, required)));
    const { wettingTension, spread, note } = filmMean(positions, level);
    const share = shareMeeting(words);
    const reported = reportedValue(positions);
    return {
      results: {
        wettingTension,
        spread,
        weakestPosition: bracketValue(weakestBracket(positions), 'mN/m', positions.length),
        shareMeetingRequirement: share.value,
        reported: reported.value,
      },
      table: positions.map((position, index) => ({
        position: position.label,
        acrossMm: position.acrossMm,
        alongM: position.alongM,
        specimen: position.specimen,
        wetsMNm: position.low,
        retractsMNm: position.high,
        requirement: words[index] ?? null,
      })),
      flags: [
        ...contradictionFlags(positions),
        ...coarseFlags(positions, words, required),
        ...atmosphereFlags(given.temperatureC, given.relativeHumidityPct),
        ...unevenFlags(positions),
        ...criterionFlags(given.criterionS),
      ],
      notes: [...note, ...share.note, reported.note],
      figures: [wettingFluidFigure(positions, wettingTension, required)],
    };
  },
  columns: [
    { key: 'position', title: 'Position' },
    { key: 'acrossMm', title: 'Across', unit: 'mm' },
    { key: 'alongM', title: 'Along', unit: 'm' },
    { key: 'specimen', title: 'Specimen' },
    { key: 'wetsMNm', title: 'Held', unit: 'mN/m' },
    { key: 'retractsMNm', title: 'Retracted', unit: 'mN/m' },
    { key: 'requirement', title: 'Requirement' },
  ],
  cautions: fluidCautions.map((caution) => caution.text),
  sources: [
    'ASTM D2578-09 §11.4 (a film that holds for 2 s), §11.5 (confirm going up), §12.1–12.2 (reporting)',
    'ISO 8296 (the liquid film stays whole for at least 2 s)',
    'Mean and spread: maximum likelihood for a normal distribution with interval-, left- and right-censored readings, profile-likelihood interval',
    'Share: exact binomial interval, Clopper & Pearson, Biometrika 26 (1934) 404',
  ],
});

function shareMeeting(words: (RequirementWord | null)[]): { value: ResultValue; note: string[] } {
  const nothing: ResultValue = { value: null, unit: '', low: null, high: null, level: null, n: 0, bound: 'exact' };
  if (words[0] === null) return { value: nothing, note: ['No required wetting tension was given, so no share meets it.'] };
  const meeting = words.filter((word) => word === 'meets').length;
  const short = words.filter((word) => word === 'falls short').length;
  const undecided = words.length - meeting - short;
  const decided = meeting + short;
  const note =
    undecided === 0
      ? []
      : [`${undecided} of ${words.length} positions could meet the requirement or not; they count neither way in the share.`];
  if (decided === 0) return { value: nothing, note };
  const interval = clopperPearson(meeting, decided, level);
  return { value: { ...nothing, value: meeting / decided, low: interval.low, high: interval.high, level, n: decided }, note };
}

function reportedValue(positions: FilmPosition[]): { value: ResultValue; note: string } {
  const held = positions.map((position) => position.low).filter((low) => low !== null);
  const common = { unit: 'mN/m', low: null, high: null, level: null, n: held.length };
  if (held.length < positions.length) {
    return {
      value: { ...common, value: null, bound: 'exact' },
      note: 'No value is reported by ASTM D2578 §12.1: at some position no fluid held.',
    };
  }
  const value = reportedWettingTension(held);
  if (value === null) {
    return {
      value: { ...common, value, bound: 'exact' },
      note: `By ASTM D2578 §12.2 the single values are reported: ${held.join(', ')} mN/m (they differ by more than ${unevenAboveMNm}).`,
    };
  }
  const topless = positions.some((position) => position.high === null);
  const words = topless ? `at least ${value}` : String(value);
  return {
    value: { ...common, value, bound: topless ? 'at-least' : 'exact', low: topless ? value : null },
    note: `By ASTM D2578 §12.1 the film is reported as ${words} mN/m: mean of the highest fluids that held, to the nearest 0.5, ties up.`,
  };
}

function contradictionFlags(positions: FilmPosition[]) {
  return positions
    .filter((position) => position.contradicts)
    .map((position) => ({
      code: 'fluids-contradict',
      where: position.label,
      text: `At ${position.label} a fluid held although the same or a lower one retracted; its bracket spans both. Repeat it with clean film, going up.`,
    }));
}

function coarseFlags(positions: FilmPosition[], words: (RequirementWord | null)[], required: number | undefined) {
  const straddling = positions.filter(
    (position, index) => words[index] === 'undecided' && position.low !== null && position.high !== null,
  );
  if (straddling.length === 0) return [];
  const labels = straddling.map((position) => position.label).join(', ');
  return [
    {
      code: 'steps-too-coarse',
      where: labels,
      text: `The fluids used leave ${required} mN/m undecided at ${labels}; test the ${required} mN/m fluid there.`,
    },
  ];
}

function unevenFlags(positions: FilmPosition[]) {
  const held = positions.map((position) => position.low).filter((low) => low !== null);
  if (held.length < 2) return [];
  const range = heldRange(held);
  if (range <= unevenAboveMNm) return [];
  const shown = formatNumber(range, plainDecimals(range));
  // Where all brackets share or touch one value, a film without any unevenness could give them.
  if (Math.max(...held) <= Math.min(...positions.map(({ high }) => high ?? Infinity))) {
    return [
      {
        code: 'steps-hide-unevenness',
        where: '',
        text: `The fluids that held differ by ${shown} mN/m, and yet every position may have the same wetting tension: finer fluids would tell whether the treatment is uneven.`,
      },
    ];
  }
  return [
    {
      code: 'uneven-treatment',
      where: '',
      text: `The treatment is uneven: the positions differ by ${shown} mN/m, so read them one by one, not only their mean.`,
    },
  ];
}

function criterionFlags(criterionS: number) {
  if (criterionS === 2) return [];
  return [{ code: 'criterion-differs', where: 'criterionS', text: `A fluid counted as holding from ${criterionS} s; the standards ask for 2 s.` }];
}
