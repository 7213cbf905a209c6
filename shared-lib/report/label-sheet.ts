/** Sizes of label that can be printed: one to a page for a label printer, or sheets of A4. */
export const labelSizes = ['roll-62x29', 'sheet-24', 'sheet-8'] as const;
export type LabelSize = (typeof labelSizes)[number];

/** What stands on the label of a sample. */
export interface SampleLabel {
  code: string;
  product: string;
  job: string;
  roll: string;
  /** '350 mm across, 400 m along' */
  position: string;
  /** ISO 8601 date until which it is kept; '' where that is not said. */
  retainedUntil: string;
  notebook: string;
}

/** Between the parts of what the code on a label holds; the first of them is the sample's code. */
const BETWEEN = ' | ';
/** Bytes that a QR code of version 4 holds at level M (ISO/IEC 18004, table 7): its 33 modules stay coarse on the smallest label. */
export const MOST_BYTES = 62;

/** What the QR code of a label holds: the sample's code, then of product, job and roll what there is room for. */
export function scanText({ code, product, job, roll }: Pick<SampleLabel, 'code' | 'product' | 'job' | 'roll'>): string {
  const parts = [product, job && `job ${job}`, roll].filter(Boolean).map((part) => part.replaceAll('|', '/'));
  return parts.reduce((text, part) => (bytesIn(text + BETWEEN + part) <= MOST_BYTES ? text + BETWEEN + part : text), code);
}

/** In UTF-8. */
export function bytesIn(text: string): number {
  return encodeURIComponent(text).replace(/%../g, '_').length;
}

/** What was scanned from a label: the code that its sample had then, and the rest. What was typed otherwise is all of it `code`, without a rest. */
export function readLabel(typed: string): { code: string; rest: string[] } {
  const [code, ...rest] = typed.trim().split(BETWEEN).map((part) => part.trim());
  return { code: code!, rest };
}

/** '350 mm across, 400 m along', or ''. */
export function positionText(acrossMm: number | null, alongM: number | null): string {
  return [...(acrossMm === null ? [] : [`${acrossMm} mm across`]), ...(alongM === null ? [] : [`${alongM} m along`])].join(', ');
}
