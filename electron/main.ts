import * as electron from 'electron';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { startShell } from './shell/start-shell.ts';

const programFolder = path.dirname(fileURLToPath(import.meta.url));

// Not awaited: Electron becomes ready only after this module has been loaded.
startShell(electron, {
  programFolder,
  screens: path.join(programFolder, '..', 'renderer'),
  arguments: process.argv.slice(electron.app.isPackaged ? 1 : 2),
  workingFolder: process.cwd(),
  platform: process.platform,
  clock: Date.now,
}).catch(stop);
process.on('uncaughtException', stop);

/** Nothing acknowledged can be lost; going on after an unknown fault could only make it worse. */
function stop(error: unknown): void {
  process.stderr.write(`${error instanceof Error ? error.stack : String(error)}\n`);
  electron.dialog.showErrorBox('Laydown has to close', 'Something went wrong in the program. Every acknowledged entry is on disk; start Laydown again.');
  electron.app.exit(1);
}
