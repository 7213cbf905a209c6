import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { _electron } from 'playwright-core';
import { afterAll, describe, expect, it } from 'vitest';

const project = path.resolve(import.meta.dirname, '../..');
const name = { darwin: 'Electron.app/Contents/MacOS/Electron', win32: 'electron.exe' }[process.platform as string] ?? 'electron';
const executable = path.join(process.env.ELECTRON_OVERRIDE_DIST_PATH ?? path.join(project, 'node_modules', 'electron', 'dist'), name);
const display = process.platform !== 'linux' || Boolean(process.env.DISPLAY ?? process.env.WAYLAND_DISPLAY);
const home = mkdtempSync(path.join(tmpdir(), 'laydown-electron-'));

afterAll(() => rmSync(home, { recursive: true, force: true }));

// Skipped, and counted as skipped, where Electron's program file or a display is not to be had.
describe.skipIf(!existsSync(executable) || !display)('the shell in a real Electron', () => {
  it('opens the demo notebook in an isolated window and closes it', async () => {
    const app = await _electron.launch({ executablePath: executable, args: [project], env: { ...process.env, LAYDOWN_HOME: home } as Record<string, string> });
    const window = await app.firstWindow();
    await window.getByRole('heading', { name: 'Today' }).waitFor();
    expect(await window.evaluate(() => typeof (globalThis as { require?: unknown }).require)).toBe('undefined');
    expect(new URL(window.url()).origin).toBe('app://laydown');
    await app.close();
    expect(existsSync(path.join(home, 'notebooks', 'demo.laydown.lock'))).toBe(false);
  });
});
