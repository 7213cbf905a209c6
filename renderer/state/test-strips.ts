import { commonDomain } from '../../shared-lib/figure/strip-domain.ts';
import type { PropertyLine, TestLine } from '../../shared-lib/notebook/views.ts';
import { groupBy } from './group-by.ts';

/** The headline lines of each test, with all strips of one property of one method on the same scale, grades on their own. */
export function withCommonScales(tests: TestLine[]): { test: TestLine; lines: PropertyLine[] }[] {
  const groups = groupBy(
    tests.flatMap((test) => test.headline.map((line) => ({ group: groupOf(test, line), strip: line.strip }))),
    (item) => item.group,
  );
  const domains = new Map<string, [number, number]>();
  for (const [group, items] of groups) domains.set(group, commonDomain(items.flatMap((item) => item.strip ?? [])));
  return tests.map((test) => ({
    test,
    lines: test.headline.map((line) => ({
      ...line,
      strip: line.strip && { ...line.strip, domain: line.strip.domain ?? domains.get(groupOf(test, line)) ?? null },
    })),
  }));
}

function groupOf(test: TestLine, line: PropertyLine): string {
  return `${test.methodId} ${line.key}`;
}
