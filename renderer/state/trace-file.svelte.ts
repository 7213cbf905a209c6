import type { TraceReading } from '../../shared-lib/notebook/entry.ts';
import type { TracePreview } from '../../shared-lib/notebook/views.ts';
import type { AppState } from './app-state.svelte.ts';
import type { BenchSheet } from './bench-sheet.svelte.ts';
import { fileBytes } from './file-bytes.ts';
import type { CellPlace } from './sheet-grid.ts';

/** A trace file that the person is about to read into a cell. */
export class TraceFile {
  reason = $state('');
  #preview = $state.raw<TracePreview | null>(null);
  #problem = $state('');
  #reasonProblem = $state('');
  #busy = $state(false);
  #given = $state.raw<Partial<TraceReading>>({});
  #asked = $state.raw<keyof TraceReading | null>(null);
  #bytes = '';
  #newest = 0;

  constructor(
    private readonly app: AppState,
    private readonly file: File,
  ) {}

  get preview(): TracePreview | null {
    return this.#preview;
  }

  get problem(): string {
    return this.#problem;
  }

  /** What the person said of how the file is to be read. */
  get given(): Partial<TraceReading> {
    return this.#given;
  }

  /** What the file does not tell and the person is asked for, e.g. the unit of the force. */
  get asked(): keyof TraceReading | null {
    return this.#asked;
  }

  get reasonProblem(): string {
    return this.#reasonProblem;
  }

  get busy(): boolean {
    return this.#busy;
  }

  /** Reads the file again with what the person changed. What the change entails (another delimiter, other columns) is found anew. */
  async read(change: Partial<TraceReading> = {}): Promise<void> {
    const number = ++this.#newest;
    this.#busy = true;
    // Another delimiter makes other columns, of which nothing is known yet.
    this.#given = 'delimiter' in change ? change : { ...this.#given, ...change };
    const known = 'delimiter' in change ? {} : (this.#preview?.reading ?? {});
    const reading = { ...known, ...this.#given };
    const content = this.#bytes ? { bytes: this.#bytes } : await fileBytes(this.file);
    if ('problem' in content) {
      this.#busy = false;
      this.#problem = content.problem;
      return;
    }
    this.#bytes = content.bytes;
    const answer = await this.app.call('trace.preview', { name: this.file.name, bytes: this.#bytes, reading });
    if (number !== this.#newest) return;
    this.#busy = false;
    this.#problem = answer.ok ? '' : answer.problem.message;
    this.#asked = answer.ok ? null : askedIn(answer.problem.field);
    // What was read before the change is not what would be taken now.
    this.#preview = answer.ok ? answer.value : null;
  }

  /** Reads the trace into the cell; false when it was refused. */
  async confirm(sheet: BenchSheet, place: CellPlace): Promise<boolean> {
    if (!this.#preview) return false;
    this.#busy = true;
    const answer = await sheet.readTrace({ ...place, name: this.file.name, bytes: this.#bytes, reading: this.#preview.reading, reason: this.reason });
    this.#busy = false;
    if (answer.ok) return true;
    const atReason = answer.problem.field === 'reason';
    this.#reasonProblem = atReason ? answer.problem.message : '';
    this.#problem = atReason ? '' : answer.problem.message;
    return false;
  }
}

/** `reading.forceUnit` → `forceUnit`; `null` where the trouble lies in the file and no answer would mend it. */
function askedIn(field: string): keyof TraceReading | null {
  return field.startsWith('reading.') ? (field.slice('reading.'.length) as keyof TraceReading) : null;
}
