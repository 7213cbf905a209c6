import type { BrowserWindow } from 'electron';
import path from 'node:path';
import type { ElectronParts } from './electron-parts.ts';

const NOTEBOOK_FILTER = [{ name: 'Laydown notebook', extensions: ['laydown'] }];

/** Asks for a notebook to open; `null` when the person changed their mind. */
export async function askForNotebook({ dialog }: ElectronParts, window: BrowserWindow, folder: string): Promise<string | null> {
  const answer = await dialog.showOpenDialog(window, {
    title: 'Open notebook',
    defaultPath: folder,
    filters: NOTEBOOK_FILTER,
    properties: ['openFile'],
  });
  return answer.canceled ? null : (answer.filePaths[0] ?? null);
}

/** The notebook named on the command line, by a double click or by a second start; options are passed over. */
export function notebookArgument(args: readonly string[], workingFolder: string): string | null {
  const file = args.find((argument) => argument.endsWith('.laydown') && !argument.startsWith('-'));
  return file ? path.resolve(workingFolder, file) : null;
}
