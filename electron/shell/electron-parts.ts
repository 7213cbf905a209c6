import type * as Electron from 'electron';

/** The parts of Electron that the shell uses. The tests hand in a stand-in of the same type. */
export type ElectronParts = Pick<
  typeof Electron,
  'app' | 'BrowserWindow' | 'Menu' | 'dialog' | 'ipcMain' | 'protocol' | 'net' | 'session' | 'shell' | 'utilityProcess' | 'nativeTheme'
>;
