import type { Locator, Page } from 'playwright-core';

/** More stops than any screen has; past them the control cannot be reached by Tab. */
const MOST_STOPS = 250;

/** A person at the keyboard: everything is reached by Tab and done by keys. */
export class Keyboard {
  constructor(readonly page: Page) {
    // A standing listener: one that is put on just before the key comes too late on a busy machine.
    page.on('filechooser', () => undefined);
  }

  async press(...keys: string[]): Promise<void> {
    for (const key of keys) await this.page.keyboard.press(key);
  }

  async type(text: string): Promise<void> {
    await this.page.keyboard.type(text);
  }

  /** Presses Tab (or Shift+Tab) until the control has the focus. */
  async reach(control: Locator, direction: 'forwards' | 'backwards' = 'forwards'): Promise<void> {
    let element = await control.elementHandle();
    // Most of the way is walked without looking; where it leads elsewhere, the steps that follow go on around.
    const way = await element!.evaluate(stopsBetween);
    const ahead = direction === 'forwards' ? way : -way;
    for (let step = 1; step < ahead; step++) await this.press(direction === 'forwards' ? 'Tab' : 'Shift+Tab');
    for (let stop = 0; stop < MOST_STOPS; stop++) {
      const state = await element!.evaluate((node) => (!node.isConnected ? 'gone' : node === document.activeElement ? 'focused' : 'elsewhere'));
      if (state === 'focused') return;
      if (state === 'gone') element = await control.elementHandle();
      else await this.press(direction === 'forwards' ? 'Tab' : 'Shift+Tab');
    }
    throw new Error(`Tab does not lead to ${control.toString()}.`);
  }

  /** Goes to a screen of the rail by the shortcut that the rail names for it. */
  async goTo(screen: string): Promise<void> {
    const link = this.page.getByRole('navigation').getByRole('link', { name: new RegExp(`^${screen}`) });
    const digit = /Alt\+(\d)/.exec((await link.getAttribute('aria-keyshortcuts')) ?? '')?.[1];
    if (digit === undefined) throw new Error(`The rail names no shortcut for ${screen}.`);
    await this.press(`Alt+Digit${digit}`);
  }

  /** Reaches a field, replaces what stands in it and leaves the focus there. */
  async fill(field: Locator, text: string): Promise<void> {
    await this.reach(field);
    await this.press('Control+A');
    await this.type(text);
  }

  async pressButton(button: Locator, direction: 'forwards' | 'backwards' = 'forwards'): Promise<void> {
    await this.reach(button, direction);
    await this.press('Enter');
  }

  /** Presses the button that asks for a file and gives it one. */
  async chooseFile(button: Locator, file: string): Promise<void> {
    await this.reach(button);
    const [chooser] = await Promise.all([this.page.waitForEvent('filechooser'), this.press('Enter')]);
    await chooser.setFiles(file);
  }

  /** Types a column of a bench sheet from its first cell, Enter after each value. */
  async typeColumn(firstCell: Locator, values: string[]): Promise<void> {
    await this.reach(firstCell);
    for (const value of values) {
      await this.type(value);
      await this.press('Enter');
    }
  }
}

/** How many stops of Tab a control lies ahead of where the focus is, as far as the page's order tells; 0 where it does not. */
function stopsBetween(control: HTMLElement | SVGElement): number {
  const stops = [...document.querySelectorAll<HTMLElement>('a[href], button, input, select, textarea, summary, [tabindex]')].filter(
    (element) => element.tabIndex >= 0 && !element.matches(':disabled') && element.getClientRects().length > 0,
  );
  const [from, to] = [document.activeElement, control].map((element) => stops.indexOf(element as HTMLElement));
  return from === -1 || to === -1 ? 0 : to! - from!;
}
