import { EventEmitter } from 'node:events';
import path from 'node:path';
import type { ElectronParts } from '../../../electron/shell/electron-parts.ts';

type Listener = (...args: never[]) => unknown;

/** Records what the shell asks of Electron; behaves as the real parts do where the shell depends on it. */
export class StandIn {
  readonly log: string[] = [];
  readonly app = Object.assign(new EventEmitter(), {
    isPackaged: false,
    lock: true,
    requestSingleInstanceLock: (data: unknown) => {
      this.lockData = data;
      return this.app.lock;
    },
    enableSandbox: () => void this.log.push('sandbox'),
    whenReady: () => {
      this.log.push('ready');
      return Promise.resolve();
    },
    getVersion: () => '0.1.0',
    quit: () => void this.log.push('quit'),
    exit: () => void this.log.push('exit'),
  });
  lockData: unknown;
  schemes: { scheme: string; privileges?: Record<string, boolean> }[] = [];
  schemeHandler: ((request: { url: string; method: string }) => Promise<Response>) | null = null;
  handlers = new Map<string, Listener>();
  permission: { request: Listener | null; check: Listener | null; device: Listener | null } = { request: null, check: null, device: null };
  windows: StandInWindow[] = [];
  children: StandInChild[] = [];
  menu: { label?: string; submenu?: { label?: string; click?: () => void }[] }[] = [];
  errors: string[] = [];
  chosenFiles: string[] = [];
  /** Notebooks that the application says were opened before, newest first. */
  recent: string[] = [];
  /** The button that is pressed in a message box, from 0. */
  chosenButton = 0;

  /** The stand-in as the shell sees it. */
  get parts(): ElectronParts {
    const windows = this.windows;
    class Window extends StandInWindow {
      static getAllWindows = () => windows;
      constructor(options: { webPreferences: Record<string, unknown> }) {
        super(options);
        windows.push(this);
      }
    }
    const parts = {
      app: this.app,
      BrowserWindow: Window,
      Menu: {
        buildFromTemplate: (template: never) => template,
        setApplicationMenu: (menu: never) => void (this.menu = menu),
      },
      dialog: {
        showErrorBox: (_title: string, text: string) => void this.errors.push(text),
        showMessageBoxSync: () => this.chosenButton,
        showOpenDialog: () => Promise.resolve({ canceled: this.chosenFiles.length === 0, filePaths: this.chosenFiles }),
      },
      ipcMain: { handle: (channel: string, handler: Listener) => void this.handlers.set(channel, handler) },
      protocol: {
        registerSchemesAsPrivileged: (schemes: never) => {
          this.log.push('scheme');
          this.schemes = schemes;
        },
        handle: (_scheme: string, handler: never) => void (this.schemeHandler = handler),
      },
      session: {
        defaultSession: {
          setPermissionRequestHandler: (handler: Listener) => void (this.permission.request = handler),
          setPermissionCheckHandler: (handler: Listener) => void (this.permission.check = handler),
          setDevicePermissionHandler: (handler: Listener) => void (this.permission.device = handler),
        },
      },
      shell: {},
      net: {},
      nativeTheme: { shouldUseDarkColors: false },
      utilityProcess: {
        fork: (script: string) => {
          const child = new StandInChild(script, () => this.recent);
          this.children.push(child);
          return child;
        },
      },
    };
    return parts as unknown as ElectronParts;
  }

  get window(): StandInWindow {
    return this.windows.at(-1)!;
  }

  get child(): StandInChild {
    return this.children[0]!;
  }

  menuItem(menu: string, item: string): { click?: () => void } {
    const found = this.menu.find(({ label }) => label === menu)?.submenu?.find(({ label }) => label === item);
    if (!found) throw new Error(`no menu item ${menu} › ${item}`);
    return found;
  }
}

export class StandInContents extends EventEmitter {
  sent: { channel: string; message: unknown }[] = [];
  openHandler: ((details: { url: string }) => { action: string }) | null = null;
  reloads = 0;
  send(channel: string, message: unknown): void {
    this.sent.push({ channel, message });
  }
  setWindowOpenHandler(handler: (details: { url: string }) => { action: string }): void {
    this.openHandler = handler;
  }
  reload(): void {
    this.reloads += 1;
  }
}

export class StandInWindow extends EventEmitter {
  webContents = new StandInContents();
  address = '';
  focused = 0;
  constructor(readonly options: { webPreferences: Record<string, unknown> }) {
    super();
  }
  loadURL(address: string): Promise<void> {
    this.address = address;
    return Promise.resolve();
  }
  shown = false;
  show(): void {
    this.shown = true;
  }
  isMinimized(): boolean {
    return false;
  }
  restore(): void {
    this.focused += 1;
  }
  focus(): void {
    this.focused += 1;
  }
}

/** Answers as the application would, so that the wiring runs to its end. */
export class StandInChild extends EventEmitter {
  messages: { kind: string; path?: string; name?: string; input?: unknown; number?: number }[] = [];
  constructor(
    readonly script: string,
    private readonly recent: () => string[],
  ) {
    super();
  }
  postMessage(message: { kind: string; number?: number; name?: string; path?: string }): void {
    this.messages.push(message);
    if (message.number === undefined) return;
    const value = message.name === 'session.get' ? { recent: this.recent().map((handle) => ({ handle, fileName: path.basename(handle), openedAt: '' })) } : null;
    queueMicrotask(() => this.emit('message', { kind: 'answer', number: message.number, answer: { ok: true, value } }));
  }
}
