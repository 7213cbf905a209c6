import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { callApi } from './call-api.ts';
import { Keyboard } from './keyboard.ts';
import { launchBrowser, openPage, ServedNotebook } from './served-notebook.ts';

/** Today with more that is due than anybody reads, all by keyboard. */
const program = new ServedNotebook();
let browser: Browser;
let page: Page;
let keys: Keyboard;
let troubles: string[];

const daysOn = (days: number) => new Date(Date.now() + days * 86_400_000).toISOString().slice(0, 10);

beforeAll(async () => {
  browser = await launchBrowser();
  await program.start(path.join(program.home, 'none-yet.laydown'));
  ({ page, troubles } = await openPage(browser, program.address));
  page.setDefaultTimeout(20_000);
  keys = new Keyboard(page);
  await callApi(page, 'notebook.create', { fileName: 'much', title: 'Much that is due', laboratory: '', person: { name: 'Imke Rasmund', initials: 'IR', role: 'technician' } });
  for (let number = 1; number <= 30; number += 1) {
    await callApi(page, 'sample.add', { code: `S-${number}`, product: 'coffee brick', job: '', roll: '', note: '', lotIds: [], retainedUntil: daysOn(number - 26) });
  }
  await callApi(page, 'instrument.add', { name: 'Gloss meter', serial: 'G-1', methodIds: ['gloss'], note: '' });
});

afterAll(async () => {
  await browser.close();
  await program.stopAndClear();
});

it('shows what is overdue and what is next, how much there is of each kind, and the rest where it is asked for', async () => {
  await keys.goTo('Today');
  const kinds = page.getByRole('group', { name: 'Show what is due' }).getByRole('button');
  await expect.poll(async () => (await kinds.allInnerTexts()).map((text) => text.replace(/\s+/g, ' '))).toEqual(['Everything 31', 'Calibrations 1', 'Samples kept long enough 30']);
  await page.getByRole('rowheader', { name: 'Overdue 25' }).waitFor();
  await page.getByRole('rowheader', { name: 'Next 6' }).waitFor();
  const dispose = page.getByRole('link', { name: /^Dispose of sample/ });
  // The longest overdue first, and what is next is not hidden by it.
  await expect.poll(() => dispose.count()).toBe(8 + 5);
  expect(await dispose.first().innerText()).toBe('Dispose of sample S-1, or keep it longer');

  await keys.pressButton(page.getByRole('button', { name: 'and 17 more that are overdue' }));
  await expect.poll(() => dispose.count()).toBe(30);
  await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('Dispose of sample S-9, or keep it longer');

  // Of what is next, what is due this day says so.
  await page.getByRole('row', { name: new RegExp(`^Dispose of sample S-26.* ${daysOn(0)}\\s+today$`) }).waitFor();
  expect(await page.getByRole('row', { name: /today$/ }).count()).toBe(2);

  await keys.pressButton(kinds.nth(1), 'backwards');
  await expect.poll(() => page.getByRole('link', { name: /^(Dispose|Calibrate)/ }).allInnerTexts()).toEqual(['Calibrate Gloss meter, G-1']);
  expect(await kinds.nth(1).getAttribute('aria-pressed')).toBe('true');
  expect(troubles).toEqual([]);
});
