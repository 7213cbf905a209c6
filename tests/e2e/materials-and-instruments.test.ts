import { readFileSync } from 'node:fs';
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { callApi } from './call-api.ts';
import type { Keyboard } from './keyboard.ts';
import { NewNotebook } from './new-notebook.ts';

/**
 * Materials, lots and what was made from them, a recall, a sample with its label, instruments and test fluids: by keyboard
 * alone. The steps build on each other and run in order.
 */
const notebook = new NewNotebook();
let page: Page;
let keys: Keyboard;

beforeAll(async () => {
  ({ page, keys } = await notebook.open('Kept things'));
  for (const [kind, name, code] of [['film', 'PET 12 µm', 'OV-1'], ['ink', 'Series R0', 'TM-1']] as const) {
    const { materialId } = await callApi(page, 'material.add', { kind, name, supplier: 'Osprey Vale', description: '' });
    await callApi(page, 'lot.add', { materialId, code, receivedOn: null, note: '' });
  }
  await page.reload();
  await page.getByRole('heading', { name: 'Today', level: 1 }).waitFor();
});

afterAll(() => notebook.close());

const button = (name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' });
const link = (name: string | RegExp) => page.getByRole('link', { name, exact: typeof name === 'string' });
const heading = (name: string) => page.getByRole('heading', { name, level: 1, exact: true });
const field = (name: string | RegExp): Locator => page.getByLabel(name, { exact: typeof name === 'string' });
/** A day that lies before today, as a field for days is typed into: month, day, year. */
const LAST_YEAR = '01152025';

async function typeDay(name: string | RegExp, monthDayYear: string): Promise<void> {
  await keys.reach(field(name));
  await keys.type(monthDayYear);
}

async function pick(combobox: string, typed: string): Promise<void> {
  await keys.reach(page.getByRole('combobox', { name: combobox }));
  await keys.type(typed);
  await page.getByRole('option', { name: new RegExp(typed) }).first().waitFor();
  await keys.press('Enter');
}

describe('materials and lots', () => {
  it('a lot that was added by mistake is undone, listed no more, and is back under its code as it is typed now', async () => {
    const lots = page.getByRole('row', { name: /^PET 12 µm/ }).getByRole('link', { name: 'F-101', exact: true });
    const addLot = async (note: string) => {
      await keys.pressButton(button('Add lot of PET 12 µm'));
      const form = page.getByRole('form', { name: 'New lot of PET 12 µm' });
      await keys.fill(form.getByLabel(/^Lot/), 'F-101');
      await keys.fill(form.getByLabel('Note'), note);
      await keys.pressButton(form.getByRole('button', { name: 'Add lot' }));
      await lots.waitFor();
    };
    await keys.goTo('Materials');
    await addLot('mistyped');
    await keys.press('Control+z');
    await lots.waitFor({ state: 'detached' });
    await addLot('from the press side');
    await page.getByText('from the press side').waitFor();
    expect(await page.getByText('mistyped').count()).toBe(0);
    await keys.press('Control+z');
    await lots.waitFor({ state: 'detached' });
  });

  it('a laminate is typed as its layers and drawn while it is typed', async () => {
    await keys.goTo('Materials');
    await keys.pressButton(button('Add material…'));
    await keys.reach(field('Kind'));
    await keys.type('lam');
    await keys.fill(field(/^Name/), 'Pouch laminate');
    await keys.fill(field('Structure'), 'PET 12 / ink / adhesive 1.8 g/m² //');
    await page.getByText('Layer 4 is empty').waitFor();
    await keys.fill(field('Structure'), 'PET 12 / ink / adhesive 1,8 / PE 60');
    await page.getByText('say the unit, 1,8 g/m² or 1,8 µm.').waitFor();
    await notebook.picture('structure-without-unit');
    await keys.fill(field('Structure'), 'PET 12 treated inner / ink / adhesive 1.8 g/m² / PE 60');
    await page.getByRole('list', { name: /^Layers from the outside to the inside: PET 12 µm treated inner \/ ink/ }).waitFor();
    await page.getByText('Read as PET 12 µm treated inner / ink / adhesive 1.8 g/m² / PE 60 µm').waitFor();
    await notebook.picture('structure-read');
    await page.getByText('printed on the inner side, treated on the inner side').waitFor();
    await keys.pressButton(button('Add material'));
    await keys.fill(page.getByRole('form', { name: 'New lot of Pouch laminate' }).getByLabel(/^Lot/), 'L-1');
    await keys.press('Enter');
    await keys.pressButton(link('L-1'));
    await heading('Lot L-1').waitFor();
  });

  it('what went into a roll is put down, and a loop refused by name', async () => {
    await keys.pressButton(button('What went into it…'));
    await pick('Lots that went into it', 'OV-1');
    await pick('Lots that went into it', 'TM-1');
    await keys.pressButton(button('Put down'));
    await keys.pressButton(page.getByRole('list', { name: 'What went into lot L-1' }).getByRole('link', { name: 'PET 12 µm, lot OV-1' }));
    await heading('Lot OV-1').waitFor();
    await page.getByRole('list', { name: 'What lot OV-1 went into' }).getByText('Pouch laminate, lot L-1').waitFor();
    await keys.pressButton(button('What went into it…'));
    await pick('Lots that went into it', 'L-1');
    await keys.pressButton(button('Put down'));
    await page.getByText('A lot cannot be made from itself: PET 12 µm, lot OV-1 would be made from Pouch laminate, lot L-1, which is made from PET 12 µm, lot OV-1.').waitFor();
    await keys.pressButton(button('Close'));
  });

  it('a sample says where it was cut and how long it is kept, and prints its label', async () => {
    await keys.goTo('Samples');
    await keys.pressButton(button('Add sample…'));
    await keys.fill(field(/^Code/), 'QF-1');
    await keys.fill(field('Product'), 'dumpling pouch 600 g');
    await pick('Lots it is made of', 'L-1');
    await keys.fill(field('Across the web in mm'), '350');
    await keys.fill(field('Along the roll in m'), 'far');
    await keys.pressButton(button('Add sample'));
    await page.getByText(/The place along the roll takes a number in m/).waitFor();
    await keys.fill(field('Along the roll in m'), '400 m');
    await keys.fill(field('Kept at'), 'shelf 4');
    await typeDay('Retained until', LAST_YEAR);
    await keys.pressButton(button('Add sample'));
    await heading('QF-1').waitFor();
    await page.getByText('350 mm across, 400 m along').waitFor();
    await keys.pressButton(button('Label…'), 'backwards');
    const [download] = await Promise.all([page.waitForEvent('download'), keys.pressButton(button('Make the PDF'))]);
    expect(download.suggestedFilename()).toBe('labels-QF-1.pdf');
    expect(readFileSync((await download.path())!).subarray(0, 5).toString()).toBe('%PDF-');
    await keys.pressButton(button('Close'));
    await notebook.picture('kept-sample');
  });

  it('what a label holds, typed into the search as a scanner does, opens the sample', async () => {
    await keys.goTo('Samples');
    await heading('Samples').waitFor();
    await keys.press('/');
    await keys.type('QF-1 | dumpling pouch 600 g | 350 mm across, 400 m along | Kept things\n');
    await heading('QF-1').waitFor();
  });

  it('a bad lot is retired with a reason, and one screen says what stands on it', async () => {
    const { samples } = await callApi(page, 'samples.list', {});
    const { test } = await callApi(page, 'test.start', { sampleId: samples[0]!.sampleId, methodId: 'test-fluids' });
    for (const row of ['r1', 'r2', 'r3']) await callApi(page, 'reading.enter', { testId: test.testId, row, key: 'wetsMNm', typed: '38' });
    await callApi(page, 'test.finish', { testId: test.testId, remark: '' });
    const { trialSetId } = await callApi(page, 'trialSet.add', { title: 'Low-migration series', question: '', product: '' });
    const { trials } = await callApi(page, 'trial.add', { trialSetId, name: 'R4', control: false, components: [], factors: {}, note: '' });
    await callApi(page, 'trial.linkSample', { trialId: trials[0]!.trialId, sampleId: samples[0]!.sampleId });
    await keys.goTo('Materials');
    await keys.pressButton(link('OV-1'));
    await heading('Lot OV-1').waitFor();
    await keys.pressButton(button('Retire…'));
    await keys.type('Ink beads on it\n');
    await page.getByText(/^This lot was retired on .* \(Ink beads on it\)/).waitFor();
    const recall = page.getByRole('table', { name: 'What stands on lot OV-1' });
    expect(await recall.getByRole('row').count()).toBe(4);
    await recall.getByRole('row', { name: 'trial R4 Low-migration series by its sample' }).waitFor();
    await page.getByText(/1 lot, 1 sample, 1 test, 1 trial, 0 reports, 0 press approvals/).waitFor();
    await notebook.picture('kept-lot');
    const [download] = await Promise.all([page.waitForEvent('download'), keys.pressButton(button('Save as CSV'))]);
    expect(readFileSync((await download.path())!, 'utf8')).toContain('sample,QF-1,"dumpling pouch 600 g; Pouch laminate, lot L-1",kept,');
    await keys.pressButton(recall.getByRole('link', { name: 'QF-1' }));
    await heading('QF-1').waitFor();
    await page.getByRole('list', { name: 'What sample QF-1 is made of' }).getByText(/was retired on .* \(Ink beads on it\)/).waitFor();
  });
});

describe('instruments and fluids', () => {
  it('are put down with their calibration and last day', async () => {
    await keys.goTo('Materials');
    await keys.pressButton(link('Instruments and fluids'));
    await heading('Instruments and fluids').waitFor();
    await keys.pressButton(button('Add instrument…'));
    await keys.fill(field(/^Name/), 'Gloss meter');
    await keys.fill(field('Serial number'), 'GM-118');
    await pick('Methods that it serves', 'gloss');
    await keys.pressButton(button('Add instrument'));
    await page.getByText('not calibrated').waitFor();
    await keys.pressButton(button('Calibrations of Gloss meter, GM-118'));
    await typeDay(/^Calibrated on/, '01152024');
    await typeDay('Due again on', LAST_YEAR);
    await keys.pressButton(button('Put down the calibration'));
    await page.getByRole('row', { name: /^Gloss meter, GM-118/ }).getByText('ended').waitFor();
    await keys.pressButton(button('Add fluid, tape or standard…'));
    await keys.fill(page.getByRole('form', { name: 'New test fluid, tape or standard' }).getByLabel(/^Name/), 'Test fluids');
    await keys.fill(page.getByRole('form', { name: 'New test fluid, tape or standard' }).getByLabel('Lot'), 'TF-4');
    await typeDay('Expires on', LAST_YEAR);
    await keys.pressButton(button('Add'));
    await page.getByRole('row', { name: /^Test fluids, lot TF-4/ }).waitFor();
    await notebook.picture('kept-instruments');
  });

  it('a bench sheet names one by a few letters, and flags what was read with it', async () => {
    const { samples } = await callApi(page, 'samples.list', {});
    const { test } = await callApi(page, 'test.start', { sampleId: samples[0]!.sampleId, methodId: 'test-fluids' });
    for (const row of ['r1', 'r2', 'r3']) await callApi(page, 'reading.enter', { testId: test.testId, row, key: 'wetsMNm', typed: '38' });
    await page.evaluate((to) => (location.hash = to), `#/bench-sheet/${test.testId}`);
    const cell = page.getByRole('combobox', { name: /Fluid set and lot/ });
    await keys.reach(cell);
    await keys.type('TF');
    await page.getByRole('option', { name: /Test fluids, lot TF-4/ }).waitFor();
    await keys.press('Enter');
    await page.getByText(/^.*Read with Test fluids, lot TF-4 on \d{4}-\d\d-\d\d, which expired on 2025-01-15\./).first().waitFor();
    await notebook.picture('kept-flag');
  });

  it('a bond that is read with a tester out of calibration is flagged on the sheet, in its finished result and in a report', async () => {
    await keys.goTo('Materials');
    await keys.pressButton(link('Instruments and fluids'));
    await keys.pressButton(button('Add instrument…'));
    await keys.fill(field(/^Name/), 'Tensile tester');
    await keys.fill(field('Serial number'), 'TT-03');
    await pick('Methods that it serves', 'Lamination bond');
    await keys.pressButton(button('Add instrument'));
    await keys.pressButton(button('Calibrations of Tensile tester, TT-03'));
    await typeDay(/^Calibrated on/, '01152024');
    await typeDay('Due again on', LAST_YEAR);
    await keys.pressButton(button('Put down the calibration'));
    await page.getByRole('row', { name: /^Tensile tester, TT-03/ }).getByText('ended').waitFor();

    const { samples } = await callApi(page, 'samples.list', {});
    const { test } = await callApi(page, 'test.start', { sampleId: samples[0]!.sampleId, methodId: 'lamination-bond' });
    await page.evaluate((to) => (location.hash = to), `#/bench-sheet/${test.testId}`);
    const instrument = page.getByRole('combobox', { name: 'Instrument' });
    await keys.reach(instrument);
    await keys.type('tens');
    await page.getByRole('option', { name: /Tensile tester, TT-03.*calibration ended on 2025-01-15/ }).waitFor();
    await keys.press('Enter');
    for (const [index, force] of ['3.1', '3.2', '3.3'].entries()) {
      await keys.reach(page.locator(`#r${index + 1}-forceN`));
      await keys.press('Control+A');
      await keys.type(force);
      await keys.reach(page.locator(`#r${index + 1}-mode`));
      await keys.press('a', 'Enter');
    }
    const flag = /Read with Tensile tester, TT-03 on \d{4}-\d\d-\d\d, whose calibration ended on 2025-01-15\./;
    await page.getByText(flag).first().waitFor();
    await notebook.picture('kept-bond-flag');
    await keys.press('Control+Enter');
    await page.getByRole('heading', { name: 'Finished' }).waitFor();
    await page.getByText(flag).first().waitFor();
    const { sections } = await callApi(page, 'report.preview', { title: 'Bond', recipient: '', remark: '', testIds: [test.testId], replaces: null });
    expect(sections[0]!.flags).toContainEqual(expect.objectContaining({ where: 'Instrument', text: expect.stringMatching(flag) }));
    expect(sections[0]!.lines[0]).toMatchObject({ text: '3.20 N/15 mm' });
  });

  it('Today says what is due', async () => {
    await keys.goTo('Today');
    for (const what of ['Calibrate Gloss meter, GM-118', 'Calibrate Tensile tester, TT-03', 'Replace Test fluids, lot TF-4', 'Dispose of sample QF-1, or keep it longer']) await link(what).waitFor();
    await keys.pressButton(link('Calibrate Gloss meter, GM-118'));
    await heading('Instruments and fluids').waitFor();
    expect(notebook.troubles).toEqual([]);
  });
});
