import { createHash } from 'node:crypto';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { z } from 'zod';
import { writeFileAtomically } from './write-file-atomically.ts';

const draftsSchema = z.record(z.string(), z.string());

/**
 * What was typed and not yet entered, of one notebook, beside the settings. Not in the browser's store: on 127.0.0.1 the
 * port, and with it the store, is another after each start. Not in the notebook: it is nobody's word yet.
 */
export class DraftFile {
  readonly #file: string;
  #drafts: Record<string, string>;

  /** @param notebook path of its file */
  constructor(folder: string, notebook: string) {
    this.#file = path.join(folder, `drafts-${createHash('sha256').update(notebook).digest('hex').slice(0, 16)}.json`);
    this.#drafts = read(this.#file);
  }

  get all(): Record<string, string> {
    return { ...this.#drafts };
  }

  /** @param content `null`: it was entered or taken back */
  keep(name: string, content: string | null): void {
    if ((this.#drafts[name] ?? null) === content) return;
    const { [name]: _, ...others } = this.#drafts;
    this.#drafts = content === null ? others : { ...others, [name]: content };
    if (Object.keys(this.#drafts).length === 0) rmSync(this.#file, { force: true });
    else writeFileAtomically(this.#file, JSON.stringify(this.#drafts));
  }
}

/** A file that cannot be read holds nothing: what was typed there is lost, the notebook is not touched by it. */
function read(file: string): Record<string, string> {
  try {
    return existsSync(file) ? draftsSchema.parse(JSON.parse(readFileSync(file, 'utf8'))) : {};
  } catch {
    return {};
  }
}
