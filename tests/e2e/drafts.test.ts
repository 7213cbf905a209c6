import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { callApi } from './call-api.ts';
import { Keyboard } from './keyboard.ts';
import { launchBrowser, openPage, ServedNotebook } from './served-notebook.ts';

/** What is typed in the larger editors and not entered, by keyboard: it outlives a power cut, and ends when it is kept or put down. */
const program = new ServedNotebook();
const file = path.join(program.notebooks, 'drafts.laydown');
const secret = 'three dry cylinders';
let browser: Browser;
let page: Page;
let keys: Keyboard;
let troubles: string[];
let trialSetId: string;
let testId: string;
let approvalId: string;

beforeAll(async () => {
  browser = await launchBrowser();
  await program.start(path.join(program.home, 'none-yet.laydown'));
  await open();
  const session = await callApi(page, 'notebook.create', { fileName: 'drafts', title: 'Drafts', laboratory: '', person: { name: 'Imke Rasmund', initials: 'IR', role: 'technician' } });
  await callApi(page, 'passphrase.set', { personId: session.atBench!.personId, passphrase: secret });
  ({ trialSetId } = await callApi(page, 'trialSet.add', { title: 'Less wax', question: '', product: '' }));
  const { sampleId } = await callApi(page, 'sample.add', { code: 'S-1', product: 'coffee brick', job: 'J-1', roll: '', note: '', lotIds: [] });
  ({
    test: { testId },
  } = await callApi(page, 'test.start', { sampleId, methodId: 'test-fluids' }));
  const gloss = { lineId: 'gloss', methodId: 'gloss', moment: { from: 'printing' as const, hours: 0 }, preparation: '', conditions: {}, replicates: 3, limits: [], reasons: [{ stress: '', text: 'The laboratory asks for it.' }] };
  const { planId } = await callApi(page, 'plan.add', { content: { title: 'Brick', product: '', customer: '', endUse: '', stresses: [], lines: [gloss], dropped: [], note: '' } });
  ({ approvalId } = await callApi(page, 'approval.draft', { job: 'J-1', product: 'coffee brick', customer: '', pressRun: '', planId, lotIds: [], sampleIds: [sampleId], note: '' }));
  await callApi(page, 'approvalLine.add', { approvalId, title: 'Barcode reads' });
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

async function cutThePower(): Promise<void> {
  expect(troubles).toEqual([]);
  await program.kill();
  await page.context().close();
  await program.start(file);
  await open();
}

const go = (hash: string) => page.evaluate((to) => (location.hash = to), hash);
const button = (name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' });
const kept = async () => (await callApi(page, 'drafts.get', {})).drafts;
const names = async () => Object.keys(await kept()).map((name) => name.split(' ')[0]).sort();
const notice = () => page.locator('.notice').filter({ hasText: 'What was typed and not entered' });
/** By keyboard, from the notice to where it stands. */
const follow = (words: string) => keys.pressButton(notice().getByRole('link', { name: words, exact: true }), 'backwards');

describe('what is typed in an editor', () => {
  it('is kept while it is typed, never with a passphrase', async () => {
    await go('#/write-method');
    await keys.fill(page.getByLabel(/^Title/).first(), 'Thumb-twist rub');
    await keys.fill(page.getByLabel(/^Steps/), 'Press the thumb on the print.');
    await keys.pressButton(button('Add reading'));

    await go(`#/trials/${trialSetId}`);
    await keys.pressButton(button('Add trial…'));
    const form = page.getByRole('form', { name: 'New trial' });
    await keys.fill(form.getByLabel(/^Name/), 'R1');
    await keys.fill(form.getByLabel('Component 1', { exact: true }), 'Wax');
    await keys.fill(form.getByLabel('Wax, parts'), '2,5');

    await go('#/standardise');
    await keys.fill(page.getByLabel(/^What is it called/), 'Palm rub');

    await go('#/methods/test-fluids');
    await keys.pressButton(button('Record a study…'));
    await keys.fill(page.getByLabel('Remark'), 'on two rolls');

    await go('#/make-plan');
    await keys.fill(page.getByLabel(/^Title/), 'Brick, frozen');

    await go(`#/bench-sheet/${testId}`);
    await keys.pressButton(button('Limits…'));
    await keys.fill(page.getByLabel('Reason for the limits'), 'the customer asked');

    await go(`#/approvals/${approvalId}`);
    await keys.pressButton(button(/^Fill Barcode reads/));
    const line = page.getByRole('form', { name: /^Fill Barcode reads/ });
    await keys.fill(line.getByLabel(/^What was seen/), 'grade B at two corners');
    await keys.fill(line.getByLabel(/^Passphrase/), secret);

    await expect.poll(names).toEqual(['approvalLine.fill', 'habit.describe', 'limits.set', 'method.write', 'plan.write', 'study.record', 'trial.add']);
    await expect.poll(async () => JSON.stringify(await kept())).toContain('two corners');
    expect(JSON.stringify(await kept())).not.toContain('cylinders');
  });

  it('waits after a power cut, and the notice leads to a written method that goes on where it stopped', async () => {
    await cutThePower();
    await notice().waitFor();
    await follow('a written method');
    await page.getByLabel(/^Title/).first().waitFor();
    expect(await page.getByLabel(/^Title/).first().inputValue()).toBe('Thumb-twist rub');
    expect(await page.getByLabel(/^Steps/).inputValue()).toBe('Press the thumb on the print.');
    await keys.pressButton(button('Discard'));
    await page.getByRole('heading', { name: 'Methods', level: 1 }).waitFor();
    await expect.poll(names).not.toContain('method.write');
    await go('#/write-method');
    await expect.poll(() => page.getByLabel(/^Title/).first().inputValue()).toBe('');
  });

  it('leads to the open trial editor, whose draft ends when the trial is added', async () => {
    await follow('a new trial');
    const form = page.getByRole('form', { name: 'New trial' });
    await form.waitFor();
    expect(await form.getByLabel(/^Name/).inputValue()).toBe('R1');
    expect(await form.getByLabel('Wax, parts').inputValue()).toBe('2,5');
    await keys.pressButton(form.getByRole('button', { name: 'Add trial' }));
    await form.waitFor({ state: 'detached' });
    expect((await callApi(page, 'trialSet.get', { trialSetId })).trials.map(({ name }) => name)).toEqual(['R1']);
    await expect.poll(names).not.toContain('trial.add');
  });

  it('stands open in each of the other places', async () => {
    await follow('a habit');
    await expect.poll(() => page.getByLabel(/^What is it called/).inputValue()).toBe('Palm rub');
    await follow('a measurement study');
    await expect.poll(() => page.getByLabel('Remark').inputValue()).toBe('on two rolls');
    await follow('a plan');
    await expect.poll(() => page.getByLabel(/^Title/).inputValue()).toBe('Brick, frozen');
    await follow('the limits of a test');
    await expect.poll(() => page.getByLabel('Reason for the limits').inputValue()).toBe('the customer asked');
    await keys.pressButton(button('Leave them'));
    await expect.poll(names).not.toContain('limits.set');
    await follow('what fills a line of a press approval');
    const line = page.getByRole('form', { name: /^Fill Barcode reads/ });
    await expect.poll(() => line.getByLabel(/^What was seen/).inputValue()).toBe('grade B at two corners');
    expect(await line.getByLabel(/^Passphrase/).inputValue()).toBe('');
    expect(troubles).toEqual([]);
  });

  it('is dropped with a word when it fits nowhere any more', async () => {
    const notebook = (await callApi(page, 'session.get', {})).notebook!.handle;
    await callApi(page, 'draft.keep', { notebook, name: 'habit.describe ', content: JSON.stringify({ from: '', typed: { title: 7 } }) });
    await callApi(page, 'draft.keep', { notebook, name: 'sieve.add', content: '{}' });
    await page.reload();
    await page.getByText('What was typed as a form came from another version of the program and fits nowhere in this one: it was dropped.').waitFor();
    await follow('a habit');
    await page.getByText('What was typed as a habit came from another version of the program and fits nowhere in this one: it was dropped.').waitFor();
    expect(await page.getByLabel(/^What is it called/).inputValue()).toBe('');
    await expect.poll(names).not.toContain('habit.describe');
    await expect.poll(names).not.toContain('sieve.add');
    expect(troubles).toEqual([]);
  });

  it('ends in a second window as well, where nothing else was typed', async () => {
    await go('#/samples');
    await keys.pressButton(button('Add sample…'));
    await keys.fill(page.getByLabel(/^Code/), 'S-2');
    await expect.poll(names).toContain('sample.add');
    const { page: second, troubles: there } = await openPage(browser, program.address);
    await second.evaluate(() => (location.hash = '#/samples'));
    await expect.poll(() => second.getByLabel(/^Code/).inputValue()).toBe('S-2');
    await keys.pressButton(button('Add sample'));
    await page.getByRole('heading', { name: 'S-2', exact: true }).waitFor();
    await second.getByLabel(/^Code/).waitFor({ state: 'detached' });
    expect(there).toEqual([]);
    await second.context().close();
  });

  it('stays with its notebook when another one is opened', async () => {
    await go('#/make-plan');
    await keys.fill(page.getByLabel(/^Title/), 'Brick, frozen twice');
    const first = (await callApi(page, 'session.get', {})).notebook!.handle;
    await expect.poll(async () => JSON.stringify(await kept())).toContain('frozen twice');
    await callApi(page, 'notebook.create', { fileName: 'other', title: 'Other', laboratory: '', person: { name: 'Imke Rasmund', initials: 'IR', role: '' } });
    expect(await kept()).toEqual({});
    // A window that has not heard of it yet sends what it still has.
    await callApi(page, 'draft.keep', { notebook: first, name: 'plan.write ', content: '{}' });
    expect(await kept()).toEqual({});
    await callApi(page, 'notebook.open', { handle: first });
    expect(JSON.stringify(await kept())).toContain('frozen twice');
    expect(troubles).toEqual([]);
  });
});
