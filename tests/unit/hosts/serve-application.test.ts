import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { ApplicationClient } from '../../../electron/application-port.ts';
import { serveApplication } from '../../../electron/serve-application.ts';

it('goes on answering when the demo notebook cannot be made', async () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'laydown-serve-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  writeFileSync(path.join(folder, 'notebooks'), 'a file where the folder should be');
  const client = inThisThread({ settingsFolder: path.join(folder, 'settings'), notebooksFolder: path.join(folder, 'notebooks'), version: 'test' });

  const answer = await client.openDemo(path.join(folder, 'notebooks', 'demo.laydown'));
  expect(answer).toMatchObject({ ok: false, problem: { code: 'file', message: 'notebooks cannot be read or written: something else of that name stands there.' } });
  expect(await client.call('session.get', {})).toMatchObject({ ok: true, value: { notebook: null, version: 'test' } });
});

function inThisThread(options: ConstructorParameters<typeof ApplicationClient>[1]): ApplicationClient {
  let toHost: (message: unknown) => void = () => undefined;
  let toApplication: (message: unknown) => void = () => undefined;
  serveApplication({ post: (message) => toHost(message), onMessage: (listener) => void (toApplication = listener), onEnd: () => undefined });
  return new ApplicationClient({ post: (message) => toApplication(message), onMessage: (listener) => void (toHost = listener), onEnd: () => undefined }, options);
}
