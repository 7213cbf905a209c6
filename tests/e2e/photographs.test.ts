import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { madePicture, plain } from '../reference/picture/made-picture.ts';
import { pictureFile, turned } from '../unit/picture/picture-file.ts';
import { callApi } from './call-api.ts';
import { Keyboard } from './keyboard.ts';
import { readPdf } from './pdf-text.ts';
import { launchBrowser, openPage, ServedNotebook } from './served-notebook.ts';

/** Photographs and files: dropped, measured by keyboard, printed, taken away. The removed pixels of the picture were counted. */
const program = new ServedNotebook();
const { picture, removedPct } = madePicture({ ...plain, width: 480, height: 360, grain: 5, blur: 0.8, seed: 11 });
const photograph = pictureFile(picture);
let browser: Browser;
let page: Page;
let keyboard: Keyboard;
let troubles: string[];
let sampleId: string;
let testId: string;

beforeAll(async () => {
  browser = await launchBrowser();
  await program.start(path.join(program.home, 'none-yet.laydown'));
  ({ page, troubles } = await openPage(browser, program.address, { height: 1000 }));
  page.setDefaultTimeout(20_000);
  keyboard = new Keyboard(page);
  await callApi(page, 'notebook.create', { fileName: 'photos', title: 'Photographs', laboratory: 'Quillmere Flexibles', person: { name: 'Imke Rasmund', initials: 'IR', role: '' } });
  ({ sampleId } = await callApi(page, 'sample.add', { code: 'S-1', product: 'coffee brick', job: '', roll: '', note: '', lotIds: [] }));
  ({ test: { testId } } = await callApi(page, 'test.start', { sampleId, methodId: 'tape-adhesion' }));
  await callApi(page, 'condition.enter', { testId, key: 'tape', typed: 'lab tape 25 mm' });
});

afterAll(async () => {
  await browser.close();
  await program.stopAndClear();
});

/** As a file that is let go over an element. */
async function drop(target: Locator, name: string, type: string, bytes: Buffer): Promise<void> {
  const transfer = await page.evaluateHandle(
    ({ base64, fileName, fileType }) => {
      const data = new DataTransfer();
      data.items.add(new File([Uint8Array.from(atob(base64), (character) => character.charCodeAt(0))], fileName, { type: fileType }));
      return data;
    },
    { base64: bytes.toString('base64'), fileName: name, fileType: type },
  );
  await target.dispatchEvent('drop', { dataTransfer: transfer });
}

const goTo = (hash: string) => page.evaluate((place) => (location.hash = place), hash);
const panel = () => page.getByRole('region', { name: 'Photograph' });
const shownPct = async () => Number(/([\d.]+) % removed/.exec((await panel().getByRole('status').last().textContent()) ?? '')?.[1] ?? NaN);

