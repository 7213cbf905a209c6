import { basename, dirname, join } from 'node:path';

/**
 * The files that may lie beside a notebook. Never `FILE-journal`, `FILE-wal` or `FILE-shm`: those names belong to
 * SQLite, and any SQLite tool that opens the notebook deletes a `FILE-journal` that it did not write.
 */
export function companionPaths(file: string) {
  return {
    journal: `${file}.journal`,
    lock: `${file}.lock`,
    /** The next state of the file while it is being written. */
    writing: `${file}.writing`,
    backups: `${file}.backups`,
    /** A journal that could not be replayed, put aside so that nothing is lost; named by its own SHA-256. */
    keptJournal: (sha256: string) => `${file}.journal-kept-${sha256.slice(0, 12)}`,
    /** Our state of the notebook when someone else replaced the file; named by the hash of its last entry. */
    keptNotebook: (chainHash: string) => join(dirname(file), `${stem(file)} kept ${chainHash.slice(0, 12)}.laydown`),
  };
}

/** 'lab' for '/a/lab.laydown'. */
export function stem(file: string): string {
  return basename(file).replace(/\.laydown$/i, '');
}
