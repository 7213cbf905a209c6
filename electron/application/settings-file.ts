import { existsSync, mkdirSync, readFileSync, renameSync } from 'node:fs';
import path from 'node:path';
import { z } from 'zod';
import { reasonOf } from '../store/notebook-file-error.ts';
import { writeFileAtomically } from './write-file-atomically.ts';

const recentSchema = z.object({
  path: z.string(),
  openedAt: z.string(),
  /** Who was at the bench last, so that the same person need not be chosen again. */
  atBench: z.string().nullable(),
});
const settingsSchema = z.object({ recent: z.array(recentSchema) });

export type RecentNotebook = z.output<typeof recentSchema>;

const KEPT = 12;

/** The program's own settings: which notebooks were opened lately. Nothing of the lab's work is kept here. */
export class SettingsFile {
  readonly #file: string;
  readonly #tell: (text: string) => void;
  #recent: RecentNotebook[] = [];

  /**
   * @param folder made when it is missing
   * @param tell told when the settings cannot be read or written; the notebook is opened all the same
   */
  constructor(folder: string, now: Date, tell: (text: string) => void) {
    this.#file = path.join(folder, 'settings.json');
    this.#tell = tell;
    this.#orTell('read', () => {
      mkdirSync(folder, { recursive: true });
      if (existsSync(this.#file)) this.#read(readFileSync(this.#file, 'utf8'), now);
    });
  }

  /** Newest first. */
  get recent(): readonly RecentNotebook[] {
    return this.#recent;
  }

  remember(notebook: RecentNotebook): void {
    this.#recent = [notebook, ...this.#recent.filter((known) => known.path !== notebook.path)].slice(0, KEPT);
    this.#orTell('written', () => writeFileAtomically(this.#file, `${JSON.stringify({ recent: this.#recent }, null, 2)}\n`));
  }

  #read(text: string, now: Date): void {
    try {
      this.#recent = settingsSchema.parse(JSON.parse(text)).recent;
    } catch {
      const aside = `settings-malformed-${now.toISOString().replaceAll(':', '-')}.json`;
      renameSync(this.#file, path.join(path.dirname(this.#file), aside));
      this.#tell(`The settings could not be read and were set aside as ${aside}; the list of recent notebooks starts afresh.`);
    }
  }

  #orTell(done: string, work: () => void): void {
    try {
      work();
    } catch (error) {
      this.#tell(`The list of recent notebooks cannot be ${done}: ${reasonOf(error)}.`);
    }
  }
}
