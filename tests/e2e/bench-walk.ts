import { writeFileSync } from 'node:fs';
import path from 'node:path';
import type { Locator, Page } from 'playwright-core';
import type { Field, Method, NumberField } from '../../shared-lib/method/method.ts';
import type { BenchExample, Typed } from './bench-sheets/bench-example.ts';
import { Keyboard } from './keyboard.ts';

/** One property as the result panel prints it. */
export interface PrintedLine {
  title: string;
  text: string;
  /** n, interval and limit. */
  below: string;
  /** '' where no limit can be set. */
  verdict: string;
}

/** Past so many stops Tab does not lead from one cell to the next that is typed in. */
const MOST_STOPS = 40;

/** A technician at one bench sheet, with nothing but a keyboard. */
export class BenchWalk {
  readonly keys: Keyboard;
  /** Of the first row; absent where all is chosen, written or read from files. */
  readonly firstNumber: NumberField | undefined;
  readonly #fields: Field[];

  constructor(
    readonly page: Page,
    readonly method: Method,
    readonly example: BenchExample,
    /** Where files that are chosen lie. */
    readonly folder: string,
  ) {
    this.keys = new Keyboard(page);
    this.#fields = method.readings.fields;
    this.firstNumber = method.readings.fields.find((field) => field.kind === 'number' && typeof example.rows[0]?.[field.key] === 'string') as NumberField | undefined;
  }

  /** Opens the help, says what it shows, and closes it again. */
  async readHelp(): Promise<{ shows: string; how: string[]; spoils: string[] }> {
    const button = this.page.getByRole('button', { name: 'How it is done…' });
    await this.keys.pressButton(button, 'backwards');
    const help = this.page.getByRole('region', { name: 'Help' });
    await help.waitFor();
    const said = await help.evaluate((panel) => ({
      shows: panel.querySelector('p')!.textContent!.trim(),
      how: [...panel.querySelectorAll('ol > li')].map((step) => step.textContent!.trim()),
      spoils: [...panel.querySelectorAll('ul > li')].map((spoiler) => spoiler.textContent!.trim()),
    }));
    await this.keys.press('Enter');
    await help.waitFor({ state: 'detached' });
    return said;
  }

  async setLimits(): Promise<void> {
    const limits = this.example.limits ?? [];
    if (limits.length === 0) return;
    await this.keys.pressButton(this.page.getByRole('button', { name: 'Limits…' }), 'backwards');
    for (const { property, lower, upper } of limits) {
      const line = this.page.locator(`[role="group"][aria-labelledby$="-${property}"]`);
      if (lower !== undefined) await this.keys.fill(line.getByLabel('At least'), lower);
      if (upper !== undefined) await this.keys.fill(line.getByLabel('At most'), upper);
    }
    await this.keys.pressButton(this.page.getByRole('button', { name: 'Set limits' }));
    await this.page.getByRole('form', { name: 'Limits' }).waitFor({ state: 'detached' });
  }

