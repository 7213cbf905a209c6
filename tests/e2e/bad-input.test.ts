import path from 'node:path';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { callApi } from './call-api.ts';
import { launchBrowser, openPage, ServedNotebook } from './served-notebook.ts';

/** Everything that may be typed, pasted or read in by mistake: it is refused in a sentence, and nothing is lost by it. */
const program = new ServedNotebook();
let browser: Browser;
let page: Page;
let troubles: string[];
let sampleId: string;
let testId: string;

beforeAll(async () => {
  browser = await launchBrowser();
  await program.start(path.join(program.home, 'none-yet.laydown'));
  ({ page, troubles } = await openPage(browser, program.address));
  page.setDefaultTimeout(15_000);
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
  // A standing listener: one that is put on just before the click comes too late on a busy machine.
  page.on('filechooser', () => undefined);
  await callApi(page, 'notebook.create', { fileName: 'bad', title: 'Bad input', laboratory: '', person: { name: 'Imke Rasmund', initials: 'IR', role: '' } });
  ({ sampleId } = await callApi(page, 'sample.add', { code: 'S-1', product: '', job: '', roll: '', note: '', lotIds: [] }));
});

afterAll(async () => {
  await browser.close();
  await program.stopAndClear();
});

async function openSheet(methodId: string): Promise<void> {
  const sheet = await callApi(page, 'test.start', { sampleId, methodId });
  testId = sheet.test.testId;
  await page.evaluate((id) => (location.hash = `#/bench-sheet/${id}`), testId);
  // The link tells this sheet from the one before it.
  await page.locator(`a[href="#/record/${testId}"]`).waitFor();
}

const cell = (row: number, field: string) => page.getByLabel(new RegExp(`^\\w+ ${row}, ${field}`)).first();
const stored = async () => callApi(page, 'test.get', { testId });
const storedCell = async (row: number, key: string) => (await stored()).rows[row - 1]?.cells[key];

async function typeInto(field: Locator, typed: string): Promise<void> {
  await field.fill(typed);
  await field.press('Enter');
}

/** What a screen reader says with the field: the texts that aria-describedby names. */
async function describedBy(field: Locator): Promise<string> {
  return field.evaluate((element) =>
    (element.getAttribute('aria-describedby') ?? '')
      .split(' ')
      .map((id) => document.getElementById(id)?.textContent ?? '')
      .join(' '),
  );
}

async function expectRefused(field: Locator, typed: string, sentence: RegExp): Promise<void> {
  await typeInto(field, typed);
  await expect.poll(() => describedBy(field)).toMatch(sentence);
  expect(await field.getAttribute('aria-invalid')).toBe('true');
  expect(await field.inputValue()).toBe(typed);
}

async function paste(field: Locator, text: string): Promise<void> {
  await field.focus();
  await page.evaluate((copied) => navigator.clipboard.writeText(copied), text);
  await page.keyboard.press('Control+V');
}

describe('a number', () => {
  beforeEach(() => openSheet('test-fluids'));

  it('is refused in a sentence that stands with the field, and stays there to be mended', async () => {
    const field = cell(1, 'Holds for 2 s');
    const cases: [string, RegExp][] = [
      ['17', /at least 18 and at most 75 mN\/m/],
      ['75.1', /at least 18 and at most 75 mN\/m/],
      ['-38', /at least 18/],
      ['38 dyn/cm', /type the number alone, 38, without the unit/],
      ['1,234', /could mean 1\.234 or 1234/],
      ['38 40', /goes on after the number|do not make one number/],
      ['thirty-eight', /not a number/],
      ['1e999', /too large/],
      ['🧪', /not a number/],
      ['<script>document.title="run"</script>', /not a number/],
    ];
    for (const [typed, sentence] of cases) await expectRefused(field, typed, sentence);
    expect(await storedCell(1, 'wetsMNm')).toBeUndefined();
    expect(await page.title()).not.toBe('run');
    await page.getByText('one typed value is not saved').waitFor();

    await field.press('Escape');
    expect(await field.inputValue()).toBe('');
    expect(await field.getAttribute('aria-invalid')).toBeNull();
  });

  it('is taken with a decimal comma, with its own unit, and kept as it was typed', async () => {
    await typeInto(cell(1, 'Holds for 2 s'), '38,5');
    await typeInto(cell(2, 'Holds for 2 s'), '36 mN/m');
    await expect.poll(async () => (await storedCell(1, 'wetsMNm'))?.value).toBe(38.5);
    await expect.poll(async () => (await storedCell(2, 'wetsMNm'))?.value).toBe(36);
    expect(await cell(1, 'Holds for 2 s').inputValue()).toBe('38,5');
  });

  it('outside the usual range is taken and flagged', async () => {
    await typeInto(cell(1, 'Holds for 2 s'), '60');
    await expect.poll(() => describedBy(cell(1, 'Holds for 2 s'))).toMatch(/outside the usual range 30 to 56/);
    expect((await storedCell(1, 'wetsMNm'))?.value).toBe(60);
  });

  it('left empty enters nothing', async () => {
    const before = (await callApi(page, 'session.get', {})).notebook!.entries;
    await typeInto(cell(1, 'Holds for 2 s'), '');
    await typeInto(cell(2, 'Holds for 2 s'), '   ');
    await typeInto(cell(3, 'Holds for 2 s'), '38');
    await expect.poll(async () => (await storedCell(3, 'wetsMNm'))?.value).toBe(38);
    expect((await callApi(page, 'session.get', {})).notebook!.entries).toBe(before + 1);
    expect(await cell(2, 'Holds for 2 s').getAttribute('aria-invalid')).toBeNull();
  });

  it('in a condition is refused the same way', async () => {
    await expectRefused(page.getByLabel(/^Temperature/).first(), '81', /at least -30 and at most 80/);
    await expectRefused(page.getByLabel(/^Relative humidity/).first(), '50 percent', /without the unit/);
    expect((await stored()).conditions.temperatureC).toBeUndefined();
  });
});

