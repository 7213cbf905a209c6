import { ApplicationClient, type ApplicationOptions } from '../application-port.ts';
import type { ElectronParts } from './electron-parts.ts';

/** Starts the application in a utility process, so that no checkpoint, import or report ever freezes the window. */
export function startInUtilityProcess({ utilityProcess }: ElectronParts, script: string, options: ApplicationOptions): ApplicationClient {
  const child = utilityProcess.fork(script, [], { serviceName: 'Laydown notebook' });
  return new ApplicationClient(
    {
      post: (message) => child.postMessage(message),
      onMessage: (listener) => void child.on('message', listener),
      onEnd: (listener) => void child.on('exit', () => listener('The notebook stopped. Every acknowledged entry is on disk; start Laydown again.')),
    },
    options,
  );
}
