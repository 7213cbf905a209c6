import { runCalculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { CalculationResult } from '../calculation/result.ts';
import type { Property } from '../method/method.ts';
import type { ControlChartView } from '../notebook/trial-views.ts';
import { formatValue } from '../quantity/format.ts';
import { capabilityCalculation } from '../statistics/capability.calculation.ts';
import { controlChartCalculation } from '../statistics/control-chart.calculation.ts';
import { observationOf, type TrialReading } from './trial-reading.ts';

/** A finished test as a point of the chart. */
export interface ChartTest {
  testId: string;
  sampleCode: string;
  finishedOn: string;
  /** The test's result; `bounded`: only a bound of it is known. */
  value: number;
  bounded: boolean;
  readings: TrialReading[];
}

/**
 * The tests of one property on one product in order of time. Without a choice each test is one point, its result: the
 * scatter within a test says little about that between lots.
 * @throws InputError for fewer than two tests, or for subgroups that are unequal or hold bounds
 */
export function controlChartView(property: Property, product: string, tests: readonly ChartTest[], chart: ControlChartView['chart'], limits: ControlChartView['limits']): ControlChartView {
  if (tests.length < 2) throw new InputError('product', product, `A control chart needs at least two finished tests of ${property.title}; there ${tests.length === 1 ? 'is one' : 'are none'}.`);
  const control = runCalculation(controlChartCalculation, { ...pointsOf(tests, chart), chart, unit: property.unit });
  const bounded = tests.filter((test) => test.bounded);
  const { capability, capabilityText } = capabilityOf(property, tests, limits);
  const names = tests.map(({ sampleCode, finishedOn }) => `${sampleCode}, ${finishedOn}`);
  return {
    title: `${property.title}, ${product}`,
    unit: property.unit,
    chart,
    conclusions: [
      ...control.flags.map(({ where, text }) => inWords(where, text, names)),
      ...control.notes,
      ...(bounded.length === 0 ? [] : [`Only a bound is known of ${bounded.map(({ sampleCode }) => sampleCode).join(', ')}; it stands on the chart by that bound.`]),
    ],
    figures: control.figures.map((figure) => ({
      ...figure,
      x: { title: 'Test, in order of time', scale: 'linear' },
      lines: [...(figure.lines ?? []), ...(figure.id === 'control-chart' ? limitLines(limits) : [])],
    })),
    tests: tests.map(({ testId, sampleCode, finishedOn, value, readings }, index) => ({
      testId,
      sampleCode,
      finishedOn,
      value,
      n: readings.length,
      outside: control.flags.some(({ where }) => where.endsWith(`[${index}]`)),
    })),
    control,
    capability,
    capabilityText,
    limits,
  };
}

function pointsOf(tests: readonly ChartTest[], chart: ControlChartView['chart']): { values: number[] } | { subgroups: number[][] } {
  if (chart === 'individuals') return { values: tests.map(({ value }) => value) };
  const n = tests[0]!.readings.length;
  const odd = tests.find(({ readings }) => readings.length !== n || n < 2);
  if (odd) throw new InputError('chart', chart, `Subgroups need the same number of readings, two or more, in every test; ${odd.sampleCode} has ${odd.readings.length}, the first ${n}. Choose the chart of single values.`);
  const open = tests.find(({ readings }) => readings.some((reading) => typeof observationOf(reading) !== 'number'));
  if (open) throw new InputError('chart', chart, `Some readings of ${open.sampleCode} are only bounds or brackets, which have no range. Choose the chart of single values.`);
  return { subgroups: tests.map(({ readings }) => readings.map(({ value }) => value)) };
}

/** The calculation's sentence with the test's name in place of its number. */
function inWords(where: string, text: string, names: string[]): string {
  const index = Number(/\[(\d+)\]$/.exec(where)?.[1]);
  return names[index] === undefined ? text : text.replace(/^Point \d+/, names[index]);
}

function limitLines({ lower, upper }: ControlChartView['limits']): NonNullable<ControlChartView['figures'][number]['lines']> {
  return [
    ...(lower === null ? [] : [{ name: 'limit of the specification', axis: 'y' as const, value: lower, role: 'mark' as const }]),
    ...(upper === null ? [] : [{ name: 'limit of the specification', axis: 'y' as const, value: upper, role: 'mark' as const }]),
  ];
}

function capabilityOf(property: Property, tests: readonly ChartTest[], { lower, upper }: ControlChartView['limits']): { capability: CalculationResult | null; capabilityText: string } {
  if (lower === null && upper === null) return { capability: null, capabilityText: 'No limit is set, so there is nothing to be capable of.' };
  try {
    const capability = runCalculation(capabilityCalculation, {
      values: tests.map(({ value }) => value),
      ...(lower !== null && { lowerLimit: lower }),
      ...(upper !== null && { upperLimit: upper }),
      unit: property.unit,
    });
    const shown = (['cp', 'cpk', 'ppk'] as const).flatMap((key) => {
      const result = capability.results[key];
      if (!result || result.value === null) return [];
      const { text, intervalText } = formatValue(result);
      return [`${{ cp: 'Cp', cpk: 'Cpk', ppk: 'Ppk' }[key]} ${text}${intervalText && ` (${intervalText})`}`];
    });
    return { capability, capabilityText: `${shown.join(', ')}, from ${tests.length} tests.` };
  } catch (error) {
    if (error instanceof InputError) return { capability: null, capabilityText: error.message };
    throw error;
  }
}
