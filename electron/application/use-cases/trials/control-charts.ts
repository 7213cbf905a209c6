import type { ParsedInput } from '../../../../shared-lib/api.ts';
import { InputError } from '../../../../shared-lib/calculation/input-error.ts';
import type { Property } from '../../../../shared-lib/method/method.ts';
import type { ChartChoice, ControlChartView } from '../../../../shared-lib/notebook/trial-views.ts';
import { controlChartView, type ChartTest } from '../../../../shared-lib/trial/control-chart-view.ts';
import type { OpenNotebook } from '../../open-notebook.ts';
import { finishedTestsOf, testedSeries } from '../../queries/test-series.ts';
import { lastLimits, loadTest } from '../../queries/tests.ts';
import { readingsOfTest } from '../../trials/response-readings.ts';
import { versionsApart } from '../../trials/versions-apart.ts';
import { withUnit } from '../../with-unit.ts';
import type { Workplace } from '../../workplace.ts';

/** What was tested more than once on a product: the headline properties of each method. */
export function controlChartsList({ notebook }: Workplace): ChartChoice[] {
  return testedSeries(notebook.store).flatMap(({ methodId, product, tests }) => {
    const method = notebook.methods.find(methodId);
    return (method?.properties ?? [])
      .filter(({ headline }) => headline)
      .map(({ key, title }) => ({ methodId, methodTitle: method!.shortTitle, property: key, title, product, tests }));
  });
}

/** A property of a method on one product over time, against the limits asked for or those last set for it. */
export function getControlChart({ notebook }: Workplace, input: ParsedInput<'controlChart.get'>): ControlChartView {
  const method = notebook.methods.named(input.methodId);
  const property = method.properties.find(({ key }) => key === input.property);
  if (!property) throw new InputError('property', input.property, `${method.title} has no property '${input.property}'.`);
  if (property.kind === 'grade') throw new InputError('property', property.key, `${property.title} is a grade; a control chart needs a measured number.`);
  const tests = finishedTestsOf(notebook.store, method.id, input.product).flatMap((test) => chartTest(notebook, property, test));
  const view = controlChartView(property, input.product, tests, input.chart ?? 'individuals', limitsOf(notebook, property, input));
  const mixed = versionsApart(notebook, method.id, property, tests);
  return mixed ? { ...view, conclusions: [...view.conclusions, mixed] } : view;
}

/** A test whose result has no value has no place on the chart. */
function chartTest(notebook: OpenNotebook, property: Property, test: Pick<ChartTest, 'testId' | 'sampleCode' | 'finishedOn'>): ChartTest[] {
  const result = loadTest(notebook.store, test.testId).finished?.results[property.key];
  if (!result || result.value === null) return [];
  return [{ ...test, value: result.value, bounded: result.bound !== 'exact', readings: readingsOfTest(notebook, test.testId, property) }];
}

function limitsOf(notebook: OpenNotebook, { key, unit }: Property, { methodId, product, limits }: ParsedInput<'controlChart.get'>): ControlChartView['limits'] {
  if (limits) {
    if (limits.lower !== null && limits.upper !== null && limits.lower >= limits.upper) {
      throw new InputError('limits.lower', limits.lower, `The lower limit (${withUnit(limits.lower, unit)}) must lie below the upper one (${withUnit(limits.upper, unit)}).`);
    }
    return { ...limits, source: '' };
  }
  const last = lastLimits(notebook.store, methodId, product)?.limits.find((limit) => limit.property === key);
  return last ? { lower: last.lower, upper: last.upper, source: last.source } : { lower: null, upper: null, source: '' };
}
