import { copyFileSync } from 'node:fs';
import path from 'node:path';
import axe, { type AxeResults } from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { callApi } from './call-api.ts';
import { Keyboard } from './keyboard.ts';
import { launchBrowser, openPage, ServedNotebook } from './served-notebook.ts';

/** Two benches come together and everything is found, by keyboard alone. */
const program = new ServedNotebook();
const files = { a: path.join(program.notebooks, 'bench-a.laydown'), b: path.join(program.notebooks, 'bench-b.laydown') };
const sample = { product: 'dumpling pouch 600 g', job: 'J-100', roll: '', note: '', lotIds: [] };
const pictures = path.resolve(import.meta.dirname, '../../out/screens');
let browser: Browser;
let page: Page;
let keyboard: Keyboard;
let troubles: string[];
let testId: string;
let sampleId: string;

beforeAll(async () => {
  browser = await launchBrowser();
  await program.start(path.join(program.home, 'none-yet.laydown'));
  ({ page, troubles } = await openPage(browser, program.address));
  page.setDefaultTimeout(20_000);
  keyboard = new Keyboard(page);
  const cell = { row: 'r1', key: 'gloss' };
  await callApi(page, 'notebook.create', { fileName: 'bench-a', title: 'Series', laboratory: 'Quillmere Flexibles', person: { name: 'Imke Rasmund', initials: 'IR', role: 'technician' } });
  ({ sampleId } = await callApi(page, 'sample.add', { ...sample, code: 'S-014' }));
  ({ test: { testId } } = await callApi(page, 'test.start', { sampleId, methodId: 'gloss' }));
  await callApi(page, 'notebook.checkpoint', {});
  copyFileSync(files.a, files.b);
  await callApi(page, 'reading.enter', { testId, ...cell, typed: '40' });
  await callApi(page, 'sample.add', { ...sample, code: 'S-015' });
  await callApi(page, 'notebook.open', { handle: files.b });
  await callApi(page, 'reading.enter', { testId, ...cell, typed: '42' });
  await callApi(page, 'sample.add', { ...sample, code: 'S-015', product: 'ground coffee brick' });
  await callApi(page, 'notebook.create', { fileName: 'other-house', title: 'Films of the other house', laboratory: 'Corrie', person: { name: 'Teodor Vance', initials: 'TV', role: '' } });
  await callApi(page, 'notebook.open', { handle: files.a });
  await page.reload();
});

afterAll(async () => {
  await browser.close();
  await program.stopAndClear();
});

