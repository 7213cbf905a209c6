import type { MenuItemConstructorOptions } from 'electron';
import type { ApplicationEvent } from '../../shared-lib/api.ts';

export type MenuCommand = Extract<ApplicationEvent, { kind: 'command' }>['command'];

export interface MenuActions {
  newNotebook(): void;
  openNotebook(): void;
  openRecent(path: string): void;
  /** Sent to the screens, which carry it out. */
  command(command: MenuCommand): void;
}

/** The application menu; recent notebooks are our own list, because the systems' differ. */
export function menuTemplate(platform: NodeJS.Platform, recent: { fileName: string; handle: string }[], actions: MenuActions): MenuItemConstructorOptions[] {
  const mac = platform === 'darwin';
  const recentItems: MenuItemConstructorOptions[] =
    recent.length > 0
      ? recent.map((notebook) => ({ label: notebook.fileName, click: () => actions.openRecent(notebook.handle) }))
      : [{ label: 'None yet', enabled: false }];
  return [
    ...(mac ? [{ role: 'appMenu' } as const] : []),
    {
      label: '&Notebook',
      submenu: [
        { label: 'New notebook…', accelerator: 'CmdOrCtrl+N', click: actions.newNotebook },
        { label: 'Open notebook…', accelerator: 'CmdOrCtrl+O', click: actions.openNotebook },
        { label: 'Recent notebooks', submenu: recentItems },
        { type: 'separator' },
        { label: 'Bring in another notebook…', click: () => actions.command('bring-in') },
        { type: 'separator' },
        mac ? { role: 'close' } : { role: 'quit' },
      ],
    },
    { role: 'editMenu' },
    {
      label: '&Go',
      submenu: [
        // The screens hear the keys themselves, as for the places below.
        { label: 'Search…', accelerator: 'CmdOrCtrl+K', registerAccelerator: false, click: () => actions.command('search') },
        { type: 'separator' },
        { label: 'Today', accelerator: 'Alt+1', registerAccelerator: false, click: () => actions.command('show-today') },
        { label: 'Samples', accelerator: 'Alt+2', registerAccelerator: false, click: () => actions.command('show-samples') },
        { label: 'Materials', accelerator: 'Alt+3', registerAccelerator: false, click: () => actions.command('show-materials') },
        { label: 'Trials', accelerator: 'Alt+4', registerAccelerator: false, click: () => actions.command('show-trials') },
        { label: 'Methods', accelerator: 'Alt+5', registerAccelerator: false, click: () => actions.command('show-methods') },
        { label: 'Plans', accelerator: 'Alt+6', registerAccelerator: false, click: () => actions.command('show-plans') },
        { label: 'Approvals', accelerator: 'Alt+7', registerAccelerator: false, click: () => actions.command('show-approvals') },
        { label: 'Reports', accelerator: 'Alt+8', registerAccelerator: false, click: () => actions.command('show-reports') },
        { label: 'Record', accelerator: 'Alt+9', registerAccelerator: false, click: () => actions.command('show-record') },
        { type: 'separator' },
        { label: 'New sample', accelerator: 'CmdOrCtrl+Shift+N', click: () => actions.command('new-sample') },
      ],
    },
    {
      label: '&View',
      submenu: [{ role: 'zoomIn' }, { role: 'zoomOut' }, { role: 'resetZoom' }, { type: 'separator' }, { role: 'togglefullscreen' }],
    },
    { role: 'windowMenu' },
  ];
}
