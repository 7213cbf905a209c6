import { InputError } from '../../shared-lib/calculation/input-error.ts';
import type { CallInput } from '../../shared-lib/api.ts';
import type { PhotoReading } from '../../shared-lib/notebook/attachment-entries.ts';
import type { PhotoPreview } from '../../shared-lib/notebook/attachment-views.ts';
import type { Levels } from '../../shared-lib/picture/levels.ts';
import { boundsOf } from '../../shared-lib/picture/region.ts';
import { regionLevels } from '../../shared-lib/picture/region-levels.ts';
import { removedArea, removedMask, type RemovedArea } from '../../shared-lib/picture/removed-area.ts';
import { startThreshold } from '../../shared-lib/picture/start-threshold.ts';
import { twoSides, type TwoSides } from '../../shared-lib/picture/two-sides.ts';
import type { AppState } from './app-state.svelte.ts';
import type { BenchSheet } from './bench-sheet.svelte.ts';
import { fileBytes } from './file-bytes.ts';
import type { CellPlace } from './sheet-grid.ts';

/** A photograph from a file, or one that the cell holds already. */
export type PhotoOrigin = { file: File } | { sha256: string; reading: PhotoReading };

type Source = CallInput<'photo.measure'>['source'];

/** The grey of the region and what the program's own threshold makes of it, or why there is none. */
type Grounds = { levels: Levels; start: { threshold: number; sides: TwoSides } } | { problem: string };

/** A photograph that is about to be measured: picture, region and threshold, and the area that follows from them. */
export class PhotoDraft {
  reason = $state('');
  #preview = $state.raw<PhotoPreview | null>(null);
  #grey = $state.raw<Uint8Array | null>(null);
  #reading = $state.raw<PhotoReading | null>(null);
  /** The person has put the threshold somewhere: it is not put back to the start. */
  #placed = $state(false);
  #problem = $state('');
  #reasonProblem = $state('');
  #busy = $state(false);
  #source: Source | null = null;

  constructor(
    private readonly app: AppState,
    private readonly origin: PhotoOrigin,
  ) {
    if ('reading' in origin) {
      this.#reading = origin.reading;
      this.#placed = true;
    }
  }

  get preview(): PhotoPreview | null {
    return this.#preview;
  }

  get problem(): string {
    return this.#problem;
  }

  get reasonProblem(): string {
    return this.#reasonProblem;
  }

  get busy(): boolean {
    return this.#busy;
  }

  /** The reading but for its threshold, as text that is the same while nothing else moves: the light is not fitted again. */
  readonly #setting: string = $derived(this.#reading ? JSON.stringify({ ...this.#reading, threshold: undefined }) : '');

  readonly #grounds: Grounds | null = $derived.by(() => {
    const [preview, grey] = [this.#preview, this.#grey];
    if (!preview || !grey || this.#setting === '') return null;
    const reading = JSON.parse(this.#setting) as Omit<PhotoReading, 'threshold'>;
    try {
      const levels = regionLevels({ width: preview.width, height: preview.height, grey }, reading);
      const threshold = startThreshold(levels);
      return { levels, start: { threshold, sides: twoSides(levels, threshold) } };
    } catch (error) {
      if (error instanceof InputError) return { problem: error.message };
      throw error;
    }
  });

  /** As it would be measured now. */
  readonly reading: PhotoReading | null = $derived.by(() => {
    const grounds = this.#grounds;
    if (!this.#reading || this.#placed || !grounds || 'problem' in grounds) return this.#reading;
    return { ...this.#reading, threshold: grounds.start.threshold };
  });

  readonly area: RemovedArea | { problem: string } | null = $derived.by(() => {
    const [grounds, reading] = [this.#grounds, this.reading];
    if (!grounds || !reading || 'problem' in grounds) return grounds && 'problem' in grounds ? grounds : null;
    try {
      return removedArea(grounds.levels, reading, grounds.start.sides);
    } catch (error) {
      if (error instanceof InputError) return { problem: error.message };
      throw error;
    }
  });

  /** The pixels that count as removed, and where in the picture they begin. */
  readonly mask: { x: number; y: number; width: number; height: number; pixels: Uint8Array } | null = $derived.by(() => {
    const [grounds, reading] = [this.#grounds, this.reading];
    if (!grounds || !reading || 'problem' in grounds) return null;
    return { ...boundsOf(reading.region), pixels: removedMask(grounds.levels, reading) };
  });

  /** Opens the photograph, and again for another of its colours. */
  async open(): Promise<void> {
    this.#busy = true;
    const source = await this.#sourceOf();
    if ('problem' in source) {
      this.#problem = source.problem;
    } else {
      this.#source = source;
      const channel = this.#reading?.channel ?? 'grey';
      const answer = await this.app.call('photo.preview', { source, channel });
      // Another colour was chosen meanwhile, which is on its way.
      if (channel !== (this.#reading?.channel ?? 'grey')) return;
      this.#problem = answer.ok ? '' : answer.problem.message;
      if (answer.ok) this.#take(answer.value);
      // What the colour before would give is no answer for this one.
      else this.#grey = null;
    }
    this.#busy = false;
  }

  change(change: Partial<Omit<PhotoReading, 'threshold'>>): void {
    if (!this.#reading) return;
    this.#reading = { ...this.reading!, ...change };
    if ('channel' in change) void this.open();
  }

  /** `null`: back to the program's own. */
  place(threshold: number | null): void {
    if (!this.#reading) return;
    this.#placed = threshold !== null;
    if (threshold !== null) this.#reading = { ...this.#reading, threshold: Math.min(255, Math.max(0, threshold)) };
  }

  /** Measures into the cell; false when it was refused. */
  async confirm(sheet: BenchSheet, place: CellPlace): Promise<boolean> {
    if (!this.#source || !this.reading) return false;
    this.#busy = true;
    const answer = await sheet.measurePhoto({ ...place, source: this.#source, reading: this.reading, reason: this.reason });
    this.#busy = false;
    if (answer.ok) return true;
    const atReason = answer.problem.field === 'reason';
    this.#reasonProblem = atReason ? answer.problem.message : '';
    this.#problem = atReason ? '' : answer.problem.message;
    return false;
  }

  async #sourceOf(): Promise<Source | { problem: string }> {
    if (this.#source) return this.#source;
    if ('sha256' in this.origin) return { sha256: this.origin.sha256 };
    const read = await fileBytes(this.origin.file);
    return 'problem' in read ? read : { name: this.origin.file.name, bytes: read.bytes };
  }

  #take(preview: PhotoPreview): void {
    this.#grey = Uint8Array.from(atob(preview.grey), (character) => character.charCodeAt(0));
    this.#preview = preview;
    this.#reading ??= {
      channel: 'grey',
      region: { kind: 'rectangle', x: 0, y: 0, width: preview.width, height: preview.height },
      removed: 'lighter',
      threshold: 128,
      light: 'as-is',
      smooth: false,
    };
  }
}
