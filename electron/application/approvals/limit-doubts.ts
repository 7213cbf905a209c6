import type { Limit, Method } from '../../../shared-lib/method/method.ts';
import type { PropertyVerdict } from '../../../shared-lib/method/property-verdict.ts';
import { lineLimitTexts } from '../../../shared-lib/plan/line-texts.ts';

/**
 * Where a test was given other limits than the plan's, or somebody else as the one who sets them, in words. One sentence each.
 * @param planned limits of the line; none: nothing differs from them
 * @param own verdicts on the test's own limits
 */
export function limitDoubts(method: Method, planned: readonly Limit[], own: readonly PropertyVerdict[]): string[] {
  if (planned.length === 0) return [];
  return own.flatMap(({ limit }) => {
    if (!limit) return [];
    const asked = planned.find(({ property }) => property === limit.property);
    const [test = ''] = lineLimitTexts({ limits: [limit] }, method);
    if (!asked) return [`The test has a limit that the plan does not set, and it counts as well: ${test}.`];
    const [plan = ''] = lineLimitTexts({ limits: [asked] }, method);
    if (asked.lower !== limit.lower || asked.upper !== limit.upper) return [`The test has another limit than the plan: ${test}; the plan asks for ${plan}. Both count.`];
    return asked.source === limit.source ? [] : [`The test says otherwise who sets the limit: ${test}; here the plan’s word stands: ${asked.source || 'nobody is named'}.`];
  });
}