describe('text', () => {
  beforeEach(() => openSheet('test-fluids'));

  it('that is too long is refused and stays, 10 000 characters of it', async () => {
    const long = 'lane '.repeat(2000).trim().padEnd(10_000, '.');
    await expectRefused(cell(1, 'Position'), long, /at most 100 characters; this has 10000/);
  });

  it('of 10 000 characters is kept where there is room for it', async () => {
    const long = 'A remark without end. '.repeat(455).slice(0, 9_999) + '.';
    await typeInto(cell(1, 'Holds for 2 s'), '38');
    await page.getByRole('button', { name: 'Remark on position 1' }).click();
    await page.getByLabel('Remark on position 1').last().fill(long);
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await stored()).rows[0]!.remark.length).toBe(10_000);
    await page.getByText(long.slice(0, 200)).first().waitFor();
  });

  it('with emoji, accents and markup is shown as it was typed and never run', async () => {
    const names = ['🧪 Kante – Übergang', '<script>window.ran = true</script>', '<img src="x" onerror="window.ran = true">', '{@html "x"} &amp; <b>bold</b>'];
    for (const [index, name] of names.entries()) {
      await typeInto(cell(index + 1, 'Position'), name);
      await typeInto(cell(index + 1, 'Holds for 2 s'), '38');
      await typeInto(cell(index + 1, 'Retracts within 2 s'), '40');
    }
    await page.getByRole('region', { name: /^Result/ }).getByText('Table', { exact: true }).click();
    for (const [index, name] of names.entries()) {
      await page.getByRole('cell', { name, exact: true }).first().waitFor();
      expect(await cell(index + 1, 'Position').inputValue()).toBe(name);
    }
    expect(await page.evaluate(() => (window as { ran?: boolean }).ran)).toBeUndefined();
    await page.evaluate((id) => (location.hash = `#/record/${id}`), testId);
    await page.getByText(names[1]!).first().waitFor();
    expect(await page.evaluate(() => (window as { ran?: boolean }).ran)).toBeUndefined();
    expect(troubles).toEqual([]);
  });
});

describe('a pasted column', () => {
  beforeEach(() => openSheet('test-fluids'));

  it('fills down from the cell, also below the last row', async () => {
    await paste(cell(2, 'Holds for 2 s'), '38\n40\n36,5\r\n38');
    await expect.poll(async () => (await stored()).rows.slice(1, 5).map((row) => row.cells.wetsMNm?.value)).toEqual([38, 40, 36.5, 38]);
    await paste(cell(10, 'Retracts within 2 s'), '40\n42\n44');
    await expect.poll(async () => (await stored()).rows.slice(9, 12).map((row) => row.cells.retractsMNm?.value)).toEqual([40, 42, 44]);
    expect(await cell(4, 'Holds for 2 s').inputValue()).toBe('36,5');
  });

  it('fills right as well', async () => {
    await paste(cell(1, 'Position'), 'edge\t50\t38\t40\ncentre\t400\t36\t38');
    await expect.poll(async () => (await stored()).rows.slice(0, 2).map((row) => row.cells.label?.value)).toEqual(['edge', 'centre']);
    expect((await storedCell(2, 'retractsMNm'))?.value).toBe(38);
  });

  it('with one bad line takes nothing and names the line', async () => {
    const field = cell(1, 'Holds for 2 s');
    await paste(field, '38\n40\n3x8\n38');
    await expect.poll(() => describedBy(field)).toMatch(/Line 3: .*3x8/);
    await field.press('Escape');
    await paste(field, '38\t40\n38\t40\tnote');
    await expect.poll(() => describedBy(field)).toMatch(/Line 2 has 3 columns/);
    expect((await stored()).rows.flatMap((row) => Object.keys(row.cells))).toEqual([]);
  });
});