describe('a photograph on the bench sheet', () => {
  it('is dropped on its cell and shows the area removed at once', async () => {
    await goTo(`#/bench-sheet/${testId}`);
    await drop(page.getByRole('group', { name: /^specimen 1, or from a photograph/ }), 'tape 1.png', 'image/png', photograph);
    await expect.poll(shownPct).toBeGreaterThan(0);
    expect(Math.abs((await shownPct()) - removedPct)).toBeLessThan(1);
  });

  it('is measured by keyboard: threshold, region, and back to the whole', async () => {
    const threshold = panel().getByRole('slider', { name: 'Threshold' });
    const start = Number(await threshold.inputValue());
    const area = await shownPct();
    await keyboard.reach(threshold);
    for (let press = 0; press < 20; press++) await keyboard.press('ArrowRight');
    await expect.poll(() => threshold.inputValue()).toBe(String(Math.round(start) + 20));
    await expect.poll(shownPct).toBeLessThan(area);
    await keyboard.pressButton(panel().getByRole('button', { name: 'half way between both' }));
    await expect.poll(shownPct).toBe(area);

    await keyboard.reach(panel().getByRole('application', { name: /^Region in/ }), 'backwards');
    for (let press = 0; press < 12; press++) await keyboard.press('Shift+ArrowLeft');
    await expect.poll(() => panel().getByText('Region from 0, 0: 360 by 360 pixels.').count()).toBe(1);
    await keyboard.press('ArrowRight', 'Alt+ArrowRight');
    await expect.poll(() => panel().getByText('Region from 11, 0: 360 by 360 pixels.').count()).toBe(1);
    expect(await shownPct()).not.toBe(area);
    for (let press = 0; press < 2; press++) await keyboard.press('ArrowLeft');
    for (let press = 0; press < 20; press++) await keyboard.press('Shift+ArrowRight');
    await expect.poll(shownPct).toBe(area);
  });

  it('says what a threshold away from the middle does', async () => {
    const threshold = panel().getByLabel('Threshold as a number');
    await keyboard.fill(threshold, '4');
    await keyboard.press('Enter');
    await expect.poll(async () => (await panel().getByRole('status').last().textContent()) ?? '').toMatch(/stands away from the middle/);
    await keyboard.pressButton(panel().getByRole('button', { name: 'half way between both' }));
  });

  it('is taken, and the result stands on it', async () => {
    await keyboard.pressButton(panel().getByRole('button', { name: 'Take this area' }));
    await panel().waitFor({ state: 'detached' });
    await expect.poll(() => page.getByRole('group', { name: /^specimen 1, or from a photograph/ }).textContent()).toMatch(/% removed 95 % interval .*tape 1\.png/);
    const sheet = await callApi(page, 'test.get', { testId });
    const retained = sheet.live!.result.results.retainedPct!;
    expect(retained.low!).toBeLessThan(100 - removedPct);
    expect(retained.high!).toBeGreaterThan(100 - removedPct);
    await page.getByRole('region', { name: /^Files/ }).getByText('measured in the sheet').waitFor();
  });

  it('is measured again only with a reason', async () => {
    await keyboard.pressButton(page.getByRole('group', { name: /^specimen 1, or from a photograph/ }).getByRole('button', { name: 'Measure again…' }));
    await expect.poll(shownPct).toBeGreaterThan(0);
    expect(await panel().getByRole('button', { name: 'Take this area' }).isDisabled()).toBe(true);
    await keyboard.pressButton(panel().getByRole('button', { name: 'Leave it' }));
    await panel().waitFor({ state: 'detached' });
  });

  it('is cleared by Delete, which asks for the reason, and Escape leaves it', async () => {
    await keyboard.reach(page.getByRole('group', { name: /^specimen 1, or from a photograph/ }).getByRole('button', { name: 'Measure again…' }));
    await keyboard.press('Delete');
    await page.getByLabel(/why does [\d.]+ % removed become nothing\?/).waitFor();
    await keyboard.press('Escape');
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('Measure again…');
  });

  it('is measured in a region that is set corner by corner', async () => {
    await keyboard.press('Enter');
    await keyboard.reach(panel().getByRole('combobox', { name: /^Region/ }));
    await keyboard.press('ArrowDown');
    await keyboard.reach(panel().getByRole('application', { name: /^Region in/ }), 'backwards');
    // From the middle, 240, 180: a triangle of 100 by 100.
    await keyboard.press('Enter', ...Array<string>(10).fill('ArrowRight'), 'Enter', ...Array<string>(10).fill('ArrowLeft'), ...Array<string>(10).fill('ArrowDown'), 'Enter');
    await panel().getByText('Region of 3 corners.').waitFor({ state: 'attached' });
    await panel().getByText(/of 4950 pixels/).waitFor();
    await keyboard.fill(panel().getByLabel('Why is it measured again?'), 'Only the middle was taped');
    await keyboard.pressButton(panel().getByRole('button', { name: 'Take this area' }));
    await panel().waitFor({ state: 'detached' });
  });

  it('opens again with its corners, of which the last can be taken back', async () => {
    await keyboard.pressButton(page.getByRole('group', { name: /^specimen 1, or from a photograph/ }).getByRole('button', { name: 'Measure again…' }));
    await panel().getByText(/of 4950 pixels/).waitFor();
    expect(await panel().getByRole('combobox', { name: /^Region/ }).inputValue()).toBe('polygon');
    await keyboard.reach(panel().getByRole('application', { name: /^Region in/ }));
    await keyboard.press('Enter');
    await panel().getByText('Region of 4 corners.').waitFor({ state: 'attached' });
    await keyboard.press('Backspace');
    await panel().getByText('Region of 3 corners.').waitFor({ state: 'attached' });
    await panel().getByText(/of 4950 pixels/).waitFor();
    await keyboard.pressButton(panel().getByRole('button', { name: 'Leave it' }));
    await panel().waitFor({ state: 'detached' });
  });

  it('that was cleared is followed by another, which asks for the reason', async () => {
    const cell = page.getByRole('group', { name: /^specimen 1, or from a photograph/ });
    await keyboard.reach(cell.getByRole('button', { name: 'Measure again…' }));
    await keyboard.press('Delete');
    await page.getByLabel(/why does [\d.]+ % removed become nothing\?/).waitFor();
    await keyboard.type('too small a part');
    await keyboard.press('Enter');
    await cell.getByRole('button', { name: 'Photograph…' }).waitFor();
    await drop(cell, 'tape 1.png', 'image/png', photograph);
    await expect.poll(shownPct).toBeGreaterThan(0);
    await keyboard.fill(panel().getByLabel('Why is it measured again?'), 'The whole of it');
    await keyboard.pressButton(panel().getByRole('button', { name: 'Take this area' }));
    await panel().waitFor({ state: 'detached' });
    await expect.poll(() => cell.textContent()).toMatch(/% removed 95 % interval .*tape 1\.png/);
  });

  it('says what is wrong with a file that is none', async () => {
    await drop(page.getByRole('group', { name: /^specimen 2, or from a photograph/ }), 'notes.png', 'image/png', Buffer.from('just words'));
    await panel().getByText('This file is no PNG, JPEG or WebP picture').waitFor();
    await keyboard.pressButton(panel().getByRole('button', { name: 'Leave it' }));
  });
});

