import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { callApi } from './call-api.ts';
import type { Keyboard } from './keyboard.ts';
import { NewNotebook } from './new-notebook.ts';

/** What is chosen on a bench sheet rather than typed, by keyboard alone: choices and what is kept in the notebook. */
const notebook = new NewNotebook();
let page: Page;
let keys: Keyboard;
let sampleId: string;

beforeAll(async () => {
  ({ page, keys } = await notebook.open('Choices'));
  ({ sampleId } = await callApi(page, 'sample.add', { code: 'S-1', product: 'coffee brick', job: '', roll: '', note: '', lotIds: [] }));
  for (const serial of ['TT-1', 'TT-2']) {
    const { instrumentId } = await callApi(page, 'instrument.add', { name: 'Tensile tester', serial, methodIds: [], note: '' });
    await callApi(page, 'instrument.calibrate', { instrumentId, calibratedOn: '2024-01-15', dueOn: serial === 'TT-1' ? '2025-01-15' : null, remark: '' });
  }
  await callApi(page, 'fluid.add', { kind: 'test fluids', name: 'Test fluids 30 to 48 mN/m in steps of two', lot: 'TF-12', methodIds: [], openedOn: null, expiresOn: '2025-11-30', note: '' });
});

afterAll(() => notebook.close());

async function begin(methodId: string): Promise<string> {
  const { test } = await callApi(page, 'test.start', { sampleId, methodId });
  await page.evaluate((to) => (location.hash = to), `#/bench-sheet/${test.testId}`);
  await page.locator(`a[href="#/record/${test.testId}"]`).waitFor();
  return test.testId;
}

const cell = (id: string) => page.locator(`[id="${id}"]`);
const hasFocus = (id: string) => expect.poll(() => cell(id).evaluate((element) => element === document.activeElement)).toBe(true);
const condition = async (testId: string, key: string) => (await callApi(page, 'test.get', { testId })).conditions[key]?.value;
const entries = async () => (await callApi(page, 'session.get', {})).notebook!.entries;

describe('a choice', () => {
  let testId: string;

  it('takes a word that is typed, and enters it with Enter, not at its first letter', async () => {
    testId = await begin('test-fluids');
    await keys.reach(cell('condition-side'));
    const before = await entries();
    await keys.type('in');
    expect(await cell('condition-side').locator('option:checked').innerText()).toMatch(/^inside/);
    await page.waitForTimeout(200);
    expect(await entries()).toBe(before);
    expect((await page.locator('.hint').first().textContent())!.replace(/\s+/g, ' ')).toMatch(/Side tested: i inside.*o outside.*n not known.*choose, Enter enters/);
    await notebook.picture('choice-letters');
    await keys.press('Enter');
    await expect.poll(() => condition(testId, 'side')).toBe('inside');
    await page.locator('p.problem, .reason').waitFor({ state: 'detached' });
  });

  it('is walked by the arrow keys in a condition, and entered by Tab', async () => {
    await callApi(page, 'condition.enter', { testId, key: 'side', typed: '', reason: 'again' });
    testId = await begin('test-fluids');
    await keys.reach(cell('condition-side'));
    await keys.press('ArrowDown', 'ArrowDown', 'ArrowDown', 'ArrowDown', 'ArrowUp');
    await hasFocus('condition-side');
    const last = await cell('condition-side').locator('option').nth(-2).innerText();
    expect(await cell('condition-side').locator('option:checked').innerText()).toBe(last);
    expect(await condition(testId, 'side')).toBeUndefined();
    await keys.press('Tab');
    await expect.poll(() => condition(testId, 'side')).toBeDefined();
  });

  it('is taken back with Esc before it is entered', async () => {
    testId = await begin('lamination-bond');
    await keys.reach(cell('r1-mode'));
    await keys.press('t', 'Escape');
    expect(await cell('r1-mode').inputValue()).toBe('');
    await keys.press('Control+Enter');
    expect(await page.getByText('Something is typed that is not in the record').count()).toBe(0);
    await keys.press('t', 'Control+Enter');
    await page.getByText('Something is typed that is not in the record').waitFor();
    await keys.press('c', 'Enter');
    await expect.poll(async () => (await callApi(page, 'test.get', { testId })).rows[0]!.cells.mode?.value).toBe('cohesive-adhesive');
  });
});

describe('a field for what is kept in the notebook', () => {
  it('opens its list by ArrowDown in a condition, says what has ended, and takes the one that is walked to', async () => {
    const testId = await begin('lamination-bond');
    await keys.reach(cell('condition-instrument'));
    await keys.press('ArrowDown');
    await page.getByRole('option', { name: /^Tensile tester, TT-1 ▲ calibration ended on 2025-01-15$/ }).waitFor();
    await page.getByRole('option', { name: /^Tensile tester, TT-2 calibrated 2024-01-15$/ }).waitFor();
    await notebook.picture('choice-instrument');
    await keys.press('ArrowDown', 'Enter');
    await expect.poll(() => cell('condition-instrument').inputValue()).toBe('Tensile tester, TT-2');
    // Opened again, what stands there is the one that Enter takes.
    await keys.reach(cell('condition-instrument'), 'backwards');
    await keys.press('ArrowDown');
    await page.locator('[role=option][aria-selected=true]').getByText('Tensile tester, TT-2').waitFor();
    await keys.press('Enter');
    await expect.poll(() => cell('condition-instrument').inputValue()).toBe('Tensile tester, TT-2');
    expect((await callApi(page, 'test.get', { testId })).conditions.instrument?.corrections).toBe(0);
  });

  it('opens its list by ArrowDown in a cell as well', async () => {
    await begin('light-exposure');
    const item = page.getByRole('combobox', { name: /Exposed in/ });
    await keys.reach(item);
    await keys.press('ArrowDown');
    await page.getByRole('option', { name: /^Tensile tester, TT-1/ }).waitFor();
    await keys.press('Escape');
    await page.getByRole('option', { name: /^Tensile tester/ }).first().waitFor({ state: 'detached' });
  });

  it('shows each on one line, inside the page', async () => {
    await begin('test-fluids');
    const fluid = page.getByRole('combobox', { name: /Fluid set and lot/ });
    await keys.reach(fluid);
    await keys.press('ArrowDown');
    const option = page.getByRole('option', { name: /TF-12 ▲ test fluids, expired on 2025-11-30$/ });
    await option.waitFor();
    const { height, right } = await option.evaluate((element) => element.getBoundingClientRect());
    expect(height).toBeLessThan(36);
    expect(right).toBeLessThan(1280);
    await notebook.picture('choice-fluid');
    expect(notebook.troubles).toEqual([]);
  });
});
