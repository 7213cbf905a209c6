import { ulid } from 'ulid';
import type { Clock } from '../../store/clock.ts';
import { seededRandom } from '../../../shared-lib/statistics/random.ts';

/** A clock that only moves when the demo moves it, with ids from a fixed seed: the same notebook each time. */
export class DemoClock implements Clock {
  #time: number;
  readonly #random = seededRandom(1971);

  /** @param start ISO 8601, UTC */
  constructor(start: string) {
    this.#time = Date.parse(start);
  }

  now(): Date {
    return new Date(this.#time);
  }

  /** Every id is taken a millisecond later, so that ids rise in the order in which they were made. */
  ulid(): string {
    this.#time += 1;
    return ulid(this.#time, () => this.#random.uniform());
  }

  pass(seconds: number): void {
    this.#time += seconds * 1000;
  }

  /** @param moment ISO 8601, UTC; never back in time */
  goTo(moment: string): void {
    const time = Date.parse(moment);
    if (time < this.#time) throw new Error(`The demo's clock does not go back to ${moment}.`);
    this.#time = time;
  }
}
