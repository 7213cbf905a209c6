// Brings node_modules in line with package-lock.json. Runs before anything is installed, so it uses Node alone.
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

export const projectFolder = path.dirname(path.dirname(fileURLToPath(import.meta.url)));

/** Stops with one sentence when this Node is too old for the project. */
export function requireNode() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major > 20 || (major === 20 && minor >= 19)) return;
  console.error(`Laydown needs Node.js 20.19 or newer; this is ${process.versions.node}.`);
  process.exit(1);
}

/** Runs `npm ci` unless every package stands in node_modules at the version the lock file names. */
export function ensureDependencies() {
  if (installedMatchesLock()) return;
  console.error('Installing packages (npm ci) …');
  try {
    execFileSync(process.platform === 'win32' ? 'npm.cmd' : 'npm', ['ci', '--loglevel=error'], {
      cwd: projectFolder,
      stdio: ['ignore', 2, 2],
      shell: process.platform === 'win32',
    });
  } catch {
    console.error('The packages could not be installed; npm says why above. Is the package registry reachable?');
    process.exit(1);
  }
}

function installedMatchesLock() {
  const installedFile = path.join(projectFolder, 'node_modules', '.package-lock.json');
  if (!existsSync(installedFile)) return false;
  const wanted = JSON.parse(readFileSync(path.join(projectFolder, 'package-lock.json'), 'utf8')).packages;
  const installed = JSON.parse(readFileSync(installedFile, 'utf8')).packages;
  return Object.entries(wanted).every(
    ([folder, entry]) => folder === '' || entry.optional || entry.peer || installed[folder]?.version === entry.version,
  );
}
