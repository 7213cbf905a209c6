import type { Client } from '../../shared-lib/api.ts';

/** What undoing needs of the application's state. */
interface UndoApplication {
  call: Client['call'];
  /** Bench sheets ask anew, however lately they were answered. */
  begun: { reloadSheets(): Promise<void> };
}

/** Undoes the last action of the person at the bench, and keeps what is said about it. */
export class Undo {
  #said = $state('');
  #busy = false;

  constructor(private readonly app: UndoApplication) {}

  /** The sentence to show, or ''. */
  get said(): string {
    return this.#said;
  }

  dismiss(): void {
    this.#said = '';
  }

  async last(): Promise<void> {
    if (this.#busy) return;
    this.#busy = true;
    try {
      const answer = await this.app.call('undo.last', {});
      this.#said = answer.ok ? answer.value.text : answer.problem.message;
      if (answer.ok && answer.value.done) await this.app.begun.reloadSheets();
    } finally {
      this.#busy = false;
    }
  }
}

/** A text field in which Ctrl+Z belongs to the text: something was typed there since it took the focus, or stands there and is not entered. */
export function isEdited(target: EventTarget | null, valueAtFocus: string): boolean {
  if (!(target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement)) return false;
  if (target instanceof HTMLInputElement && /^(button|checkbox|radio|submit|file|range)$/.test(target.type)) return false;
  if (target.value !== valueAtFocus) return true;
  // A cell of a bench sheet shows what is in the record; what stands in a form was typed and not entered.
  return target.value !== '' && !isCell(target.id);
}

/** See `cellId`; the line that asks for the reason of a correction is none. */
function isCell(id: string): boolean {
  return /^(condition|r\d+)-/.test(id) && !id.endsWith('-reason');
}
