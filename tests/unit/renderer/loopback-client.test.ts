import { describe, expect, it } from 'vitest';
import { connectLoopback } from '../../../renderer/state/loopback-client.ts';
import type { ApplicationEvent } from '../../../shared-lib/api.ts';

function streamOf(...chunks: string[]): Response {
  const bytes = chunks.map((chunk) => new TextEncoder().encode(chunk));
  return new Response(
    new ReadableStream({
      start(controller) {
        for (const chunk of bytes) controller.enqueue(chunk);
        controller.close();
      },
    }),
  );
}

describe('the application over HTTP', () => {
  it('sends the call as JSON with the token and gives back the answer', async () => {
    const sent: { path: string; init: RequestInit }[] = [];
    const client = connectLoopback({
      token: 'key',
      fetch: (async (path: string, init: RequestInit) => {
        sent.push({ path, init });
        return Response.json({ ok: true, value: [] });
      }) as typeof fetch,
    });
    expect(await client.call('materials.list', {})).toEqual({ ok: true, value: [] });
    expect(sent[0]!.path).toBe('/api');
    expect(sent[0]!.init.headers).toEqual({ authorization: 'Bearer key', 'content-type': 'application/json' });
    expect(JSON.parse(sent[0]!.init.body as string)).toEqual({ call: 'materials.list', input: {} });
  });

  it('answers with a sentence when nobody is there', async () => {
    const client = connectLoopback({ token: '', fetch: () => Promise.reject(new TypeError('refused')) });
    const answer = await client.call('today.get', {});
    expect(answer.ok).toBe(false);
    if (!answer.ok) expect(answer.problem.message).toMatch(/Start it again and open the address that it prints/);
  });

  it('puts events together from pieces, and after a break tells that the notebook may have changed', async () => {
    const trouble = `${JSON.stringify({ kind: 'trouble', text: 'Größe' })}\n`;
    const answers = [
      () => streamOf(trouble.slice(0, 20), trouble.slice(20) + trouble),
      () => Promise.reject(new TypeError('refused')),
      () => streamOf(trouble),
    ];
    const pauses: number[] = [];
    const heard: ApplicationEvent['kind'][] = [];
    await new Promise<void>((done) => {
      const client = connectLoopback({
        token: '',
        fetch: (async () => answers.shift()!()) as typeof fetch,
        pause: async (milliseconds) => {
          pauses.push(milliseconds);
          if (answers.length === 0) {
            stop();
            done();
          }
        },
      });
      const stop = client.subscribe((event) => heard.push(event.kind));
    });
    expect(heard).toEqual(['trouble', 'trouble', 'unreachable', 'notebook-changed', 'trouble']);
    expect(pauses).toEqual([500, 1000, 500]);
  });
});
