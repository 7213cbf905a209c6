import type { Session, WebContents } from 'electron';
import type { ElectronParts } from './electron-parts.ts';
import { SCREENS_ORIGIN } from './scheme.ts';

/** True for pages of our own scheme only; compares the parsed origin, not the text. */
export function isOwnPage(address: string): boolean {
  try {
    const url = new URL(address);
    return `${url.protocol}//${url.host}` === SCREENS_ORIGIN;
  } catch {
    return false;
  }
}

/** Electron grants every permission unless told otherwise: all are denied, whoever asks. */
export function denyPermissions(session: Session): void {
  session.setPermissionRequestHandler((_contents, _permission, answer) => answer(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
}

/** No page may lead elsewhere, open a window or embed a guest. */
export function holdNavigation({ app }: ElectronParts): void {
  app.on('web-contents-created', (_event, contents: WebContents) => {
    contents.on('will-navigate', (event) => {
      if (!isOwnPage(event.url)) event.preventDefault();
    });
    contents.on('will-redirect', (event) => {
      if (!isOwnPage(event.url)) event.preventDefault();
    });
    contents.on('will-frame-navigate', (event) => {
      // A report's preview is a blob of our own origin.
      if (!isOwnPage(event.url) && !event.url.startsWith(`blob:${SCREENS_ORIGIN}`)) event.preventDefault();
    });
    contents.on('will-attach-webview', (event) => event.preventDefault());
    contents.setWindowOpenHandler(() => ({ action: 'deny' }));
  });
}
