import { copyFileSync, existsSync } from 'node:fs';
import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { callApi } from './call-api.ts';
import { Keyboard } from './keyboard.ts';
import { launchBrowser, openPage, ServedNotebook } from './served-notebook.ts';

/** The notebook itself: its title, which one is open, and what is said when the program has ended. By keyboard alone. */
const program = new ServedNotebook();
const pictures = path.resolve(import.meta.dirname, '../../out/screens');
const person = { name: 'Imke Rasmund', initials: 'IR', role: 'technician' };
let browser: Browser;
let page: Page;
let keys: Keyboard;

beforeAll(async () => {
  browser = await launchBrowser();
  await program.start(path.join(program.home, 'none-yet.laydown'));
  await open();
  await callApi(page, 'notebook.create', { fileName: 'bench-a', title: 'Series', laboratory: '', person });
  await callApi(page, 'notebook.checkpoint', {});
  copyFileSync(path.join(program.notebooks, 'bench-a.laydown'), path.join(program.notebooks, 'put there by hand.laydown'));
});

afterAll(async () => {
  await browser.close();
  await program.stopAndClear();
});

async function open(): Promise<void> {
  ({ page } = await openPage(browser, program.address));
  page.setDefaultTimeout(20_000);
  keys = new Keyboard(page);
}

describe('the screen Notebook', () => {
  it('says which bench it is, and changes title and laboratory with a reason', async () => {
    await keys.goTo('Notebook');
    await page.getByText('bench-a', { exact: true }).waitFor();
    const change = page.getByRole('button', { name: 'Change title or laboratory…' });
    await keys.pressButton(change);
    await keys.fill(page.getByRole('textbox', { name: /^Title/ }), 'Series 2026');
    await keys.press('Enter');
    await page.getByText(/This takes the place of something that was said before/).waitFor();
    await keys.fill(page.getByRole('textbox', { name: /^Reason/ }), 'a new year');
    await page.screenshot({ path: path.join(pictures, 'notebook-change-light.png'), fullPage: true });
    await keys.press('Enter');
    await page.getByRole('heading', { name: 'Series 2026', level: 1 }).waitFor();
    await expect.poll(() => change.evaluate((button) => button === document.activeElement)).toBe(true);
    expect(await page.title()).toBe('Notebook – Series 2026 – Laydown');
  });

  it('lists a file that was put into the folder, opens it, and says how any other is opened', async () => {
    await page.getByText(/A notebook that lies elsewhere: .* npm start -- FILE/).waitFor();
    await keys.pressButton(page.getByRole('button', { name: 'put there by hand.laydown' }));
    await page.getByRole('heading', { name: 'Today', level: 1 }).waitFor();
    await keys.goTo('Notebook');
    await page.getByRole('heading', { name: 'Series', level: 1 }).waitFor();
  });
});

describe('a program that has ended', () => {
  it('is said to have, with what to do; nothing is said to be on disk', async () => {
    await page.getByText('every entry is on disk').waitFor();
    await program.kill();
    await page.getByText(/^The program does not answer: it has ended\. Start it again and open the address that it prints;/).waitFor();
    await page.getByText('the program does not answer', { exact: true }).waitFor();
    expect(await page.getByText('every entry is on disk').count()).toBe(0);
    await page.screenshot({ path: path.join(pictures, 'program-ended-light.png') });
  });

  it('opens the notebook that was open last when it is started without one, not the demo', async () => {
    await program.start();
    await open();
    await page.getByText('put there by hand.laydown').or(page.getByRole('heading', { name: 'Today', level: 1 })).first().waitFor();
    expect((await callApi(page, 'session.get', {})).notebook).toMatchObject({ fileName: 'put there by hand.laydown' });
    expect(existsSync(path.join(program.notebooks, 'demo.laydown'))).toBe(false);
  });
});
