import { existsSync, mkdirSync, mkdtempSync, renameSync, rmSync, statSync } from 'node:fs';
import path from 'node:path';
import { buildDemoNotebook } from '../../electron/application/demo/build-demo-notebook.ts';
import { systemClock, type Clock } from '../../electron/store/clock.ts';
import { NotebookStore } from '../../electron/store/notebook-store.ts';
import { schemaVersion } from '../../electron/store/schema/migrations.ts';
import { makeLargeNotebook } from './large-notebook.ts';

/** Several years of a busy laboratory. */
export const SIZE = { samples: 5_000, tests: 50_000, readings: 1_000_000, traces: 2_000 };

export interface LargeFiles {
  folder: string;
  large: string;
  demo: string;
  /** Size of the large file in those of the demo. */
  times: number;
}

/** The large notebook and the demo that it is held against. The large one is made once for each schema: it takes minutes. */
export async function largeFiles(): Promise<LargeFiles> {
  const folder = path.resolve('out', 'bench-large');
  const large = path.join(folder, `large-schema-${schemaVersion}.laydown`);
  const demo = path.join(folder, 'demo.laydown');
  mkdirSync(folder, { recursive: true });
  for (const ending of ['', '.journal']) rmSync(demo + ending, { force: true });
  const page = () => Promise.resolve(new Uint8Array(1));
  await buildDemoNotebook(demo, { renderReport: page, renderApproval: page });
  if (!existsSync(large)) {
    const making = mkdtempSync(path.join(folder, 'making-'));
    const from = await NotebookStore.open(demo, systemClock());
    const made = await makeLargeNotebook(path.join(making, 'large.laydown'), from, SIZE, yearsOfWork());
    made.close();
    from.close();
    renameSync(path.join(making, 'large.laydown'), large);
    rmSync(making, { recursive: true });
  }
  return { folder, large, demo, times: statSync(large).size / statSync(demo).size };
}

/** Three years for the whole of it, so that a day holds some thousand entries. */
function yearsOfWork(): Clock {
  const { ulid } = systemClock();
  let at = Date.parse('2023-03-01T07:00:00.000Z');
  return { now: () => new Date((at += 72_000)), ulid };
}
