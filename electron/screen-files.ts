import path from 'node:path';

/** Sent with every page, on loopback and by the shell's own scheme alike. Nothing comes from anywhere else. */
export const CONTENT_SECURITY_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "font-src 'self'",
  "img-src 'self' data: blob:",
  "connect-src 'self'",
  'frame-src blob:',
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

const contentTypes: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ttf': 'font/ttf',
  '.woff2': 'font/woff2',
};

export function contentType(file: string): string {
  return contentTypes[path.extname(file)] ?? 'application/octet-stream';
}

/** The file that a request's path names inside `folder`, or `null` when it points outside or is malformed. */
export function resolveInside(folder: string, requestPath: string): string | null {
  let decoded: string;
  try {
    decoded = decodeURIComponent(requestPath);
  } catch {
    return null;
  }
  if (decoded.includes('\0')) return null;
  const file = path.resolve(folder, `.${path.posix.normalize(`/${decoded}`)}`);
  const relative = path.relative(folder, file);
  return relative === '' || relative.startsWith('..') || path.isAbsolute(relative) ? null : file;
}
