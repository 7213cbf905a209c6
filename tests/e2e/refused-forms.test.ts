import { writeFileSync } from 'node:fs';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { callApi } from './call-api.ts';
import type { Keyboard } from './keyboard.ts';
import { NewNotebook } from './new-notebook.ts';

/** What forms and files that are not in order say, and where the focus is then: by keyboard alone. */
const notebook = new NewNotebook();
let page: Page;
let keys: Keyboard;
let sampleId: string;

beforeAll(async () => {
  ({ page, keys } = await notebook.open('Refused'));
  ({ sampleId } = await callApi(page, 'sample.add', { code: 'S-1', product: 'coffee brick', job: '', roll: '', note: '', lotIds: [] }));
});

afterAll(() => notebook.close());

const button = (name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' });

async function toPlace(hash: string, heading: string): Promise<void> {
  await page.evaluate((to) => (location.hash = to), hash);
  await page.getByRole('heading', { name: heading, level: 1 }).waitFor();
}

describe('a form', () => {
  it('moves the focus to the field that was refused', async () => {
    await toPlace('#/instruments', 'Instruments and fluids');
    await keys.pressButton(button('Add instrument…'));
    const form = page.getByRole('form', { name: 'New instrument' });
    await keys.fill(form.getByLabel('Note'), 'by the window');
    await keys.pressButton(button('Add instrument'));
    await form.locator('p.problem').waitFor();
    await expect.poll(() => form.getByLabel(/^Name/).evaluate((field) => field === document.activeElement)).toBe(true);
  });

  it('closes by Esc, and what was typed stands in it again', async () => {
    await keys.press('Escape');
    await page.getByRole('form', { name: 'New instrument' }).waitFor({ state: 'detached' });
    await expect.poll(() => button('Add instrument…').evaluate((opener) => opener === document.activeElement)).toBe(true);
    await keys.press('Enter');
    expect(await page.getByRole('form', { name: 'New instrument' }).getByLabel('Note').inputValue()).toBe('by the window');
    await keys.press('Escape');
  });

  it('that changes a sample closes by Esc as well, and keeps what was typed', async () => {
    await toPlace(`#/samples/${sampleId}`, 'S-1');
    await keys.pressButton(button('Change…'));
    const form = page.getByRole('form', { name: 'Change sample S-1' });
    await keys.fill(form.getByLabel(/^Note/), 'from the inside of the roll');
    await keys.press('Escape');
    await form.waitFor({ state: 'detached' });
    await keys.pressButton(button('Change…'));
    expect(await form.getByLabel(/^Note/).inputValue()).toBe('from the inside of the roll');
    await keys.press('Escape');
  });

  it('counts down how long to wait after wrong passphrases', async () => {
    const { atBench } = await callApi(page, 'session.get', {});
    const { personId } = atBench!;
    await callApi(page, 'passphrase.set', { personId, passphrase: 'three dry cylinders' });
    for (let guess = 0; guess < 5; guess++) await expect(callApi(page, 'passphrase.set', { personId, passphrase: 'two dry cylinders', oldPassphrase: 'guessed' })).rejects.toThrow(/not the passphrase/);
    await keys.goTo('Notebook');
    await page.getByRole('row', { name: /has a passphrase/ }).waitFor();
    await keys.pressButton(button('Passphrase of Imke Rasmund'));
    for (const typed of ['guessed', 'two dry cylinders', 'two dry cylinders']) {
      await keys.type(typed);
      await keys.press('Tab');
    }
    await keys.press('Enter');
    const left = page.getByText(/^Too many wrong passphrases for Imke Rasmund: wait \d+ seconds, then type it again\.$/);
    const seconds = async () => Number(/wait (\d+)/.exec((await left.textContent())!)![1]);
    const first = await seconds();
    expect(first).toBeGreaterThan(20);
    await expect.poll(seconds).toBeLessThan(first);
    await keys.press('Escape');
  });
});

describe('files', () => {
  async function add(name: string, content: string): Promise<void> {
    const file = path.join(notebook.program.home, name);
    writeFileSync(file, content);
    await keys.chooseFile(button(/^Add files to/), file);
    await page.getByText(name, { exact: true }).waitFor();
  }

  it('whose name says picture and whose content is none are said to be none', async () => {
    await toPlace(`#/samples/${sampleId}`, 'S-1');
    await add('photo.jpg', 'not a photograph');
    await page.getByText('Its name says picture, but its content is none. It is kept as it is.').waitFor();
    await add('notes.txt', 'a text');
    expect(await page.getByText(/Its name says/).count()).toBe(1);
  });

  it('that are PDF open in a window of their own', async () => {
    await add('certificate.pdf', '%PDF-1.4\n%%EOF\n');
    const [opened] = await Promise.all([page.waitForEvent('popup'), keys.pressButton(button('Open certificate.pdf'))]);
    expect(opened.url()).toMatch(/^blob:|^$|about:blank/);
    await opened.close();
    expect(await page.getByText('No other window may be opened').count()).toBe(0);
    await notebook.picture('files-said');
  });
});

it('a sentence that names its row says it once, and one entry is an entry', async () => {
  const { test } = await callApi(page, 'test.start', { sampleId, methodId: 'lamination-bond' });
  await callApi(page, 'reading.enter', { testId: test.testId, row: 'r1', key: 'mode', typed: 'a' });
  const { missing } = await callApi(page, 'test.get', { testId: test.testId });
  expect(missing?.text).toMatch(/^Specimen 1 has neither/);
  await keys.goTo('Record');
  await keys.reach(page.getByLabel('Kind'));
  await keys.type('sample added');
  await page.getByText('1 entry', { exact: true }).waitFor();
});
