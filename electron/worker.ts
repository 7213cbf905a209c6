import { parentPort } from 'node:worker_threads';
import type { ApplicationMessage, HostMessage, Port } from './application-port.ts';
import { serveApplication } from './serve-application.ts';

/** Entry of the thread or process that the application runs in. */
serveApplication(ownPort());

function ownPort(): Port {
  // Electron's utility process has `process.parentPort`; a Node worker thread has `parentPort`.
  const utilityPort = (process as { parentPort?: Electron.ParentPort }).parentPort;
  if (utilityPort) {
    return {
      post: (message) => utilityPort.postMessage(message as ApplicationMessage),
      onMessage: (listener) => void utilityPort.on('message', (event) => listener(event.data as HostMessage)),
      onEnd: () => undefined,
    };
  }
  if (!parentPort) throw new Error('worker.ts runs as a worker thread or a utility process only.');
  const port = parentPort;
  return {
    post: (message) => port.postMessage(message),
    onMessage: (listener) => void port.on('message', listener),
    onEnd: () => undefined,
  };
}
