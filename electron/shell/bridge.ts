import type { IpcMainInvokeEvent } from 'electron';
import type { Answer } from '../../shared-lib/api.ts';
import type { ApplicationClient } from '../application-port.ts';
import { CALL_CHANNEL, HAND_OVER_CHANNEL } from './channels.ts';
import type { ElectronParts } from './electron-parts.ts';
import { isOwnPage } from './lock-down.ts';

/** The only use of ipcMain: checks who calls, then hands on to the application, which parses the input by its schema. */
export function bridgeCalls({ ipcMain }: ElectronParts, application: Pick<ApplicationClient, 'call' | 'handOver'>): void {
  ipcMain.handle(CALL_CHANNEL, (event: IpcMainInvokeEvent, name: unknown, input: unknown): Promise<Answer<unknown>> | Answer<unknown> => {
    if (!isTrustedSender(event)) return refusal('This page may not call the notebook.');
    if (typeof name !== 'string') return refusal('The call has no name.');
    return application.call(name, input ?? {});
  });
  // The page never names a path: the preload script asks Electron for that of the file which the person chose.
  ipcMain.handle(HAND_OVER_CHANNEL, (event: IpcMainInvokeEvent, path: unknown): Promise<Answer<unknown>> | Answer<unknown> => {
    if (!isTrustedSender(event)) return refusal('This page may not hand over a file.');
    if (typeof path !== 'string' || path === '') return refusal('This file lies nowhere on this computer; choose it again.');
    return application.handOver(path);
  });
}

/** The main frame of our own page, and nothing else. */
export function isTrustedSender(event: Pick<IpcMainInvokeEvent, 'senderFrame'>): boolean {
  const frame = event.senderFrame;
  return frame !== null && frame.parent === null && isOwnPage(frame.url);
}

function refusal(message: string): Answer<never> {
  return { ok: false, problem: { code: 'internal', field: '', value: null, message } };
}
