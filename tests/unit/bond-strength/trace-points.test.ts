import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { tracePointsSchema } from '../../../shared-lib/bond-strength/trace-points.ts';

/** What it stands for, written with the schema library's own pairs. */
const pairs = z.array(z.tuple([z.number(), z.number()])).min(2).max(2_000_000);

describe('the schema of typed trace points', () => {
  it('has the JSON Schema of a list of pairs', () => {
    expect(z.toJSONSchema(tracePointsSchema)).toEqual(z.toJSONSchema(pairs));
  });

  it.each([
    ['good points', [[0, 1], [1, 2]]],
    ['one point', [[0, 1]]],
    ['no list', 3],
    ['a point without force', [[0, 1], [1]]],
    ['a point of three', [[0, 1], [1, 2, 3]]],
    ['text as force', [[0, 1], [1, '2']]],
    ['nothing as displacement', [[0, 1], [null, 2]]],
    ['not a number', [[0, Number.NaN], [1, 2]]],
    ['an infinite force', [[0, 1], [1, Infinity]]],
    ['a number as point', [[0, 1], 3]],
  ])('judges %s as a list of pairs does', (_what, points) => {
    const ours = tracePointsSchema.safeParse(points);
    const theirs = pairs.safeParse(points);
    expect(ours.success).toBe(theirs.success);
    const fault = theirs.error?.issues[0];
    expect(ours.error?.issues[0]?.code).toBe(fault?.code);
    expect(ours.error?.issues[0]?.path).toEqual(fault?.path);
  });
});
