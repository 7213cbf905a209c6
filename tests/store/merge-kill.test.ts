import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { copyFileSync, existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { beforeAll, expect, test } from 'vitest';
import { NotebookStore } from '../../electron/store/notebook-store.ts';
import { verifyChain } from '../../shared-lib/notebook/hash-chain.ts';
import { attachment, reading } from './drafts.ts';
import { testClock } from './temporary-notebook.ts';
import { idsIn, twoBenches } from './two-benches.ts';

/** A program that takes in another notebook is killed at many moments: all of it is there afterwards, or nothing. */
const kills = 16;

/** Such a short life is not worth the second, better translation of sql.js, which takes more time than the work itself. */
const quickStart = '--liftoff-only';

const root = join(import.meta.dirname, '../..');
const program = join(root, 'out/tests/merge-kill-child.mjs');

beforeAll(async () => {
  await build({
    entryPoints: [join(import.meta.dirname, 'merge-kill-child.ts')],
    outfile: program,
    bundle: true,
    format: 'esm',
    platform: 'node',
    external: ['sql.js'],
    logLevel: 'silent',
  });
});

test(`nothing is lost and nothing half taken in by a kill at ${kills} moments of a merge`, async () => {
  const { a, b, folder } = await twoBenches();
  for (let number = 1; number <= 40; number++) {
    const { draft, content } = attachment(`${number} ${'0;1\n'.repeat(20_000)}`);
    b.append([draft, reading(number)], [content]);
  }
  const ours = idsIn(a);
  const theirs = idsIn(b);
  for (const store of [a, b]) store.close();
  const seen = { none: 0, all: 0, merging: 0 };
  for (let kill = 0; kill < kills; kill++) {
    const lane = join(folder, String(kill));
    mkdirSync(lane);
    const path = join(lane, 'lab.laydown');
    copyFileSync(a.path, path);
    const said = await runAndKill([path, b.path], kill % 4 === 3 ? 'merged' : 'merging', kill * 4);
    if (!existsSync(path)) throw new Error('the notebook is gone');
    const store = await NotebookStore.open(path, testClock());
    const ids = new Set(idsIn(store));
    const taken = theirs.filter((id) => ids.has(id)).length - ours.length;
    expect([0, theirs.length - ours.length]).toContain(taken);
    if (said.includes('merged')) expect(taken).toBe(theirs.length - ours.length);
    expect(ours.every((id) => ids.has(id))).toBe(true);
    expect(verifyChain(store.entries())).toEqual([]);
    expect(store.tableDifferences()).toEqual([]);
    seen[taken === 0 ? 'none' : 'all']++;
    if (!said.includes('merged')) seen.merging++;
    store.close();
  }
  // The moments must have met what they were drawn for.
  expect(Math.min(seen.none, seen.all)).toBeGreaterThan(0);
  expect(seen.merging).toBeGreaterThan(2);
}, 300_000);

/** Kills the program `delay` ms after it said `word`. @returns all that it said. */
async function runAndKill(args: string[], word: string, delay: number): Promise<string[]> {
  const child = spawn(process.execPath, [quickStart, program, ...args], { stdio: ['ignore', 'pipe', 'pipe'] });
  let output = '';
  let errors = '';
  let armed = false;
  child.stderr.on('data', (data: Buffer) => (errors += data.toString()));
  child.stdout.on('data', (data: Buffer) => {
    output += data.toString();
    if (armed || !output.split('\n').includes(word)) return;
    armed = true;
    setTimeout(() => child.kill('SIGKILL'), delay);
  });
  const [code, signal] = (await once(child, 'close')) as [number | null, string | null];
  expect([code, signal], errors).toEqual([null, 'SIGKILL']);
  return output.split('\n');
}