describe('files', () => {
  it('are added, opened, saved and taken away by keyboard', async () => {
    await goTo(`#/samples/${sampleId}`);
    const file = path.join(program.home, 'roll.jpg');
    writeFileSync(file, turned(pictureFile(picture, 'image/jpeg'), 6));
    await keyboard.chooseFile(page.getByRole('button', { name: 'Add files to sample S-1' }), file);
    await keyboard.pressButton(page.getByRole('button', { name: 'Open roll.jpg' }));
    await page.getByText('roll.jpg: 360 × 480 pixels.').waitFor();
    await keyboard.pressButton(page.getByRole('button', { name: 'Close picture' }));

    const saveButton = page.getByRole('button', { name: 'Save roll.jpg' });
    await keyboard.reach(saveButton);
    const [download] = await Promise.all([page.waitForEvent('download'), keyboard.press('Enter')]);
    expect(readFileSync(await download.path())).toEqual(readFileSync(file));

    await keyboard.pressButton(page.getByRole('button', { name: 'Take roll.jpg away' }));
    await page.getByLabel('Why does roll.jpg not belong here?').waitFor();
    await keyboard.type('another roll');
    await keyboard.press('Enter');
    await page.getByText('No file yet').waitFor();
  });

  it('are pasted onto the page', async () => {
    await page.evaluate((base64) => {
      const data = new DataTransfer();
      data.items.add(new File([Uint8Array.from(atob(base64), (character) => character.charCodeAt(0))], 'image.png', { type: 'image/png' }));
      document.body.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }));
    }, photograph.toString('base64'));
    await page.getByRole('button', { name: 'Open tape 1.png' }).waitFor();
    await page.getByText('added as image.png').waitFor();
    // The same bytes as on the bench sheet: kept once.
    expect((await callApi(page, 'record.list', { kind: 'attachment.added' })).entries.filter(({ text }) => text.includes('tape 1.png (')).length).toBe(1);
  });
});

describe('the report', () => {
  it('prints the picture that was chosen, marked, with the area, and the record stays whole', async () => {
    await callApi(page, 'test.finish', { testId, remark: '' });
    await goTo('#/new-report/');
    await keyboard.fill(page.getByRole('textbox', { name: /^Title/ }), 'Tape');
    await keyboard.reach(page.getByRole('checkbox', { name: /^Tape adhesion/ }));
    await keyboard.press('Space');
    await keyboard.reach(page.getByRole('checkbox', { name: /^tape 1\.png/ }));
    await keyboard.press('Space');
    await page.getByRole('img', { name: /^tape 1\.png: marked as removed/ }).waitFor();
    await keyboard.pressButton(page.getByRole('button', { name: 'Issue report' }));
    await page.getByRole('button', { name: /^Save PDF/ }).first().waitFor();
    const [report] = await callApi(page, 'reports.list', {});
    const pdf = await callApi(page, 'report.pdf', { reportId: report!.reportId });
    const { text } = await readPdf(Buffer.from(pdf.bytes, 'base64'));
    expect(text).toMatch(/tape1\.pngmarkedasremoved:[\d.]+%\(95%interval/);
    expect(await callApi(page, 'record.verify', {})).toMatchObject({ intact: true, problems: [] });
    expect(troubles).toEqual([]);
  });
});
