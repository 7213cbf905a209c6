import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { callApi } from './call-api.ts';
import { launchBrowser, openPage, ServedNotebook } from './served-notebook.ts';

/** What a gloved hand on the number pad relies on: the focus is where the next key belongs. */
const program = new ServedNotebook();
let browser: Browser;
let page: Page;
let sampleId: string;

beforeAll(async () => {
  browser = await launchBrowser();
  await program.start(path.join(program.home, 'none-yet.laydown'));
  ({ page } = await openPage(browser, program.address));
  page.setDefaultTimeout(15_000);
  await callApi(page, 'notebook.create', { fileName: 'bench', title: 'At the bench', laboratory: '', person: { name: 'Imke Rasmund', initials: 'IR', role: '' } });
  ({ sampleId } = await callApi(page, 'sample.add', { code: 'S-1', product: '', job: '', roll: '', note: '', lotIds: [] }));
});

afterAll(async () => {
  await browser.close();
  await program.stopAndClear();
});

const cell = (row: number, field: string) => page.getByLabel(new RegExp(`^position ${row}, ${field}`));
const focused = () => page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.textContent?.trim() ?? '');

async function type(...keysAndTexts: string[]): Promise<void> {
  for (const one of keysAndTexts) {
    if (/^[A-Z]/.test(one)) await page.keyboard.press(one);
    else await page.keyboard.type(one);
  }
}

describe('the focus on the bench sheet', () => {
  let testId: string;

  beforeEach(async () => {
    ({
      test: { testId },
    } = await callApi(page, 'test.start', { sampleId, methodId: 'test-fluids' }));
    await page.evaluate((id) => (location.hash = `#/bench-sheet/${id}`), testId);
    await page.locator(`a[href="#/record/${testId}"]`).waitFor();
  });

  it('goes from the end of a row typed along to the beginning of the next', async () => {
    await cell(1, 'Holds').focus();
    await type('38', 'NumpadMultiply', '40', 'NumpadEnter');
    expect(await focused()).toMatch(/^position 2, Holds/);
    // Down a column it stays in the column.
    await type('36', 'NumpadEnter');
    expect(await focused()).toMatch(/^position 3, Holds/);
    // Passing through a cell begins nothing.
    await type('NumpadMultiply', '39', 'NumpadEnter');
    expect(await focused()).toMatch(/^position 4, Retracts/);
  });

  it('stays in its column when a row is voided', async () => {
    await cell(1, 'Retracts').focus();
    await type('40', 'Enter');
    await cell(1, 'Retracts').focus();
    await type('Control+Delete');
    await page.getByLabel('Why does position 1 not count?').waitFor();
    await type('swab used twice', 'Enter');
    await expect.poll(focused).toMatch(/^position 2, Retracts/);
  });

  it('does not finish over what is typed and not entered, and goes to what is finished', async () => {
    await callApi(page, 'readings.paste', { testId, row: 'r1', key: 'wetsMNm', pasted: '38\t40\n36\t38\n38\t40' });
    await expect.poll(() => cell(3, 'Retracts').inputValue()).toBe('40');
    await cell(4, 'Holds').focus();
    await type('36', 'Control+Enter');
    await page.getByRole('alert').getByText(/typed that is not in the record/).waitFor();
    expect((await callApi(page, 'test.get', { testId })).test.state).toBe('running');
    // In a form or a line that has an Enter of its own it does nothing.
    await type('Escape', 'Control+Delete', 'Tab');
    await page.getByRole('button', { name: 'Limits…' }).press('Enter');
    await type('38', 'Control+Enter');
    expect((await callApi(page, 'test.get', { testId })).test.state).toBe('running');
    await page.getByRole('button', { name: 'Leave them' }).press('Enter');
    await cell(4, 'Holds').focus();
    await type('Control+Enter');
    await expect.poll(focused).toBe('Finished');
    expect((await callApi(page, 'test.get', { testId })).test).toMatchObject({ state: 'finished', readings: 3 });
  });

  it('goes into the limits and back to where they were asked for', async () => {
    await page.getByRole('button', { name: 'Limits…' }).press('Enter');
    const first = page.getByRole('group', { name: /^Wetting tension/ }).getByLabel('At least');
    await expect.poll(() => first.evaluate((field) => field === document.activeElement)).toBe(true);
    await type('38', 'Enter');
    await expect.poll(focused).toBe('Limits…');
  });

  it('leaves nothing behind that was being typed when the page was loaded anew', async () => {
    await cell(1, 'Holds').focus();
    await type('38');
    page.once('dialog', (dialog) => void dialog.accept());
    await page.reload();
    await expect.poll(() => cell(1, 'Holds').inputValue()).toBe('38');
    await page.getByRole('button', { name: 'Dismiss' }).press('Enter');
  });
});

it('draws a figure anew when the window changes its width', async () => {
  const { test } = await callApi(page, 'test.start', { sampleId, methodId: 'test-fluids' });
  await callApi(page, 'readings.paste', { testId: test.testId, row: 'r1', key: 'wetsMNm', pasted: '38\t40\n37\t39\n38\t40' });
  await page.evaluate((id) => (location.hash = `#/bench-sheet/${id}`), test.testId);
  const figure = page.getByRole('region', { name: /^Result/ }).locator('canvas').first();
  // Drawn and shown at the same width, letters are as wide as they should be.
  const drawnToShown = () => figure.evaluate((canvas: HTMLCanvasElement) => canvas.width / devicePixelRatio / canvas.getBoundingClientRect().width);
  for (const width of [1280, 1920, 960]) {
    await page.setViewportSize({ width, height: 800 });
    await expect.poll(drawnToShown).toBeCloseTo(1, 2);
  }
  await page.setViewportSize({ width: 1280, height: 800 });
});

it('leads the keyboard to the new screen', async () => {
  await page.keyboard.press('Alt+Digit3');
  await page.getByRole('heading', { name: 'Materials', level: 1 }).waitFor();
  await page.keyboard.press('Tab');
  expect(await focused()).toBe('Instruments and fluids');
});
