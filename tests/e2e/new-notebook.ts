import { mkdirSync } from 'node:fs';
import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { callApi } from './call-api.ts';
import { Keyboard } from './keyboard.ts';
import { launchBrowser, openPage, ServedNotebook } from './served-notebook.ts';

const pictures = path.resolve(import.meta.dirname, '../../out/screens');

/** The program on a notebook that was just begun, in a browser, with somebody at the bench. */
export class NewNotebook {
  readonly program = new ServedNotebook();
  page!: Page;
  keys!: Keyboard;
  /** Script errors and breaches of the content-security policy. */
  troubles!: string[];
  #browser!: Browser;

  /** Begins the notebook and waits for Today. */
  async open(title: string): Promise<this> {
    this.#browser = await launchBrowser();
    await this.program.start(path.join(this.program.home, 'none-yet.laydown'));
    Object.assign(this, await openPage(this.#browser, this.program.address));
    this.page.setDefaultTimeout(20_000);
    this.keys = new Keyboard(this.page);
    await callApi(this.page, 'notebook.create', {
      fileName: title.toLowerCase(),
      title,
      laboratory: 'Quillmere Flexibles',
      person: { name: 'Imke Rasmund', initials: 'IR', role: 'technician' },
    });
    await this.page.getByRole('heading', { name: 'Today', level: 1 }).waitFor();
    return this;
  }

  /** Light and dark into out/screens, for people to look at. */
  async picture(name: string): Promise<void> {
    mkdirSync(pictures, { recursive: true });
    for (const theme of ['light', 'dark'] as const) {
      await this.page.emulateMedia({ colorScheme: theme });
      await this.page.screenshot({ path: path.join(pictures, `${name}-${theme}.png`), fullPage: true });
    }
  }

  async close(): Promise<void> {
    await this.#browser.close();
    await this.program.stopAndClear();
  }
}
