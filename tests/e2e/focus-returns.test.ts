import { copyFileSync } from 'node:fs';
import path from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { frozenPlan } from '../unit/plan/frozen-plan.ts';
import { callApi } from './call-api.ts';
import type { Keyboard } from './keyboard.ts';
import { NewNotebook } from './new-notebook.ts';

/** Whatever is done by Enter, the focus is then where it was done or at what opened the form, and never at the top of the page. */
const notebook = new NewNotebook();
const PASS = 'three dry cylinders';
const sample = { product: 'dumpling pouch 600 g', job: 'J-100', roll: '', note: '', lotIds: [] };
let page: Page;
let keys: Keyboard;
let sampleId: string;
let lotId: string;
let approvalId: string;
let other: string;

beforeAll(async () => {
  ({ page, keys } = await notebook.open('Focus'));
  const { atBench } = await callApi(page, 'session.get', {});
  await callApi(page, 'passphrase.set', { personId: atBench!.personId, passphrase: PASS });
  await callApi(page, 'instrument.add', { name: 'Gloss meter', serial: 'GM-1', methodIds: [], note: '' });
  const { materialId } = await callApi(page, 'material.add', { kind: 'ink', name: 'Red', supplier: '', description: '' });
  ({ lotId } = await callApi(page, 'lot.add', { materialId, code: 'T-1', receivedOn: null, note: '' }));
  ({ sampleId } = await callApi(page, 'sample.add', { ...sample, code: 'S-1' }));
  const { planId } = await callApi(page, 'plan.add', { content: { ...frozenPlan, dropped: [] } });
  const approval = await callApi(page, 'approval.draft', { planId, product: '', job: 'J-9', customer: '', pressRun: '', sampleIds: [], lotIds: [], note: '' });
  ({ approvalId } = approval);
  await callApi(page, 'approvalLines.waive', { approvalId, lineIds: approval.checklist.map(({ lineId }) => lineId), reason: 'for this walk', personId: atBench!.personId, passphrase: PASS });
  const file = path.join(notebook.program.notebooks, 'focus.laydown');
  other = path.join(notebook.program.notebooks, 'other.laydown');
  await callApi(page, 'notebook.checkpoint', {});
  copyFileSync(file, other);
  await callApi(page, 'sample.add', { ...sample, code: 'S-2' });
  await callApi(page, 'notebook.open', { handle: other });
  await callApi(page, 'sample.add', { ...sample, code: 'S-2', product: 'ground coffee brick' });
  await callApi(page, 'notebook.open', { handle: file });
  await page.reload();
  await page.getByRole('heading', { name: 'Today', level: 1 }).waitFor();
});

afterAll(() => notebook.close());

const button = (name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' });
const form = (name: string | RegExp) => page.getByRole('form', { name });

async function toPlace(hash: string, heading: string): Promise<void> {
  await page.evaluate((to) => (location.hash = to), hash);
  await page.getByRole('heading', { name: heading, level: 1 }).waitFor();
}

async function hasFocus(control: Locator): Promise<void> {
  await expect.poll(() => control.evaluate((element) => element === document.activeElement)).toBe(true);
}

/** Some control of the screen, not the body and nothing of the rail. */
async function isInside(part: Locator): Promise<void> {
  await expect.poll(() => part.evaluate((element) => element !== document.activeElement && element.contains(document.activeElement))).toBe(true);
}

describe('the focus after Enter', () => {
  it('goes back to what opened a calibration', async () => {
    await toPlace('#/instruments', 'Instruments and fluids');
    const opener = button('Calibrations of Gloss meter, GM-1');
    await keys.pressButton(opener);
    await keys.type('01152025');
    await keys.pressButton(button('Put down the calibration'));
    await form(/^New calibration/).waitFor({ state: 'detached' });
    await hasFocus(opener);
  });

  it('goes back to what opened a new fluid', async () => {
    const opener = button('Add fluid, tape or standard…');
    await keys.pressButton(opener);
    await keys.fill(form('New test fluid, tape or standard').getByLabel(/^Name/), 'Test fluids');
    await keys.pressButton(button('Add'));
    await page.getByRole('row', { name: /^Test fluids/ }).waitFor();
    await hasFocus(opener);
  });

  it('stays near where a plan was followed, though the field that chose it went with the form', async () => {
    await toPlace(`#/samples/${sampleId}`, 'S-1');
    await keys.reach(page.getByRole('combobox', { name: 'Follow a plan' }));
    await keys.type('dump');
    await page.getByRole('option', { name: /^Frozen dumpling/ }).waitFor();
    await keys.press('Enter');
    await form(/^Follow /).waitFor();
    await isInside(form(/^Follow /));
    await keys.pressButton(button('Follow the plan'));
    await button('State the times…').waitFor();
    await isInside(page.getByRole('region', { name: 'Plan' }));
  });

  it('goes back to what opened the line of a plan that is taken so', async () => {
    await toPlace('#/make-plan', 'New plan');
    await keys.reach(page.getByLabel('Begin from an end use'));
    await keys.type('Froz');
    const opener = button('Change Lamination bond strength, 7 days after lamination');
    await keys.pressButton(opener);
    await keys.pressButton(button('Take it so'));
    await form('Lamination bond strength').waitFor({ state: 'detached' });
    await hasFocus(opener);
  });

  it('goes back to what opened the retiring of a lot', async () => {
    await toPlace(`#/lot/${lotId}`, 'Lot T-1');
    await keys.pressButton(button('Retire…'));
    await keys.type('recalled');
    await keys.press('Enter');
    await hasFocus(button('Back into use…'));
  });

  it('stays on the page of an approval that was signed', async () => {
    await toPlace(`#/approvals/${approvalId}`, 'Press approval: job J-9');
    await keys.pressButton(button('Sign…'));
    await keys.reach(page.getByLabel('Who signs'));
    await keys.type('Im');
    await keys.fill(page.getByLabel(/^Passphrase/), PASS);
    await keys.press('Enter');
    await page.getByRole('heading', { name: 'Signature' }).waitFor();
    await isInside(page.locator('#screen'));
  });

  it('stays on the button that verified the record', async () => {
    await keys.goTo('Record');
    const verify = button('Verify the record');
    await keys.pressButton(verify);
    await page.getByText(/^Intact:/).waitFor();
    await hasFocus(verify);
  });

  it('stays in the row of a conflict that was settled', async () => {
    await toPlace('#/merge', 'Bring in another notebook');
    await keys.pressButton(button('other.laydown'));
    const bringIn = button(/^Bring (it )?in/);
    await hasFocus(bringIn);
    await keys.press('Enter');
    const conflicts = page.getByRole('table', { name: /^Conflicts with other/ });
    await keys.pressButton(conflicts.getByRole('button', { name: 'As it stands…' }));
    await form('Settle the conflict').waitFor();
    await keys.type('two samples');
    await keys.press('Enter');
    await conflicts.getByText('● settled').waitFor();
    await isInside(page.locator('#screen'));
  });

  it('stays on the button by which another notebook is looked at again', async () => {
    const again = button('other.laydown');
    await keys.pressButton(again, 'backwards');
    await page.getByText(/^There is nothing new in it/).waitFor();
    await hasFocus(again);
    expect(notebook.troubles).toEqual([]);
  });
});
