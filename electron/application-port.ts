import type { Answer, ApplicationEvent } from '../shared-lib/api.ts';

/**
 * The application runs off the window's thread. These messages are all that passes between it and its host,
 * whether over a worker thread's port or a utility process's.
 */
export interface ApplicationOptions {
  /** Recent files and settings. */
  settingsFolder: string;
  /** Where a new notebook goes when no dialog asked for a place. */
  notebooksFolder: string;
  version: string;
}

export type HostMessage =
  | { kind: 'start'; options: ApplicationOptions }
  | { kind: 'call'; number: number; name: string; input: unknown }
  /** `path` comes from a dialog, the command line or the operating system, never from the screens. */
  | { kind: 'open'; number: number; path: string }
  /** As for `open`: the screens may name this file from now on. */
  | { kind: 'hand-over'; number: number; path: string }
  /** As `open`; a notebook that does not exist yet is the demo notebook, built there. */
  | { kind: 'open-demo'; number: number; path: string }
  | { kind: 'close'; number: number };

export type ApplicationMessage =
  | { kind: 'answer'; number: number; answer: Answer<unknown> }
  | { kind: 'event'; event: ApplicationEvent };

/** What both kinds of port have in common, once their events are unwrapped. */
export interface Port {
  post(message: unknown): void;
  onMessage(listener: (message: unknown) => void): void;
  /** The other side ended without being asked. */
  onEnd(listener: (reason: string) => void): void;
}

/** The host's end: turns messages back into promises. */
export class ApplicationClient {
  #port: Port;
  #next = 1;
  #waiting = new Map<number, (answer: Answer<unknown>) => void>();
  #listeners = new Set<(event: ApplicationEvent) => void>();
  #ended = '';

  constructor(port: Port, options: ApplicationOptions) {
    this.#port = port;
    port.onMessage((message) => this.#receive(message as ApplicationMessage));
    port.onEnd((reason) => this.#end(reason));
    port.post({ kind: 'start', options } satisfies HostMessage);
  }

  call(name: string, input: unknown): Promise<Answer<unknown>> {
    return this.#ask((number) => ({ kind: 'call', number, name, input }));
  }

  open(path: string): Promise<Answer<unknown>> {
    return this.#ask((number) => ({ kind: 'open', number, path }));
  }

  handOver(path: string): Promise<Answer<unknown>> {
    return this.#ask((number) => ({ kind: 'hand-over', number, path }));
  }

  openDemo(path: string): Promise<Answer<unknown>> {
    return this.#ask((number) => ({ kind: 'open-demo', number, path }));
  }

  /** Writes the notebook's file and lets go of it. */
  close(): Promise<Answer<unknown>> {
    return this.#ask((number) => ({ kind: 'close', number }));
  }

  subscribe(listener: (event: ApplicationEvent) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  #ask(message: (number: number) => HostMessage): Promise<Answer<unknown>> {
    if (this.#ended) return Promise.resolve(ended(this.#ended));
    const number = this.#next++;
    return new Promise((resolve) => {
      this.#waiting.set(number, resolve);
      this.#port.post(message(number));
    });
  }

  #receive(message: ApplicationMessage): void {
    if (message.kind === 'event') {
      for (const listener of this.#listeners) listener(message.event);
      return;
    }
    this.#waiting.get(message.number)?.(message.answer);
    this.#waiting.delete(message.number);
  }

  #end(reason: string): void {
    this.#ended = reason;
    for (const resolve of this.#waiting.values()) resolve(ended(reason));
    this.#waiting.clear();
    for (const listener of this.#listeners) listener({ kind: 'unreachable', text: reason });
  }
}

function ended(reason: string): Answer<never> {
  return { ok: false, problem: { code: 'unreachable', field: '', value: null, message: reason } };
}
