import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { frozenPlan } from '../unit/plan/frozen-plan.ts';
import { callApi } from './call-api.ts';
import type { Keyboard } from './keyboard.ts';
import { NewNotebook } from './new-notebook.ts';
import { readPdf, solid } from './pdf-text.ts';

/** A press approval from its draft to its withdrawal, by keyboard alone. The steps build on each other and run in order. */
const notebook = new NewNotebook();
const PASS = 'three dry cylinders';
let page: Page;
let keys: Keyboard;
let testId: string;

beforeAll(async () => {
  ({ page, keys } = await notebook.open('Approvals'));
  const { atBench } = await callApi(page, 'session.get', {});
  const abena = await callApi(page, 'person.add', { name: 'Abena Quist', initials: 'AQ', role: 'quality lead' });
  for (const { personId } of [atBench!, abena]) await callApi(page, 'passphrase.set', { personId, passphrase: PASS });
  const { materialId } = await callApi(page, 'material.add', { kind: 'ink', name: 'Low-migration red', supplier: 'Tamarind', description: '' });
  const { lotId } = await callApi(page, 'lot.add', { materialId, code: 'T-88', receivedOn: null, note: '' });
  const { sampleId } = await callApi(page, 'sample.add', { code: 'QF-1', product: 'dumpling pouch 600 g', job: 'J-100', roll: 'roll 1', note: '', lotIds: [lotId] });
  const gloss = {
    ...frozenPlan.lines[0]!,
    lineId: 'gloss printing+0',
    methodId: 'gloss',
    moment: { from: 'printing', hours: 0 } as const,
    conditions: {},
    replicates: 3,
    limits: [{ property: 'gloss', lower: 70, upper: null, source: 'customer' }],
  };
  await callApi(page, 'plan.add', { content: { ...frozenPlan, lines: [gloss, frozenPlan.lines[1]!], dropped: [] } });
  ({
    test: { testId },
  } = await callApi(page, 'test.start', { sampleId, methodId: 'gloss' }));
  for (const [index, typed] of ['80', '81', '82'].entries()) await callApi(page, 'reading.enter', { testId, row: `r${index + 1}`, key: 'gloss', typed });
  await callApi(page, 'test.finish', { testId, remark: '' });
});

afterAll(() => notebook.close());

