import { performance } from 'node:perf_hooks';

/** Ours against a named peer in the same run: only the ratio means anything on another machine. */
export interface Comparison {
  what: string;
  peer: string;
  /** Of ours over the peer's (`atMost`), or of the peer's over ours (`atLeast` so many times faster). */
  target: { atMost: number } | { atLeast: number };
  /** Does the work once and returns what it cost. */
  ours: () => number | Promise<number>;
  theirs: () => number | Promise<number>;
  unit: 'ms' | 'MB' | 'bytes';
  runs?: number;
}

const WARM_UP = 5;

/** Runs both in turn, A B A B, after a warm-up, and writes the medians as one line of JSON for `build/bench.mjs`. */
export async function compare({ what, peer, target, ours, theirs, unit, runs = 41 }: Comparison): Promise<void> {
  const costs = { ours: [] as number[], theirs: [] as number[] };
  for (let run = -Math.min(WARM_UP, runs); run < runs; run++) {
    const a = await ours();
    const b = await theirs();
    if (run < 0) continue;
    costs.ours.push(a);
    costs.theirs.push(b);
  }
  process.stdout.write(`${JSON.stringify({ what, peer, target, unit, ours: median(costs.ours), theirs: median(costs.theirs) })}\n`);
}

/** Milliseconds that `work` takes. What it returns is kept until it is done, so that nothing is optimised away. */
export function milliseconds(work: () => unknown): () => number {
  return () => {
    const started = performance.now();
    kept = work();
    return performance.now() - started;
  };
}

/** Megabytes by which heap and typed arrays grow while `work` runs; its result still counts. Needs `--expose-gc`. */
export function megabytesGrown(work: () => unknown): () => number {
  return () => {
    kept = null;
    // The second collection waits for the typed arrays that the first let go.
    globalThis.gc!();
    globalThis.gc!();
    const before = inUse();
    kept = work();
    return (inUse() - before) / 1e6;
  };
}

/** The last result; read by nobody. */
export let kept: unknown = null;

function inUse(): number {
  const { heapUsed, external } = process.memoryUsage();
  return heapUsed + external;
}

function median(values: number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}
