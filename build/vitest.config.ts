import { availableParallelism } from 'node:os';
import path from 'node:path';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** `tests/slow` is left out unless `npm run test:slow` asks for it. */
const slow = process.env.LAYDOWN_SLOW === '1';

/** Files that take a minute or so: begun last, one of them runs alone while the other core waits. */
const LONG = [/store\/kill/, /store\/merge-kill/, /e2e\/bench-sheets/, /e2e\/every-screen/, /e2e\/main-job/, /e2e\/command-line/];

class LongFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    const isLong = ({ moduleId }: TestSpecification) => LONG.some((name) => name.test(moduleId));
    return [...sorted.filter(isLong), ...sorted.filter((file) => !isLong(file))];
  }
}

/** Every project needs the root said again: it is taken from where its configuration lies. */
const root = path.resolve(import.meta.dirname, '..');

export default defineConfig({
  root,
  test: {
    // The default leaves a core idle, which on two cores is half of them.
    sequence: { sequencer: LongFirst },
    maxWorkers: Math.max(2, availableParallelism() - 1),
    projects: [
      // Nothing under these tests keeps state of its own, so the modules are read once for all files: a third of the time.
      { root, test: { name: 'unit', include: ['tests/{unit,reference}/**/*.test.ts'], environment: 'node', isolate: false, testTimeout: 60_000, hookTimeout: 60_000, setupFiles: ['tests/fast-check-seed.ts'] } },
      { root, test: { name: 'store', include: ['tests/store/**/*.test.ts'], environment: 'node', testTimeout: 240_000, hookTimeout: 60_000 } },
      { root, test: { name: 'e2e', include: ['tests/e2e/**/*.test.ts'], environment: 'node', testTimeout: 120_000, hookTimeout: 120_000 } },
      ...(slow ? [{ root, test: { name: 'slow', include: ['tests/slow/**/*.test.ts'], environment: 'node' as const, testTimeout: 1_800_000 } }] : []),
    ],
  },
});
