import { runCalculation } from '../calculation/calculation.ts';
import type { CalculationResult, TitledTable } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import type { BenchReadings, Method } from '../method/method.ts';
import { numberIn } from '../method/sheet.ts';
import { MOST_ASSESSORS, triangleServings, type Serving } from './blind-servings.ts';
import { odourCautions } from './odour-cautions.ts';
import { odourPanelCalculation } from './odour-panel.calculation.ts';
import { controlField, jarWithCode, panelOf, seedField, servingPlan, showField, waitingNote, type Assessor } from './serving-plan.ts';

/** Whether a panel can smell the print out of three jars: assessors blind, orders balanced. */
export const odourTriangleMethod: Method = {
  id: 'odour-triangle',
  version: '1',
  title: 'Odour panel, triangle test',
  shortTitle: 'Odour triangle',
  group: 'release',
  standards: ['ISO 4120', 'EN 1230-2'],
  help: {
    shows: 'Whether people can tell the print from a control by its smell. Too few right answers do not show that the two are alike; the share that may tell them apart says how far from alike they may be.',
    how: [
      'Draw any number and type it: the sheet gives every assessor three jars with codes, two alike and one odd, in balanced order.',
      'List the assessors, then switch the plan to the kitchen, fill and mark the jars, and switch back before the first one comes in.',
      'Same area of film in the same kind of jar, closed for the same hours at the same temperature.',
      'Each assessor smells the three in the order given and names the code of the odd one; guessing is allowed, no answer is not.',
      'The result shows once all have answered.',
    ],
    spoils: ['An assessor who saw the jars filled, or hears the others.', 'Jars, lids or a room that smell.', 'Colour or shape that gives the odd one away: use dark jars or cover them.', 'More than a few triangles one after the other: noses tire.'],
  },
  cautions: odourCautions,
  conditions: [
    seedField,
    showField,
    controlField,
    { kind: 'number', key: 'alpha', label: 'Risk of a false alarm', min: 0.0001, max: 0.5, default: 0.05, usual: { min: 0.001, max: 0.1 }, hint: '0.05: one time in twenty' },
    { kind: 'text', key: 'storage', label: 'Jars kept', maxLength: 200, hint: 'hours, temperature, area of film' },
  ],
  readings: {
    rowName: 'assessor',
    fields: [
      { kind: 'text', key: 'assessor', label: 'Assessor', maxLength: 60, required: true, hint: 'Initials or number.' },
      { kind: 'number', key: 'odd', label: 'Odd one', min: 100, max: 999, hint: 'The code of the jar that smells different.' },
    ],
    startRows: 12,
    minRows: 1,
    maxRows: MOST_ASSESSORS,
  },
  calculation: 'odour-panel',
  properties: [
    { key: 'pValue', title: 'Probability of so many by guessing', unit: '', better: 'higher', limited: true, asRead: true, headline: true },
    { key: 'shareDiscriminating', title: 'Share who can tell them apart', unit: '%', better: 'lower', limited: true, headline: true },
    { key: 'correct', title: 'Right answers', unit: '', better: 'none', limited: false, headline: false },
    { key: 'minimumCorrect', title: 'Right answers needed for a difference', unit: '', better: 'none', limited: false, headline: false },
  ],
  evaluate,
};

function evaluate(bench: BenchReadings): CalculationResult {
  const panel = panelOf(bench, triangleServings);
  const answers = panel.map((assessor) => {
    const code = numberIn(bench.rows[assessor.index]!.values, 'odd');
    return { assessor, code, right: code === undefined ? undefined : jarWithCode(assessor, 'odd', code).content === oddOf(assessor.serving).content };
  });
  const tables = panel.length === 0 ? [] : [servingPlan(bench, panel)];
  const answered = answers.filter(({ right }) => right !== undefined);
  const result = runCalculation(odourPanelCalculation, {
    assessors: Math.max(1, panel.length),
    correct: answered.filter(({ right }) => right).length,
    alpha: numberIn(bench.conditions, 'alpha'),
  });
  if (panel.length > 0 && answered.length === panel.length) return { ...result, tables: [...tables, answersTable(answers)] };
  const hidden = Object.fromEntries(Object.entries(result.results).map(([key, { unit }]) => [key, valueWithoutInterval(null, unit, 0)]));
  return { ...result, results: { ...hidden, minimumCorrect: result.results.minimumCorrect! }, notes: [waitingNote(answered.length, panel.length)], figures: [], tables };
}

/** The jar whose content no other has. */
function oddOf(serving: Serving) {
  return serving.find(({ content }) => serving.filter((other) => other.content === content).length === 1)!;
}

function answersTable(answers: { assessor: Assessor; code: number | undefined; right: boolean | undefined }[]): TitledTable {
  return {
    title: 'Answers',
    columns: [
      { key: 'assessor', title: 'Assessor' },
      { key: 'odd', title: 'Odd one' },
      { key: 'content', title: 'It held' },
      { key: 'answer', title: 'Answer' },
      { key: 'right', title: 'Right' },
    ],
    rows: answers.map(({ assessor: { name, serving }, code, right }) => ({ assessor: name, odd: String(oddOf(serving).code), content: oddOf(serving).content, answer: String(code), right: right ? 'yes' : 'no' })),
  };
}
