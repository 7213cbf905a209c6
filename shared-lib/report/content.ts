import type { Figure } from '../figure/figure.ts';
import type { Flag, SwatchPair, TableRow, TitledTable } from '../calculation/result.ts';
import type { TableColumn } from '../calculation/table-column.ts';
import type { Caution } from '../method/method.ts';
import type { PropertyLine } from '../notebook/views.ts';
import type { VerdictWord } from '../method/property-verdict.ts';

/** A report as data, frozen when it is issued. The PDF and the preview on screen are drawn from it alone. */
export interface ReportContent {
  /** '' until issued. */
  number: string;
  title: string;
  laboratory: string;
  recipient: string;
  remark: string;
  preparedBy: string;
  /** ISO 8601, UTC. */
  preparedAt: string;
  replaces: { number: string; reason: string } | null;
  /** Verdict summary: the properties with a limit; of a test without any its headline properties. */
  summary: { sample: string; product: string; method: string; line: PropertyLine }[];
  overall: VerdictWord;
  sections: ReportSection[];
  /** Raw readings of each test, corrections and voided rows included. */
  appendix: ReadingsTable[];
  /** What went into the lots of a sample, where that was put down. Absent in reports frozen before there was any. */
  genealogy?: SampleGenealogy[];
  /** The notebook's state that the report was made from. */
  record: { entries: number; chainHash: string };
  signatures: { role: string; name: string }[];
}

export interface ReportSection {
  heading: string;
  sample: { code: string; product: string; job: string; roll: string; materials: string[] };
  method: { title: string; standards: string[]; version: string; calculation: string; calculationVersion: string; shows: string };
  testedBy: string;
  /** ISO 8601, UTC. */
  testedAt: string;
  conditions: { label: string; value: string }[];
  lines: PropertyLine[];
  columns: TableColumn[];
  table: TableRow[];
  figures: Figure[];
  /** Absent in reports frozen before there were any, as `swatches`. */
  tables?: TitledTable[];
  swatches?: SwatchPair[];
  /** Absent: none. */
  pictures?: ReportPicture[];
  /** `where` in words, '' where the text names the place. */
  flags: Flag[];
  notes: string[];
  cautions: Caution[];
  sources: string[];
  remark: string;
}

/** A picture of a test, chosen to be printed. */
export interface ReportPicture {
  name: string;
  caption: string;
  /** Of the file in the notebook that it was made from. */
  sha256: string;
  width: number;
  height: number;
  /** As a data address. */
  jpeg: string;
}

/** The lots that a sample is made of, each followed by what went into it. */
export interface SampleGenealogy {
  sample: string;
  /** `doubt`: why it is not to be relied on, as the rest of a sentence that begins with its name, or ''. */
  lots: { name: string; kind: string; depth: number; again: boolean; doubt: string }[];
}

export interface ReadingsTable {
  heading: string;
  columns: { title: string; unit: string }[];
  rows: { cells: string[]; voided: string; remark: string }[];
  corrections: { where: string; before: string; after: string; reason: string; by: string; at: string }[];
}
