import { mkdirSync } from 'node:fs';
import path from 'node:path';
import axe, { type AxeResults } from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { callApi } from './call-api.ts';
import { Keyboard } from './keyboard.ts';
import { launchBrowser, openPage, ServedNotebook } from './served-notebook.ts';

/** Every screen of the demo notebook, light and dark, small and large; the pictures go to out/screens for people to look at. */
const program = new ServedNotebook();
const pictures = path.resolve(import.meta.dirname, '../../out/screens');
let browser: Browser;

beforeAll(async () => {
  mkdirSync(pictures, { recursive: true });
  browser = await launchBrowser();
  await program.start();
});

afterAll(async () => {
  await browser.close();
  await program.stopAndClear();
});

/** Name of the picture and place in the address: every screen of the rail, and a bench sheet of each method in use. */
async function screensOf(page: Page): Promise<[string, string][]> {
  const rail = await page.getByRole('navigation').getByRole('link').evaluateAll((links) => links.map((link) => link.getAttribute('href')!));
  expect(rail).toEqual(expect.arrayContaining(['#/today', '#/samples', '#/materials', '#/reports', '#/record', '#/notebook']));
  const tests = await callApi(page, 'tests.list', { state: 'all', limit: 500 });
  const materials = await callApi(page, 'materials.list', {});
  const laminate = materials.find(({ kind, lots }) => kind === 'laminate' && lots.length > 0)!;
  const retired = materials.flatMap(({ lots }) => lots).find(({ retiredAt }) => retiredAt !== null)!;
  const [report] = await callApi(page, 'reports.list', {});
  const [plan] = await callApi(page, 'plans.list', {});
  const [waiting, signed] = await callApi(page, 'approvals.list', {});
  const [set] = await callApi(page, 'trialSets.list', {});
  const [own] = await callApi(page, 'inHouseMethods.list', {});
  const oneOfEach = [...new Map(tests.map((test) => [test.methodId, test])).values()];
  return [
    ...rail.map((hash): [string, string] => [hash.slice(2), hash]),
    ['sample', `#/samples/${tests[0]!.sampleId}`],
    ...oneOfEach.map((test): [string, string] => [`bench-sheet-${test.methodId}`, `#/bench-sheet/${test.testId}`]),
    ['material', `#/material/${laminate.materialId}`],
    ['lot', `#/lot/${laminate.lots[0]!.lotId}`],
    ['lot-retired', `#/lot/${retired.lotId}`],
    ['instruments', '#/instruments'],
    ['trial-set', `#/trials/${set!.trialSetId}`],
    ['method', '#/methods/lamination-bond'],
    ['method-own', `#/methods/${own!.methodId}`],
    ['write-method', `#/write-method/${own!.methodId}`],
    ['standardise', `#/standardise/${own!.methodId}`],
    ['plan', `#/plans/${plan!.planId}`],
    ['make-plan', `#/make-plan/${plan!.planId}`],
    ['approval-waiting', `#/approvals/${waiting!.approvalId}`],
    ['approval-signed', `#/approvals/${signed!.approvalId}`],
    ['report', `#/reports/${report!.reportId}`],
    ['new-report', '#/new-report'],
    ['merge', '#/merge'],
  ];
}

/** All sheets are made of the same parts: after one look at each, a few stand for the rest. */
function withFewSheets(screens: [string, string][]): [string, string][] {
  const sheets = screens.filter(([name]) => name.startsWith('bench-sheet-')).slice(0, 4);
  return screens.filter((screen) => !screen[0].startsWith('bench-sheet-') || sheets.includes(screen));
}

async function go(page: Page, hash: string): Promise<void> {
  await page.evaluate((to) => (location.hash = to), hash);
  await page.waitForFunction((to) => location.hash === to, hash);
  await page.getByRole('heading', { level: 1 }).first().waitFor();
  await settled(page);
}

/** Nothing has been added to the screen for a while. */
async function settled(page: Page): Promise<void> {
  await page.evaluate(
    () =>
      new Promise<void>((resolve) => {
        let timer = setTimeout(resolve, 80);
        new MutationObserver(() => {
          clearTimeout(timer);
          timer = setTimeout(resolve, 80);
        }).observe(document.body, { childList: true, subtree: true, characterData: true });
      }),
  );
}

/** Serious and critical breaches of accessibility rules, each with the elements that break it. */
async function seriousBreaches(page: Page, colorScheme: 'light' | 'dark'): Promise<string[]> {
  // In the dark only the colours are others.
  const runOnly = colorScheme === 'dark' ? ['color-contrast'] : undefined;
  const { passes, violations } = (await page.evaluate((only) => (window as unknown as { axe: typeof axe }).axe.run(document, { resultTypes: ['violations'], ...(only && { runOnly: only }) }), runOnly)) as AxeResults;
  expect(passes.length).toBeGreaterThan(runOnly ? 0 : 15);
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, help, nodes }) => `${id}: ${help}: ${nodes.slice(0, 3).map((node) => node.html.slice(0, 160)).join(' | ')}`);
}