  async typeConditions(): Promise<void> {
    for (const field of this.method.conditions) {
      const typed = this.example.conditions[field.key];
      if (typed === undefined) continue;
      await this.keys.reach(this.#cell('condition', field));
      await this.#enter(field, typed);
    }
  }

  /** Row after row: along the cells, Enter at the end of each. */
  async typeRows(): Promise<void> {
    for (const [index, row] of this.example.rows.entries()) {
      for (const field of this.#fields) {
        const typed = row[field.key];
        if (typed === undefined) continue;
        await this.#goTo(index, field);
        await this.#enter(field, typed);
      }
      await this.keys.press('Enter');
    }
    await this.saved();
  }

  /**
   * Types into the first number cell what cannot stand there, reads what is said, and takes it back.
   * @returns the sentence, and what stood in the cell while it was refused
   */
  async typeBadly(bad: string): Promise<{ sentence: string; kept: string }> {
    const field = this.firstNumber!;
    await this.#goTo(0, field);
    await this.keys.type(bad);
    await this.keys.press('Enter');
    const problem = this.page.locator(`[id="r1-${field.key}-problem"]`);
    await problem.waitFor();
    const cell = this.#cell('r1', field);
    const said = { sentence: (await problem.textContent())!.trim(), kept: await cell.inputValue() };
    await this.keys.reach(cell, 'backwards');
    await this.keys.press('Escape');
    await problem.waitFor({ state: 'detached' });
    return said;
  }

  /** Waits until all that was typed is in the record. */
  async saved(): Promise<void> {
    await this.page.waitForFunction(() => ![...document.querySelectorAll('.marks')].some((marks) => marks.textContent!.includes('saving')));
  }

  /** What stands in the cells that the example fills, beside what was typed into them. */
  async cellsThatDiffer(): Promise<string[]> {
    const given = [
      ...Object.entries(this.example.conditions).map(([key, typed]) => ({ id: `condition-${key}`, field: this.method.conditions.find((field) => field.key === key), typed })),
      ...this.example.rows.flatMap((row, index) =>
        Object.entries(row).map(([key, typed]) => ({ id: `r${index + 1}-${key}`, field: this.#fields.find((field) => field.key === key), typed })),
      ),
    ];
    const expected = given.flatMap(({ id, field, typed }) => {
      if (!field) return [{ id, value: '(no such field)' }];
      if (typeof typed !== 'string') return [];
      return [{ id, value: field.kind === 'choice' ? (field.choices.find(({ shortcut }) => shortcut === typed)?.value ?? `(no choice ${typed})`) : typed }];
    });
    return this.page.evaluate((cells) => {
      const valueOf = (id: string) => (document.getElementById(id) as HTMLInputElement | null)?.value;
      return cells.filter(({ id, value }) => valueOf(id) !== value).map(({ id, value }) => `${id}: typed ${value}, shows ${valueOf(id)}`);
    }, expected);
  }

  /** The result panel, line by line. */
  async printed(): Promise<PrintedLine[]> {
    return this.page.locator('.result .lines > li').evaluateAll((lines) =>
      lines.map((line) => ({
        title: line.querySelector('.title')!.textContent!.trim(),
        text: line.querySelector('.value')!.textContent!.trim(),
        below: line.querySelector('p')!.textContent!.replace(/\s+/g, ' ').trim(),
        verdict: line.querySelector('.verdict')?.textContent?.trim() ?? '',
      })),
    );
  }

  async finish(): Promise<void> {
    await this.keys.press('Control+Enter');
    await this.page.getByRole('heading', { name: 'Finished' }).waitFor();
  }

  #cell(row: string, { key }: Field): Locator {
    return this.page.locator(`[id="${row}-${key}"]`);
  }

  /** Tab or Shift+Tab to a cell, whichever leads there. */
  async #goTo(index: number, field: Field): Promise<void> {
    const target = `r${index + 1}-${field.key}`;
    for (let stop = 0; stop < MOST_STOPS; stop++) {
      const now = await this.page.evaluate(() => document.activeElement?.id ?? '');
      if (now === target) return;
      await this.keys.press(this.#place(now) > this.#place(target) ? 'Shift+Tab' : 'Tab');
    }
    throw new Error(`Tab does not lead to ${target} of ${this.method.id}.`);
  }

  /** Where a cell stands when the sheet is read row by row; what is no cell of a row stands before all of them. */
  #place(cellId: string): number {
    const [, row, key] = /^r(\d+)-(.+)$/.exec(cellId) ?? [];
    return row === undefined ? -1 : Number(row) * (this.#fields.length + 1) + this.#fields.findIndex((field) => field.key === key);
  }

  async #enter(field: Field, typed: Typed): Promise<void> {
    if (typeof typed === 'string') {
      if (field.kind === 'choice') {
        await this.keys.press(typed);
        return;
      }
      // It is sent by the key that leads on to the next cell.
      await this.keys.press('Control+A');
      await this.keys.type(typed);
    } else if ('pasted' in typed) {
      await this.page.evaluate((text) => navigator.clipboard.writeText(text), typed.pasted);
      await this.keys.press('Control+V');
    } else {
      await this.#takeFile('csv' in typed ? this.#write(typed.csv) : path.resolve(import.meta.dirname, '../..', typed.photo));
    }
  }

  #write(csv: string): string {
    const file = path.join(this.folder, `${this.method.id}-${Math.abs(csv.length)}.csv`);
    writeFileSync(file, csv);
    return file;
  }

  /** The button that has the focus asks for the file; the panel that opens is agreed to. */
  async #takeFile(file: string): Promise<void> {
    await this.keys.chooseFile(this.page.locator(':focus'), file);
    const panel = this.page.getByRole('region', { name: new RegExp(`from ${path.basename(file)}`) });
    await this.keys.pressButton(panel.getByRole('button', { name: /^Take this/ }));
    await panel.waitFor({ state: 'detached' });
  }
}
