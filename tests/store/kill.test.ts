import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { copyFileSync, existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { beforeAll, expect, test } from 'vitest';
import { NotebookStore } from '../../electron/store/notebook-store.ts';
import { verifyChain } from '../../shared-lib/notebook/hash-chain.ts';
import { temporaryFolder, testClock } from './temporary-notebook.ts';

/**
 * A program that records and writes checkpoints is killed at 200 moments, drawn from a fixed seed; every entry that it
 * had acknowledged must be there, in an unbroken chain. The next program goes on with what the killed one left.
 */
const kills = 200;
/** Notebooks at work side by side; each is begun anew now and then so that it stays small. */
const lanes = 4;
const killsPerNotebook = 5;

/** Such a short life is not worth the second, better translation of sql.js, which takes more time than the work itself. */
const quickStart = '--liftoff-only';

const root = join(import.meta.dirname, '../..');
const program = join(root, 'out/tests/kill-child.mjs');

beforeAll(async () => {
  await build({
    entryPoints: [join(import.meta.dirname, 'kill-child.ts')],
    outfile: program,
    bundle: true,
    format: 'esm',
    platform: 'node',
    external: ['sql.js'],
    logLevel: 'silent',
  });
});

test(`nothing acknowledged is lost by a kill at ${kills} moments`, async () => {
  const folder = temporaryFolder();
  const seen = { acknowledged: 0, replayed: 0, halfWritten: 0 };
  const lane = async (number: number) => {
    const random = seeded(1000 + number);
    for (let kill = 0; kill < kills / lanes; kill++) {
      const path = join(folder, `lab-${number}-${Math.floor(kill / killsPerNotebook)}.laydown`);
      // One in eight while it opens, the others some milliseconds behind the 1st … 9th thing that it said since.
      const lines = random() < 0.125 ? 1 : 2 + Math.floor(random() * 9);
      const acknowledged = await runAndKill(path, number * 1000 + kill, lines, random() * (lines === 1 ? 25 : 12));
      if (existsSync(`${path}.writing`)) seen.halfWritten++;
      seen.acknowledged += acknowledged.length;
      await check(path, join(folder, `look-${number}`), acknowledged, seen);
    }
  };
  await Promise.all(Array.from({ length: lanes }, (_, number) => lane(number)));
  // The moments must have met what they were drawn for.
  expect(seen.acknowledged).toBeGreaterThan(kills);
  expect(seen.replayed).toBeGreaterThan(kills / 10);
  expect(seen.halfWritten).toBeGreaterThan(0);
}, 600_000); // about 45 s on two free cores

interface Acknowledged {
  seq: number;
  hash: string;
}

/** Kills the program `delay` ms after it has said `lines` lines. @returns what it had acknowledged. */
async function runAndKill(path: string, seed: number, lines: number, delay: number): Promise<Acknowledged[]> {
  const child = spawn(process.execPath, [quickStart, program, path, String(seed)], { stdio: ['ignore', 'pipe', 'pipe'] });
  let output = '';
  let errors = '';
  let armed = false;
  child.stderr.on('data', (data: Buffer) => (errors += data.toString()));
  child.stdout.on('data', (data: Buffer) => {
    output += data.toString();
    if (armed || output.split('\n').length <= lines) return;
    armed = true;
    setTimeout(() => child.kill('SIGKILL'), delay);
  });
  const [code, signal] = (await once(child, 'close')) as [number | null, string | null];
  expect([code, signal], errors).toEqual([null, 'SIGKILL']);
  const said = output.split('\n').slice(0, -1).filter((line) => line.includes(' '));
  return said.map((line) => ({ seq: Number(line.split(' ')[0]), hash: line.split(' ')[1]! }));
}

/** Opens a copy of what was left, so that the next program meets it as it is. */
async function check(path: string, look: string, acknowledged: Acknowledged[], seen: { replayed: number }): Promise<void> {
  if (!existsSync(path)) {
    expect(acknowledged).toEqual([]); // killed before the notebook was there
    return;
  }
  rmSync(look, { recursive: true, force: true });
  mkdirSync(look);
  const copy = join(look, 'lab.laydown');
  copyFileSync(path, copy);
  if (existsSync(`${path}.journal`)) copyFileSync(`${path}.journal`, `${copy}.journal`);
  const store = await NotebookStore.open(copy, testClock());
  const hashes = new Map([...store.entries()].map(({ seq, hash }) => [seq, hash]));
  for (const { seq, hash } of acknowledged) expect(hashes.get(seq), `entry ${seq}`).toBe(hash);
  // At most the one batch that was on its way may be there besides.
  const last = acknowledged.at(-1);
  if (last) expect(store.entryCount - last.seq).toBeLessThanOrEqual(2);
  expect(verifyChain(store.entries())).toEqual([]);
  expect(store.tableDifferences()).toEqual([]);
  for (const note of store.openingNotes) expect(note).toMatch(/brought in from the journal|unfinished line/);
  if (store.openingNotes.length > 0) seen.replayed++;
  store.close();
  expect(readFileSync(copy).length).toBeGreaterThan(0);
}

/** Mulberry32: a small generator whose numbers 0–1 follow from the seed. */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}
