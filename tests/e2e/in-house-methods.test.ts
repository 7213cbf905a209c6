import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { callApi } from './call-api.ts';
import { Keyboard } from './keyboard.ts';
import { launchBrowser, openPage, ServedNotebook } from './served-notebook.ts';

/**
 * A shop's own test, by keyboard alone: told as a habit, written down, run, changed while it runs, finished by the version
 * that it was started with, started anew by the next one, written out and taken in by another notebook. The steps build on
 * each other and run in order.
 */
const program = new ServedNotebook();
const folder = mkdtempSync(path.join(tmpdir(), 'laydown-method-file-'));
const methodFile = path.join(folder, 'thumb-twist-rub.laydown-method.json');
let browser: Browser;
let page: Page;
let troubles: string[];
let keys: Keyboard;
let firstTest = '';

beforeAll(async () => {
  browser = await launchBrowser();
  await program.start(path.join(program.home, 'none-yet.laydown'));
  ({ page, troubles } = await openPage(browser, program.address));
  page.setDefaultTimeout(15_000);
  keys = new Keyboard(page);
  await callApi(page, 'notebook.create', { fileName: 'own-methods', title: 'Own methods', laboratory: 'Quillmere Flexibles', person: { name: 'Imke Rasmund', initials: 'IR', role: 'technician' } });
  for (const code of ['QF-1', 'QF-2']) await callApi(page, 'sample.add', { code, product: 'dumpling pouch 600 g', job: '', roll: '', note: '', lotIds: [] });
  await page.getByRole('heading', { name: 'Today' }).waitFor();
});

afterAll(async () => {
  await browser.close();
  await program.stopAndClear();
  rmSync(folder, { recursive: true, force: true });
});

