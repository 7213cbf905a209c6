import { existsSync, mkdirSync, readFileSync, renameSync } from 'node:fs';
import path from 'node:path';
import { z } from 'zod';
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
  #recent: RecentNotebook[] = [];

  /**
   * @param folder made when it is missing
   * @param tell told once when the file was malformed and has been kept aside
   */
  constructor(folder: string, now: Date, tell: (text: string) => void) {
    mkdirSync(folder, { recursive: true });
    this.#file = path.join(folder, 'settings.json');
    if (!existsSync(this.#file)) return;
    try {
      this.#recent = settingsSchema.parse(JSON.parse(readFileSync(this.#file, 'utf8'))).recent;
    } catch {
      const aside = `settings-malformed-${now.toISOString().replaceAll(':', '-')}.json`;
      renameSync(this.#file, path.join(folder, aside));
      tell(`The settings could not be read and were set aside as ${aside}; the list of recent notebooks starts afresh.`);
    }
  }

  /** Newest first. */
  get recent(): readonly RecentNotebook[] {
    return this.#recent;
  }

  remember(notebook: RecentNotebook): void {
    this.#recent = [notebook, ...this.#recent.filter((known) => known.path !== notebook.path)].slice(0, KEPT);
    writeFileAtomically(this.#file, `${JSON.stringify({ recent: this.#recent }, null, 2)}\n`);
  }
}
