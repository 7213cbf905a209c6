import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { callApi } from './call-api.ts';
import { Keyboard } from './keyboard.ts';
import { launchBrowser, openPage, ServedNotebook } from './served-notebook.ts';

/** People, signatures, undo and what survives a crash, all by keyboard. */
const program = new ServedNotebook();
const file = path.join(program.notebooks, 'signing.laydown');
let browser: Browser;
let page: Page;
let keys: Keyboard;
let troubles: string[];
let sampleId: string;
let testId: string;

beforeAll(async () => {
  browser = await launchBrowser();
  await program.start(path.join(program.home, 'none-yet.laydown'));
  await open();
  await callApi(page, 'notebook.create', { fileName: 'signing', title: 'Signing', laboratory: '', person: { name: 'Imke Rasmund', initials: 'IR', role: 'technician' } });
  await callApi(page, 'person.add', { name: 'Abena Quist', initials: 'AQ', role: 'quality lead' });
  ({ sampleId } = await callApi(page, 'sample.add', { code: 'S-1', product: 'coffee brick', job: '', roll: '', note: '', lotIds: [] }));
  ({
    test: { testId },
  } = await callApi(page, 'test.start', { sampleId, methodId: 'test-fluids' }));
});

afterAll(async () => {
  await browser.close();
  await program.stopAndClear();
});

async function open(): Promise<void> {
  ({ page, troubles } = await openPage(browser, program.address));
  page.setDefaultTimeout(20_000);
  keys = new Keyboard(page);
}

const cell = (row: number) => page.getByLabel(new RegExp(`^position ${row}, Holds`));
const statusText = (text: RegExp) => page.getByRole('status').filter({ hasText: text });

async function toSheet(id = testId): Promise<void> {
  await page.evaluate((to) => (location.hash = `#/bench-sheet/${to}`), id);
  await page.locator(`a[href="#/record/${id}"]`).waitFor();
}

