import type { AttachedTo } from '../../shared-lib/notebook/attachment-entries.ts';
import type { AttachmentLine } from '../../shared-lib/notebook/attachment-views.ts';
import type { AppState } from './app-state.svelte.ts';
import { fileBytes } from './file-bytes.ts';

/** The files of one thing, and what is being added to them. */
export class AttachmentList {
  #lines = $state.raw<AttachmentLine[] | null>(null);
  #problems = $state.raw<string[]>([]);
  #adding = $state('');

  constructor(
    private readonly app: AppState,
    readonly to: { attachedTo: AttachedTo; attachedId: string },
  ) {}

  /** `null` until they were answered. */
  get lines(): AttachmentLine[] | null {
    return this.#lines;
  }

  /** What could not be added, a sentence each. */
  get problems(): string[] {
    return this.#problems;
  }

  /** Name of the file that is on its way, or ''. */
  get adding(): string {
    return this.#adding;
  }

  async load(): Promise<void> {
    const answer = await this.app.call('attachments.list', this.to);
    if (answer.ok) this.#lines = answer.value;
    else this.#problems = [answer.problem.message];
  }

  /** One after the other: each is kept as soon as it is there. */
  async add(files: readonly File[]): Promise<void> {
    const problems: string[] = [];
    for (const file of files) {
      this.#adding = file.name;
      const content = await fileBytes(file);
      if ('problem' in content) {
        problems.push(content.problem);
        continue;
      }
      const answer = await this.app.call('attachment.add', { ...this.to, name: file.name || 'pasted picture.png', bytes: content.bytes, caption: '' });
      if (answer.ok) this.#lines = answer.value;
      else problems.push(answer.problem.message);
    }
    this.#adding = '';
    this.#problems = problems;
  }

  /** '' or why it could not be done. */
  async unlink(sha256: string, reason: string): Promise<string> {
    const answer = await this.app.call('attachment.unlink', { ...this.to, sha256, reason });
    if (answer.ok) this.#lines = answer.value;
    return answer.ok ? '' : answer.problem.message;
  }
}
