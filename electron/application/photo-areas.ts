import { InputError } from '../../shared-lib/calculation/input-error.ts';
import type { MeasuredPhoto } from '../../shared-lib/method/method.ts';
import type { PhotoReading } from '../../shared-lib/notebook/attachment-entries.ts';
import type { Levels } from '../../shared-lib/picture/levels.ts';
import { boundsOf, moved } from '../../shared-lib/picture/region.ts';
import { regionLevels } from '../../shared-lib/picture/region-levels.ts';
import { removedArea } from '../../shared-lib/picture/removed-area.ts';
import { readGreyPng } from '../picture/grey-png.ts';
import type { NotebookStore } from '../store/notebook-store.ts';

const KEPT = 500;

/** What the photographs of the notebook measure, worked out from the grey that was kept with them. */
export class PhotoAreas {
  readonly #store: NotebookStore;
  readonly #areas = new Map<string, Omit<MeasuredPhoto, 'name'>>();

  constructor(store: NotebookStore) {
    this.#store = store;
  }

  /**
   * @param plane the grey, where the notebook does not hold it yet
   * @throws Error when there is no such grey
   */
  area(planeSha256: string, reading: PhotoReading, name: string, plane?: Uint8Array): MeasuredPhoto {
    const key = `${planeSha256} ${JSON.stringify(reading)}`;
    let known = this.#areas.get(key);
    if (!known) {
      // Asked for only here: a sheet asks for its areas after every reading typed, and the grey is a large one.
      known = measure(plane ?? this.#store.attachment(planeSha256), reading, name);
      if (this.#areas.size >= KEPT) this.#areas.delete(this.#areas.keys().next().value!);
      this.#areas.set(key, known);
    }
    return { ...known, name };
  }
}

/** The grey of a measured region, pixel by pixel. @throws InputError as `regionLevels` */
export function measuredLevels(plane: Uint8Array, reading: PhotoReading): Levels {
  const { x, y } = boundsOf(reading.region);
  return regionLevels(readGreyPng(plane), { ...reading, region: moved(reading.region, { x: -x, y: -y }) });
}

function measure(plane: Uint8Array | undefined, reading: PhotoReading, name: string): Omit<MeasuredPhoto, 'name'> {
  if (!plane) throw new Error(`The grey that was measured in ${name} is missing from the notebook.`);
  try {
    return { area: removedArea(measuredLevels(plane, reading), reading), problem: '' };
  } catch (error) {
    if (error instanceof InputError) return { area: null, problem: error.message };
    throw error;
  }
}