describe('people', () => {
  it('are given a passphrase, typed twice, and the record says so without it', async () => {
    await keys.goTo('Notebook');
    await page.getByRole('heading', { name: 'People' }).waitFor();
    await keys.pressButton(page.getByRole('button', { name: 'Passphrase of Abena Quist' }));
    await page.getByLabel(/^New passphrase/).waitFor();
    await keys.type('short');
    await keys.press('Tab');
    await keys.type('other');
    await keys.press('Enter');
    await page.getByText('The two are not the same; type both again.').waitFor();
    // Both are emptied, and the first has the focus.
    for (const field of [/^New passphrase/, /^The same again/]) expect(await page.getByLabel(field).inputValue()).toBe('');
    await expect.poll(() => page.getByLabel(/^New passphrase/).evaluate((input) => input === document.activeElement)).toBe(true);
    await keys.type('short');
    await keys.press('Tab');
    await keys.type('short');
    await keys.press('Enter');
    await page.getByText(/^A passphrase has at least 8 characters/).waitFor();
    await keys.reach(page.getByLabel(/^New passphrase/), 'backwards');
    await keys.press('Control+A');
    await keys.type('two slow cylinders');
    await keys.press('Tab');
    await keys.press('Control+A');
    await keys.type('two slow cylinders');
    await keys.press('Enter');
    await statusText(/The passphrase of Abena Quist is set\./).waitFor();
    await page.getByRole('row', { name: /Abena Quist.*has a passphrase/ }).waitFor();
    expect((await callApi(page, 'record.list', {})).entries[0]!.text).toBe('Set a passphrase for Abena Quist.');
  });

  it('forget it: nobody else can let it be set anew until they have one of their own, and then sign for it', async () => {
    await keys.pressButton(page.getByRole('button', { name: 'Passphrase of Abena Quist' }));
    await page.getByText(/Nobody else has a passphrase yet, so a forgotten one cannot be set anew: retire Abena Quist/).waitFor();
    expect(await page.getByRole('button', { name: 'Forgotten…' }).count()).toBe(0);
    await keys.pressButton(page.getByRole('button', { name: 'Close' }), 'forwards');
    const { people } = await callApi(page, 'session.get', {});
    await callApi(page, 'passphrase.set', { personId: people.find(({ initials }) => initials === 'IR')!.personId, passphrase: 'five wet rollers' });
    await page.getByRole('row', { name: /Imke Rasmund.*has a passphrase/ }).waitFor();

    await keys.pressButton(page.getByRole('button', { name: 'Passphrase of Abena Quist' }));
    await keys.pressButton(page.getByRole('button', { name: 'Forgotten…' }), 'forwards');
    await page.getByRole('form', { name: 'Forgotten passphrase of Abena Quist' }).waitFor();
    for (const typed of ['three dry cylinders', 'three dry cylinders', 'three weeks away']) {
      await keys.type(typed);
      await keys.press('Tab');
    }
    expect(await page.getByLabel('Who signs').locator('option').allInnerTexts()).toEqual(['choose…', 'Imke Rasmund']);
    await keys.type('Im');
    await keys.press('Tab');
    await keys.type('five dry rollers');
    await keys.press('Enter');
    await page.getByText('This is not the passphrase of Imke Rasmund.').waitFor();
    // It is asked for anew; what was typed beside it stays.
    await keys.reach(page.getByRole('textbox', { name: /^Passphrase/ }), 'backwards');
    await keys.type('five wet rollers');
    await keys.press('Enter');
    await statusText(/The passphrase of Abena Quist is set anew; the record says who let it be\./).waitFor();
    expect((await callApi(page, 'record.list', {})).entries[0]!.text).toBe('Imke Rasmund let the forgotten passphrase of Abena Quist be set anew: three weeks away.');
  });

  it('change, retire and return, each with a reason', async () => {
    await keys.pressButton(page.getByRole('button', { name: 'Retire of Abena Quist' }), 'forwards');
    await page.getByLabel(/^Reason/).waitFor();
    await keys.type('left the lab');
    await keys.press('Enter');
    await page.getByRole('row', { name: /Abena Quist.*retired: left the lab/ }).waitFor();
    // Who is retired is not offered the bench.
    await keys.press('Control+b');
    await page.getByRole('heading', { name: 'Who is at the bench?' }).waitFor();
    expect(await page.getByRole('group', { name: 'People' }).getByRole('button').allInnerTexts()).toHaveLength(1);
    await keys.press('Escape');
    await keys.pressButton(page.getByRole('button', { name: 'Bring back of Abena Quist' }));
    await page.getByLabel(/^Reason/).waitFor();
    await keys.type('is back');
    await keys.press('Enter');
    await page.getByRole('row', { name: /Abena Quist.*has a passphrase/ }).waitFor();
  });

  it.each(['Today', 'Samples', 'Materials', 'Trials', 'Methods', 'Reports', 'Record', 'Notebook'])('are named in sight on %s and take the bench in two keystrokes', async (screen) => {
    await keys.goTo(screen);
    await page.getByRole('button', { name: /^At the bench: Imke Rasmund/ }).waitFor();
    await keys.press('Control+b', '2');
    await page.getByRole('button', { name: /^At the bench: Abena Quist/ }).waitFor();
    await keys.press('Control+b', 'i');
    await page.getByRole('button', { name: /^At the bench: Imke Rasmund/ }).waitFor();
  });

  it('take the bench from a cell of a bench sheet, to which the focus returns', async () => {
    await toSheet();
    await keys.reach(cell(1));
    await keys.press('Control+b', '2');
    await page.getByRole('button', { name: /^At the bench: Abena Quist/ }).waitFor();
    await expect.poll(() => cell(1).evaluate((input) => input === document.activeElement)).toBe(true);
    expect(await cell(1).inputValue()).toBe('');
    await keys.press('Control+b', '1');
    await page.getByRole('button', { name: /^At the bench: Imke Rasmund/ }).waitFor();
  });
});

