// Measures each bench file of tests/bench in a process of its own and prints ours against the named peer.
import { spawnSync } from 'node:child_process';
import { readdirSync, rmSync } from 'node:fs';
import path from 'node:path';
import { ensureDependencies, projectFolder, requireNode } from './dependencies.mjs';

requireNode();
ensureDependencies();

const { build } = await import('esbuild');
const folder = path.join(projectFolder, 'tests', 'bench');
const target = path.join(projectFolder, 'out', 'bench');
const wanted = process.argv[2] ?? '';
const files = readdirSync(folder).filter((file) => file.endsWith('.bench.ts') && file.includes(wanted));

rmSync(target, { recursive: true, force: true });
await build({
  absWorkingDir: projectFolder,
  bundle: true,
  platform: 'node',
  target: 'node20',
  format: 'esm',
  packages: 'external',
  logLevel: 'warning',
  outdir: target,
  outExtension: { '.js': '.mjs' },
  entryPoints: files.map((file) => path.join(folder, file)),
});

const rows = [];
let broken = 0;
for (const file of files) {
  const { status, stdout } = spawnSync(process.execPath, ['--expose-gc', path.join(target, file.replace(/\.ts$/, '.mjs'))], {
    cwd: projectFolder,
    stdio: ['ignore', 'pipe', 2],
    encoding: 'utf8',
  });
  for (const line of stdout.split('\n').filter(Boolean)) rows.push(JSON.parse(line));
  if (status !== 0) {
    console.error(`${file} stopped before its end.`);
    broken += 1;
  }
}

const cells = rows.map(({ what, ours, peer, theirs, unit, target: { atMost, atLeast } }) => {
  // 'at least 20 times faster' is read the other way round: the peer's cost over ours.
  const ratio = atLeast === undefined ? ours / theirs : theirs / ours;
  const met = atLeast === undefined ? ratio <= atMost : ratio >= atLeast;
  return {
    what,
    ours: shown(ours, unit),
    peer,
    theirs: shown(theirs, unit),
    ratio: ratio.toFixed(2),
    target: atLeast === undefined ? `≤ ${atMost}` : `≥ ${atLeast}`,
    outcome: met ? 'met' : 'missed',
  };
});
const heads = { what: 'what', ours: 'ours, median', peer: 'peer', theirs: 'peer, median', ratio: 'ratio', target: 'target', outcome: '' };
const widths = Object.keys(heads).map((key) => Math.max(...[heads, ...cells].map((row) => row[key].length)));
for (const row of [heads, ...cells]) {
  console.log(Object.values(row).map((cell, column) => cell.padEnd(widths[column])).join('  ').trimEnd());
}
const missed = cells.filter(({ outcome }) => outcome === 'missed').length;
console.log(`${cells.length - missed} met, ${missed} missed${broken > 0 ? `, ${broken} not measured` : ''}`);
process.exitCode = missed + broken > 0 ? 1 : 0;

function shown(value, unit) {
  return `${value.toPrecision(3)} ${unit}`;
}
