import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { existsSync, readFileSync } from 'node:fs';
import type { Invocation } from './invocation.ts';
import { lastOpened } from '../last-opened.ts';
import { serveOnLoopback } from '../loopback.ts';
import { notebooksFolder, settingsFolder } from '../places.ts';
import { startInWorkerThread } from '../worker-thread.ts';

/**
 * `laydown serve`: the same application for a browser on this machine; ends on Ctrl+C after writing the notebook. Without a
 * file it opens the notebook that was open last, and the demo notebook where there is none yet.
 */
export async function serve({ words: [file], options, out, err }: Invocation): Promise<number> {
  const port = options.port === undefined ? 0 : Number(options.port);
  if (!Number.isInteger(port) || port < 0 || port > 65535) {
    err(`--port must be a whole number from 0 to 65535, not ${String(options.port)}.`);
    return 2;
  }
  const programFolder = bundleFolder();
  const notebooks = notebooksFolder();
  const application = startInWorkerThread(new URL('worker.mjs', import.meta.url), {
    settingsFolder: settingsFolder(),
    notebooksFolder: notebooks,
    version: programVersion(programFolder),
  });
  const demo = path.join(notebooks, 'demo.laydown');
  const wanted = file ? path.resolve(file) : await lastOpened(application);
  if (!wanted && !existsSync(demo)) out('Making the demo notebook; this takes a moment, once.');
  const opened = !wanted ? await application.openDemo(demo) : file && !existsSync(wanted) ? { ok: true as const } : await application.open(wanted);
  if (!opened.ok) err(opened.problem.message);
  if (file && !existsSync(file)) out(`There is no notebook at ${file} yet; start it in the window.`);

  let loopback;
  try {
    loopback = await serveOnLoopback(application, path.join(programFolder, '..', 'renderer'), port);
  } catch (error) {
    err(`Port ${port} cannot be used (${(error as NodeJS.ErrnoException).code ?? 'unknown'}); choose another with --port.`);
    await application.close();
    return 2;
  }
  out(`Laydown is served at ${loopback.address}`);
  out('Only this machine can reach it. Ctrl+C ends it.');

  await new Promise<void>((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve());
  });
  await loopback.close();
  await application.close();
  // The worker thread would keep the process alive.
  process.exit(0);
}

/** esbuild may put this module into a shared chunk; all of them lie in the one bundle folder. */
function bundleFolder(): string {
  return path.dirname(fileURLToPath(import.meta.url));
}

function programVersion(programFolder: string): string {
  const manifest = path.join(programFolder, '..', '..', 'package.json');
  return (JSON.parse(readFileSync(manifest, 'utf8')) as { version: string }).version;
}
