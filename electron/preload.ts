import { contextBridge, ipcRenderer } from 'electron';
import type { ApplicationEvent, Client } from '../shared-lib/api.ts';
import { CALL_CHANNEL, EVENT_CHANNEL } from './shell/channels.ts';

/** All that the screens get of Electron: one call and one stream of events, never the event object or a channel name. */
const client: Client = {
  call: (name, input) => ipcRenderer.invoke(CALL_CHANNEL, name, input),
  subscribe(listener) {
    const receive = (_event: unknown, event: ApplicationEvent) => listener(event);
    ipcRenderer.on(EVENT_CHANNEL, receive);
    return () => ipcRenderer.off(EVENT_CHANNEL, receive);
  },
};
contextBridge.exposeInMainWorld('laydown', client);
