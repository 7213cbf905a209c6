import Papa from 'papaparse';
import { readTraceCsv } from '../../electron/exchange/trace-csv.ts';
import type { TraceReading } from '../../shared-lib/notebook/entry.ts';
import { compare, milliseconds } from './compare.ts';
import { longTrace } from './long-trace.ts';

const { displacementMm, forceN } = longTrace(200_000);
const lines = Array.from(forceN, (force, index) => `${(index / 1000).toFixed(3)};${displacementMm[index]!.toFixed(4)};${force.toFixed(4)}`);
const text = `${['Time (s);Extension (mm);Force (N)', ...lines].join('\r\n').replaceAll('.', ',')}\r\n`;
const bytes = Buffer.from(text, 'utf8');
const reading: TraceReading = {
  delimiter: ';',
  decimal: ',',
  headerLines: 1,
  displacementColumn: 1,
  displacementUnit: 'mm',
  forceColumn: 2,
  forceUnit: 'N',
  block: 0,
};

await compare({
  what: 'a CSV trace of 200 000 rows: decoded, split, checked, read as numbers',
  peer: 'papaparse alone, which gives rows of text',
  target: { atMost: 3 },
  unit: 'ms',
  runs: 11,
  ours: milliseconds(() => readTraceCsv(bytes, reading)),
  theirs: milliseconds(() => Papa.parse<string[]>(text, { delimiter: ';' })),
});
