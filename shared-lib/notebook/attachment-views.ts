import type { AttachedTo, PhotoReading } from './attachment-entries.ts';

/** One file that belongs to something. Its content is never part of a list. */
export interface AttachmentLine {
  sha256: string;
  name: string;
  mediaType: string;
  size: number;
  caption: string;
  linkedAt: string;
  linkedBy: string;
  /** A photograph that a cell of the test measures: it stays with its cell. */
  measured: boolean;
}

/** How many files belong to each thing that has any. */
export type AttachmentCounts = { attachedTo: AttachedTo; attachedId: string; files: number }[];

/** A picture as a data address, no larger than asked, or why there is none. */
export interface PictureView {
  picture: string;
  width: number;
  height: number;
  original: { width: number; height: number };
  notes: string[];
  problem: string;
}

/** A photograph as it is measured: upright, on white, at most 1600 pixels on its longer side. */
export interface PhotoPreview extends Omit<PictureView, 'problem'> {
  name: string;
  /** The chosen colour of each pixel, row by row, as base64. */
  grey: string;
}

/** A photograph measured in a cell. */
export interface PhotoView {
  name: string;
  sha256: string;
  reading: PhotoReading;
  /** '12.3 % removed'; why it cannot be measured where it cannot. */
  text: string;
  /** '95 % interval 11.8 to 13.0', or ''. */
  intervalText: string;
}
