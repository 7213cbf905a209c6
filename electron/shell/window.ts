import type { BrowserWindow } from 'electron';
import path from 'node:path';
import type { ElectronParts } from './electron-parts.ts';
import { SCREENS_ORIGIN } from './scheme.ts';

/** A screen that crashes more often than this within a minute is not brought back again. */
const RELOADS_PER_MINUTE = 3;

/** Opens the one window. @param programFolder folder of the bundled shell, where `preload.cjs` lies */
export function openWindow({ BrowserWindow, nativeTheme, dialog }: ElectronParts, programFolder: string, clock: () => number): BrowserWindow {
  const window = new BrowserWindow({
    width: 1280,
    height: 800,
    minWidth: 960,
    minHeight: 600,
    show: false,
    title: 'Laydown',
    backgroundColor: nativeTheme.shouldUseDarkColors ? '#1c1b19' : '#f6f4f0',
    webPreferences: {
      preload: path.join(programFolder, 'preload.cjs'),
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      webviewTag: false,
      spellcheck: false,
      navigateOnDragDrop: false,
    },
  });
  window.once('ready-to-show', () => window.show());

  const crashes: number[] = [];
  window.webContents.on('render-process-gone', () => {
    const now = clock();
    crashes.push(now);
    if (crashes.filter((at) => now - at < 60_000).length > RELOADS_PER_MINUTE) {
      dialog.showErrorBox('The screen keeps stopping', 'Every acknowledged entry is on disk. Close Laydown and start it again.');
      return;
    }
    window.webContents.reload();
  });

  // Without an answer here a page that holds something back could never be closed.
  window.webContents.on('will-prevent-unload', (event) => {
    const answer = dialog.showMessageBoxSync(window, {
      type: 'warning',
      message: 'Something that was typed is not in the notebook yet.',
      detail: 'Stay to see what was refused or waits for a reason. If you leave, it is lost; every acknowledged entry is on disk.',
      buttons: ['Stay', 'Leave'],
      defaultId: 0,
      cancelId: 0,
    });
    if (answer === 1) event.preventDefault();
  });

  void window.loadURL(`${SCREENS_ORIGIN}/index.html`);
  return window;
}
