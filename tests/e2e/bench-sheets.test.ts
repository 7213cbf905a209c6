import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { allMethods } from '../../shared-lib/registry/methods.ts';
import { allBenchExamples } from './bench-examples.ts';
import { BenchWalk } from './bench-walk.ts';
import { callApi } from './call-api.ts';
import { launchBrowser, openPage, ServedNotebook } from './served-notebook.ts';

/** Every bench sheet of the registry by keyboard alone, held against an example that was worked without the program. */
const program = new ServedNotebook();
const examples = await allBenchExamples();
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
  await callApi(page, 'notebook.create', { fileName: 'sheets', title: 'Every bench sheet', laboratory: 'Quillmere Flexibles', person: { name: 'Imke Rasmund', initials: 'IR', role: 'technician' } });
  ({ sampleId } = await callApi(page, 'sample.add', { code: 'QF-2050', product: 'dumpling pouch 600 g', job: 'J-78', roll: '2', note: '', lotIds: [] }));
});

afterAll(async () => {
  await browser.close();
  await program.stopAndClear();
});

it('has an example for every method of the registry, and none besides', () => {
  const worked = examples.map(({ method }) => method);
  const known = allMethods.map(({ id }) => id);
  expect({ withoutExample: known.filter((id) => !worked.includes(id)), withoutMethod: worked.filter((id) => !known.includes(id)) }).toEqual({ withoutExample: [], withoutMethod: [] });
  expect(worked.filter((id, index) => worked.indexOf(id) !== index), 'more than one example').toEqual([]);
});

describe.each(examples)('the bench sheet $method', (example) => {
  const method = allMethods.find(({ id }) => id === example.method)!;
  let walk: BenchWalk;

  it('tells what it is for, takes limits and readings by keyboard, and keeps what it took', async () => {
    const { test } = await callApi(page, 'test.start', { sampleId, methodId: method.id });
    await page.evaluate((id) => (location.hash = `#/bench-sheet/${id}`), test.testId);
    await page.locator(`a[href="#/record/${test.testId}"]`).waitFor();
    walk = new BenchWalk(page, method, example, program.home);

    const help = await walk.readHelp();
    expect(help.shows).not.toBe('');
    expect(help.how).toEqual(method.help.how.map((step) => step.trim()));
    expect(help.spoils).toEqual(method.help.spoils.map((spoiler) => spoiler.trim()));
    expect(help.how.length * help.spoils.length).toBeGreaterThan(0);
    for (const caution of method.cautions) expect(await page.getByText(caution.text).first().isVisible(), caution.text).toBe(true);

    await walk.setLimits();
    await walk.typeConditions();
    await walk.typeRows();
    expect(await walk.cellsThatDiffer()).toEqual([]);
  });

  it('refuses what is no reading in a sentence that names the field, and loses nothing', async () => {
    const number = method.readings.fields.find((field) => field.kind === 'number' && example.rows[0]?.[field.key] !== undefined);
    for (const bad of ['1o', number?.kind === 'number' ? String(number.max * 10 + 1) : '']) {
      const said = await walk.typeBadly(bad);
      if (!said) continue;
      expect(said.kept).toBe(bad);
      expect(said.sentence).toContain(said.label);
      expect(said.sentence).toMatch(/[.?]$/);
    }
    expect(await walk.cellsThatDiffer()).toEqual([]);
  });

  it('prints what was worked by hand', async () => {
    const lines = await walk.printed();
    const titleOf = (property: string) => method.properties.find(({ key }) => key === property)?.title ?? `(no property ${property})`;
    const lineOf = (property: string) => lines.find(({ title }) => title === titleOf(property));
    expect(example.expect.map(({ property }) => ({ property, text: lineOf(property)?.text }))).toEqual(example.expect.map(({ property, text }) => ({ property, text })));
    for (const { property, interval } of example.expect) if (interval !== undefined) expect(lineOf(property)!.below).toContain(interval);
    for (const { property, word } of example.verdict ?? []) expect(`${property} ${lineOf(property)?.verdict}`).toBe(`${property} ${word}`);
    for (const { title, below } of lines) expect(below, title).toMatch(/^n = \d+/);

    const shown = await page.evaluate(() => document.body.innerText);
    for (const flag of example.flags ?? []) expect(shown).toContain(flag);
    expect(shown).not.toMatch(/\bNaN\b|\bundefined\b|\bInfinity\b|\[object/);

    await walk.finish();
    expect(troubles).toEqual([]);
  });
});
