// Bundles the application for Node (out/app) and the screens for the window (out/renderer), each only when a source is newer.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { setTimeout as pause } from 'node:timers/promises';
import { ensureDependencies, projectFolder, requireNode } from './dependencies.mjs';

const out = path.join(projectFolder, 'out');

/** Bundles the Node side: command line, loopback host, application worker and Electron shell. */
export async function bundleApplication() {
  const target = path.join(out, 'app');
  const mark = sourceMark(['electron', 'shared-lib'], ['package-lock.json', 'build/bundle.mjs']);
  await remake(target, mark, () => buildApplication(target));
  return target;
}

async function buildApplication(target) {
  const esbuild = await import('esbuild');
  rmSync(target, { recursive: true, force: true });
  const common = {
    absWorkingDir: projectFolder,
    bundle: true,
    platform: 'node',
    target: 'node20',
    sourcemap: true,
    logLevel: 'warning',
    // Native, WebAssembly and data-carrying packages stay where npm put them.
    external: ['electron', '@napi-rs/canvas', 'sql.js', 'pdfmake', 'chart.js', '@expo-google-fonts/*'],
  };
  await esbuild.build({
    ...common,
    format: 'esm',
    splitting: true,
    outdir: target,
    outExtension: { '.js': '.mjs' },
    entryPoints: {
      'command-line': 'electron/command-line.ts',
      worker: 'electron/worker.ts',
      main: 'electron/main.ts',
    },
    // Some dependencies are CommonJS and call require for Node's own modules.
    banner: {
      js: "import { createRequire as createRequireForBundle } from 'node:module'; const require = createRequireForBundle(import.meta.url);",
    },
  });
  // A sandboxed preload script must be one CommonJS file.
  await esbuild.build({ ...common, format: 'cjs', outfile: path.join(target, 'preload.cjs'), entryPoints: ['electron/preload.ts'] });
}

/** Bundles the screens with Vite. */
export async function bundleRenderer() {
  const target = path.join(out, 'renderer');
  const mark = sourceMark(['renderer', 'shared-lib'], ['package-lock.json', 'build/bundle.mjs']);
  await remake(target, mark, async () => {
    const vite = await import('vite');
    await vite.build({ configFile: path.join(projectFolder, 'renderer', 'vite.config.ts'), logLevel: 'warn' });
  });
  return target;
}

/** A bundle takes seconds; a lock older than this was left by a process that was stopped. */
const STALE_LOCK_MS = 60_000;

/** Builds unless the bundle is fresh; of several processes started at once, one builds and the others wait for it. */
async function remake(target, mark, build) {
  const lock = `${target}.lock`;
  mkdirSync(path.dirname(target), { recursive: true });
  while (!isFresh(target, mark)) {
    try {
      mkdirSync(lock);
    } catch (error) {
      if (error.code !== 'EEXIST') throw error;
      const age = Date.now() - (statSync(lock, { throwIfNoEntry: false })?.mtimeMs ?? Date.now());
      if (age > STALE_LOCK_MS) rmSync(lock, { recursive: true, force: true });
      await pause(50);
      continue;
    }
    try {
      // Another process may have finished between the look and the lock.
      if (!isFresh(target, mark)) {
        await build();
        writeMark(target, mark);
      }
    } finally {
      rmSync(lock, { recursive: true, force: true });
    }
  }
}

/** A digest of the names, sizes and times of all sources: cheap, and different as soon as one file was saved. */
function sourceMark(folders, files) {
  const hash = createHash('sha256');
  const add = (file) => {
    const { size, mtimeMs } = statSync(file);
    hash.update(`${file}\0${size}\0${mtimeMs}\n`);
  };
  for (const folder of folders) {
    const entries = readdirSync(path.join(projectFolder, folder), { recursive: true, withFileTypes: true });
    for (const entry of entries.sort((a, b) => (a.parentPath + a.name < b.parentPath + b.name ? -1 : 1))) {
      if (entry.isFile()) add(path.join(entry.parentPath, entry.name));
    }
  }
  for (const file of files) add(path.join(projectFolder, file));
  return hash.digest('hex');
}

function isFresh(target, mark) {
  const file = path.join(target, '.sources');
  return existsSync(file) && readFileSync(file, 'utf8') === mark;
}

function writeMark(target, mark) {
  mkdirSync(target, { recursive: true });
  writeFileSync(path.join(target, '.sources'), mark);
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  requireNode();
  ensureDependencies();
  await bundleApplication();
  await bundleRenderer();
}
