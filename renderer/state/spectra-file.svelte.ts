import type { SpectraReading } from '../../shared-lib/notebook/colour-entries.ts';
import type { SpectraPreview } from '../../shared-lib/notebook/colour-views.ts';
import type { AppState } from './app-state.svelte.ts';
import { base64Of } from './base64.ts';

const largestFile = 24_000_000;

/** A file of spectra that the person is about to read in. */
export class SpectraFile {
  /** Places in the file of the spectra that are to be taken. */
  chosen = $state<number[]>([]);
  #preview = $state.raw<SpectraPreview | null>(null);
  #problem = $state('');
  #busy = $state(false);
  #given = $state.raw<Partial<SpectraReading>>({});
  #asked = $state.raw<keyof SpectraReading | null>(null);
  #bytes = '';
  #newest = 0;

  /** @param single only one of its spectra can be taken */
  constructor(
    private readonly app: AppState,
    private readonly file: File,
    private readonly single: boolean,
  ) {}

  get preview(): SpectraPreview | null {
    return this.#preview;
  }

  get problem(): string {
    return this.#problem;
  }

  set problem(problem: string) {
    this.#problem = problem;
  }

  /** What the person said of how the file is to be read. */
  get given(): Partial<SpectraReading> {
    return this.#given;
  }

  /** What the file does not tell and the person is asked for. */
  get asked(): keyof SpectraReading | null {
    return this.#asked;
  }

  get busy(): boolean {
    return this.#busy;
  }

  /** The file as it is sent, once it was read. */
  get sent(): { name: string; bytes: string; reading: SpectraReading } | null {
    return this.#preview && { name: this.file.name, bytes: this.#bytes, reading: this.#preview.reading };
  }

  /** Reads the file again with what the person changed; all of its spectra are chosen, or the first. */
  async read(change: Partial<SpectraReading> = {}): Promise<void> {
    if (this.file.size > largestFile) {
      this.#problem = `This file has ${Math.round(this.file.size / 1e6)} MB; at most 24 MB can be read.`;
      return;
    }
    const number = ++this.#newest;
    this.#busy = true;
    // Another delimiter or layout makes other spectra, of which nothing is known yet.
    const anew = 'delimiter' in change || 'layout' in change;
    this.#given = anew ? change : { ...this.#given, ...change };
    try {
      this.#bytes ||= base64Of(await this.file.arrayBuffer());
    } catch {
      this.#busy = false;
      this.#problem = 'The file could not be opened: it was moved or changed since it was chosen. Choose it again.';
      return;
    }
    const answer = await this.app.call('spectra.preview', { name: this.file.name, bytes: this.#bytes, reading: this.#given });
    if (number !== this.#newest) return;
    this.#busy = false;
    this.#problem = answer.ok ? '' : answer.problem.message;
    this.#asked = answer.ok || !answer.problem.field.startsWith('reading.') ? null : (answer.problem.field.slice('reading.'.length) as keyof SpectraReading);
    this.#preview = answer.ok ? answer.value : null;
    this.chosen = (this.#preview?.spectra ?? []).map((_, place) => place).slice(0, this.single ? 1 : undefined);
  }
}
