import { writeFileSync } from 'node:fs';
import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { callApi } from './call-api.ts';
import { Keyboard } from './keyboard.ts';
import { launchBrowser, openPage, ServedNotebook } from './served-notebook.ts';

/** A customer's colour from its spectrum to a judged print, by keyboard alone. */
const program = new ServedNotebook();
let browser: Browser;
let page: Page;
let keys: Keyboard;
let troubles: string[];
let testId: string;

const wavelengths = Array.from({ length: 31 }, (_, band) => 400 + 10 * band);
const red = (edge: number) => wavelengths.map((nm) => (4 + 60 / (1 + Math.exp(-(nm - edge) / 14))).toFixed(2));
const file = path.join(program.home, 'two prints.csv');

const copy = (text: string) => page.evaluate((clipboard) => navigator.clipboard.writeText(clipboard), text);
const cell = (id: string) => page.locator(`[id="${id}"]`);
const line = (title: string) => page.locator('.result .lines > li').filter({ hasText: title }).first();

beforeAll(async () => {
  browser = await launchBrowser();
  await program.start(path.join(program.home, 'none-yet.laydown'));
  ({ page, troubles } = await openPage(browser, program.address));
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
  page.setDefaultTimeout(15_000);
  keys = new Keyboard(page);
  await callApi(page, 'notebook.create', { fileName: 'colour', title: 'Colour', laboratory: 'Quillmere Flexibles', person: { name: 'Imke Rasmund', initials: 'IR', role: 'technician' } });
  writeFileSync(file, ['nm;print 2;print 3', ...wavelengths.map((nm, band) => [nm, red(586)[band]!, red(587)[band]!].join(';').replaceAll('.', ','))].join('\r\n'));
});

afterAll(async () => {
  await browser.close();
  await program.stopAndClear();
});

it('keeps a reference colour with the tolerance of a customer', async () => {
  await page.reload();
  await keys.goTo('Materials');
  await keys.pressButton(page.getByRole('button', { name: 'Add reference colour…' }));
  const form = page.getByRole('form', { name: 'New reference colour' });
  await keys.fill(form.getByLabel('Name'), 'Pouch red 12');
  await keys.fill(form.getByLabel('Spectrum'), red(585).join(' '));
  await keys.pressButton(form.getByRole('button', { name: 'Add reference colour' }));
  // Without wavelengths it is refused beside its field, and nothing typed is lost.
  await form.getByText('31 numbers without wavelengths').waitFor();
  await keys.fill(form.getByLabel('Spectrum'), `400-700: ${red(585).join(' ')}`);
  await keys.pressButton(form.getByRole('button', { name: 'Add reference colour' }));
  await page.getByRole('row', { name: /Pouch red 12/ }).waitFor();

  await keys.pressButton(page.getByRole('button', { name: 'Add customer… with a tolerance on Pouch red 12' }));
  const tolerance = page.getByRole('form', { name: 'Tolerance on Pouch red 12' });
  await keys.fill(tolerance.getByLabel('Customer'), 'Marrowfield Foods');
  await keys.fill(tolerance.getByLabel('At most'), '2');
  await keys.pressButton(tolerance.getByRole('button', { name: 'Set tolerance' }));
  await page.getByText('ΔE00 ≤ 2').waitFor();
});

it('retires a reference colour with its reason, and takes it back into use', async () => {
  const reference = page.getByRole('row', { name: /Pouch red 12/ });
  await keys.pressButton(reference.getByRole('button', { name: 'Retire Pouch red 12' }));
  await keys.type('The design ended');
  await keys.press('Enter');
  await reference.getByText(/retired \d{4}-\d\d-\d\d: The design ended/).waitFor();
  expect(await callApi(page, 'items.find', { of: 'reference', search: 'pou' })).toEqual([]);
  const back = reference.getByRole('button', { name: 'Pouch red 12 back into use' });
  await expect.poll(() => back.evaluate((button) => button === document.activeElement)).toBe(true);
  await keys.press('Enter');
  await page.getByLabel('Why does Pouch red 12 come back into use?').waitFor();
  await keys.type('Printed once more');
  await keys.press('Enter');
  await reference.getByRole('button', { name: 'Retire Pouch red 12' }).waitFor();
});

it('is chosen on the sheet by a part of its name, and its tolerance becomes the limit', async () => {
  const { sampleId } = await callApi(page, 'sample.add', { code: 'QF-2060', product: 'dumpling pouch 600 g', job: 'J-79', roll: '1', note: '', lotIds: [] });
  ({ testId } = (await callApi(page, 'test.start', { sampleId, methodId: 'colour-measured' })).test);
  await page.evaluate((id) => (location.hash = `#/bench-sheet/${id}`), testId);
  await page.locator(`a[href="#/record/${testId}"]`).waitFor();
  await keys.reach(cell('condition-reference'));
  await keys.type('pou');
  await page.getByRole('option', { name: /Pouch red 12 · Marrowfield Foods/ }).waitFor();
  await keys.press('Enter');
  await page.waitForFunction(() => (document.getElementById('condition-customer') as HTMLInputElement | null)?.value === 'Marrowfield Foods');
  // What the reference says itself is not asked any more.
  expect(await cell('condition-referenceL').count()).toBe(0);
  expect((await callApi(page, 'test.get', { testId })).limits).toMatchObject([{ property: 'deltaE00', upper: 2 }]);
});

it('asks for the wavelengths of what is pasted, and keeps it meanwhile', async () => {
  await keys.reach(cell('r1-spectrum'));
  await copy(red(585).join('\t'));
  await keys.press('Control+V');
  const question = page.getByRole('form', { name: 'Wavelengths of the spectrum' });
  await question.waitFor();
  expect(await question.getByLabel('First wavelength, nm').inputValue()).toBe('400');
  expect(await cell('r1-spectrum').inputValue()).toContain('63.98');
  await keys.pressButton(question.getByRole('button', { name: 'Take this spectrum' }));
  await question.waitFor({ state: 'detached' });
  await line('The print is').getByText('the same within 0.05').waitFor();
  expect(await cell('r1-spectrum').inputValue()).toBe('400–700 nm by 10, 4 to 64 %');
});

it('reads the spectra of a file into the rows from the empty cell on', async () => {
  await keys.reach(cell('r2-spectrum'));
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), keys.press('f')]);
  await chooser.setFiles(file);
  const panel = page.getByRole('region', { name: 'Spectra from two prints.csv' });
  await keys.pressButton(panel.getByRole('button', { name: 'Take these 2 spectra' }));
  await panel.waitFor({ state: 'detached' });
  await page.waitForFunction(() => (document.getElementById('r3-label') as HTMLInputElement | null)?.value === 'print 3');
  const { live } = await callApi(page, 'test.get', { testId });
  expect(live!.result.results.deltaE00).toMatchObject({ n: 3 });
  expect(await page.getByRole('img', { name: /Pouch red 12 beside This print, approximate/ }).count()).toBe(1);
  expect(await page.getByText('Colours under D50, 2°').count()).toBeGreaterThan(0);
});

it('takes a new spectrum in the place of another only with a reason', async () => {
  await keys.reach(cell('r3-spectrum'), 'backwards');
  await copy(`400-700: ${red(588).join(' ')}`);
  await keys.press('Control+V');
  const reason = cell('r3-spectrum-reason');
  await reason.waitFor();
  await keys.fill(reason, 'Measured over the wrong backing');
  await keys.press('Enter');
  await page.getByText('corrected once').waitFor();
  expect((await callApi(page, 'record.verify', {})).intact).toBe(true);
  expect(troubles).toEqual([]);
});