async function breaches(): Promise<string[]> {
  await page.evaluate(axe.source);
  const { violations } = (await page.evaluate('axe.run(document, { resultTypes: ["violations"] })')) as AxeResults;
  return violations.filter(({ impact }) => impact === 'serious' || impact === 'critical').flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${target.join(' ')}`));
}

describe('another notebook', () => {
  it('is looked at, brought in and settled by keyboard', async () => {
    await keyboard.goTo('Notebook');
    await keyboard.pressButton(page.getByRole('link', { name: 'Bring in another notebook' }));
    await page.getByRole('heading', { name: 'Bring in another notebook' }).waitFor();
    await keyboard.pressButton(page.getByRole('button', { name: 'bench-b.laydown' }));
    await page.getByText(/2 entries not here yet, among them 1 sample added;\s+4 in common\./).waitFor();
    await page.getByRole('table', { name: /^What would not go together: 2/ }).waitFor();
    expect(await breaches()).toEqual([]);
    const bringIn = page.getByRole('button', { name: 'Bring in 2 entries of “Series”' });
    await expect.poll(() => bringIn.evaluate((button) => button === document.activeElement)).toBe(true);
    await keyboard.press('Enter');
    await page.getByRole('status').filter({ hasText: '2 entries of bench-b brought in.' }).waitFor();

    // The keyboard goes on where the news stands.
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('2 entries of bench-b brought in.');
    const conflicts = page.getByRole('table', { name: /^Conflicts with bench-b: 2/ });
    await conflicts.waitFor();
    const reading = conflicts.getByRole('row').filter({ hasText: '42 GU' });
    await reading.getByText('The later one stands: of bench-b.').waitFor();
    await conflicts.getByText('Both stay; the later one, of bench-b, goes by S-015 (bench-b).').waitFor();
    await reading.getByRole('button', { name: 'As it stands…' }).waitFor();
    await keyboard.pressButton(reading.getByRole('button', { name: 'Take the other…' }));
    await page.getByRole('form', { name: 'Settle the conflict' }).waitFor();
    await keyboard.type('read again together');
    await keyboard.press('Enter');
    await reading.getByText('● settled').waitFor();
    await reading.getByText(/Corrected .* from 42 GU to 40 GU/).waitFor();
    await page.getByRole('table', { name: 'Conflicts with bench-b: 2, 1 open' }).waitFor();
    expect(await breaches()).toEqual([]);
  });

  it('brings nothing a second time, and says so', async () => {
    await keyboard.pressButton(page.getByRole('button', { name: 'bench-b.laydown' }), 'backwards');
    await page.getByText('There is nothing new in it: all of its 6 entries are here.').waitFor();
    await keyboard.pressButton(page.getByRole('button', { name: 'Leave it' }));
  });

  it('asks twice for a notebook that is no copy, and shows whose it is', async () => {
    await keyboard.pressButton(page.getByRole('button', { name: 'other-house.laydown' }), 'backwards');
    const panel = page.getByRole('form', { name: /^Films of the other house/ });
    const both = panel.getByRole('table', { name: 'Both notebooks' });
    await both.getByRole('row', { name: 'Laboratory Quillmere Flexibles Corrie' }).waitFor();
    await panel.getByText('2 entries not here yet, among them 1 person added.').waitFor();
    expect(await breaches()).toEqual([]);
    await page.screenshot({ path: path.join(pictures, 'another-notebook-light.png'), fullPage: true });
    const tick = panel.getByRole('checkbox', { name: 'It belongs to this laboratory' });
    await expect.poll(() => tick.evaluate((box) => box === document.activeElement)).toBe(true);
    await keyboard.press('Tab', 'Enter');
    await panel.getByRole('alert').filter({ hasText: 'have no entry in common' }).waitFor();
    expect((await callApi(page, 'merges.list', {})).length).toBe(1);
    await keyboard.press('Shift+Tab', 'Space', 'Tab');
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Bring in 2 entries of “Films of the other house”');
    await keyboard.press('Tab', 'Enter');
    await panel.waitFor({ state: 'detached' });
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Choose a file…');
  });

  it('shows in the record whose entries are whose, and all of it verifies', async () => {
    await keyboard.goTo('Record');
    await page.getByText('Of bench-b, entry 6 there.').waitFor();
    await page.getByText('Brought in 2 entries of bench-b (“Series”): 2 conflicts to settle.').waitFor();
    expect(await callApi(page, 'record.verify', {})).toMatchObject({ intact: true, remarks: [] });
    const sheet = await callApi(page, 'test.get', { testId });
    expect(sheet.rows[0]?.cells.gloss).toMatchObject({ value: 40, corrections: 1 });
  });
});

describe('a search through everything', () => {
  const field = () => page.getByRole('combobox', { name: 'Search everything' });

  it('goes straight to the sample whose code is typed, without waiting', async () => {
    await keyboard.goTo('Today');
    await keyboard.press('Control+k');
    await keyboard.type('s-014');
    await keyboard.press('Enter');
    await page.getByRole('heading', { name: 'S-014', exact: true }).waitFor();
    expect(await field().count()).toBe(0);
    expect(page.url()).toContain(`#/samples/${sampleId}`);
  });

  it('shows what there is of each kind, and the arrow keys choose', async () => {
    await callApi(page, 'trialSet.add', { title: 'Gloss series', question: '', product: '' });
    await keyboard.press('Control+k');
    await keyboard.type('gloss');
    const found = page.getByRole('listbox', { name: 'Found' });
    await found.getByRole('option', { name: /^Gloss on S-014/ }).waitFor();
    await found.getByRole('group', { name: /^Trial sets/ }).waitFor();
    await found.getByRole('group', { name: /^Methods/ }).waitFor();
    await found.getByRole('group', { name: /^Record/ }).waitFor();
    expect(await breaches()).toEqual([]);
    const chosen = () => found.getByRole('option', { selected: true }).textContent();
    const first = await chosen();
    await keyboard.press('ArrowDown');
    expect(await chosen()).not.toBe(first);
    await keyboard.press('ArrowUp', 'Enter');
    await page.getByRole('heading', { name: /Gloss/ }).first().waitFor();
    expect(page.url()).toContain(`#/bench-sheet/${testId}`);
  });

  it('leaves a cell that is being typed as it was, and gives the focus back', async () => {
    const cell = page.getByRole('textbox', { name: /Gloss/ }).nth(1);
    await keyboard.reach(cell);
    await keyboard.type('41');
    await keyboard.press('Control+k');
    await expect.poll(() => field().evaluate((input) => input === document.activeElement)).toBe(true);
    await keyboard.type('nothing is called so');
    await page.getByText('Nothing in this notebook has all of that.').waitFor();
    await keyboard.press('Escape');
    expect(await field().count()).toBe(0);
    await expect.poll(() => cell.evaluate((input) => input === document.activeElement)).toBe(true);
    expect(await cell.inputValue()).toBe('41');
  });

  it('opens an entry about no sample in the Record, narrowed to what was looked for', async () => {
    await keyboard.press('Control+k');
    await keyboard.type('merged series');
    await page.getByRole('option', { name: /^Brought in 2 entries/ }).waitFor();
    await keyboard.press('Enter');
    await page.getByRole('heading', { name: 'Record' }).waitFor();
    expect(await page.getByRole('searchbox', { name: 'Search', exact: true }).inputValue()).toBe('merged series');
    expect(troubles).toEqual([]);
  });
});