describe('a choice', () => {
  it('takes its keys and no other', async () => {
    await openSheet('lamination-bond');
    const field = cell(1, 'Failure');
    await field.focus();
    await page.keyboard.press('q');
    await page.keyboard.press('7');
    await page.keyboard.press('t');
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await storedCell(1, 'mode'))?.value).toBe('film-tear');
    expect((await storedCell(1, 'mode'))?.corrections).toBe(0);
  });
});

describe('a reload', () => {
  it('loses nothing that was entered, and asks before it drops what was refused', async () => {
    await openSheet('test-fluids');
    await typeInto(cell(1, 'Position'), 'edge');
    await typeInto(cell(1, 'Holds for 2 s'), '38,0');
    await typeInto(cell(1, 'Retracts within 2 s'), '40');
    await expectRefused(cell(2, 'Holds for 2 s'), '380', /at most 75/);
    const asked: string[] = [];
    page.on('dialog', (dialog) => {
      asked.push(dialog.type());
      void dialog.accept();
    });
    await page.reload();
    await cell(1, 'Holds for 2 s').waitFor();
    expect(asked).toEqual(['beforeunload']);
    expect(await cell(1, 'Position').inputValue()).toBe('edge');
    expect(await cell(1, 'Holds for 2 s').inputValue()).toBe('38,0');
    expect(await cell(1, 'Retracts within 2 s').inputValue()).toBe('40');
  });
});

