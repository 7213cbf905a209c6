import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { likeliest, profileEnds, type Between } from './independent-figures.ts';
import { Keyboard } from './keyboard.ts';
import { readPdf, solid, type PdfText } from './pdf-text.ts';
import { launchBrowser, openPage, ServedNotebook } from './served-notebook.ts';

/**
 * The whole job by keyboard alone, from an empty folder to a signed-off PDF, then a power cut. The steps build on each
 * other and run in order; no mouse is used anywhere.
 */
const program = new ServedNotebook();
let browser: Browser;
let page: Page;
let troubles: string[];
let keys: Keyboard;

beforeAll(async () => {
  browser = await launchBrowser();
  await program.start(path.join(program.home, 'not-there-yet.laydown'));
  ({ page, troubles } = await openPage(browser, program.address));
  page.setDefaultTimeout(15_000);
  keys = new Keyboard(page);
});

afterAll(async () => {
  await browser.close();
  await program.stopAndClear();
});

const button = (name: string | RegExp) => page.getByRole('button', { name });
const heading = (name: string | RegExp) => page.getByRole('heading', { name, level: 1 });
const cell = (row: string, field: string) => page.getByLabel(new RegExp(`^${row}, ${field}`)).first();
/** One property in the result panel: its title, value, interval, limit and verdict. */
const resultOf = (title: string) => page.getByRole('region', { name: /^Result/ }).getByRole('listitem').filter({ hasText: title }).first();

async function shows(element: Locator, ...parts: (string | RegExp)[]): Promise<void> {
  for (const part of parts) await element.filter({ hasText: part }).waitFor();
}

/** A number shown to d decimals is right when the independent one rounds to it. */
function expectShown(text: string, pattern: RegExp, independent: number): void {
  const shown = pattern.exec(text)?.[1];
  expect(shown, `${pattern} in: ${text}`).toBeDefined();
  const decimals = shown!.split('.')[1]?.length ?? 0;
  expect(Math.abs(Number(shown) - independent)).toBeLessThanOrEqual(0.5 * 10 ** -decimals + 1e-6);
}

async function entryCount(): Promise<number> {
  const found = /entry (\d+)/.exec((await page.getByRole('contentinfo').textContent()) ?? '');
  return Number(found?.[1]);
}

async function addMaterial(kindKey: string, name: string, supplier: string, lot: string, receivedKeys = ''): Promise<void> {
  await keys.pressButton(button('Add material…'));
  const form = page.getByRole('form', { name: 'New material' });
  await keys.reach(form.getByLabel('Kind'));
  await keys.type(kindKey);
  await keys.fill(form.getByLabel('Name'), name);
  await keys.fill(form.getByLabel('Supplier'), supplier);
  await keys.press('Enter');
  const lotForm = page.getByRole('form', { name: `New lot of ${name}` });
  await keys.fill(lotForm.getByLabel('Lot'), lot);
  if (receivedKeys) {
    await keys.reach(lotForm.getByLabel('Received on'));
    await keys.type(receivedKeys);
  }
  await keys.pressButton(lotForm.getByRole('button', { name: 'Add lot' }));
  await shows(page.getByRole('row', { name: new RegExp(name) }), lot);
}

async function startTest(method: string, title: RegExp): Promise<void> {
  await keys.goTo('Samples');
  await keys.pressButton(page.getByRole('link', { name: 'QF-2041' }));
  const field = page.getByRole('combobox', { name: 'Start a test' });
  await keys.reach(field);
  await keys.type(method);
  await page.getByRole('option', { name: new RegExp(method, 'i') }).first().waitFor();
  await keys.press('Enter');
  await heading(title).waitFor();
}

async function setLimit(property: RegExp, lowest: string, source: string): Promise<void> {
  await keys.pressButton(button('Limits…'), 'backwards');
  const group = page.getByRole('group', { name: property });
  await keys.fill(group.getByLabel('At least'), lowest);
  await keys.fill(group.getByLabel('Who asks for it'), source);
  await keys.fill(page.getByLabel('Reason for the limits'), 'agreed with the customer');
  await keys.pressButton(button('Set limits'));
  await button('Set limits').waitFor({ state: 'detached' });
}