describe('Ctrl+Z', () => {
  it('undoes reading after reading as corrections, and says so', async () => {
    await toSheet();
    await keys.typeColumn(cell(1), ['38', '40']);
    await expect.poll(async () => (await callApi(page, 'test.get', { testId })).rows[1]!.cells.wetsMNm?.value).toBe(40);
    await keys.press('Control+z');
    await statusText(/^Undone: Entered 40 mN\/m .*position 2/).waitFor();
    await expect.poll(() => cell(2).inputValue()).toBe('');
    expect(await cell(1).inputValue()).toBe('38');
    await keys.press('Control+z');
    await statusText(/^Undone: Entered 38 mN\/m .*position 1/).waitFor();
    await expect.poll(() => cell(1).inputValue()).toBe('');
    const { entries } = await callApi(page, 'record.list', { testId });
    expect(entries.filter(({ correction }) => correction?.reason === 'undone').length).toBeGreaterThanOrEqual(2);
  });

  it('belongs to the text while a cell is being typed in', async () => {
    const before = (await callApi(page, 'session.get', {})).notebook!.entries;
    await keys.reach(cell(3));
    await keys.type('3');
    await keys.press('Control+z');
    await expect.poll(() => cell(3).inputValue()).toBe('');
    await keys.press('Escape');
    expect((await callApi(page, 'session.get', {})).notebook!.entries).toBe(before);
  });

  it('withdraws a test that was begun by mistake, from the button in the status line as well', async () => {
    const begun = await callApi(page, 'test.start', { sampleId, methodId: 'test-fluids' });
    await toSheet(begun.test.testId);
    await page.reload();
    await page.locator(`a[href="#/record/${begun.test.testId}"]`).waitFor();
    await keys.pressButton(page.getByRole('button', { name: /^Undo/ }));
    await statusText(/^Undone: Started /).waitFor();
    await page.getByText('This test was withdrawn and counts nowhere: undone').waitFor();
  });

  it('says of a finished test why it is not undone', async () => {
    for (const row of ['r1', 'r2', 'r3', 'r4', 'r5']) await callApi(page, 'reading.enter', { testId, row, key: 'wetsMNm', typed: '38', reason: 'again' });
    await callApi(page, 'test.finish', { testId, remark: '' });
    await toSheet();
    await page.getByRole('heading', { name: 'Finished' }).waitFor();
    await keys.press('Control+z');
    await statusText(/^Not undone: .*A finished test stays finished/).waitFor();
  });
});

describe('a witness', () => {
  it('reads one test, is refused with a wrong passphrase, and signs; later corrections are shown as later', async () => {
    await page.evaluate((id) => (location.hash = `#/record/${id}`), testId);
    await page.getByRole('heading', { name: 'Record of one test' }).waitFor();
    await keys.pressButton(page.getByRole('button', { name: 'Witness…' }));
    await page.getByRole('heading', { name: /^Page of work: / }).waitFor();
    const who = page.getByLabel('Who signs');
    expect(await who.locator('option').allInnerTexts()).toEqual(['choose…', 'Abena Quist']);
    // What came since the page was shown is shown before it can be signed.
    await callApi(page, 'row.remark', { testId, row: 'r1', remark: 'near the edge' });
    await page.getByRole('row', { name: /near the edge/ }).waitFor();
    await keys.reach(who);
    await keys.type('Ab');
    await keys.press('Tab');
    await keys.type('three dry cylinders');
    await keys.press('Enter');
    await page.getByText('Entries were added to this page since it was shown; read them first, then sign.').waitFor();
    await page.getByRole('listitem').filter({ hasText: 'near the edge' }).waitFor();
    await keys.reach(page.getByLabel(/^Passphrase/), 'backwards');
    await keys.type('three wet cylinders');
    await keys.press('Enter');
    await page.getByText('This is not the passphrase of Abena Quist.').waitFor();
    await keys.reach(page.getByLabel(/^Passphrase/), 'backwards');
    await keys.type('three dry cylinders');
    await keys.press('Enter');
    await statusText(/^Signed: Witnessed by Abena Quist/).waitFor();
    // Nothing is left open for a second signature, and the keyboard goes on where it came from.
    expect(await page.getByRole('heading', { name: /^Page of work: / }).count()).toBe(0);
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('Witness…');
    await keys.pressButton(page.getByRole('button', { name: 'Verify the record' }));
    await page.getByText(/^Intact:/).waitFor();
    await callApi(page, 'row.remark', { testId, row: 'r1', remark: 'at the edge' });
    await page.getByText(/were intact; the record has grown since\. Verify it again\./).waitFor();
    expect(await page.getByText(/^Intact:/).count()).toBe(0);
    await page.getByRole('row', { name: /Abena Quist has read and understood/ }).waitFor();
    await toSheet();
    await page.getByText(/^Witnessed by Abena Quist on/).waitFor();
    await keys.reach(cell(1));
    await keys.type('40');
    await keys.press('Enter');
    await keys.reach(page.locator('input[id$="-reason"]'));
    await keys.type('misread');
    await keys.press('Enter');
    await page.getByText(/One entry on this test is later than the witness\./).waitFor();
  });

  it('reads a day of one person’s work', async () => {
    await keys.goTo('Record');
    await keys.pressButton(page.getByRole('button', { name: 'Witness…' }));
    await keys.pressButton(page.getByRole('button', { name: 'Read it' }));
    await page.getByRole('heading', { name: /^Page of work: Imke Rasmund on \d{4}-\d{2}-\d{2}, entries \d+ to \d+$/ }).waitFor();
    await page.screenshot({ path: path.resolve(import.meta.dirname, '../../out/screens/witness-day-light.png') });
  });
});