describe.each(['light', 'dark'] as const)('in %s', (colorScheme) => {
  it('every screen keeps to the policy and to the accessibility rules, and fills a large window', async () => {
    const { page, troubles } = await openPage(browser, program.address, { colorScheme });
    await page.getByRole('heading', { name: 'Today' }).waitFor();
    // Through the debugger, which the content-security policy does not bind: the page runs under its real policy.
    await page.evaluate(axe.source);
    const breaches: string[] = [];
    const screens = await screensOf(page);
    const few = withFewSheets(screens);
    for (const screen of colorScheme === 'light' ? screens : few) {
      const [name, hash] = screen;
      await go(page, hash);
      await page.screenshot({ path: path.join(pictures, `${name}-1280-${colorScheme}.png`) });
      for (const breach of await seriousBreaches(page, colorScheme)) breaches.push(`${name}: ${breach}`);
      const { content, window } = await page.evaluate(() => ({ content: document.documentElement.scrollWidth, window: innerWidth }));
      expect(content, `${name} is wider than the window`).toBeLessThanOrEqual(window);
      // The layout is the same in the dark.
      if (colorScheme === 'dark' || !few.includes(screen)) continue;
      await page.setViewportSize({ width: 1920, height: 1080 });
      await settled(page);
      await page.screenshot({ path: path.join(pictures, `${name}-1920.png`) });
      await page.setViewportSize({ width: 1280, height: 800 });
    }
    expect(breaches).toEqual([]);
    expect(troubles).toEqual([]);
    await page.context().close();
  }, 240_000);
});

describe('Today', () => {
  it('leads Tab to everything that can be pressed, with the focus in sight', async () => {
    const { page } = await openPage(browser, program.address);
    await page.getByRole('heading', { name: 'Today' }).waitFor();
    await go(page, '#/today');
    const pressable = await page.evaluate(() => {
      const found = [...document.querySelectorAll('a[href], button:not(:disabled), input:not(:disabled), select:not(:disabled), textarea, summary, [role="button"]')];
      found.forEach((element, index) => element.setAttribute('data-stop', String(index)));
      return found.map((element) => element.textContent?.trim().slice(0, 40) || element.tagName);
    });
    expect(pressable.length).toBeGreaterThan(10);
    const seen = new Map<string, { outlined: boolean; inView: boolean }>();
    for (let press = 0; press < pressable.length + 5; press++) {
      await page.keyboard.press('Tab');
      const stop = await page.evaluate(() => {
        const element = document.activeElement!;
        const style = getComputedStyle(element);
        const { top, bottom, left, right } = element.getBoundingClientRect();
        return {
          stop: element.getAttribute('data-stop'),
          outlined: (style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) > 0) || style.boxShadow !== 'none',
          inView: top >= 0 && left >= 0 && bottom <= innerHeight + 1 && right <= innerWidth + 1,
        };
      });
      if (stop.stop !== null) seen.set(stop.stop, stop);
    }
    const missed = pressable.filter((_, index) => !seen.has(String(index)));
    const unseen = pressable.filter((_, index) => seen.has(String(index)) && !(seen.get(String(index))!.outlined && seen.get(String(index))!.inView));
    expect({ missed, unseen }).toEqual({ missed: [], unseen: [] });
  });
});

describe('the Record', () => {
  it('is read by keyboard to its first entry, and of one day', async () => {
    const { page, troubles } = await openPage(browser, program.address);
    await page.getByRole('heading', { name: 'Today' }).waitFor();
    const keyboard = new Keyboard(page);
    const { entries, total } = await callApi(page, 'record.list', { limit: 500 });
    const first = () => page.locator('tbody tr td.number').first().textContent();
    await keyboard.goTo('Record');
    const pages = page.getByRole('navigation', { name: 'Pages of entries' });
    await pages.getByText(`1 to 100 of ${total} entries`).waitFor();
    await keyboard.pressButton(pages.getByRole('button', { name: 'Older' }));
    await pages.getByText(`101 to 200 of ${total} entries`).waitFor();
    expect(await first()).toBe(String(entries[100]!.seq));
    await keyboard.pressButton(pages.getByRole('button', { name: 'Oldest' }));
    await page.getByRole('cell', { name: 'notebook begun' }).waitFor();
    await pages.getByText(new RegExp(`to ${total} of ${total} entries`)).waitFor();
    // What is looked for is shown from its newest entry.
    await page.getByLabel('Kind').focus();
    await keyboard.type('person added');
    await page.getByText(/^\d+ entries$/).waitFor();
    expect(await page.locator('tbody tr').count()).toBe((await callApi(page, 'record.list', { kind: 'person.added' })).total);
    await page.screenshot({ path: path.join(pictures, 'record-narrowed-1280-light.png') });
    expect(troubles).toEqual([]);
    await page.context().close();
  });
});
