const kinds: Record<string, string> = {
  'application/pdf': 'PDF',
  'text/csv': 'CSV',
  'text/plain': 'text',
  'text/tab-separated-values': 'table',
  'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet': 'sheet',
};

/** What a file is, in a word: 'PDF', 'picture'. */
export function fileKind(mediaType: string): string {
  return mediaType.startsWith('image/') ? 'picture' : (kinds[mediaType] ?? 'file');
}

/** What is to be said of a file whose name says picture or PDF and whose content is none; '' where the name is right. */
export function nameBelied(name: string, mediaType: string): string {
  if (/\.jpe?g$|\.png$/i.test(name) && !mediaType.startsWith('image/')) return 'Its name says picture, but its content is none. It is kept as it is.';
  if (/\.pdf$/i.test(name) && mediaType !== 'application/pdf') return 'Its name says PDF, but its content is none. It is kept as it is.';
  return '';
}

/** '240 kB', '3.1 MB'. */
export function fileSize(bytes: number): string {
  if (bytes < 1000) return `${bytes} bytes`;
  return bytes < 1e6 ? `${Math.round(bytes / 1000)} kB` : `${(bytes / 1e6).toFixed(1)} MB`;
}