describe('what was typed and not entered', () => {
  it('stands in its form and cell again after the program was killed', async () => {
    await keys.goTo('Samples');
    await keys.pressButton(page.getByRole('button', { name: 'Add sample…' }));
    await keys.fill(page.getByLabel(/^Code/), 'S-77');
    await keys.fill(page.getByLabel(/^Note/), 'from the inner turns');
    const running = await callApi(page, 'test.start', { sampleId, methodId: 'test-fluids' });
    await toSheet(running.test.testId);
    await keys.reach(cell(2));
    await keys.type('41,5');
    await expect.poll(async () => Object.keys((await callApi(page, 'drafts.get', {})).drafts).sort()).toEqual(['sample.add', `sheet ${running.test.testId}`]);
    expect(troubles).toEqual([]);
    await program.kill();
    await page.context().close();

    await program.start(file);
    await open();
    await page.getByText(/^What was typed and not entered .*(a new sample|cells of a bench sheet), (a new sample|cells of a bench sheet)\./).waitFor();
    await toSheet(running.test.testId);
    await expect.poll(() => cell(2).inputValue()).toBe('41,5');
    await page.getByText(/Typed before, and not in the record/).first().waitFor();
    await keys.reach(cell(2));
    await keys.press('Enter');
    await expect.poll(async () => (await callApi(page, 'test.get', { testId: running.test.testId })).rows[1]!.cells.wetsMNm?.value).toBe(41.5);
    await keys.goTo('Samples');
    await expect.poll(() => page.getByLabel(/^Code/).inputValue()).toBe('S-77');
    expect(await page.getByLabel(/^Note/).inputValue()).toBe('from the inner turns');
    await keys.pressButton(page.getByRole('button', { name: 'Add sample', exact: true }));
    await page.getByRole('heading', { name: 'S-77', exact: true }).waitFor();
    await expect.poll(async () => (await callApi(page, 'drafts.get', {})).drafts).toEqual({});
    expect(troubles).toEqual([]);
  });
});

describe('what was entered before the program was killed', () => {
  it('is undone afterwards as it would have been before', async () => {
    await program.kill();
    await page.context().close();
    await program.start(file);
    await open();
    await page.getByRole('heading', { name: 'Today' }).waitFor();
    await keys.press('Control+z');
    await statusText(/^Undone: Added sample S-77.* Both stand in the record\./).waitFor();
    expect((await callApi(page, 'record.list', { limit: 2 })).entries.map(({ kind }) => kind)).toEqual(['sample.retired', 'sample.added']);
    expect(troubles).toEqual([]);
  });
});
