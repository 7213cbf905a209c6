import type { z } from 'zod';
import { api, type Answer, type CallName } from '../../shared-lib/api.ts';
import { parseInput } from '../../shared-lib/calculation/calculation.ts';
import { problemOf } from './answer.ts';
import { Refusal } from './refusal.ts';
import type { Surroundings } from './surroundings.ts';
import { mergeWith } from './use-cases/merges.ts';
import { closeNotebook, openNotebookAt } from './use-cases/notebooks.ts';
import { sessionView } from './use-cases/session.ts';
import { useCases, type UseCase } from './use-cases.ts';
import { Workplace } from './workplace.ts';

/**
 * The application without a window: what all hosts (Electron's utility process, loopback, command line, tests) share.
 *
 *   const application = new Application({ clock, settingsFolder, notebooksFolder, version, renderReport, emit });
 *   await application.open(path);                        // a path from a dialog or the command line
 *   await application.call('sample.add', { code: … });   // any name of `api`; answers, never throws
 *   await application.close();                           // writes the file, lets go of it
 *
 * Calls may be made one after the other; the host queues them. Entries are on disk when an answer is given.
 */
export class Application {
  readonly #workplace: Workplace;

  constructor(surroundings: Surroundings) {
    this.#workplace = new Workplace(surroundings);
  }

  /** Does what `name` of `api` says with `input`, whatever that is. Problems come back as sentences. */
  async call(name: string, input: unknown): Promise<Answer<unknown>> {
    const entriesBefore = this.#workplace.open?.store.entryCount;
    const answer = await this.#answer(() => {
      if (!Object.hasOwn(api, name)) throw new Refusal('not-found', `There is no call named '${name.slice(0, 60)}'.`);
      const known = name as CallName;
      const parsed = parseInput(api[known].input as z.ZodType, input);
      return (useCases[known] as UseCase)(this.#workplace, parsed);
    });
    // Other windows on the notebook ask again.
    if (this.#workplace.open && this.#workplace.open.store.entryCount !== entriesBefore) this.#workplace.surroundings.emit({ kind: 'notebook-changed' });
    return withoutPassphrase(answer, input);
  }

  /** Opens the notebook at `path`, which never comes from the screens, and answers with the session. */
  async open(path: string): Promise<Answer<unknown>> {
    return this.#answer(async () => {
      await openNotebookAt(this.#workplace, path);
      return sessionView(this.#workplace);
    });
  }

  /** A person chose the file at `path`: calls may name it as a handle from now on. */
  handOver(path: string): void {
    this.#workplace.handedOver.add(path);
  }

  /**
   * Takes in the notebook at `path`, which never comes from the screens; answers with the merge, `null` when there was nothing new.
   * @param belongsHere a person has said that it belongs to this laboratory
   */
  async merge(path: string, belongsHere: boolean): Promise<Answer<unknown>> {
    return this.#answer(() => mergeWith(this.#workplace, path, belongsHere));
  }

  /** Writes the notebook's file and lets go of it. Never throws: when the file cannot be written, the host is told by an event. */
  async close(): Promise<void> {
    closeNotebook(this.#workplace);
  }

  async #answer(action: () => unknown): Promise<Answer<unknown>> {
    try {
      return { ok: true, value: await action() };
    } catch (error) {
      return { ok: false, problem: problemOf(error) };
    }
  }
}

/** A refusal tells the value that was refused, which may be the whole input; a passphrase goes nowhere. */
function withoutPassphrase(answer: Answer<unknown>, input: unknown): Answer<unknown> {
  const secret = typeof input === 'object' && input !== null && 'passphrase' in input;
  return answer.ok || !secret ? answer : { ok: false, problem: { ...answer.problem, value: null } };
}
