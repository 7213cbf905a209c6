import type { BrowserWindow } from 'electron';
import { existsSync } from 'node:fs';
import path from 'node:path';
import type { SessionView } from '../../shared-lib/notebook/views.ts';
import type { ApplicationEvent } from '../../shared-lib/api.ts';
import { lastOpened } from '../last-opened.ts';
import { notebooksFolder, settingsFolder } from '../places.ts';
import { bridgeCalls } from './bridge.ts';
import { EVENT_CHANNEL } from './channels.ts';
import type { ElectronParts } from './electron-parts.ts';
import { denyPermissions, holdNavigation } from './lock-down.ts';
import { menuTemplate } from './menu.ts';
import { askForNotebook, notebookArgument } from './notebook-dialogs.ts';
import { registerScheme, serveScreens } from './scheme.ts';
import { startInUtilityProcess } from './utility-process.ts';
import { openWindow } from './window.ts';

export interface ShellSurroundings {
  /** Folder of the bundled shell (main.mjs, preload.cjs, worker.mjs). */
  programFolder: string;
  /** Folder of the bundled screens. */
  screens: string;
  arguments: readonly string[];
  workingFolder: string;
  platform: NodeJS.Platform;
  clock: () => number;
}

/** Wires the whole shell. Holds no logic of the notebook: that is the application's. */
export async function startShell(electron: ElectronParts, surroundings: ShellSurroundings): Promise<void> {
  const { app, BrowserWindow, Menu, dialog, session } = electron;
  // A second start hands its file to the first one.
  const wanted = notebookArgument(surroundings.arguments, surroundings.workingFolder);
  if (!app.requestSingleInstanceLock({ notebook: wanted })) {
    app.quit();
    return;
  }
  app.enableSandbox();
  registerScheme(electron);
  holdNavigation(electron);

  let openWhenReady = wanted;
  // macOS sends the double-clicked file as an event, possibly before ready.
  app.on('open-file', (event, file) => {
    event.preventDefault();
    openWhenReady = file;
    if (shell) void shell.open(file);
  });

  let shell: Shell | null = null;
  await app.whenReady();
  denyPermissions(session.defaultSession);
  serveScreens(electron, surroundings.screens);

  const folder = notebooksFolder();
  const application = startInUtilityProcess(electron, path.join(surroundings.programFolder, 'worker.mjs'), {
    settingsFolder: settingsFolder(),
    notebooksFolder: folder,
    version: app.getVersion(),
  });
  bridgeCalls(electron, application);

  let window: BrowserWindow | null = null;
  const tell = (event: ApplicationEvent) => window?.webContents.send(EVENT_CHANNEL, event);
  application.subscribe((event) => {
    tell(event);
    if (event.kind === 'notebook-changed') void refreshMenu();
  });

  shell = {
    async open(file) {
      const answer = existsSync(file) ? await application.open(file) : { ok: false as const, problem: { message: `There is no notebook at ${file}.` } };
      if (!answer.ok) dialog.showErrorBox('The notebook could not be opened', answer.problem.message);
    },
  };

  async function refreshMenu(): Promise<void> {
    const answer = await application.call('session.get', {});
    const recent = answer.ok ? (answer.value as SessionView).recent : [];
    Menu.setApplicationMenu(
      Menu.buildFromTemplate(
        menuTemplate(surroundings.platform, recent, {
          newNotebook: () => tell({ kind: 'command', command: 'new-notebook' }),
          openNotebook: () => void chooseNotebook(),
          openRecent: (handle) => void shell?.open(handle),
          command: (command) => tell({ kind: 'command', command }),
        }),
      ),
    );
  }

  async function chooseNotebook(): Promise<void> {
    if (!window || !shell) return;
    const file = await askForNotebook(electron, window, folder);
    if (file) await shell.open(file);
  }

  app.on('second-instance', (_event, _args, _folder, data) => {
    const file = (data as { notebook?: unknown } | undefined)?.notebook;
    if (typeof file === 'string') void shell?.open(file);
    if (window?.isMinimized()) window.restore();
    window?.focus();
  });
  app.on('activate', () => {
    if (BrowserWindow.getAllWindows().length === 0) window = openWindow(electron, surroundings.programFolder, surroundings.clock);
  });
  app.on('window-all-closed', () => {
    // Entries are durable already; closing writes the file and frees the lock.
    void application.close().finally(() => app.quit());
  });

  // The window first: making the demo notebook takes seconds, and the screens wait for the application by themselves.
  window = openWindow(electron, surroundings.programFolder, surroundings.clock);
  const last = openWhenReady ? null : await lastOpened(application);
  // A file may have been double-clicked meanwhile.
  const toOpen = openWhenReady ?? last;
  if (toOpen) await shell.open(toOpen);
  else {
    const answer = await application.openDemo(path.join(folder, 'demo.laydown'));
    if (!answer.ok) dialog.showErrorBox('The demo notebook could not be opened', answer.problem.message);
  }
  await refreshMenu();
}

interface Shell {
  open(file: string): Promise<void>;
}