const button = (name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' });
const link = (name: string | RegExp) => page.getByRole('link', { name, exact: typeof name === 'string' });
const heading = (name: string | RegExp) => page.getByRole('heading', { name, level: 1, exact: typeof name === 'string' });

async function choose(label: string, shown: string, within: Page | ReturnType<Page['getByRole']> = page): Promise<void> {
  await keys.reach(within.getByLabel(label, { exact: true }));
  await keys.type(shown);
}

async function start(sample: string): Promise<string> {
  await keys.goTo('Samples');
  await keys.pressButton(link(sample));
  await heading(sample).waitFor();
  await keys.reach(page.getByRole('combobox', { name: /start/i }));
  await keys.type('thumb');
  await page.getByRole('option', { name: /^Thumb-twist rub/ }).waitFor();
  await keys.press('Enter');
  await heading('Thumb-twist rub').waitFor();
  return decodeURIComponent(new URL(page.url()).hash.split('/')[2]!);
}

/** Column by column: the grades by their digits, then how many twists it took, and whether they were the end. */
async function read(grades: string[], twists: string[]): Promise<void> {
  await page.getByRole('combobox', { name: 'Instrument' }).waitFor();
  await keys.fill(page.getByLabel('Temperature'), '23');
  await keys.press('Enter');
  await keys.reach(page.getByLabel(/^place 1, Grade/));
  for (const grade of grades) {
    await keys.type(grade);
    await keys.press('ArrowDown');
  }
  await keys.typeColumn(page.getByLabel(/^place 1, Twists to smear(?!: end)/), twists);
}

describe('a shop’s own test by keyboard', () => {
  it('is told as a habit, and what to hold, read and repeat is said', async () => {
    await keys.goTo('Methods');
    await keys.pressButton(link('Standardise a habit…'));
    await heading('Standardise a habit').waitFor();
    const form = page.getByRole('form', { name: 'The habit today' });
    await keys.fill(form.getByLabel(/^What is it called/), 'Thumb-twist rub');
    await choose('What is looked at?', 'whether colour rubs', form);
    await choose('How is it said?', 'as a grade', form);
    await keys.fill(form.getByLabel(/^What is it to find out/), 'Whether fresh ink smears when a thumb is twisted on it.');
    await keys.fill(form.getByLabel('Load, today'), 'as hard as it feels right');
    await keys.reach(form.getByLabel('Load varies'));
    await keys.press('Space');
    await keys.fill(form.getByLabel('Load, to be held at in N'), '10');
    await keys.fill(form.getByLabel('Tape or cloth, today'), 'the overall');
    await keys.fill(form.getByLabel('Tape or cloth, to be held at'), 'white cotton');
    const advice = page.getByRole('region', { name: 'What follows from it' });
    await advice.getByText(/Load \(today: as hard as it feels right\).*weight or a spring balance/).waitFor();
    await advice.getByText(/^6 times\./).waitFor();
    await keys.pressButton(form.getByRole('button', { name: 'Keep it and write it down…' }));
    await heading('Write down a method').waitFor();
  });

  it('is written down on one page, with its sheet beside it', async () => {
    const form = page.getByRole('form', { name: 'Method' });
    expect(await form.getByLabel(/^Title/).inputValue()).toBe('Thumb-twist rub');
    expect(await form.getByLabel('Load, held at').inputValue()).toBe('10');
    await keys.fill(form.getByLabel('Load, tolerance'), '0,5');
    await keys.fill(form.getByLabel('Strokes, held at'), '5');
    await keys.reach(form.getByLabel('Instrument is one of the instruments'), 'backwards');
    await keys.press('Space');
    expect(await form.getByLabel('Instrument, held at').isDisabled()).toBe(true);
    await keys.reach(form.getByLabel('Temperature is written down each time'));
    await keys.press('Space');
    await keys.fill(form.getByLabel('One row is a'), 'place');
    const meanings = ['bare film', 'more gone than left', 'holes', 'thin spots', 'cloth marked, print whole', 'nothing to be seen'];
    for (const [grade, meaning] of meanings.entries()) await keys.fill(form.getByLabel(`What grade ${grade} means`), meaning);
    await keys.pressButton(form.getByRole('button', { name: 'Add reading' }));
    const second = form.getByRole('group', { name: 'Reading 2' });
    await choose('As', 'a count', second);
    await keys.reach(second.getByLabel(/may be ‘or more’/));
    await keys.press('Space');
    await keys.reach(second.getByLabel('What is read'), 'backwards');
    await keys.type('Twists to smear');
    const result = form.getByRole('group', { name: 'Result' });
    await keys.fill(result.getByLabel('Limit: at least'), '4');
    await keys.fill(result.getByLabel('Limit asked for by'), 'shop rule');
    await keys.pressButton(form.getByRole('button', { name: 'Add result' }));
    await choose('The', 'median', form.getByRole('group', { name: /twists to smear$/i }).last());
    const preview = page.getByRole('region', { name: 'The bench sheet it makes' });
    await preview.getByRole('row', { name: 'place 6' }).waitFor();
    await preview.getByText('Result: limit ≥ 4').waitFor();
    await preview.getByText('Instrument', { exact: true }).waitFor();
    // A grade without its sentence is refused at its place.
    await keys.fill(form.getByLabel('What grade 2 means'), ' ');
    await keys.pressButton(button('Keep this method'));
    await form.getByRole('alert').getByText(/Reading 1 \(Grade\).*must not be empty/).waitFor();
    await keys.fill(form.getByLabel('What grade 2 means'), 'holes');
    await keys.pressButton(button('Keep this method'));
    await heading('Thumb-twist rub').waitFor();
    await page.getByRole('region', { name: 'State of the method' }).getByText(/^. written/).first().waitFor();
    expect(troubles).toEqual([]);
  });

  it('runs on the bench like any other', async () => {
    firstTest = await start('QF-1');
    expect(await page.getByLabel('Load').inputValue()).toBe('10');
    await read(['4', '5', '4'], ['12', '15', '20']);
    const lines = page.getByRole('region', { name: /^Result/ }).getByRole('listitem');
    await lines.filter({ hasText: 'Result' }).getByText(/limit ≥ 4/).first().waitFor();
    expect(troubles).toEqual([]);
  });

  it('is changed while that test runs, with a reason', async () => {
    await keys.goTo('Methods');
    await keys.pressButton(link('Thumb-twist rub'));
    await keys.pressButton(link('New version…'));
    await heading('New version of Thumb-twist rub').waitFor();
    const form = page.getByRole('form', { name: 'Method' });
    await keys.fill(form.getByLabel('Strokes, held at'), '10');
    await keys.pressButton(button('Keep this version'));
    await form.getByText(/say in a few words why it changes/).first().waitFor();
    await keys.fill(form.getByLabel(/^Why is it changed/), 'five twists show nothing');
    await keys.pressButton(button('Keep this version'));
    await heading('Thumb-twist rub').waitFor();
    const versions = page.getByRole('table', { name: 'Versions' });
    const newer = versions.getByRole('row').filter({ hasText: 'five twists show nothing' });
    await newer.waitFor();
    expect(await newer.textContent()).toContain('Strokes: 5 → 10.');
    expect(await versions.getByRole('row').filter({ hasText: 'the first' }).textContent()).toMatch(/1 running/);
  });

  it('is finished by the version that it was started with', async () => {
    await page.evaluate((id) => (location.hash = `#/bench-sheet/${id}`), firstTest);
    await heading('Thumb-twist rub').waitFor();
    expect(await page.getByLabel('Strokes').inputValue()).toBe('5');
    for (const [row, grade, twists] of [[4, '5', '11'], [5, '4', '14'], [6, '4', '18']] as const) {
      await keys.reach(page.getByLabel(new RegExp(`^place ${row}, Grade`)));
      await keys.type(grade);
      await keys.fill(page.getByLabel(new RegExp(`^place ${row}, Twists to smear(?!: end)`)), twists);
      await keys.press('Enter');
    }
    await keys.pressButton(button(/^Finish/));
    await page.getByText(/· finished ·/).waitFor();
    const sheet = await callApi(page, 'test.get', { testId: firstTest });
    expect(sheet.test).toMatchObject({ state: 'finished', methodVersion: '1', verdict: 'meets' });
    // 11, 12, 14, 15, 18, 20: the median is 14.5, between the lowest and the highest (96.9 %, six readings).
    expect(sheet.live!.lines.map(({ text }) => text)).toEqual(['4', '14.5']);
    expect(sheet.live!.result.flags).toEqual([]);
  });

  it('starts anew by the new version', async () => {
    await start('QF-2');
    expect(await page.getByLabel('Strokes').inputValue()).toBe('10');
  });

  it('is written out and taken in by another notebook; the same file again changes nothing', async () => {
    await keys.goTo('Methods');
    await keys.pressButton(link('Thumb-twist rub'));
    const write = button('Write out version 2 as a file');
    await keys.reach(write);
    const [download] = await Promise.all([page.waitForEvent('download'), keys.press('Enter')]);
    expect(download.suggestedFilename()).toBe('thumb-twist-rub-v2.laydown-method.json');
    await download.saveAs(methodFile);
    const { versions } = await callApi(page, 'inHouseMethod.get', { methodId: decodeURIComponent(new URL(page.url()).hash.split('/')[2]!) });

    await callApi(page, 'notebook.create', { fileName: 'elsewhere', title: 'Elsewhere', laboratory: 'Tamarind', person: { name: 'Teodor Vance', initials: 'TV', role: 'ink chemist' } });
    await page.reload();
    await keys.goTo('Methods');
    await keys.pressButton(button('Take in a file…'));
    const hostile = path.join(folder, 'hostile.laydown-method.json');
    writeFileSync(hostile, readFileSync(methodFile, 'utf8').replace('"replicates": 6', '"replicates": 6000000'));
    await keys.chooseFile(button('Choose a method file…'), hostile);
    await page.getByRole('alert').getByText(/does not hold a whole method.*at most 100/).waitFor();
    await keys.chooseFile(button('Choose a method file…'), methodFile);
    await page.getByText(/^This is version 2 of Quillmere Flexibles, written by Imke Rasmund/).waitFor();
    await keys.pressButton(button('Take it in'));
    await heading('Thumb-twist rub').waitFor();
    await page.getByText(/^Taken in: version 2 of Quillmere Flexibles/).waitFor();
    const methodId = decodeURIComponent(new URL(page.url()).hash.split('/')[2]!);
    const taken = await callApi(page, 'inHouseMethod.get', { methodId });
    expect(taken.written).toEqual(versions[0]!.written);
    expect((await callApi(page, 'methodFile.write', { methodId })).text).toBe(readFileSync(methodFile, 'utf8'));

    await keys.goTo('Methods');
    await keys.pressButton(button('Take in a file…'));
    await keys.chooseFile(button('Choose a method file…'), methodFile);
    await page.getByText(/which is here already\. Taking it in would change nothing/).waitFor();
    expect(await button('Take it in').count()).toBe(0);
    expect(troubles).toEqual([]);
  });
});
