import type { ReportPicture } from '../../shared-lib/report/content.ts';
import { boundsOf } from '../../shared-lib/picture/region.ts';
import { removedMask } from '../../shared-lib/picture/removed-area.ts';
import { formatValue } from '../../shared-lib/quantity/format.ts';
import { decodePicture, type DecodedPicture } from '../picture/decode-picture.ts';
import { drawMask } from '../picture/draw-mask.ts';
import { pictureJpeg } from '../picture/picture-jpeg.ts';
import type { OpenNotebook } from './open-notebook.ts';
import { measuredLevels } from './photo-areas.ts';
import { MEASURED_SIZE } from './picture-shelf.ts';
import { findAttachment, listAttachments } from './queries/attachments.ts';
import { loadTest, type StoredPhoto } from './queries/tests.ts';
import { Refusal } from './refusal.ts';

/** Pixels on the longer side: 300 to the inch at half the width of the page. */
const LONGEST = 1000;

/**
 * A picture of a test as its report prints it; one that was measured with what counts as removed marked.
 * @throws Refusal when the test has no such picture; InputError when it cannot be decoded
 */
export async function reportPicture(notebook: OpenNotebook, testId: string, sha256: string): Promise<ReportPicture> {
  const { store } = notebook;
  const line = listAttachments(store, 'test', testId).find((candidate) => candidate.sha256 === sha256);
  const bytes = store.attachment(sha256);
  if (!line || !bytes) throw new Refusal('conflict', `The picture ${findAttachment(store, sha256)?.name ?? ''} does not belong to that test any more; choose the pictures again.`);
  const photos = photosInCells(notebook, testId).filter((photo) => photo.sha256 === sha256);
  const picture = await decodePicture(bytes, photos.length > 0 ? MEASURED_SIZE : LONGEST);
  const shown = photos.reduce((drawn, photo) => marked(notebook, drawn, photo), picture);
  const measured = photos.map((photo) => areaText(notebook, photo));
  return { name: line.name, caption: [line.caption, ...measured].filter(Boolean).join('; '), sha256, ...(await pictureJpeg(shown, LONGEST)) };
}

function photosInCells({ store }: OpenNotebook, testId: string): StoredPhoto[] {
  const { rows, photos } = loadTest(store, testId);
  const held = new Set(rows.filter(({ voided }) => !voided).flatMap(({ cells }) => Object.values(cells).map(({ value }) => value)));
  return photos.filter(({ photoId }) => held.has(photoId));
}

function marked({ store }: OpenNotebook, picture: DecodedPicture, { planeSha256, reading }: StoredPhoto): DecodedPicture {
  const plane = store.attachment(planeSha256);
  return plane ? drawMask(picture, removedMask(measuredLevels(plane, reading), reading), boundsOf(reading.region)) : picture;
}

function areaText(notebook: OpenNotebook, { planeSha256, reading, name }: StoredPhoto): string {
  const { area } = notebook.photos.area(planeSha256, reading, name);
  if (!area) return 'measured';
  const { text, intervalText } = formatValue(area.removedPct);
  return `marked as removed: ${text} (${intervalText})`;
}
