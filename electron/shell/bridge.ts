import type { IpcMainInvokeEvent } from 'electron';
import type { Answer } from '../../shared-lib/api.ts';
import type { ApplicationClient } from '../application-port.ts';
import { CALL_CHANNEL } from './channels.ts';
import type { ElectronParts } from './electron-parts.ts';
import { isOwnPage } from './lock-down.ts';

/** The only use of ipcMain: checks who calls, then hands on to the application, which parses the input by its schema. */
export function bridgeCalls({ ipcMain }: ElectronParts, application: Pick<ApplicationClient, 'call'>): void {
  ipcMain.handle(CALL_CHANNEL, (event: IpcMainInvokeEvent, name: unknown, input: unknown): Promise<Answer<unknown>> | Answer<unknown> => {
    if (!isTrustedSender(event)) return refusal('This page may not call the notebook.');
    if (typeof name !== 'string') return refusal('The call has no name.');
    return application.call(name, input ?? {});
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
