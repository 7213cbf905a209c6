import type { Page } from 'playwright-core';
import { Keyboard } from '../e2e/keyboard.ts';
import { launchBrowser, openPage, ServedNotebook } from '../e2e/served-notebook.ts';
import { compare } from './compare.ts';
import { largeFiles } from './large-files.ts';

/**
 * The lists of a large notebook in a real window, by keyboard. What the browser's own trace says of each key: from the press
 * to the next picture on the screen. And how long it takes until what was asked for stands there.
 */
const { large, demo } = await largeFiles();
const browser = await launchBrowser();

interface List {
  what: string;
  walk: (page: Page, keyboard: Keyboard, shown: (text: RegExp) => Promise<void>) => Promise<void>;
}

const LISTS: List[] = [
  {
    what: 'samples: opened, five pages on, scrolled, searched',
    async walk(page, keyboard, shown) {
      await keyboard.goTo('Samples');
      await shown(/^1 to 100 of \d+ samples$|^\d+ samples$/);
      const older = page.getByRole('button', { name: 'Older', exact: true });
      for (let turn = 1; turn <= 5 && (await older.count()) > 0; turn++) {
        await keyboard.pressButton(older);
        await shown(new RegExp(`^${turn}01 to`));
      }
      await keyboard.press(...Array<string>(6).fill('PageDown'));
      await keyboard.press('/');
      await keyboard.type('coffee');
      await shown(/samples$/);
    },
  },
  {
    what: 'the record: opened, five pages back, scrolled, one kind, searched',
    async walk(page, keyboard, shown) {
      await keyboard.goTo('Record');
      await shown(/^1 to 100 of .*entries$/);
      const older = page.getByRole('button', { name: 'Older', exact: true });
      for (let turn = 1; turn <= 5; turn++) {
        await keyboard.pressButton(older);
        await shown(new RegExp(`^${turn}01 to`));
      }
      await keyboard.press(...Array<string>(6).fill('PageDown'));
      await page.getByLabel('Kind').focus();
      await keyboard.type('trace');
      await shown(/^1 to|^\d+ entries$/);
      await page.getByLabel('Kind').focus();
      await keyboard.type('all');
      await keyboard.reach(page.getByLabel('Search', { exact: true }));
      await keyboard.type('torn');
      await shown(/entries$/);
    },
  },
  {
    what: 'everything, searched for a code',
    async walk(page, keyboard) {
      await keyboard.press('Control+K');
      await keyboard.type('Q-26-004');
      await page.getByRole('listbox', { name: 'Found' }).getByRole('option').first().waitFor();
      await keyboard.press('ArrowDown', 'ArrowDown', 'Escape');
    },
  },
  {
    what: 'Today and the list of tests for a report',
    async walk(page, keyboard) {
      await keyboard.goTo('Today');
      await page.getByRole('heading', { name: 'Today' }).waitFor();
      await keyboard.press(...Array<string>(3).fill('PageDown'));
      await keyboard.goTo('Reports');
      await keyboard.pressButton(page.getByRole('link', { name: 'New report…' }).or(page.getByRole('button', { name: 'New report…' })));
      const search = page.getByRole('searchbox', { name: 'Search tests by sample or method' });
      await keyboard.reach(search);
      await keyboard.type('bond');
      await page.getByRole('checkbox').first().waitFor();
    },
  },
];

/** Longest wait for a picture after a key (ms), and the time of the whole walk (ms). */
async function walked(file: string): Promise<{ longest: number; whole: number }[]> {
  const program = new ServedNotebook();
  await program.start(file);
  try {
    return await walkedIn(program.address);
  } finally {
    await program.stopAndClear();
  }
}

async function walkedIn(address: string): Promise<{ longest: number; whole: number }[]> {
  const { page } = await openPage(browser, address);
  page.setDefaultTimeout(60_000);
  await page.getByRole('heading', { name: 'Today' }).waitFor();
  const keyboard = new Keyboard(page);
  const shown = (text: RegExp) => page.getByRole('navigation', { name: /^Pages of/ }).getByText(text).waitFor();
  const walks = [];
  for (const { walk } of LISTS) {
    await browser.startTracing(page, { categories: ['devtools.timeline'] });
    const started = performance.now();
    await walk(page, keyboard, shown);
    const whole = performance.now() - started;
    walks.push({ longest: longestKey(JSON.parse((await browser.stopTracing()).toString()) as Trace), whole });
  }
  await page.context().close();
  return walks;
}

interface Trace {
  traceEvents: { name: string; args: { data?: { type: string; duration: number } } }[];
}

function longestKey({ traceEvents }: Trace): number {
  const keys = traceEvents.flatMap(({ name, args: { data } }) => (name === 'EventTiming' && data && /^key/.test(data.type) ? [data.duration] : []));
  if (keys.length === 0) throw new Error('The trace holds no key.');
  return Math.max(...keys);
}

const [ofLarge, ofDemo] = [await walked(large), await walked(demo)];
for (const [index, { what }] of LISTS.entries()) {
  const once = { runs: 1, unit: 'ms' as const };
  await compare({ what: `longest wait after a key; ${what}`, peer: 'a tenth of a second', target: { atMost: 1 }, ...once, ours: () => ofLarge[index]!.longest, theirs: () => 100 });
  await compare({ what: `the whole walk; ${what}`, peer: 'the demo notebook', target: { atMost: 5 }, ...once, ours: () => ofLarge[index]!.whole, theirs: () => ofDemo[index]!.whole });
}
await browser.close();