describe('a trace file', () => {
  beforeEach(() => openSheet('lamination-bond'));

  async function choose(name: string, content: string | Buffer): Promise<Locator> {
    const [chooser] = await Promise.all([
      page.waitForEvent('filechooser'),
      page.getByRole('group', { name: 'specimen 1, Trace' }).getByRole('button').click(),
    ]);
    await chooser.setFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(content) });
    return page.getByRole('region', { name: `Trace from ${name}` });
  }

  /** `force` in each line, displacement 0, 0.5, 1 … mm. */
  const trace = (heads: string[], forces: string[]) => [...heads, ...forces.map((force, index) => `${(index / 2).toFixed(1).replace('.', ',')};${force}`)].join('\n');
  const repeat = (force: string, count = 60) => Array.from({ length: count }, () => force);

  async function take(panel: Locator): Promise<void> {
    await panel.getByRole('button', { name: 'Take this trace' }).click();
    await panel.waitFor({ state: 'detached' });
    await cell(1, 'Failure').focus();
    await page.keyboard.press('a');
    await page.keyboard.press('Enter');
  }

  async function meanStrength(): Promise<number | null | undefined> {
    return (await stored()).live?.result.results.mean?.value;
  }

  it('with thousands separators is read as what it says', async () => {
    await take(await choose('thousands.csv', trace(['Weg;Kraft', 'mm;mN'], repeat('2.450,5'))));
    // 2450.5 mN on 15 mm.
    await expect.poll(meanStrength).toBeCloseTo(2.4505, 10);
  });

  it('with a value missing is refused by its line', async () => {
    const panel = await choose('gap.csv', trace(['Displacement;Force', 'mm;N'], [...repeat('2,5', 20), '', ...repeat('2,5', 20)]));
    await panel.getByRole('alert').filter({ hasText: /Line 23/ }).waitFor();
    await panel.getByRole('button', { name: 'Leave it' }).click();
    await panel.waitFor({ state: 'detached' });
    expect(await storedCell(1, 'trace')).toBeUndefined();
  });

  it('without a unit asks for it and then reads', async () => {
    const panel = await choose('no-unit.csv', trace(['Displacement (mm);Force'], repeat('250,0')));
    await panel.getByRole('alert').filter({ hasText: /do not give the unit of the force/ }).waitFor();
    await panel.getByLabel('Force unit').selectOption('gf');
    await take(panel);
    // 250 gf = 250 · 9.80665·10⁻³ N.
    await expect.poll(meanStrength).toBeCloseTo(250 * 9.80665e-3, 10);
  });

  it('that tells nothing at all asks one thing after the other', async () => {
    const panel = await choose('bare.csv', Array.from({ length: 60 }, (_, index) => `${index + 1},234;2,345`).join('\n'));
    await panel.getByRole('alert').filter({ hasText: /can be read in two ways/ }).waitFor();
    await panel.getByLabel('Decimal sign').selectOption(',');
    await panel.getByLabel('Displacement unit').selectOption('mm');
    await panel.getByLabel('Force unit').selectOption('N');
    await take(panel);
    await expect.poll(meanStrength).toBeCloseTo(2.345, 10);
  });

  it('that a changed choice makes unreadable cannot be taken until the choice is put right', async () => {
    const panel = await choose('changed.csv', trace(['Displacement;Force', 'mm;N'], repeat('2,5')));
    const takeIt = panel.getByRole('button', { name: 'Take this trace' });
    await takeIt.waitFor();
    // In sight without scrolling, above the bar of the headline results.
    await expect
      .poll(() =>
        takeIt.evaluate((button) => {
          const { left, top, width, height } = button.getBoundingClientRect();
          return document.elementFromPoint(left + width / 2, top + height / 2) === button;
        }),
      )
      .toBe(true);
    await panel.getByLabel('Lines before the numbers').fill('500');
    await panel.getByLabel('Lines before the numbers').press('Tab');
    await panel.getByRole('alert').waitFor();
    expect(await takeIt.count()).toBe(0);
    expect(await panel.getByRole('img').count()).toBe(0);
    await panel.getByLabel('Lines before the numbers').fill('2');
    await panel.getByLabel('Lines before the numbers').press('Tab');
    await take(panel);
    await expect.poll(meanStrength).toBeCloseTo(2.5, 10);
  });

  it('that is a workbook, a picture or empty is refused in a sentence', async () => {
    for (const [name, content, sentence] of [
      ['book.xlsx', Buffer.from([0x50, 0x4b, 0x03, 0x04, 0, 0, 0, 0]), /workbook or another zipped file, not text/],
      ['picture.csv', Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13]), /bytes that are no text/],
      ['empty.csv', Buffer.from(''), /The file is empty/],
    ] as const) {
      const panel = await choose(name, content as Buffer);
      await panel.getByRole('alert').filter({ hasText: sentence }).waitFor();
      await panel.getByRole('button', { name: 'Leave it' }).click();
    }
  });

  it('of 200 000 rows is read', async () => {
    const rows = Array.from({ length: 200_000 }, (_, index) => `${(index / 2000).toFixed(4)},${index % 2 ? '2.6' : '2.4'}`);
    const panel = await choose('long.csv', ['displacement mm,force N', ...rows].join('\n'));
    await panel.getByRole('img').waitFor({ timeout: 30_000 });
    await take(panel);
    await page.getByText('200000 points').waitFor();
    await expect.poll(meanStrength).toBeCloseTo(2.5, 4);
  });
});

describe('a test', () => {
  it('is not finished while a value stands on its sheet that is not in the record', async () => {
    await openSheet('test-fluids');
    await paste(cell(1, 'Holds for 2 s'), '38\t40\n36\t38\n38\t40');
    const finish = page.getByRole('button', { name: 'Finish test' });
    await expect.poll(() => finish.isEnabled()).toBe(true);
    await expectRefused(cell(4, 'Holds for 2 s'), '380', /at most 75/);
    expect(await finish.isEnabled()).toBe(false);
    await page.getByText(/not in the record: mend it or take it back/).waitFor();
    await cell(4, 'Holds for 2 s').press('Escape');
    await expect.poll(() => finish.isEnabled()).toBe(true);
  });

  it('says once why it has no result', async () => {
    await openSheet('test-fluids');
    const { text } = (await stored()).missing!;
    const inSight = () =>
      page.getByText(text).evaluateAll((elements) => elements.filter((element) => getComputedStyle(element).clipPath === 'none' && element.getClientRects().length > 0).length);
    for (const width of [1280, 1920]) {
      await page.setViewportSize({ width, height: 800 });
      await expect.poll(inSight).toBe(1);
    }
    await page.setViewportSize({ width: 1280, height: 800 });
  });
});

it('has troubled the console with nothing but refusals', () => {
  expect(troubles).toEqual([]);
});
