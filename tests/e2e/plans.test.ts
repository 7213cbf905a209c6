import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { callApi } from './call-api.ts';
import type { Keyboard } from './keyboard.ts';
import { NewNotebook } from './new-notebook.ts';
import { readPdf, solid } from './pdf-text.ts';

/**
 * From an end use to the first test on a sample, by keyboard alone: a plan is proposed, edited and kept, a sample follows it,
 * Today says what is due, a test is started with what the plan asks for, and a later version leaves the sample as it was.
 * The steps build on each other and run in order.
 */
const notebook = new NewNotebook();
let page: Page;
let keys: Keyboard;

beforeAll(async () => {
  ({ page, keys } = await notebook.open('Plans'));
  await callApi(page, 'sample.add', { code: 'QF-1', product: 'dumpling pouch 600 g', job: 'J-1', roll: '', note: '', lotIds: [] });
});

afterAll(() => notebook.close());

const button = (name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' });
const link = (name: string | RegExp) => page.getByRole('link', { name, exact: typeof name === 'string' });
const heading = (name: string) => page.getByRole('heading', { name, level: 1, exact: true });
const row = (name: string | RegExp) => page.getByRole('row', { name });
/** A day so far back that every moment of the plan has passed. */
const PRINTED = '2026-01-12 06:00';

describe('a plan by keyboard', () => {
  it('is proposed from an end use, live, each test with its reason', async () => {
    await keys.goTo('Plans');
    await keys.pressButton(link('New plan…'));
    await heading('New plan').waitFor();
    // Its title is asked for first; Enter there keeps nothing while there is nothing to keep.
    await keys.reach(page.getByLabel(/^Title/));
    await keys.press('Enter');
    await keys.reach(page.getByLabel('Begin from an end use'));
    await keys.type('Froz');
    await row(/^Print picked off by a sealing jaw/).waitFor();
    expect(await page.getByRole('checkbox', { name: 'Cold', exact: true }).isChecked()).toBe(true);
    expect(await page.getByLabel('Cold: how').inputValue()).toBe('frozen');
    const crinkle = row(/^Crinkle of the print.*after 24 h at −18 °C/);
    const crinkleText = (await crinkle.textContent())!.replaceAll('\u00a0', ' ');
    expect(crinkleText).toContain('Packs are crumpled in the freezer, where an ink film breaks that bends when warm.');
    expect(crinkleText).toContain('Grade after crinkling ≥ 4 (common practice)');
    await page.getByText('The customer’s specification and local law prevail.').waitFor();
    // Without the cold it is not proposed; with it, it is again.
    await keys.reach(page.getByRole('checkbox', { name: 'Cold', exact: true }));
    await keys.press('Space');
    await crinkle.waitFor({ state: 'detached' });
    await keys.press('Space', 'Tab');
    await keys.type('froz');
    await crinkle.waitFor();
    await notebook.picture('make-plan');
  });

  it('is edited: a limit of the customer, a test dropped with the reason, one of the lab added', async () => {
    await keys.pressButton(button('Change Lamination bond strength, 7 days after lamination'));
    const editor = page.getByRole('form', { name: 'Lamination bond strength' });
    const weakest = editor.getByRole('group', { name: /Weakest specimen/ });
    await keys.fill(editor.getByLabel(/^How many/), 'some');
    await keys.press('Enter');
    await editor.getByText('This is a whole number from 1 to 100.').waitFor();
    await keys.fill(editor.getByLabel(/^How many/), '8');
    await keys.fill(weakest.getByLabel('At least'), '2,5 N/cm');
    await keys.press('Enter');
    await weakest.getByText(/^This is a number in N\/15 mm\. Read '2,5 N\/cm'/).waitFor();
    await keys.fill(weakest.getByLabel('At least'), '2,5 N/15 mm');
    await keys.fill(weakest.getByLabel('Who asks for it'), 'customer specification');
    await keys.press('Enter');
    await row(/^Lamination bond strength changed.*7 days after lamination.*8 specimens.*Weakest specimen ≥ 2.5 N\/15 mm \(customer specification\)/).waitFor();

    await keys.pressButton(button('Drop Match by eye against a reference, 24 h after printing'), 'backwards');
    await keys.press('Tab');
    const drop = page.getByRole('form', { name: /^Drop Match by eye/ });
    await keys.reach(drop.getByLabel('Why is it not made?'));
    await keys.press('Enter');
    await drop.getByText('Say in a few words why it is not made.').waitFor();
    await keys.type('The booth is being rebuilt');
    await keys.press('Enter');
    await page.getByText('Not made: Match by eye against a reference, 24 h after printing: The booth is being rebuilt').waitFor();

    await keys.reach(page.getByRole('combobox', { name: 'Add a test' }));
    // By what it shows as well: no title says that plies are peeled.
    await keys.type('peel');
    await page.getByRole('option', { name: /^Lamination bond/ }).waitFor();
    await keys.press('Control+A');
    await keys.type('gloss');
    await page.getByRole('option', { name: /^Specular gloss/ }).waitFor();
    await keys.press('Enter');
    const own = page.getByRole('form', { name: 'Specular gloss' });
    await keys.fill(own.getByLabel(/^Why it is tested/), 'The customer compares with the last run.');
    await keys.press('Enter');
    await row(/^Specular gloss added.*The customer compares with the last run\./).waitFor();
  });

  it('is kept under a title, and printed on one page', async () => {
    await keys.pressButton(button('Keep this plan'));
    await page.getByLabel(/^Title/).and(page.locator('[aria-invalid]')).waitFor();
    await keys.fill(page.getByLabel(/^Title/), 'Dumpling pouch, frozen');
    await keys.fill(page.getByLabel('Product', { exact: true }), 'dumpling pouch 600 g');
    await keys.fill(page.getByLabel('Customer', { exact: true }), 'Marrowfield Foods');
    await keys.press('Enter');
    await heading('Dumpling pouch, frozen').waitFor();
    await row(/^Specular gloss/).waitFor();
    await notebook.picture('plan');
    const [download] = await Promise.all([page.waitForEvent('download'), keys.pressButton(button('Save PDF'))]);
    expect(download.suggestedFilename()).toBe('plan-dumpling-pouch-frozen-v1.pdf');
    const { planId } = (await callApi(page, 'plans.list', {}))[0]!;
    const { pages } = await readPdf(Buffer.from((await callApi(page, 'plan.pdf', { planId })).bytes, 'base64'));
    expect(pages).toHaveLength(1);
    for (const text of ['Weakest specimen ≥ 2.5 N/15 mm (customer specification)', 'The booth is being rebuilt', 'The customer compares with the last run.']) expect(pages[0]).toContain(solid(text));
  });

  it('is followed by a sample from the time at which it left the press', async () => {
    await keys.goTo('Samples');
    await keys.pressButton(link('QF-1'));
    await keys.reach(page.getByRole('combobox', { name: 'Follow a plan' }));
    await keys.type('dumpling');
    await page.getByRole('option', { name: /^Dumpling pouch, frozen/ }).waitFor();
    await keys.press('Enter');
    const form = page.getByRole('form', { name: 'Follow Dumpling pouch, frozen' });
    await form.getByRole('heading', { name: 'Follow Dumpling pouch, frozen' }).waitFor();
    await keys.fill(form.getByLabel('Left the press'), '12.1.2026');
    await keys.press('Enter');
    await form.getByText('Type a day and a time such as 2026-03-09 14:05.').waitFor();
    await keys.fill(form.getByLabel('Left the press'), PRINTED);
    await keys.press('Enter');
    await row(/^Wetting tension.*before printing.*2026-01-12.*overdue/).waitFor();
    await row(/^Lamination bond strength.*7 days after lamination.*not started/).waitFor();
    await notebook.picture('sample-plan');
  });

  it('says on Today what is due, and starts a test with what the plan asks for at one key', async () => {
    await keys.goTo('Today');
    // Many tests of one moment are one short link, with their names beside it.
    await row(/^\d tests: QF-1\s*.*Tape adhesion.*by the plan Dumpling pouch, frozen, on press.*2026-01-12.*overdue/).waitFor();
    await notebook.picture('today-planned');
    await keys.pressButton(link(/^\d tests: QF-1$/).first());
    await heading('QF-1').waitFor();
    await keys.pressButton(button('Start Tape adhesion of the print, on press'));
    await heading('Tape adhesion').waitFor();
    await page.getByText(/for the plan Dumpling pouch, frozen, on press: 3 specimens asked for/).waitFor();
    await notebook.picture('planned-sheet');
    const testId = decodeURIComponent(new URL(page.url()).hash.split('/')[2]!);
    const sheet = await callApi(page, 'test.get', { testId });
    expect(sheet.limits).toEqual([{ property: 'retainedPct', lower: 90, upper: null, source: 'common practice' }]);
    expect(sheet.conditions.moment?.value).toBe('press');
    expect(sheet.rows).toHaveLength(3);
    await keys.goTo('Samples');
    await keys.pressButton(link('QF-1'));
    await row(/^Tape adhesion of the print.*on press.*running/).waitFor();
  });

  it('gets a version with what changed and why, and the sample keeps its own', async () => {
    await keys.goTo('Plans');
    await keys.pressButton(link('Dumpling pouch, frozen'));
    await keys.pressButton(link('Change…'));
    await heading('New version of Dumpling pouch, frozen').waitFor();
    await keys.pressButton(button('Leave out Specular gloss, 24 h after printing'));
    await keys.pressButton(button('Keep this version'));
    await page.getByText(/say in a few words why it changes/).waitFor();
    await keys.fill(page.getByLabel(/^Why is it changed/), 'The last run is used up');
    await keys.press('Enter');
    await row(/^Show version 2.*The last run is used up.*Dropped Gloss 24 h after printing\./).waitFor();
    await row(/^Show version 1.*the first.*1$/).waitFor();
    await keys.goTo('Samples');
    await keys.pressButton(link('QF-1'));
    await page.getByText('Version 2 of the plan is newer. This sample keeps version 1 unless it is taken up.').waitFor();
    await row(/^Specular gloss/).waitFor();
    expect(notebook.troubles).toEqual([]);
  });
});
