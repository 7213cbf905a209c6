import type { Client } from '../../shared-lib/api.ts';
import { connectLoopback } from './loopback-client.ts';

declare global {
  interface Window {
    /** Put there by the shell's preload script; absent in a browser. */
    laydown?: Client;
  }
}

/** The way to the application: the shell's bridge where there is one, else loopback HTTP. Nothing else knows which. */
export function pickClient(page: Window): Client {
  return page.laydown ?? connectLoopback({ token: takeToken(page), fetch: page.fetch.bind(page) });
}

/** Takes the token out of the address bar, so that it is neither copied nor bookmarked, and keeps it for reloads. */
function takeToken(page: Window): string {
  const given = /(?:^#|&)token=([^&]+)/.exec(page.location.hash)?.[1];
  if (given) {
    page.sessionStorage.setItem('token', given);
    page.history.replaceState(null, '', page.location.pathname);
  }
  return given ?? page.sessionStorage.getItem('token') ?? '';
}
