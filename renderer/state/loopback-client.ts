import type { Answer, ApplicationEvent, Client } from '../../shared-lib/api.ts';

export interface LoopbackOptions {
  token: string;
  fetch: typeof fetch;
  /** Waits before the event stream is opened again; given by tests. */
  pause?: (milliseconds: number) => Promise<void>;
}

/** A program that is started again has another address. */
const ENDED =
  'The program does not answer: it has ended. Start it again and open the address that it prints; this page is of no use any more. What was entered is in the notebook, and what was begun comes back there.';

const shortestPause = 500;
const longestPause = 10_000;

/** The application over HTTP on 127.0.0.1: calls by POST, events as one line of JSON each on a stream that is kept open. */
export function connectLoopback({ token, fetch, pause = wait }: LoopbackOptions): Client {
  const authorization = `Bearer ${token}`;
  const listeners = new Set<(event: ApplicationEvent) => void>();
  const tell = (event: ApplicationEvent) => listeners.forEach((listener) => listener(event));
  let listening = false;

  /** Stays connected as long as anyone listens; what was missed meanwhile is made good by one 'notebook-changed'. */
  async function listen(): Promise<void> {
    if (listening) return;
    listening = true;
    let nextPause = shortestPause;
    let first = true;
    while (listeners.size > 0) {
      try {
        const response = await fetch('/events', { headers: { authorization } });
        if (!response.ok || !response.body) throw new Error(`events: ${response.status}`);
        if (!first) tell({ kind: 'notebook-changed' });
        first = false;
        nextPause = shortestPause;
        for await (const line of linesOf(response.body)) tell(JSON.parse(line) as ApplicationEvent);
      } catch {
        first = false;
        if (listeners.size > 0) tell({ kind: 'unreachable', text: ENDED });
      }
      await pause(nextPause);
      nextPause = Math.min(nextPause * 2, longestPause);
    }
    listening = false;
  }

  return {
    async call(name, input) {
      try {
        const response = await fetch('/api', {
          method: 'POST',
          headers: { authorization, 'content-type': 'application/json' },
          body: JSON.stringify({ call: name, input }),
        });
        return (await response.json()) as Answer<never>;
      } catch {
        return unreachable;
      }
    },
    async handOver(file) {
      try {
        const response = await fetch(`/file?name=${encodeURIComponent(file.name)}`, { method: 'POST', headers: { authorization }, body: file as File });
        return (await response.json()) as Answer<{ handle: string }>;
      } catch {
        return unreadable;
      }
    },
    subscribe(listener) {
      listeners.add(listener);
      void listen();
      return () => void listeners.delete(listener);
    },
  };
}

const unreachable: Answer<never> = { ok: false, problem: { code: 'unreachable', field: '', value: null, message: ENDED } };

const unreadable: Answer<never> = {
  ok: false,
  problem: {
    code: 'file',
    field: '',
    value: null,
    message: 'The file did not come through: it was moved or changed since it was chosen, or the application does not answer. Choose it again, or bring the notebook in with `laydown merge`.',
  },
};

async function* linesOf(body: ReadableStream<Uint8Array>): AsyncGenerator<string> {
  const reader = body.pipeThrough(new TextDecoderStream() as ReadableWritablePair<string, Uint8Array>).getReader();
  let rest = '';
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return;
    const lines = (rest + value).split('\n');
    rest = lines.pop()!;
    for (const line of lines) if (line.trim()) yield line;
  }
}

function wait(milliseconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, milliseconds));
}
