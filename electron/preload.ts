import { contextBridge, ipcRenderer, webUtils } from 'electron';
import type { ApplicationEvent, Client } from '../shared-lib/api.ts';
import { CALL_CHANNEL, EVENT_CHANNEL, HAND_OVER_CHANNEL } from './shell/channels.ts';

/** All that the screens get of Electron: one call, one stream of events and the way of a chosen file, never the event object or a channel name. */
const client: Client = {
  call: (name, input) => ipcRenderer.invoke(CALL_CHANNEL, name, input),
  handOver: (file) => ipcRenderer.invoke(HAND_OVER_CHANNEL, webUtils.getPathForFile(file as File)),
  subscribe(listener) {
    const receive = (_event: unknown, event: ApplicationEvent) => listener(event);
    ipcRenderer.on(EVENT_CHANNEL, receive);
    return () => ipcRenderer.off(EVENT_CHANNEL, receive);
  },
};
contextBridge.exposeInMainWorld('laydown', client);
