// Everything that CI runs. The last line counts: static checks and tests alike.
import { spawn, spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { ensureDependencies, projectFolder, requireNode } from './dependencies.mjs';

requireNode();
ensureDependencies();

const { bundleApplication, bundleRenderer } = await import('./bundle.mjs');
const { findChromium } = await import('./chromium.mjs');

const staticOnly = process.argv.includes('--static');
const slow = process.argv.includes('--slow');
const counts = { passed: 0, failed: 0, skipped: 0 };

const bin = (name) => path.join(projectFolder, 'node_modules', ...name);
// None waits for another: on two cores they take half the time.
await Promise.all([
  check('types of the application and the tests', [bin(['typescript', 'bin', 'tsc']), '-p', '.']),
  check('lint', [bin(['eslint', 'bin', 'eslint.js']), '--config', 'build/eslint.config.mjs', '.', '--max-warnings', '0']),
  check('types of the screens', [bin(['svelte-check', 'bin', 'svelte-check']), '--tsconfig', 'renderer/tsconfig.json', '--fail-on-warnings', '--output', 'human']),
  check('types of the pure library', [bin(['typescript', 'bin', 'tsc']), '-p', 'shared-lib']),
]);

if (!staticOnly) {
  await attempt('bundle of the application', bundleApplication);
  await attempt('bundle of the screens', bundleRenderer);
  const chromium = await findChromium();
  if (!chromium) {
    console.error('No Chromium could be found or installed: the browser tests cannot run.');
    counts.failed += 1;
  }
  runVitest(chromium);
}

const skipped = counts.skipped > 0 ? `, ${counts.skipped} skipped` : '';
console.log(`${counts.passed} passed, ${counts.failed} failed${skipped}`);
process.exitCode = counts.failed > 0 ? 1 : 0;

/** Runs one static check as one test. What it prints comes in one piece, once it has ended. */
async function check(name, command) {
  const started = Date.now();
  const running = spawn(process.execPath, command, { cwd: projectFolder, stdio: ['ignore', 'pipe', 'pipe'] });
  let printed = '';
  for (const stream of [running.stdout, running.stderr]) stream.setEncoding('utf8').on('data', (text) => (printed += text));
  const status = await new Promise((resolve) => running.on('close', resolve).on('error', () => resolve(1)));
  process.stdout.write(printed);
  report(name, status === 0, started);
}

async function attempt(name, work) {
  const started = Date.now();
  try {
    await work();
    report(name, true, started);
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    report(name, false, started);
  }
}

function report(name, passed, started) {
  counts[passed ? 'passed' : 'failed'] += 1;
  console.log(`${passed ? 'ok    ' : 'FAILED'} ${name} (${((Date.now() - started) / 1000).toFixed(1)} s)`);
}

function runVitest(chromium) {
  const results = path.join(projectFolder, 'out', 'test-results.json');
  mkdirSync(path.dirname(results), { recursive: true });
  rmSync(results, { force: true });
  const { status } = spawnSync(
    process.execPath,
    [bin(['vitest', 'vitest.mjs']), 'run', '--config', 'build/vitest.config.ts', '--reporter=default', '--reporter=json', `--outputFile.json=${results}`],
    {
      cwd: projectFolder,
      stdio: ['ignore', 1, 2],
      env: { ...process.env, LAYDOWN_CHROMIUM: chromium ?? '', LAYDOWN_SLOW: slow ? '1' : '' },
    },
  );
  try {
    const { numPassedTests, numFailedTests, numPendingTests, numTodoTests, numFailedTestSuites } = JSON.parse(readFileSync(results, 'utf8'));
    counts.passed += numPassedTests;
    counts.failed += numFailedTests;
    counts.skipped += numPendingTests + numTodoTests;
    // A suite that could not be loaded, or an error outside any test, has no failed test of its own.
    if (status !== 0 && numFailedTests === 0) counts.failed += Math.max(1, numFailedTestSuites);
  } catch {
    counts.failed += 1;
  }
}
