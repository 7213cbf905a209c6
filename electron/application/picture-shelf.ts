import type { PictureView } from '../../shared-lib/notebook/attachment-views.ts';
import { InputError } from '../../shared-lib/calculation/input-error.ts';
import { decodePicture, type DecodedPicture } from '../picture/decode-picture.ts';
import { pictureJpeg } from '../picture/picture-jpeg.ts';
import type { NotebookStore } from '../store/notebook-store.ts';

/** Pixels on the longer side. */
const SIZES = { thumbnail: 160, screen: 1600 } as const;
const KEPT = { thumbnail: 300, screen: 4 } as const;

/** Photographs are measured at this size. */
export const MEASURED_SIZE = SIZES.screen;

/**
 * Pictures of the notebook made small, by hash: a thumbnail takes a few kilobytes, its photograph megabytes that need not
 * leave the application. Made here and not in the window, because here the file's header is checked before it is decoded, and
 * the report prints the same.
 */
export class PictureShelf {
  readonly #store: NotebookStore;
  readonly #views = { thumbnail: new Map<string, PictureView>(), screen: new Map<string, PictureView>() };
  #last: { sha256: string; picture: DecodedPicture } | null = null;

  constructor(store: NotebookStore) {
    this.#store = store;
  }

  /** The picture with this hash, or in words why it cannot be shown. */
  async view(sha256: string, size: keyof typeof SIZES): Promise<PictureView> {
    const views = this.#views[size];
    const known = views.get(sha256);
    if (known) return known;
    const view = await this.#make(sha256, size);
    if (views.size >= KEPT[size]) views.delete(views.keys().next().value!);
    views.set(sha256, view);
    return view;
  }

  /**
   * A photograph at the size at which it is measured; the last one is kept, for moving its region and threshold.
   * @throws InputError as `decodePicture`
   */
  async measured(sha256: string, bytes: Uint8Array): Promise<DecodedPicture> {
    if (this.#last?.sha256 !== sha256) this.#last = { sha256, picture: await decodePicture(bytes, MEASURED_SIZE) };
    return this.#last.picture;
  }

  async #make(sha256: string, size: keyof typeof SIZES): Promise<PictureView> {
    const bytes = this.#store.attachment(sha256);
    if (!bytes) return without('The file is missing from the notebook.');
    try {
      const picture = await decodePicture(bytes, SIZES[size]);
      const { width, height, original, notes } = picture;
      return { picture: (await pictureJpeg(picture)).jpeg, width, height, original, notes, problem: '' };
    } catch (error) {
      if (error instanceof InputError) return without(error.message);
      throw error;
    }
  }
}

function without(problem: string): PictureView {
  return { picture: '', width: 0, height: 0, original: { width: 0, height: 0 }, notes: [], problem };
}
