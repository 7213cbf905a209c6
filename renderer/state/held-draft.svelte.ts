import { z } from 'zod';
import type { KeptDraft } from './kept-draft.ts';

const contentSchema = z.strictObject({ from: z.string(), typed: z.unknown() });

/** How what was kept goes with the editor that it is put back into; `moved`: what it changes was changed since. */
export type PutBack = 'fits' | 'moved' | 'misfit';

/** An editor that outlives its screen, and what it began from. */
export class HeldDraft<Draft extends KeptDraft = KeptDraft> {
  readonly draft: Draft;
  readonly #begun: string;

  constructor(draft: Draft) {
    this.draft = draft;
    this.#begun = JSON.stringify(draft.typed);
  }

  /** What is to be kept, or `null` where it stands as it began. */
  get content(): object | null {
    const { typed } = this.draft;
    return JSON.stringify(typed) === this.#begun ? null : { from: this.#begun, typed };
  }

  /** @param content what `content` gave before */
  putBack(content: unknown): PutBack {
    const read = contentSchema.safeParse(content);
    const typed = this.draft.shape.safeParse(read.data?.typed);
    if (!read.success || !typed.success) return 'misfit';
    this.draft.typed = typed.data;
    return read.data.from === this.#begun ? 'fits' : 'moved';
  }
}
