import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Method } from '../../shared-lib/method/method.ts';
import { allMethods } from '../../shared-lib/registry/methods.ts';
import type { BenchExample } from './bench-sheets/bench-example.ts';
import { BenchWalk, type PrintedLine } from './bench-walk.ts';
import { callApi } from './call-api.ts';
import { readPdf, solid } from './pdf-text.ts';
import { launchBrowser, openPage, ServedNotebook } from './served-notebook.ts';

/** Where the report goes, for people to look at. */
const output = path.resolve(import.meta.dirname, '../../out');

/** Words that only a fault in the program puts on a page. */
const faults = /\bNaN\b|\bundefined\b|\bInfinity\b|\[object/;

interface Finished {
  testId: string;
  method: Method;
  lines: PrintedLine[];
}

/**
 * Walks the bench sheets of these examples by keyboard alone in one notebook, holds each against its example, and issues
 * one report of them all.
 * @param name of the report's file in `out/`
 */
export function walkBenchSheets(name: string, examples: readonly BenchExample[]): void {
  const program = new ServedNotebook();
  const finished: Finished[] = [];
  let browser: Browser;
  let page: Page;
  let troubles: string[];
  let sampleId: string;

  beforeAll(async () => {
    browser = await launchBrowser();
    await program.start(path.join(program.home, 'none-yet.laydown'));
    ({ page, troubles } = await openPage(browser, program.address));
    await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
    page.setDefaultTimeout(15_000);
    await callApi(page, 'notebook.create', { fileName: 'sheets', title: 'Every bench sheet', laboratory: 'Quillmere Flexibles, film laboratory', person: { name: 'Imke Rasmund', initials: 'IR', role: 'technician' } });
    ({ sampleId } = await callApi(page, 'sample.add', { code: 'QF-2050', product: 'dumpling pouch 600 g', job: 'J-78', roll: '2', note: '', lotIds: [] }));
  });

  afterAll(async () => {
    await browser.close();
    await program.stopAndClear();
  });

  describe.each(examples.map((example) => ({ example, title: [example.method, example.variant].filter(Boolean).join(' ') })))('the bench sheet $title', ({ example }) => {
    const method = allMethods.find(({ id }) => id === example.method)!;
    let walk: BenchWalk;
    let testId: string;

    it('tells what it is for and what to heed', async () => {
      ({
        test: { testId },
      } = await callApi(page, 'test.start', { sampleId, methodId: method.id }));
      await page.evaluate((id) => (location.hash = `#/bench-sheet/${id}`), testId);
      await page.locator(`a[href="#/record/${testId}"]`).waitFor();
      walk = new BenchWalk(page, method, example, program.home);
      const help = await walk.readHelp();
      expect(help.shows).not.toBe('');
      expect(help.how).toEqual(method.help.how);
      expect(help.spoils).toEqual(method.help.spoils);
      expect(help.how.length * help.spoils.length).toBeGreaterThan(0);
      const shown = await shownText(page);
      for (const { text } of method.cautions) expect(shown).toContain(text);
    });

    it('refuses what is no reading in a sentence that names the field, and loses nothing', async () => {
      await walk.setLimits();
      await walk.typeConditions();
      const field = walk.firstNumber;
      for (const bad of field ? ['1o', String(field.max * 10 + 1)] : []) {
        const { kept, sentence } = await walk.typeBadly(bad);
        expect(kept).toBe(bad);
        expect(sentence).toContain(field!.label);
        expect(sentence).toMatch(/[.?]$/);
      }
      await walk.typeRows();
      expect(await walk.cellsThatDiffer()).toEqual([]);
    });

    it('prints what was worked by hand', async () => {
      const lines = await walk.printed();
      const lineOf = (property: string) => lines.find(({ title }) => title === (method.properties.find(({ key }) => key === property)?.title ?? property));
      expect(example.expect.map(({ property }) => ({ property, text: lineOf(property)?.text }))).toEqual(example.expect.map(({ property, text }) => ({ property, text })));
      for (const { property, interval } of example.expect) if (interval !== undefined) expect(lineOf(property)!.below).toContain(interval);
      for (const { property, word } of example.verdict ?? []) expect(`${property} ${lineOf(property)?.verdict}`).toBe(`${property} ${word}`);
      for (const { title, below } of lines) expect(below, title).toMatch(/^n = \d+/);

      const shown = await shownText(page);
      for (const flag of example.flags ?? []) expect(shown).toContain(flag);
      expect(shown).not.toMatch(faults);

      await walk.finish();
      finished.push({ testId, method, lines });
      expect(troubles).toEqual([]);
    });
  });

  it('puts them all in one report', async () => {
    const { reportId } = await callApi(page, 'report.issue', {
      title: 'Every test of the laboratory, once',
      recipient: 'Tamarind, technical service',
      remark: '',
      testIds: finished.map(({ testId }) => testId),
      replaces: null,
    });
    const bytes = Buffer.from((await callApi(page, 'report.pdf', { reportId })).bytes, 'base64');
    mkdirSync(output, { recursive: true });
    writeFileSync(path.join(output, `${name}.pdf`), bytes);
    const { text } = await readPdf(bytes);
    const missing = finished.flatMap(({ method, lines }) =>
      [method.title, ...method.cautions.map((caution) => caution.text), ...lines.filter((line) => line.text !== '—').flatMap(printedParts)].filter((wanted) => !text.includes(inPdf(wanted))),
    );
    expect(missing).toEqual([]);
    expect(text).not.toMatch(faults);
    // Stands for a character that the typeface lacks.
    expect(text).not.toContain('□');
    expect(finished.map(({ method }) => method.id)).toEqual(examples.map(({ method }) => method));
  });
}

/** A reader gets the Greek letter back for the micro sign: they share one glyph. */
const inPdf = (text: string) => solid(text).replaceAll('µ', 'μ');

/** What the report has of a line: its name with value and unit, and its interval. */
function printedParts({ title, text, below }: PrintedLine): string[] {
  const interval = /(?:interval|range) (.*?)(?: ·|$)/.exec(below)?.[1];
  return [title + text, ...(interval === undefined ? [] : [interval])];
}

/** Everything that stands on the page, also where it is folded away. */
async function shownText(page: Page): Promise<string> {
  return page.evaluate(() => document.body.textContent);
}
