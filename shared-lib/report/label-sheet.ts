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
  notebook: string;
}

/** Between the parts of what the code on a label holds; the first of them is the sample's code. */
const BETWEEN = ' | ';
/** What a search takes. */
const MOST_CHARACTERS = 200;

/** What the QR code of a label holds: the sample's code, then as much of the rest as there is room for. */
export function scanText({ code, product, job, roll, position, notebook }: SampleLabel): string {
  const parts = [product, job && `job ${job}`, roll, position, notebook].filter(Boolean).map((part) => part.replaceAll('|', '/'));
  return parts.reduce((text, part) => ((text + BETWEEN + part).length <= MOST_CHARACTERS ? text + BETWEEN + part : text), code);
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