async function finishTest(remark: string): Promise<void> {
  await keys.fill(page.getByLabel('Remark', { exact: true }), remark);
  await keys.pressButton(button('Finish test'));
  await page.getByRole('heading', { name: 'Finished' }).waitFor();
}

const positions = Array.from({ length: 10 }, (_, index) => `position ${index + 1}`);
/** Two brackets below the middle one, six in it, two above: the likelihood is the same seen from either side of 39. */
const brackets: Between[] = [
  { low: 36, high: 38 },
  { low: 36, high: 38 },
  ...Array.from({ length: 6 }, () => ({ low: 38, high: 40 })),
  { low: 40, high: 42 },
  { low: 40, high: 42 },
];
/** Student's t, 97.5 %, as in any handbook table. */
const t9 = 2.262157;
const t4 = 2.776445;

/** 1 gf = 9.80665·10⁻³ N exactly (standard acceleration of fall, 3rd CGPM 1901). */
const newtonPerGramForce = 9.80665e-3;
const specimens = {
  traces: [
    { name: 'peel-1.csv', unit: 'N', plateau: 2.4, newton: 2.4 },
    { name: 'peel-2.csv', unit: 'N', plateau: 2.55, newton: 2.55 },
    { name: 'peel-3.csv', unit: 'gf', plateau: 250, newton: 250 * newtonPerGramForce },
  ],
  typedN: 2.65,
  tornN: 2.2,
};

/** Loading over 2 mm, then one force throughout to 50 mm; two header lines, semicolons, decimal commas. */
function traceCsv(unit: string, plateau: number): string {
  const comma = (value: number) => value.toFixed(3).replace('.', ',');
  const points = Array.from({ length: 501 }, (_, index) => {
    const millimetres = index / 10;
    return `${comma(millimetres)};${comma(millimetres < 2 ? (plateau * millimetres) / 2 : plateau)}`;
  });
  return ['Displacement;Force', `mm;${unit}`, ...points].join('\r\n');
}

/** Density 1.6 that fades by first order with k = 0.004 per hour, as the densitometer would show it. */
const fadeRate = 0.004;
const exposures = [0, 20, 40, 60, 80, 100, 120];
const densities = exposures.map((hours) => (1.6 * Math.exp(-fadeRate * hours)).toFixed(4));

