import type { Content } from 'pdfmake/interfaces.js';
import type { ReportPicture } from '../../shared-lib/report/content.ts';
import { contentWidth, size } from './look.ts';

const GAP = 18;
const HIGHEST = 190;

/** Pictures that the person chose, in pairs, each with its name, caption and the beginning of its hash. */
export function picturesPart(pictures: ReportPicture[]): Content[] {
  const width = (contentWidth - GAP) / 2;
  const pairs = Array.from({ length: Math.ceil(pictures.length / 2) }, (_, index) => pictures.slice(2 * index, 2 * index + 2));
  return pairs.map((pair) => ({ unbreakable: true, columns: pair.map((one) => ({ width, stack: [picture(one, width)] })), columnGap: GAP }));
}

function picture({ name, caption, sha256, jpeg }: ReportPicture, width: number): Content {
  return {
    stack: [
      { image: jpeg, fit: [width, HIGHEST] },
      { text: name, fontSize: size.small, bold: true, margin: [0, 2, 0, 0] },
      { text: [caption ? `${caption}. ` : '', `File ${sha256.slice(0, 16)}…`], style: 'quiet' },
    ],
    margin: [0, 12, 0, 0],
  };
}
