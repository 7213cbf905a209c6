import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium, type Browser, type Page } from 'playwright-core';

const project = path.resolve(import.meta.dirname, '../..');

/** Chromium as `npm test` found it; a run of vitest by hand may name its own. */
export async function launchBrowser(): Promise<Browser> {
  const executablePath = process.env.LAYDOWN_CHROMIUM || '/usr/bin/chromium';
  return chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--no-first-run'] });
}

/** The program as a user starts it, on loopback, with a home folder of its own. */
export class ServedNotebook {
  readonly home = mkdtempSync(path.join(tmpdir(), 'laydown-e2e-'));
  address = '';
  #process: ChildProcess | null = null;

  /** Folder in which new notebooks and the demo notebook are kept. */
  get notebooks(): string {
    return path.join(this.home, 'notebooks');
  }

  /** Starts `laydown serve` and waits for its address. */
  async start(...args: string[]): Promise<void> {
    const started = spawn(process.execPath, [path.join(project, 'build', 'laydown.mjs'), 'serve', ...args], {
      cwd: project,
      env: { ...process.env, LAYDOWN_HOME: this.home },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    this.#process = started;
    this.address = await new Promise<string>((resolve, reject) => {
      let printed = '';
      const read = (part: Buffer) => {
        printed += part.toString();
        const found = /served at (\S+)/.exec(printed);
        if (found) resolve(found[1]!);
      };
      started.stdout.on('data', read);
      started.stderr.on('data', read);
      started.on('exit', (code) => reject(new Error(`the program ended with ${code}: ${printed}`)));
    });
  }

  /** As a power cut would end it: no goodbye. */
  async kill(): Promise<void> {
    await this.#end('SIGKILL');
  }

  async stop(): Promise<void> {
    await this.#end('SIGTERM');
  }

  async stopAndClear(): Promise<void> {
    await this.stop();
    rmSync(this.home, { recursive: true, force: true });
  }

  async #end(signal: NodeJS.Signals): Promise<void> {
    const running = this.#process;
    this.#process = null;
    if (!running || running.exitCode !== null || running.signalCode !== null) return;
    const ended = new Promise((resolve) => running.once('exit', resolve));
    running.kill(signal);
    await ended;
  }
}

/** A page that fails the test on any script error or breach of the content-security policy. */
export async function openPage(browser: Browser, address: string, options: { colorScheme?: 'light' | 'dark'; width?: number; height?: number } = {}): Promise<{ page: Page; troubles: string[] }> {
  const context = await browser.newContext({
    viewport: { width: options.width ?? 1280, height: options.height ?? 800 },
    colorScheme: options.colorScheme ?? 'light',
    reducedMotion: 'reduce',
    acceptDownloads: true,
  });
  const page = await context.newPage();
  const troubles: string[] = [];
  page.on('pageerror', (error) => troubles.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') troubles.push(message.text());
  });
  await page.goto(address);
  return { page, troubles };
}