describe('the whole job by keyboard', () => {
  it('begins a notebook with its first person', async () => {
    await heading('Open or begin a notebook').waitFor();
    await keys.fill(page.getByLabel('Title'), 'Quillmere Flexibles 2026');
    await keys.fill(page.getByLabel('Laboratory'), 'Quillmere Flexibles, film laboratory');
    await keys.fill(page.getByLabel('File name'), 'quillmere');
    await keys.fill(page.getByLabel(/^Name/), 'Imke Rasmund');
    await keys.fill(page.getByLabel(/^Initials/), 'IR');
    await keys.fill(page.getByLabel('Role'), 'technician');
    await keys.pressButton(button('Begin notebook'));
    await heading('Today').waitFor();
    await shows(page.getByRole('contentinfo'), 'At the bench: Imke Rasmund');
    expect(existsSync(path.join(program.notebooks, 'quillmere.laydown'))).toBe(true);
    await shows(page.getByRole('listitem'), /^Add a film, ink or adhesive/);
  });

  it('adds film, ink, adhesive and laminate, each with a lot', async () => {
    await keys.goTo('Materials');
    await heading('Materials').waitFor();
    await addMaterial('film', 'PET 12 µm', 'Osprey Vale', 'OV-7731', '03092026');
    await addMaterial('ink', 'Low-migration cyan', 'Tamarind', 'T-118');
    await addMaterial('adhesive', 'Two-part adhesive', 'Corrie', 'C-52');
    await addMaterial('laminate', 'Dumpling pouch web', 'own make', 'L-2041');
    await shows(page.getByRole('row', { name: /PET 12 µm/ }), 'film', 'received 2026-03-09');
    await shows(page.getByRole('row', { name: /Two-part adhesive/ }), 'Corrie');
  });

  it('adds a sample with its lots', async () => {
    await keys.goTo('Samples');
    await keys.pressButton(button('Add sample…'));
    const form = page.getByRole('form', { name: 'New sample' });
    await keys.fill(form.getByLabel('Code'), 'QF-2041');
    await keys.fill(form.getByLabel('Product'), 'dumpling pouch 600 g');
    await keys.fill(form.getByLabel('Job'), 'J-77');
    await keys.fill(form.getByLabel('Roll', { exact: true }), '4');
    for (const lot of ['OV-7731', 'T-118', 'C-52', 'L-2041']) {
      await keys.reach(form.getByRole('combobox', { name: 'Lots it is made of' }));
      await keys.type(lot);
      await keys.press('Enter');
      await form.getByRole('listitem').filter({ hasText: `lot ${lot}` }).waitFor();
    }
    await keys.pressButton(form.getByRole('button', { name: 'Add sample' }));
    await heading('QF-2041').waitFor();
    for (const lot of ['OV-7731', 'T-118', 'C-52', 'L-2041']) await page.getByRole('region', { name: 'Made of' }).getByText(lot).first().waitFor();
  });

  it('reads test fluids at ten positions and judges them', async () => {
    await startTest('fluids', /^Test fluids/);
    await keys.fill(page.getByLabel(/^Temperature/), '23');
    await keys.press('Enter');
    await keys.type('50,0');
    await keys.press('Enter');
    // A slip of the finger at position 4, put right below.
    const held = brackets.map(({ low }, index) => (index === 3 ? '36' : index === 4 ? '38,0' : String(low)));
    await keys.typeColumn(cell(positions[0]!, 'Holds for 2 s'), held);
    // Enter in the empty row below the last reading leads to the top of the next column.
    await keys.press('Enter');
    expect(await cell(positions[0]!, 'Retracts within 2 s').evaluate((element) => element === document.activeElement)).toBe(true);
    await keys.typeColumn(cell(positions[0]!, 'Retracts within 2 s'), brackets.map(({ high }) => String(high)));
    await shows(resultOf('Wetting tension'), 'n = 10', 'no limit');
    await setLimit(/^Wetting tension/, '38', 'customer specification');
    await shows(resultOf('Wetting tension'), '≥ 38');
  });

  it('corrects a wrong reading with a reason', async () => {
    await keys.fill(cell('position 4', 'Holds for 2 s'), '38');
    await keys.press('Enter');
    const reason = page.getByLabel(/why does 36 become 38\?/);
    await keys.fill(reason, 'read from the wrong bottle');
    await keys.press('Enter');
    await page.getByText('corrected once').waitFor();

    await keys.pressButton(page.getByRole('link', { name: 'Record of this test' }), 'backwards');
    await shows(page.getByRole('row').filter({ hasText: 'read from the wrong bottle' }), '36', '38', 'Imke Rasmund');
    await keys.pressButton(page.getByRole('link', { name: 'Bench sheet' }));
    await heading(/^Test fluids/).waitFor();
  });

  it('gives the wetting tension that follows by hand', async () => {
    const wettingTension = resultOf('Wetting tension');
    await shows(wettingTension, 'n = 10', '≥ 38');
    const text = (await wettingTension.textContent())!;
    // By symmetry of the brackets about 39 the likelihood has its peak at 39 exactly, whatever the spread.
    expectShown(text, /([\d.]+) mN\/m/, 39);
    const range: [[number, number], [number, number]] = [[36, 42], [0.2, 6]];
    expect(likeliest(brackets, ...range).mean).toBeCloseTo(39, 4);
    const ends = profileEnds(brackets, t9, ...range);
    expectShown(text, /interval ([\d.]+) to/, ends.low);
    expectShown(text, /interval [\d.]+ to ([\d.]+)/, ends.high);
    // The whole interval lies above 38.
    expect(ends.low).toBeGreaterThan(38);
    expect(text).toContain('meets');
    await shows(resultOf('Weakest position'), 'between 36 and 38 mN/m');
    await finishTest('Web tested across its whole width.');
  });

  it('reads a lamination bond from three traces and two typed forces, one of them torn', async () => {
    await startTest('lamination bond', /^Lamination bond/);
    for (const [index, { name, unit, plateau }] of specimens.traces.entries()) {
      const file = path.join(program.home, name);
      writeFileSync(file, traceCsv(unit, plateau));
      await keys.chooseFile(page.getByRole('group', { name: `specimen ${index + 1}, Trace` }).getByRole('button'), file);
      const panel = page.getByRole('region', { name: `Trace from ${name}` });
      await keys.pressButton(panel.getByRole('button', { name: 'Take this trace' }));
      await panel.waitFor({ state: 'detached' });
      await keys.reach(cell(`specimen ${index + 1}`, 'Failure'));
      await keys.press('a');
    }
    await keys.fill(cell('specimen 4', 'Mean force'), '2,65');
    await keys.reach(cell('specimen 4', 'Failure'));
    await keys.press('a');
    await keys.fill(cell('specimen 5', 'Mean force'), '2,20');
    await keys.reach(cell('specimen 5', 'Failure'));
    await keys.press('t', 'Enter');
    await shows(resultOf('Mean bond strength'), 'n = 5');
    await setLimit(/^Mean bond strength/, '2', 'customer specification');
    await shows(resultOf('Mean bond strength'), '≥ 2');

    // On strips of 15 mm the strength in N/15 mm is the force in N. The torn one only says 'at least 2.20'.
    const readings: Between[] = [
      ...specimens.traces.map(({ newton }) => ({ low: newton, high: newton })),
      { low: specimens.typedN, high: specimens.typedN },
      { low: specimens.tornN, high: null },
    ];
    const range: [[number, number], [number, number]] = [[1.5, 3.5], [0.01, 1]];
    const ends = profileEnds(readings, t4, ...range);
    const text = (await resultOf('Mean bond strength').textContent())!;
    expectShown(text, /([\d.]+) N\/15 mm/, likeliest(readings, ...range).mean);
    expectShown(text, /interval ([\d.]+) to/, ends.low);
    expectShown(text, /interval [\d.]+ to ([\d.]+)/, ends.high);
    expect(ends.low).toBeGreaterThan(2);
    expect(text).toContain('meets');
    await finishTest('Five strips.');
  });

  it('reads a light exposure whose endpoint is known', async () => {
    await startTest('light exposure', /^Light exposure/);
    await keys.fill(page.getByLabel(/^Irradiance/), '50');
    await keys.typeColumn(cell('exposure 1', 'Exposure so far'), exposures.map(String));
    await keys.typeColumn(cell('exposure 1', 'Density'), densities);
    await shows(resultOf('Retention at the last exposure'), 'n = 1');
    await setLimit(/^Exposure to the endpoint/, '100', 'customer specification');
    await shows(resultOf('Exposure to the endpoint'), '≥ 100');
    const text = (await resultOf('Exposure to the endpoint').textContent())!;
    // 0.7 = exp(−k·H), so H = ln(1/0.7)/k = 0.3566749/0.004 = 89.17 h.
    // Densities to 0.0001 are off by 0.00003 of 1.6 at most, which moves H by 0.00003/(0.7·k) = 0.011 h.
    expect(Math.abs(Number(/([\d.]+) h/.exec(text)?.[1]) - Math.log(1 / 0.7) / fadeRate)).toBeLessThan(0.011);
    expect(text).toContain('falls short');
    await finishTest('One patch.');
  });

  let pdf: PdfText;

  it('issues a report and saves it as PDF', async () => {
    await keys.goTo('Reports');
    await keys.pressButton(page.getByRole('link', { name: 'New report…' }));
    await keys.fill(page.getByLabel('Title'), 'Low-migration cyan on the dumpling pouch');
    await keys.fill(page.getByLabel('Recipient'), 'Tamarind, technical service');
    await keys.reach(page.getByRole('checkbox', { name: /QF-2041/ }));
    await keys.press('Space');
    await keys.fill(page.getByLabel('Remark'), 'For the supplier meeting.');
    await keys.pressButton(button('Issue report'));
    await heading(/^Report LR-/).waitFor();
    const save = button(/^Save PDF of LR-/);
    await keys.reach(save);
    const [download] = await Promise.all([page.waitForEvent('download'), keys.press('Enter')]);
    await shows(page.getByRole('status'), `${download.suggestedFilename()} is ready`);
    expect(download.suggestedFilename()).toMatch(/^LR-\d{4}-001.*\.pdf$/);
    pdf = await readPdf(readFileSync(await download.path()));
  });

  it('has everything in the PDF', async () => {
    const says = (text: string) => expect(pdf.text.includes(solid(text)), text).toBe(true);
    expect(pdf.text).toMatch(/LR-\d{4}-001/);
    says(`page 1 of ${pdf.pages.length}`);
    says('Low-migration cyan on the dumpling pouch');
    says('Tamarind, technical service');
    says('Imke Rasmund');
    // Value, unit, interval, n, limit and verdict, as worked out above: 39 and 38.05 to 39.95; 2.51 and 2.36 to 2.67; 89.17.
    expect(pdf.text).toMatch(/Wettingtension39(\.0+)?mN\/m38\.05to39\.9510≥38meets/);
    expect(pdf.text).toMatch(/Meanbondstrength2\.51N\/15mm2\.36to2\.675≥2meets/);
    expect(pdf.text).toMatch(/Exposuretotheendpoint89\.1\d*h[\d.]+to[\d.]+6≥100fallsshort/);
    says('Weakest position between 36 and 38 mN/m 10 no limit');
    // The correction with place, before, after, reason and name.
    says('position 4, Holds for 2 s 36 mN/m 38 mN/m read from the wrong bottle Imke Rasmund');
    // Every typed reading stands in the appendix.
    for (const density of densities) says(density);
    says('peel-3.csv');
    // The report names the entry that it was made from, by its place and by its hash, as the Record has it.
    const [, place, hash] = /first(\d+)entries.*?([0-9a-f]{64})/.exec(pdf.text)!;
    await keys.goTo('Record');
    const entry = page.getByRole('row').filter({ has: page.getByRole('cell', { name: place!, exact: true }) });
    expect(await entry.getByRole('note').getAttribute('aria-label')).toBe(`hash ${hash}`);
    // The test fluids' hazard, the blade's and the lamp's.
    for (const text of ['Cautions', 'Toxic', 'Blade', 'UV light', 'Ozone']) says(text);
  });

  it('still has everything after a power cut', async () => {
    const before = await entryCount();
    expect(before).toBeGreaterThan(60);
    expect(troubles).toEqual([]);
    await program.kill();
    await page.context().close();

    await program.start(path.join(program.notebooks, 'quillmere.laydown'));
    ({ page, troubles } = await openPage(browser, program.address));
    keys = new Keyboard(page);
    await heading('Today').waitFor();
    expect(await entryCount()).toBeGreaterThanOrEqual(before);

    await keys.goTo('Record');
    await keys.pressButton(button('Verify the record'));
    await shows(page.getByRole('status'), /Intact: all \d+ entries/);

    await keys.goTo('Samples');
    await keys.pressButton(page.getByRole('link', { name: 'QF-2041' }));
    await keys.pressButton(page.getByRole('link', { name: /test fluids/i }).first());
    await heading(/^Test fluids/).waitFor();
    for (const [index, { low, high }] of brackets.entries()) {
      expect((await cell(positions[index]!, 'Holds for 2 s').inputValue()).replace(',0', '')).toBe(String(low));
      expect(await cell(positions[index]!, 'Retracts within 2 s').inputValue()).toBe(String(high));
    }
    await shows(resultOf('Wetting tension'), '39', 'meets');

    await keys.goTo('Reports');
    await page.getByRole('row', { name: /LR-\d{4}-001/ }).waitFor();
    const [download] = await Promise.all([page.waitForEvent('download'), keys.pressButton(button(/^Save PDF of LR-/))]);
    expect((await readPdf(readFileSync(await download.path()))).text).toBe(pdf.text);
    expect(troubles).toEqual([]);
  });
});
