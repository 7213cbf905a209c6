import type { CallInput, CallName, CallOutput } from '../../../shared-lib/api.ts';
import type { Limit } from '../../../shared-lib/method/method.ts';
import type { BenchSheetView } from '../../../shared-lib/notebook/views.ts';
import { seededRandom, type Random } from '../../../shared-lib/statistics/random.ts';
import { Application } from '../application.ts';
import type { Surroundings } from '../surroundings.ts';
import { DemoClock } from './demo-clock.ts';

/** A row as somebody types it: field key → keystrokes. */
export type TypedRow = Record<string, string>;

/** Works through the same calls as a person at the bench, at a person's pace, with the demo's clock and randomness. */
export class DemoBench {
  readonly clock = new DemoClock('2026-01-12T07:40:00.000Z');
  readonly random: Random = seededRandom(26);
  readonly application: Application;
  /** The instrument that tests by a method are read with, as it is typed. */
  readonly readWith = new Map<string, string>();

  readonly #salts = seededRandom(7914);

  constructor(folder: string, print: Pick<Surroundings, 'renderReport' | 'renderApproval'>) {
    this.application = new Application({
      clock: this.clock,
      settingsFolder: folder,
      notebooksFolder: folder,
      version: 'demo',
      renderPlan: () => Promise.reject(new Error('The demo prints no plan.')),
      renderLabels: () => Promise.reject(new Error('The demo prints no label.')),
      ...print,
      emit: () => undefined,
      randomBytes: (count) => Uint8Array.from({ length: count }, () => Math.floor(this.#salts.uniform() * 256)),
      timers: { after: () => () => undefined },
    });
  }

  /** @throws Error when the call is refused: the demo is then wrong. */
  async do<Name extends CallName>(name: Name, input: CallInput<Name>): Promise<CallOutput<Name>> {
    this.clock.pass(5);
    const answer = await this.application.call(name, input);
    if (!answer.ok) throw new Error(`The demo was refused ${name}: ${answer.problem.message}`);
    return answer.value as CallOutput<Name>;
  }

  /** Starts a test and types its conditions, the last of them what it is read with. */
  async start(sampleId: string, methodId: string, conditions: TypedRow): Promise<string> {
    const { test } = await this.do('test.start', { sampleId, methodId });
    const instrument = this.readWith.get(methodId);
    for (const [key, typed] of Object.entries({ ...conditions, ...(instrument ? { instrument } : {}) })) await this.do('condition.enter', { testId: test.testId, key, typed });
    return test.testId;
  }

  /** Types rows from the first row of the sheet on; a cell that is filled in already as wanted is passed over. */
  async type(testId: string, rows: TypedRow[], firstRow = 1): Promise<BenchSheetView> {
    for (const [index, cells] of rows.entries()) {
      for (const [key, typed] of Object.entries(cells)) {
        this.clock.pass(12);
        await this.do('reading.enter', { testId, row: `r${firstRow + index}`, key, typed });
      }
    }
    return this.do('test.get', { testId });
  }

  /** Pastes lines from a cell of the first row on, as from the list of an instrument, and finishes the test. */
  async pasteAndFinish(testId: string, key: string, lines: readonly string[]): Promise<void> {
    this.clock.pass(600);
    await this.do('readings.paste', { testId, row: 'r1', key, pasted: lines.join('\n') });
    await this.do('test.finish', { testId, remark: '' });
  }

  /** Sets a limit, unless that of the product's last test was taken over. */
  async limit(testId: string, limit: Limit): Promise<void> {
    const { limits } = await this.do('test.get', { testId });
    if (limits.length === 0) await this.do('test.setLimits', { testId, limits: [limit], rule: 'guarded', reason: '' });
  }

  /** `value` with `decimals`, as it is typed in this lab: with a decimal comma. */
  typed(value: number, decimals: number): string {
    return value.toFixed(decimals).replace('.', ',');
  }
}
