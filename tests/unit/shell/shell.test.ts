import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { CALL_CHANNEL, EVENT_CHANNEL, HAND_OVER_CHANNEL } from '../../../electron/shell/channels.ts';
import { startShell } from '../../../electron/shell/start-shell.ts';
import { StandIn, StandInContents } from './stand-in.ts';

let electron: StandIn;
let folder: string;
let now: number;

beforeEach(() => {
  electron = new StandIn();
  folder = mkdtempSync(path.join(tmpdir(), 'laydown-shell-'));
  writeFileSync(path.join(folder, 'index.html'), '<!doctype html>');
  writeFileSync(path.join(folder, 'lab.laydown'), '');
  now = 0;
});

const start = (args: string[] = []) =>
  startShell(electron.parts, {
    programFolder: '/program',
    screens: folder,
    arguments: args,
    workingFolder: folder,
    platform: 'linux',
    clock: () => now,
  });

const ownFrame = { url: 'app://laydown/index.html', parent: null };

describe('the window', () => {
  it('is isolated and sandboxed, without Node, with the preload script', async () => {
    await start();
    expect(electron.window.options.webPreferences).toMatchObject({
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      webviewTag: false,
      preload: path.join('/program', 'preload.cjs'),
    });
    expect(electron.window.address).toBe('app://laydown/index.html');
  });

  it('turns the sandbox on and registers the scheme before Electron is ready', async () => {
    await start();
    expect(electron.log.indexOf('sandbox')).toBeLessThan(electron.log.indexOf('ready'));
    expect(electron.log.indexOf('scheme')).toBeLessThan(electron.log.indexOf('ready'));
    expect(electron.schemes[0]).toMatchObject({ scheme: 'app', privileges: { standard: true, secure: true } });
    expect(electron.schemes[0]!.privileges).not.toHaveProperty('bypassCSP');
  });

  it('comes back after a crash, but not for ever', async () => {
    await start();
    for (let crash = 0; crash < 6; crash++) electron.window.webContents.emit('render-process-gone');
    expect(electron.window.webContents.reloads).toBe(3);
    expect(electron.errors.join()).toMatch(/acknowledged entry is on disk/);
  });

  it('asks before it is closed over something unsaved, and then lets itself be closed', async () => {
    await start();
    const closedAfter = (button: number): boolean => {
      electron.chosenButton = button;
      let closed = false;
      // Electron: preventDefault() ignores the page's objection.
      electron.window.webContents.emit('will-prevent-unload', { preventDefault: () => (closed = true) });
      return closed;
    };
    expect(closedAfter(0)).toBe(false);
    expect(closedAfter(1)).toBe(true);
  });
});

describe('what pages may do', () => {
  it('denies every permission', async () => {
    await start();
    let granted: boolean | null = null;
    electron.permission.request!(...([null, 'media', (answer: boolean) => (granted = answer)] as never[]));
    expect(granted).toBe(false);
    expect(electron.permission.check!()).toBe(false);
    expect(electron.permission.device!()).toBe(false);
  });

  it.each([
    ['app://laydown/index.html', false],
    ['https://example.org/', true],
    ['app://laydown.example.org/', true],
    ['https://example.org/?app://laydown/', true],
    ['file:///etc/passwd', true],
    ['javascript:alert(1)', true],
    ['not an address', true],
  ])('navigation to %s is stopped: %s', async (url, stopped) => {
    await start();
    const contents = new StandInContents();
    electron.app.emit('web-contents-created', {}, contents);
    for (const kind of ['will-navigate', 'will-redirect', 'will-frame-navigate']) {
      let prevented = false;
      contents.emit(kind, { url, preventDefault: () => (prevented = true) });
      expect(prevented, kind).toBe(stopped);
    }
    expect(contents.openHandler!({ url })).toEqual({ action: 'deny' });
  });

  it('serves only files inside the screens folder, with the content-security policy', async () => {
    await start();
    const get = (url: string, method = 'GET') => electron.schemeHandler!({ url, method });
    const page = await get('app://laydown/index.html');
    expect(page.status).toBe(200);
    expect(page.headers.get('content-security-policy')).toContain("default-src 'none'");
    expect((await get('app://laydown/..%2f..%2fetc%2fpasswd')).status).toBe(404);
    expect((await get('app://laydown/%2e%2e/%2e%2e/etc/passwd')).status).toBe(404);
    expect((await get('app://elsewhere/index.html')).status).toBe(403);
    expect((await get('app://laydown/index.html', 'POST')).status).toBe(403);
  });
});

