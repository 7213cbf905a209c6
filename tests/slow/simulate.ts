import { expect } from 'vitest';
import type { ResultValue } from '../../shared-lib/calculation/result.ts';

/** How often 95 % intervals hold a truth that is known because the readings were simulated from it. */
export class Coverage {
  private covered = 0;
  private below = 0;
  private above = 0;
  private open = 0;

  constructor(private readonly name: string) {}

  /** A bound counts as an interval that is open on its other side, and so does an end that is not given. */
  add({ value, low, high, bound }: ResultValue, truth: number): void {
    const from = low ?? (bound === 'at-least' ? value! : -Infinity);
    const to = high ?? (bound === 'at-most' ? value! : Infinity);
    if (from === -Infinity || to === Infinity) this.open += 1;
    if (truth < from) this.below += 1;
    else if (truth > to) this.above += 1;
    else this.covered += 1;
  }

  get runs(): number {
    return this.covered + this.below + this.above;
  }

  get share(): number {
    return this.covered / this.runs;
  }

  /** Prints the figures and holds them to 92–98 %. */
  judge(): void {
    const percent = (count: number) => `${((100 * count) / this.runs).toFixed(1)} %`;
    process.stdout.write(
      `${this.name}: ${this.runs} runs, covered ${percent(this.covered)}, truth below ${percent(this.below)}, above ${percent(this.above)}, open on a side ${percent(this.open)}\n`,
    );
    expect(this.share, this.name).toBeGreaterThan(0.92);
    expect(this.share, this.name).toBeLessThan(0.98);
  }
}
