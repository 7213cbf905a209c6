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

/** '240 kB', '3.1 MB'. */
export function fileSize(bytes: number): string {
  if (bytes < 1000) return `${bytes} bytes`;
  return bytes < 1e6 ? `${Math.round(bytes / 1000)} kB` : `${(bytes / 1e6).toFixed(1)} MB`;
}