describe('the bridge', () => {
  const call = (senderFrame: unknown, name: unknown = 'session.get') =>
    electron.handlers.get(CALL_CHANNEL)!(...([{ senderFrame }, name, {}] as never[])) as Promise<{ ok: boolean }>;

  it('hands a call of our own main frame to the application', async () => {
    await start();
    expect((await call(ownFrame)).ok).toBe(true);
    expect(electron.child.messages.some(({ kind, name }) => kind === 'call' && name === 'session.get')).toBe(true);
  });

  it.each([
    ['no frame', null],
    ['another origin', { url: 'https://example.org/', parent: null }],
    ['a frame inside the page', { url: 'app://laydown/index.html', parent: {} }],
  ])('refuses %s', async (_name, frame) => {
    await start();
    const before = electron.child.messages.length;
    expect((await call(frame)).ok).toBe(false);
    expect(electron.child.messages.length).toBe(before);
  });

  it('refuses a call without a name', async () => {
    await start();
    expect((await call(ownFrame, { toString: 'x' })).ok).toBe(false);
  });

  it('hands over by its path a file that was chosen in our own page, and no other', async () => {
    await start();
    const handOver = (senderFrame: unknown, file: unknown) => electron.handlers.get(HAND_OVER_CHANNEL)!(...([{ senderFrame }, file] as never[])) as Promise<{ ok: boolean }>;
    expect((await handOver(ownFrame, '/stick/other.laydown')).ok).toBe(true);
    expect((await handOver({ url: 'https://example.org/', parent: null }, '/etc/passwd')).ok).toBe(false);
    // What Electron says of a file that was made in the page.
    expect((await handOver(ownFrame, '')).ok).toBe(false);
    expect(electron.child.messages.filter(({ kind }) => kind === 'hand-over').map((message) => message.path)).toEqual(['/stick/other.laydown']);
  });

  it('sends application events to the screens on the one channel', async () => {
    await start();
    electron.child.emit('message', { kind: 'event', event: { kind: 'trouble', text: 'x' } });
    expect(electron.window.webContents.sent).toContainEqual({ channel: EVENT_CHANNEL, message: { kind: 'trouble', text: 'x' } });
  });
});

describe('notebooks', () => {
  const opened = () => electron.child.messages.filter(({ kind }) => kind === 'open').map((message) => message.path);

  it('opens the notebook that was open last when none is named, and says so when it is gone', async () => {
    electron.recent = [path.join(folder, 'lab.laydown'), '/labs/older.laydown'];
    await start();
    expect(opened()).toEqual([path.join(folder, 'lab.laydown')]);
    expect(electron.child.messages.some(({ kind }) => kind === 'open-demo')).toBe(false);
    electron.recent = ['/labs/gone.laydown'];
    await start();
    expect(electron.errors.join()).toMatch(/no notebook at .*gone\.laydown/);
  });

  it('opens the demo notebook when none is named and none was opened yet', async () => {
    await start();
    expect(electron.child.messages.some(({ kind }) => kind === 'open-demo')).toBe(true);
  });

  it('opens the notebook named on the command line', async () => {
    await start(['--some-switch', 'lab.laydown']);
    expect(opened()).toEqual([path.join(folder, 'lab.laydown')]);
  });

  it('says so when the named notebook is not there', async () => {
    await start(['missing.laydown']);
    expect(opened()).toEqual([]);
    expect(electron.errors.join()).toMatch(/no notebook at .*missing\.laydown/);
  });

  it('opens a notebook double-clicked on macOS', async () => {
    await start();
    let prevented = false;
    electron.app.emit('open-file', { preventDefault: () => (prevented = true) }, path.join(folder, 'lab.laydown'));
    expect(prevented).toBe(true);
    expect(opened()).toEqual([path.join(folder, 'lab.laydown')]);
  });

  it('hands a second start to the first', async () => {
    electron.app.lock = false;
    await start(['lab.laydown']);
    expect(electron.lockData).toEqual({ notebook: path.join(folder, 'lab.laydown') });
    expect(electron.log).toContain('quit');
    expect(electron.children).toEqual([]);
  });

  it('opens what a second start hands over, and comes to the front', async () => {
    await start();
    electron.app.emit('second-instance', {}, [], folder, { notebook: path.join(folder, 'lab.laydown') });
    expect(opened()).toEqual([path.join(folder, 'lab.laydown')]);
    expect(electron.window.focused).toBe(1);
  });

  it('asks in a dialog from the menu, and opens what was chosen', async () => {
    await start();
    electron.chosenFiles = [path.join(folder, 'lab.laydown')];
    electron.menuItem('&Notebook', 'Open notebook…').click!();
    await new Promise((resolve) => setTimeout(resolve));
    expect(opened()).toEqual([path.join(folder, 'lab.laydown')]);
  });

  it('opens a recent one from the menu, and says so when it has gone', async () => {
    electron.recent = [path.join(folder, 'lab.laydown'), '/labs/a.laydown'];
    await start();
    const recent = electron.menu.find(({ label }) => label === '&Notebook')!.submenu!.find(({ label }) => label === 'Recent notebooks')!;
    (recent as unknown as { submenu: { click: () => void }[] }).submenu[1]!.click();
    await new Promise((resolve) => setTimeout(resolve));
    expect(electron.errors.join()).toMatch(/no notebook at \/labs\/a\.laydown/);
  });

  it.each(['Today', 'Samples', 'Materials', 'Trials', 'Methods', 'Plans', 'Approvals', 'Reports', 'Record'])('has %s in the Go menu, which the screens carry out', async (name) => {
    await start();
    electron.menuItem('&Go', name).click!();
    expect(electron.window.webContents.sent.at(-1)).toEqual({ channel: EVENT_CHANNEL, message: { kind: 'command', command: `show-${name.toLowerCase()}` } });
  });

  it.each([
    ['&Notebook', 'Bring in another notebook…', 'bring-in'],
    ['&Go', 'Search…', 'search'],
    ['&Go', 'New sample', 'new-sample'],
  ])('has under %s: %s, which the screens carry out', async (menu, item, command) => {
    await start();
    electron.menuItem(menu, item).click!();
    expect(electron.window.webContents.sent.at(-1)).toEqual({ channel: EVENT_CHANNEL, message: { kind: 'command', command } });
  });

  it('writes the file before it quits', async () => {
    await start();
    electron.app.emit('window-all-closed');
    await new Promise((resolve) => setTimeout(resolve));
    expect(electron.child.messages.at(-1)?.kind).toBe('close');
    expect(electron.log).toContain('quit');
  });
});
