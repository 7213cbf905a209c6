import { randomBytes, timingSafeEqual } from 'node:crypto';
import { createReadStream, rmSync } from 'node:fs';
import { stat } from 'node:fs/promises';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import path from 'node:path';
import type { AddressInfo } from 'node:net';
import type { Answer } from '../shared-lib/api.ts';
import type { ApplicationClient } from './application-port.ts';
import { receiveFile } from './receive-file.ts';
import { CONTENT_SECURITY_POLICY, contentType, resolveInside } from './screen-files.ts';

export interface Loopback {
  /** Address with the token in its fragment, for the person's own browser. */
  address: string;
  port: number;
  close(): Promise<void>;
}

/** A trace of 24 MB travels as base64 in JSON. */
const LARGEST_BODY = 40 * 1024 * 1024;

/**
 * Serves the screens and the application's interface on 127.0.0.1 only. Every call needs the random token; Host and
 * Origin are checked, so that no other page in the browser and no renamed host can reach it.
 * @param screens folder of the bundled renderer
 * @param port 0 takes any free port
 */
export async function serveOnLoopback(application: ApplicationClient, screens: string, port = 0): Promise<Loopback> {
  const token = randomBytes(24).toString('base64url');
  const streams = new Set<ServerResponse>();
  const received: string[] = [];
  const stopEvents = application.subscribe((event) => {
    for (const stream of streams) stream.write(`${JSON.stringify(event)}\n`);
  });

  const server = createServer((request, response) => {
    void answerRequest(request, response).catch(() => refuse(response, 500, 'The request could not be answered.'));
  });
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', resolve);
  });
  const ownPort = (server.address() as AddressInfo).port;
  const hosts = new Set([`127.0.0.1:${ownPort}`, `localhost:${ownPort}`]);

  async function answerRequest(request: IncomingMessage, response: ServerResponse): Promise<void> {
    if (!hosts.has(request.headers.host ?? '')) return refuse(response, 421, 'This address is not served here.');
    const origin = request.headers.origin;
    if (origin !== undefined && !hosts.has(origin.replace(/^http:\/\//, ''))) return refuse(response, 403, 'Another page may not call here.');
    const url = new URL(request.url ?? '/', `http://127.0.0.1:${ownPort}`);
    if (request.method === 'POST' && url.pathname === '/api') {
      if (!hasToken(request, token)) return refuse(response, 401, 'The address of this page is missing its key; open the address that was printed at the start.');
      return answerCall(request, response, application);
    }
    if (request.method === 'POST' && url.pathname === '/file') {
      if (!hasToken(request, token)) return refuse(response, 401, 'The key is missing.');
      const file = await receiveFile(request, url.searchParams.get('name') ?? '', received).catch(() => null);
      if (file === null) return refuse(response, 507, 'The file could not be written where this computer keeps passing files; make room there, or bring the notebook in with `laydown merge`.');
      return sendJson(response, 200, await application.handOver(file));
    }
    if (request.method === 'GET' && url.pathname === '/events') {
      if (!hasToken(request, token)) return refuse(response, 401, 'The key is missing.');
      return streamEvents(response, streams);
    }
    if (request.method === 'GET' || request.method === 'HEAD') return serveFile(response, screens, url.pathname);
    return refuse(response, 405, 'That is not possible here.');
  }

  return {
    address: `http://127.0.0.1:${ownPort}/#token=${token}`,
    port: ownPort,
    async close() {
      await closeServer(server, streams, stopEvents);
      for (const folder of received) rmSync(folder, { recursive: true, force: true });
    },
  };
}

function hasToken(request: IncomingMessage, token: string): boolean {
  const given = Buffer.from((request.headers.authorization ?? '').replace(/^Bearer /, ''));
  const wanted = Buffer.from(token);
  return given.length === wanted.length && timingSafeEqual(given, wanted);
}

async function answerCall(request: IncomingMessage, response: ServerResponse, application: ApplicationClient): Promise<void> {
  if (!/^application\/json\b/.test(request.headers['content-type'] ?? '')) return refuse(response, 415, 'A call is JSON.');
  const body = await readBody(request);
  if (body === null) return refuse(response, 413, 'That is more than can be taken at once; a file may have at most 24 MB.');
  let message: { call?: unknown; input?: unknown };
  try {
    message = JSON.parse(body) as typeof message;
  } catch {
    return refuse(response, 400, 'The call could not be read.');
  }
  if (typeof message?.call !== 'string') return refuse(response, 400, 'The call has no name.');
  const answer = await application.call(message.call, message.input ?? {});
  sendJson(response, 200, answer);
}

function readBody(request: IncomingMessage): Promise<string | null> {
  return new Promise((resolve, reject) => {
    const parts: Buffer[] = [];
    let size = 0;
    request.on('data', (part: Buffer) => {
      size += part.length;
      // Past the limit the rest is read and dropped, so that the answer still reaches the sender.
      if (size <= LARGEST_BODY) parts.push(part);
      else parts.length = 0;
    });
    request.on('end', () => resolve(size > LARGEST_BODY ? null : Buffer.concat(parts).toString('utf8')));
    request.on('error', reject);
  });
}

function streamEvents(response: ServerResponse, streams: Set<ServerResponse>): void {
  response.writeHead(200, { 'content-type': 'application/x-ndjson', 'cache-control': 'no-store' });
  response.flushHeaders();
  streams.add(response);
  response.on('close', () => streams.delete(response));
}

async function serveFile(response: ServerResponse, screens: string, pathname: string): Promise<void> {
  const file = resolveInside(screens, pathname === '/' ? '/index.html' : pathname);
  const found = file ? await stat(file).catch(() => null) : null;
  if (!file || !found?.isFile()) return refuse(response, 404, 'There is no such page.');
  response.writeHead(200, {
    'content-type': contentType(file),
    'content-length': found.size,
    'cache-control': path.extname(file) === '.html' ? 'no-store' : 'no-cache',
    'content-security-policy': CONTENT_SECURITY_POLICY,
    'x-content-type-options': 'nosniff',
    'referrer-policy': 'no-referrer',
    'cross-origin-opener-policy': 'same-origin',
    'cross-origin-resource-policy': 'same-origin',
  });
  createReadStream(file).pipe(response);
}

function refuse(response: ServerResponse, status: number, message: string): void {
  if (response.headersSent) return void response.end();
  const answer: Answer<never> = { ok: false, problem: { code: 'internal', field: '', value: null, message } };
  sendJson(response, status, answer);
}

function sendJson(response: ServerResponse, status: number, value: unknown): void {
  response.writeHead(status, { 'content-type': 'application/json; charset=utf-8', 'cache-control': 'no-store', 'x-content-type-options': 'nosniff' });
  response.end(JSON.stringify(value));
}

function closeServer(server: Server, streams: Set<ServerResponse>, stopEvents: () => void): Promise<void> {
  stopEvents();
  for (const stream of streams) stream.end();
  return new Promise((resolve) => {
    server.close(() => resolve());
    server.closeAllConnections();
  });
}
