import { homedir } from 'node:os';
import path from 'node:path';

/** Folder of the program's own settings, where the operating system wants it. `LAYDOWN_HOME` moves it (tests, shared machines). */
export function settingsFolder(environment: NodeJS.ProcessEnv = process.env): string {
  if (environment.LAYDOWN_HOME) return path.resolve(environment.LAYDOWN_HOME, 'settings');
  if (process.platform === 'win32') return path.join(environment.APPDATA ?? path.join(homedir(), 'AppData', 'Roaming'), 'Laydown');
  if (process.platform === 'darwin') return path.join(homedir(), 'Library', 'Application Support', 'Laydown');
  return path.join(environment.XDG_CONFIG_HOME ?? path.join(homedir(), '.config'), 'laydown');
}

/** Folder in which new notebooks and the demo notebook are kept unless a dialog chose another. */
export function notebooksFolder(environment: NodeJS.ProcessEnv = process.env): string {
  if (environment.LAYDOWN_HOME) return path.resolve(environment.LAYDOWN_HOME, 'notebooks');
  return path.join(homedir(), 'Laydown');
}
