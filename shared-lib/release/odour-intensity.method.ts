import { runCalculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { CalculationResult, TitledTable } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import type { BenchReadings, Method } from '../method/method.ts';
import { numberIn } from '../method/sheet.ts';
import { MOST_ASSESSORS, pairServings, type Content } from './blind-servings.ts';
import { odourCautions } from './odour-cautions.ts';
import { odourPanelCalculation } from './odour-panel.calculation.ts';
import { controlField, panelOf, seedField, servingPlan, showField, waitingNote, type Assessor } from './serving-plan.ts';

const GRADE_KEYS = ['first', 'second'] as const;

/** How strongly the print smells, beside a control: assessors blind, orders balanced. */
export const odourIntensityMethod: Method = {
  id: 'odour-intensity',
  version: '1',
  title: 'Odour panel, strength of the smell',
  shortTitle: 'Odour strength',
  group: 'release',
  standards: ['EN 1230-1', 'DIN 10955'],
  help: {
    shows: 'How strongly the print smells, from 0 (nothing) to 4 (strong), as the median of a panel that does not know which jar holds the print.',
    how: [
      'Draw any number and type it: the sheet gives every assessor two jars with codes, print and control, in balanced order.',
      'List the assessors, switch the plan to the kitchen, fill and mark the jars, and switch back before the first one comes in.',
      'Each assessor opens the jars in the order given, smells, and grades both: 0 none, 1 just perceptible, 2 moderate, 3 moderately strong, 4 strong; halves are allowed.',
      'At least six assessors. The result shows once all have graded.',
    ],
    spoils: ['An assessor who saw the jars filled, or hears the others.', 'Jars, lids or a room that smell: the control then has a grade of its own.', 'Noses tired by too many jars, food, smoke or perfume.', 'Specimens that lay open between press and jar.'],
  },
  cautions: odourCautions,
  conditions: [seedField, showField, controlField, { kind: 'text', key: 'storage', label: 'Jars kept', maxLength: 200, hint: 'hours, temperature, area of film' }],
  readings: {
    rowName: 'assessor',
    fields: [
      { kind: 'text', key: 'assessor', label: 'Assessor', maxLength: 60, required: true, hint: 'Initials or number.' },
      { kind: 'number', key: 'first', label: 'First jar', min: 0, max: 4, hint: 'Grade 0 to 4 of the first jar.' },
      { kind: 'number', key: 'second', label: 'Second jar', min: 0, max: 4, hint: 'Grade 0 to 4 of the second jar.' },
    ],
    startRows: 8,
    minRows: 1,
    maxRows: MOST_ASSESSORS,
  },
  calculation: 'odour-panel',
  properties: [
    { key: 'median', title: 'Smell of the print, median', unit: '', better: 'lower', kind: 'grade', scale: { low: 0, high: 4 }, limited: true, headline: true, readingsFigure: 'intensities' },
    { key: 'range', title: 'Range of the grades', unit: '', better: 'lower', limited: true, asRead: true, headline: false },
    { key: 'controlMedian', title: 'Smell of the control, median', unit: '', better: 'lower', kind: 'grade', scale: { low: 0, high: 4 }, limited: true, headline: false },
  ],
  evaluate,
};

interface Graded {
  assessor: Assessor;
  grades: Record<Content, number>;
}

function evaluate(bench: BenchReadings): CalculationResult {
  const panel = panelOf(bench, pairServings);
  const graded = panel.flatMap((assessor) => gradesOf(bench, assessor));
  const tables = panel.length === 0 ? [] : [servingPlan(bench, panel)];
  if (graded.length < panel.length || panel.length === 0) return waiting(graded.length, panel.length, tables);
  const input = { intensities: graded.map(({ grades }) => grades.print), controlIntensities: graded.map(({ grades }) => grades.control) };
  const result = runCalculation(odourPanelCalculation, input);
  const names = graded.map(({ assessor }) => assessor.name);
  return {
    ...result,
    table: result.table.map((row, index) => ({ ...row, assessor: names[index]! })),
    figures: result.figures.map((figure) => ({ ...figure, x: { ...figure.x, categories: names } })),
    tables,
  };
}

/** Nothing while one of the two grades is missing. */
function gradesOf(bench: BenchReadings, assessor: Assessor): Graded[] {
  const given = GRADE_KEYS.map((key) => numberIn(bench.rows[assessor.index]!.values, key));
  given.forEach((grade, place) => {
    if (grade !== undefined && !Number.isInteger(grade * 2)) throw new InputError(`rows[${assessor.index}].${GRADE_KEYS[place]!}`, grade, `Grades go in steps of a half from 0 to 4, not ${grade}.`);
  });
  if (given.some((grade) => grade === undefined)) return [];
  const grades = Object.fromEntries(assessor.serving.map(({ content }, place) => [content, given[place]!])) as Record<Content, number>;
  return [{ assessor, grades }];
}

function waiting(answered: number, assessors: number, tables: TitledTable[]): CalculationResult {
  const none = valueWithoutInterval(null, '', 0);
  return {
    calculation: odourPanelCalculation.id,
    version: odourPanelCalculation.version,
    results: { median: none, range: none, controlMedian: none },
    table: [],
    flags: [],
    notes: [waitingNote(answered, assessors)],
    cautions: odourPanelCalculation.cautions,
    sources: odourPanelCalculation.sources,
    figures: [],
    tables,
  };
}
