import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { callApi } from './call-api.ts';
import { launchBrowser, openPage, ServedNotebook } from './served-notebook.ts';

const first = new ServedNotebook();
const second = new ServedNotebook();
const third = new ServedNotebook();
const file = path.join(first.notebooks, 'shared.laydown');
let browser: Browser;
let writer: Page;

beforeAll(async () => {
  browser = await launchBrowser();
  await first.start(path.join(first.home, 'none-yet.laydown'));
  ({ page: writer } = await openPage(browser, first.address));
  await callApi(writer, 'notebook.create', { fileName: 'shared', title: 'Shared', laboratory: '', person: { name: 'Imke Rasmund', initials: 'IR', role: '' } });
  await callApi(writer, 'sample.add', { code: 'S-1', product: 'coffee brick', job: '', roll: '', note: '', lotIds: [] });
});

afterAll(async () => {
  await browser.close();
  for (const program of [third, second, first]) await program.stopAndClear();
});

describe('two programs on one notebook', () => {
  it('open it read-only in the second, which says so and takes nothing', async () => {
    await second.start(file);
    const { page, troubles } = await openPage(browser, second.address);
    await page.getByText(/read-only: .+/).waitFor();
    await page.getByRole('navigation').getByRole('link', { name: /^Samples/ }).click();
    // What the first has entered is there, also what its file may not hold yet.
    await page.getByRole('link', { name: 'S-1' }).waitFor();
    expect(await page.getByRole('button', { name: 'Add sample…' }).isDisabled()).toBe(true);
    await expect(callApi(page, 'sample.add', { code: 'S-2', product: '', job: '', roll: '', note: '', lotIds: [] })).rejects.toThrow(/read-only/);
    await page.getByRole('navigation').getByRole('link', { name: /^Notebook/ }).click();
    await page.getByText(/^Read-only: .+/).waitFor();
    expect(troubles).toEqual([]);
  });

  it('say in a page without its key where the key is', async () => {
    const { page } = await openPage(browser, new URL('/', first.address).href);
    await page.getByRole('alert').filter({ hasText: /open the address that was printed at the start/ }).waitFor();
    await page.context().close();
  });

  it('leave the first free to go on', async () => {
    await callApi(writer, 'sample.add', { code: 'S-3', product: '', job: '', roll: '', note: '', lotIds: [] });
    expect((await callApi(writer, 'session.get', {})).notebook!.readOnly).toBe(false);
  });

  it('let a second window of the same program see what the first enters, without asking', async () => {
    const { page, troubles } = await openPage(browser, first.address);
    await page.getByRole('navigation').getByRole('link', { name: /^Samples/ }).click();
    await page.getByRole('link', { name: 'S-3' }).waitFor();
    await callApi(writer, 'sample.add', { code: 'S-3b', product: '', job: '', roll: '', note: '', lotIds: [] });
    await page.getByRole('link', { name: 'S-3b' }).waitFor();
    expect(troubles).toEqual([]);
    await page.context().close();
  });

  it('open it writable again once the first has closed', async () => {
    await first.stop();
    await third.start(file);
    const { page, troubles } = await openPage(browser, third.address);
    await page.getByText('every entry is on disk').waitFor();
    expect(await page.getByText(/read-only/i).count()).toBe(0);
    await page.getByRole('navigation').getByRole('link', { name: /^Samples/ }).click();
    await page.getByRole('link', { name: 'S-3', exact: true }).waitFor();
    await page.getByRole('button', { name: 'Add sample…' }).click();
    await page.getByLabel(/^Code/).fill('S-4');
    await page.getByRole('button', { name: 'Add sample', exact: true }).click();
    await page.getByRole('heading', { name: 'S-4', exact: true }).waitFor();
    expect((await callApi(page, 'record.verify', {})).intact).toBe(true);
    expect(troubles).toEqual([]);
  });
});
