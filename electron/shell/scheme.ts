import { readFile } from 'node:fs/promises';
import type { ElectronParts } from './electron-parts.ts';
import { CONTENT_SECURITY_POLICY, contentType, resolveInside } from '../screen-files.ts';

export const SCREENS_ORIGIN = 'app://laydown';

/** Must run before the app is ready. Own scheme instead of file://, which has privileges of its own. */
export function registerScheme({ protocol }: ElectronParts): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } },
  ]);
}

/** Serves the bundled screens, GET only, exact host, never outside their folder. */
export function serveScreens({ protocol }: ElectronParts, screens: string): void {
  protocol.handle('app', async (request) => {
    const url = new URL(request.url);
    if (request.method !== 'GET' || url.host !== 'laydown') return new Response(null, { status: 403 });
    const file = resolveInside(screens, url.pathname === '/' ? '/index.html' : url.pathname);
    const content = file ? await readFile(file).catch(() => null) : null;
    if (!file || !content) return new Response(null, { status: 404 });
    return new Response(new Uint8Array(content), {
      headers: {
        'content-type': contentType(file),
        'content-security-policy': CONTENT_SECURITY_POLICY,
        'x-content-type-options': 'nosniff',
      },
    });
  });
}
