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
    /** A journal that could not be replayed, put aside so that nothing is lost. */
    keptJournal: (stamp: string) => `${file}.journal-kept-${stamp}`,
    /** Our state of the notebook when someone else replaced the file. */
    keptNotebook: (stamp: string) => join(dirname(file), `${stem(file)} kept ${stamp}.laydown`),
  };
}

/** 'lab' for '/a/lab.laydown'. */
export function stem(file: string): string {
  return basename(file).replace(/\.laydown$/i, '');
}

/** A moment as it may stand in a file name on every system: '2025-05-03T10-42-07Z'. */
export function fileStamp(moment: Date): string {
  return moment.toISOString().replace(/\.\d{3}Z$/, 'Z').replaceAll(':', '-');
}
