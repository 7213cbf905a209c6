import { Worker } from 'node:worker_threads';
import { ApplicationClient, type ApplicationOptions } from './application-port.ts';

/**
 * Starts the application in a worker thread of this process.
 * @param script URL of the bundled worker
 */
export function startInWorkerThread(script: URL, options: ApplicationOptions): ApplicationClient {
  const worker = new Worker(script);
  return new ApplicationClient(
    {
      post: (message) => worker.postMessage(message),
      onMessage: (listener) => void worker.on('message', listener),
      onEnd: (listener) => {
        worker.on('error', (error) => listener(`The notebook's process stopped (${error.message}). Every acknowledged entry is on disk; start Laydown again.`));
        worker.on('exit', () => listener('The notebook was closed.'));
      },
    },
    options,
  );
}
