import { analyseTrace } from '../../shared-lib/bond-strength/analyse-trace.ts';
import { peelTraceCalculation } from '../../shared-lib/bond-strength/peel-trace.calculation.ts';
import { checkTrace } from '../../shared-lib/bond-strength/trace-columns.ts';
import { runCalculation } from '../../shared-lib/calculation/calculation.ts';
import { compare, megabytesGrown, milliseconds } from './compare.ts';
import { longTrace } from './long-trace.ts';

const POINTS = 200_000;
const trace = longTrace(POINTS);

function analyse() {
  checkTrace(trace, (index, column) => `points[${index}][${column}]`);
  return analyseTrace(trace, {}, 0.95);
}

/** The least that can be done with the forces: one pass that sums them and notes every local maximum. */
function plainPass(forceN: Float64Array): { sum: number; peaks: number } {
  let sum = 0;
  let peaks = 0;
  for (let index = 1; index + 1 < forceN.length; index++) {
    const force = forceN[index]!;
    sum += force;
    if (force > forceN[index - 1]! && force >= forceN[index + 1]!) peaks += 1;
  }
  return { sum, peaks };
}

await compare({
  what: 'peel trace of 200 000 points: check and analysis',
  peer: 'one plain pass over the same forces: sum and local peaks',
  target: { atMost: 3 },
  unit: 'ms',
  ours: milliseconds(analyse),
  theirs: milliseconds(() => plainPass(trace.forceN)),
});

await compare({
  what: 'the same: growth of heap and typed arrays',
  peer: 'its Float64Array of forces',
  target: { atMost: 3 },
  unit: 'MB',
  ours: megabytesGrown(analyse),
  theirs: () => trace.forceN.byteLength / 1e6,
});

const input = { widthMm: 15, points: Array.from(trace.forceN, (force, index) => [trace.displacementMm[index]!, force]) };
const text = JSON.stringify(input);

await compare({
  what: 'peel-trace from typed points: schema, analysis, figure',
  peer: 'JSON.parse of the same input',
  target: { atMost: 1 },
  unit: 'ms',
  runs: 15,
  ours: milliseconds(() => runCalculation(peelTraceCalculation, input)),
  theirs: milliseconds(() => JSON.parse(text) as unknown),
});
