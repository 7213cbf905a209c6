import { isDeepStrictEqual } from 'node:util';
import type { ParsedInput } from '../../../shared-lib/api.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import { offScale } from '../../../shared-lib/method/grade-scale.ts';
import type { Limit, Method } from '../../../shared-lib/method/method.ts';
import type { BenchSheetView } from '../../../shared-lib/notebook/views.ts';
import { benchSheet } from '../bench-sheet.ts';
import { loadTest } from '../queries/tests.ts';
import { requireReason } from '../require-reason.ts';
import { withUnit } from '../with-unit.ts';
import type { Workplace } from '../workplace.ts';

/**
 * Sets the limits of a test and how the interval counts against them. Moving a limit that stood already needs a reason:
 * the reader of the record must see why it was moved once readings were there.
 */
export function setLimits(workplace: Workplace, input: ParsedInput<'test.setLimits'>): BenchSheetView {
  const { notebook } = workplace;
  const test = loadTest(notebook.store, input.testId);
  const limits = input.limits.filter((limit) => limit.lower !== null || limit.upper !== null);
  checkLimits(notebook.methods.ofTest(test), input.limits);
  if (!isDeepStrictEqual(limits, test.limits) || input.rule !== test.rule) {
    const kept = test.limits.every((before) => limits.some((limit) => isDeepStrictEqual(limit, before)));
    const moved = !kept || (test.limits.length > 0 && input.rule !== test.rule);
    if (moved || test.finished) requireReason(input.reason, test.finished ? 'The test was finished before' : 'The limits were set before');
    notebook.append([{ kind: 'limits.set', body: { testId: input.testId, limits, rule: input.rule, reason: input.reason.trim() } }]);
  }
  return benchSheet(notebook, input.testId);
}

function checkLimits(method: Method, limits: Limit[]): void {
  limits.forEach((limit, index) => {
    const field = `limits[${index}]`;
    const property = method.properties.find((candidate) => candidate.key === limit.property);
    if (!property?.limited) throw new InputError(`${field}.property`, limit.property, `${method.title} has no property '${limit.property}' that takes a limit.`);
    if (limits.findIndex((other) => other.property === limit.property) !== index) {
      throw new InputError(`${field}.property`, limit.property, `${property.title} has two limits; put both ends in one.`);
    }
    const odd = offScale(property, limit.lower, limit.upper);
    if (odd) throw new InputError(`${field}.${offScale(property, limit.lower) ? 'lower' : 'upper'}`, limit.lower ?? limit.upper, odd);
    if (limit.lower !== null && limit.upper !== null && limit.lower > limit.upper) {
      throw new InputError(`${field}.lower`, limit.lower, `The lower limit of ${property.title} (${withUnit(limit.lower, property.unit)}) lies above the upper one (${withUnit(limit.upper, property.unit)}).`);
    }
  });
}