const button = (name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' });
const row = (name: string | RegExp) => page.getByRole('row', { name });
const form = (name: string | RegExp) => page.getByRole('form', { name });

/** Chooses who signs, types the passphrase and sends the form. */
async function sign(name: string, passphrase: string): Promise<void> {
  await keys.reach(page.getByLabel('Who signs'));
  await keys.type(name.slice(0, 2));
  await keys.fill(page.getByLabel(/^Passphrase/), passphrase);
  await keys.press('Enter');
}

describe('a press approval by keyboard', () => {
  it('is drafted for a job, which brings product, customer, lots and plan along', async () => {
    await keys.goTo('Approvals');
    await page.getByRole('heading', { name: 'Approvals', level: 1 }).waitFor();
    await keys.pressButton(button('New press approval…'));
    await form('New press approval').waitFor();
    await keys.press('Shift+Tab', 'Tab');
    await keys.pressButton(button('Draft it'));
    await page.getByText('Say which job is to be approved.').waitFor();
    await keys.reach(page.getByLabel(/^Job/), 'backwards');
    await keys.type('j-100');
    await page.getByText('Samples of it: QF-1').waitFor();
    await expect.poll(() => page.getByLabel('Product').inputValue()).toBe('dumpling pouch 600 g');
    expect(await page.getByLabel('Customer').inputValue()).toBe('Marrowfield Foods');
    await button('Leave out Low-migration red, lot T-88').waitFor();
    await keys.fill(page.getByLabel(/^Press run/), 'run 2');
    // The run does not name the roll of the sample: a person has to say that it stands for it.
    const sample = page.getByRole('checkbox', { name: /^QF-1, roll 1/ });
    expect(await sample.isChecked()).toBe(false);
    await keys.pressButton(button('Draft it'));
    await page.getByText('Say which samples of the job stand for this press run').waitFor();
    await keys.fill(page.getByLabel(/^Press run/), 'run 2, roll 1');
    await expect.poll(() => sample.isChecked()).toBe(true);
    await keys.fill(page.getByLabel(/^Press run/), 'run 2');
    await expect.poll(() => sample.isChecked()).toBe(false);
    await keys.reach(sample);
    await keys.press('Space');
    await keys.pressButton(button('Draft it'));
    await page.getByRole('heading', { name: 'Press approval: job J-100' }).waitFor();
    await page.getByText('Of its lines, 2 are open: Specular gloss, on press; Lamination bond strength, 7 days after lamination.').waitFor();
    await page.getByText('QF-1 (roll 1)').waitFor();
  });

  it('says why it cannot be signed yet, where Sign… is pressed', async () => {
    await keys.pressButton(button('Sign…'), 'backwards');
    const why = page.getByRole('alert').filter({ hasText: 'It cannot be signed yet. Of its lines, 2 are open' });
    await why.waitFor();
    expect(await form('Sign the press approval').count()).toBe(0);
    await notebook.picture('approval-blocked');
    await keys.press('Enter');
    await why.waitFor({ state: 'detached' });
  });

  it('is changed while it is a draft, with a reason where something said is said otherwise', async () => {
    await keys.pressButton(button('Change…'), 'backwards');
    const panel = form('Change the press approval');
    await keys.fill(panel.getByLabel('Customer'), 'Marrowfield Foods Nord');
    await keys.press('Enter');
    await panel.getByText('say in a few words why it changes').waitFor();
    await notebook.picture('approval-change');
    await keys.fill(panel.getByLabel(/^Reason/), 'the order says so');
    await keys.press('Enter');
    await panel.waitFor({ state: 'detached' });
    await page.getByText('Marrowfield Foods Nord').waitFor();
    expect((await callApi(page, 'record.list', { kind: 'approval.changed' })).entries[0]!.text).toContain('customer Marrowfield Foods Nord: the order says so.');
  });

  it('is on Today with what blocks it', async () => {
    await keys.goTo('Today');
    const due = page.getByRole('link', { name: 'Press approval blocked: job J-100, dumpling pouch 600 g, run 2' });
    await keys.reach(due);
    await keys.press('Enter');
    await page.getByRole('heading', { name: 'Press approval: job J-100' }).waitFor();
  });

  it('takes the results that the job has, each with its verdict against the plan', async () => {
    await keys.pressButton(button('Take the offered results'));
    await row(/^Specular gloss.*Gloss 81\.0 GU.*≥ 70 GU \(customer\).*QF-1 \(roll 1\).*finished.*meets/).waitFor();
    await page.getByText('Of its lines, 1 is open: Lamination bond strength, 7 days after lamination.').waitFor();
  });

  it('takes a line of one’s own, filled by what a person saw and signs for', async () => {
    await keys.fill(page.getByLabel('A line of your own'), 'Barcode reads');
    await keys.press('Enter');
    await keys.pressButton(button('Fill Barcode reads'));
    await form('Fill Barcode reads').waitFor();
    await keys.reach(page.getByLabel('Seen to be'));
    await keys.type('not');
    await keys.pressButton(button('Sign what was seen'));
    await page.getByText('Say what is not in order.').waitFor();
    await keys.reach(page.getByLabel('Seen to be'), 'backwards');
    await keys.type('in');
    await keys.fill(page.getByLabel(/^What was seen/), 'ten of ten');
    await sign('Imke Rasmund', 'three wet cylinders');
    await page.getByText('This is not the passphrase of Imke Rasmund.').waitFor();
    expect(await page.getByLabel(/^Passphrase/).inputValue()).toBe('');
    await sign('Imke Rasmund', PASS);
    await row(/^Barcode reads.*Seen by Imke Rasmund.*in order\. ten of ten/).waitFor();
  });

  it('has a line with a limit seen only in words, and not at all once there is a result', async () => {
    await keys.pressButton(button(/^Fill Lamination bond/), 'backwards');
    await page.getByLabel(/^What was seen/).waitFor();
    await sign('Imke Rasmund', PASS);
    await page.getByText('The plan sets a limit here: say in words what was seen in place of a measurement.').waitFor();
    await keys.pressButton(button(/^Fill Specular gloss/), 'backwards');
    await page.getByText('There is a result on QF-1, and the plan sets a limit').waitFor();
    expect(await form(/^Fill Specular gloss/).count()).toBe(0);
  });

  it('has its open line waived only by name and with a reason', async () => {
    await keys.pressButton(button(/^Fill Lamination bond/), 'backwards');
    await keys.reach(page.getByLabel('Filled by'));
    await keys.type('nothing');
    await page.getByLabel(/^Why the run may go on/).waitFor();
    await sign('Abena Quist', PASS);
    await page.getByText('A waiver needs its reason').waitFor();
    await keys.fill(page.getByLabel(/^Why the run may go on/), 'rolls wait until the bond is read');
    await sign('Abena Quist', PASS);
    await row(/^Lamination bond.*Waived by Abena Quist, quality lead.*rolls wait until the bond is read.*waived/).waitFor();
    await page.getByText('Every line is filled or waived.').waitFor();
    await notebook.picture('approval-ready');
  });

  it('has several lines waived at once', async () => {
    const { approvalId } = (await callApi(page, 'approvals.list', {}))[0]!;
    for (const title of ['Register is within tolerance', 'Winding is even']) await callApi(page, 'approvalLine.add', { approvalId, title });
    await page.getByText('Of its lines, 2 are open: Register is within tolerance; Winding is even.').waitFor();
    await keys.pressButton(button('Waive several…'), 'backwards');
    const panel = form('Waive several lines');
    await keys.fill(panel.getByLabel(/^Why the run may go on/), 'looked at on the next roll');
    await sign('Abena Quist', PASS);
    await panel.getByText('Tick the lines that are waived.').waitFor();
    for (const line of [/^Winding/, /^Register/]) {
      await keys.reach(panel.getByRole('checkbox', { name: line }), 'backwards');
      await keys.press('Space');
    }
    await sign('Abena Quist', PASS);
    await row(/^Winding is even.*Waived by Abena Quist.*looked at on the next roll.*waived/).waitFor();
    await page.getByText('Every line is filled or waived.').waitFor();
  });

  it('is signed with the passphrase, having said in words what is signed', async () => {
    await keys.pressButton(button('Sign…'), 'backwards');
    const panel = form('Sign the press approval');
    await panel.getByText('approves the press run of job J-100 (dumpling pouch 600 g, run 2): 5 lines: 1 meets its limits, 1 was seen to be in order, 3 are waived (by Abena Quist).').waitFor();
    await panel.getByText('waived by Abena Quist, rolls wait until the bond is read').waitFor();
    await sign('Abena Quist', 'guessed at random');
    await page.getByText('This is not the passphrase of Abena Quist.').waitFor();
    await notebook.picture('approval-sign');
    await sign('Abena Quist', PASS);
    await page.getByRole('heading', { name: 'Signature' }).waitFor();
    expect(await button(/^Fill/).count()).toBe(0);
    await notebook.picture('approval-signed');
  });

  it('is a page of its own', async () => {
    await keys.reach(button('Save PDF'), 'backwards');
    const [download] = await Promise.all([page.waitForEvent('download'), keys.press('Enter')]);
    expect(download.suggestedFilename()).toBe('press-approval-j-100-run-2.pdf');
    const { pages, text } = await readPdf(readFileSync(await download.path()));
    expect(pages).toHaveLength(1);
    for (const words of ['Press approval: job J-100', 'ink: Low-migration red, lot T-88', 'Waived by Abena Quist, quality lead', 'Seen by Imke Rasmund, technician', 'Signed by passphrase']) expect(text).toContain(solid(words));
  });

  it('says when a result that it stands on was corrected later', async () => {
    await callApi(page, 'reading.enter', { testId, row: 'r1', key: 'gloss', typed: '60', reason: 'misread' });
    await page.getByText('Gloss on QF-1 was corrected after it was approved, and not finished again yet.').first().waitFor();
    await keys.goTo('Today');
    await page.getByRole('link', { name: 'Withdraw or replace the press approval: job J-100, dumpling pouch 600 g, run 2' }).waitFor();
    await keys.goTo('Approvals');
    await row(/^J-100.*signed, corrected later, 3 lines waived/).waitFor();
    await notebook.picture('approvals');
  });

  it('is withdrawn by name and with a reason, and the record tells it all', async () => {
    await keys.reach(page.getByRole('link', { name: 'J-100' }));
    await keys.press('Enter');
    await keys.pressButton(button('Withdraw…'));
    await keys.fill(page.getByLabel(/^Why it is withdrawn/), 'gloss was misread');
    await sign('Abena Quist', PASS);
    await page.getByText(/^Withdrawn by Abena Quist/).waitFor();
    const { entries } = await callApi(page, 'record.list', {});
    expect(entries[0]!.text).toBe('Abena Quist withdrew the press approval of job J-100, dumpling pouch 600 g: gloss was misread.');
    await keys.goTo('Record');
    await keys.pressButton(page.getByRole('link', { name: `Open the approval of entry ${entries[0]!.seq}` }));
    await page.getByRole('heading', { name: 'Press approval: job J-100' }).waitFor();
    expect(await callApi(page, 'record.verify', {})).toMatchObject({ intact: true, problems: [] });
    expect(notebook.troubles).toEqual([]);
  });
});
