import { InputError } from '../../shared-lib/calculation/input-error.ts';
import { spectrumFromNumbers } from '../../shared-lib/colour/spectrum-from-numbers.ts';
import { spectrumInWords } from '../../shared-lib/colour/spectrum-text.ts';
import { fractionsOf, type Spectrum } from '../../shared-lib/colour/spectrum.ts';
import { wavelengthsOf } from '../../shared-lib/colour/spectral-grid.ts';
import type { SpectraReading } from '../../shared-lib/notebook/colour-entries.ts';
import type { SpectraPreview } from '../../shared-lib/notebook/colour-views.ts';
import { readCgats } from './cgats.ts';
import { readCxf } from './cxf.ts';
import { decodeText } from './decode-text.ts';
import type { FoundSpectrum } from './found-spectrum.ts';
import { readSpectraCsv } from './spectra-csv.ts';

/** A spectrum with the name that it has in its file. */
export interface NamedSpectrum {
  name: string;
  spectrum: Spectrum;
}

const PREVIEW_LINES = 12;
const PREVIEW_LINE_LENGTH = 200;
const MOST_SPECTRA = 1000;

/**
 * Reads a file of spectra as far as `given` says how, finds out the rest, and shows both for a person to confirm.
 * @throws InputError with field `reading.KEY` for what the file does not tell, and with field `bytes` for a file that cannot be read.
 */
export function previewSpectra(bytes: Uint8Array, given: Partial<SpectraReading>): SpectraPreview {
  const text = decodeText(bytes);
  const { reading, spectra, notes } = read(text, given);
  return {
    lines: text.split(/\r\n|\r|\n/, PREVIEW_LINES).map((line) => line.slice(0, PREVIEW_LINE_LENGTH)),
    reading,
    spectra: spectra.map(({ name, spectrum }) => {
      const percent = fractionsOf(spectrum).map((value) => 100 * value);
      return { name, words: spectrumInWords(spectrum), wavelengthsNm: wavelengthsOf(spectrum), percent, warning: Math.max(...percent) > 100 ? 'above 100 %: fluorescence?' : '' };
    }),
    notes,
  };
}

/**
 * The spectra that a confirmed `reading` describes, in the order of the file.
 * @throws InputError as `previewSpectra`
 */
export function readSpectra(bytes: Uint8Array, reading: SpectraReading): NamedSpectrum[] {
  return read(decodeText(bytes), reading).spectra;
}

function read(text: string, given: Partial<SpectraReading>): { reading: SpectraReading; spectra: NamedSpectrum[]; notes: string[] } {
  const format = given.format ?? formatOf(text);
  const { reading: how, found, notes } = foundIn(text, format, given);
  if (found.length > MOST_SPECTRA) throw new InputError('bytes', found.length, `The file holds ${found.length} spectra; at most ${MOST_SPECTRA} are read.`);
  const fromNm = given.fromNm ?? null;
  const stepNm = given.stepNm ?? null;
  const scale = given.scale ?? scaleOf(found);
  const spectra = found.map((one) => ({ name: one.name.slice(0, 200), spectrum: held(one, { fromNm, stepNm, scale }) }));
  return { reading: { format, ...how, fromNm, stepNm, scale }, spectra, notes };
}

function formatOf(text: string): SpectraReading['format'] {
  const start = text.trimStart().replace(/^\uFEFF/, '');
  if (start.startsWith('<')) return 'cxf';
  return /^BEGIN_DATA_FORMAT/m.test(text) ? 'cgats' : 'csv';
}

function foundIn(text: string, format: SpectraReading['format'], given: Partial<SpectraReading>) {
  const fixed = { delimiter: '', decimal: '.' as const, layout: 'rows' as const };
  if (format === 'cgats') return { reading: fixed, found: readCgats(text), notes: [] };
  if (format === 'cxf') return { reading: fixed, found: readCxf(text), notes: [] };
  return readSpectraCsv(text, given);
}

/** Spectra of one file were measured together: the brightest tells the scale of all. */
function scaleOf(found: readonly FoundSpectrum[]): SpectraReading['scale'] {
  const stated = found.find(({ frame }) => frame.scale !== undefined)?.frame.scale;
  if (stated) return stated;
  const highest = found.reduce((most, { values }) => values.reduce((above, value) => Math.max(above, value), most), -Infinity);
  if (highest > 1 && highest <= 2) {
    throw new InputError('reading.scale', highest, `The highest reading of the file is ${highest}: ${highest} % of a black, or ${Number((100 * highest).toFixed(1))} % of a print that fluoresces? Say whether it is in percent or 0 to 1.`);
  }
  return highest > 2 ? 'percent' : 'fraction';
}

function held({ name, values, frame }: FoundSpectrum, said: Pick<SpectraReading, 'fromNm' | 'stepNm' | 'scale'>): Spectrum {
  const missing = frame.wavelengthsNm === null && frame.fromNm === undefined;
  if (missing && (said.fromNm === null || said.stepNm === null)) {
    throw new InputError(said.fromNm === null ? 'reading.fromNm' : 'reading.stepNm', null, `${name} has ${values.length} readings and no wavelengths: say where they begin and by which step they go on.`);
  }
  try {
    return spectrumFromNumbers(values, { ...frame, scale: said.scale, ...(missing ? { fromNm: said.fromNm!, stepNm: said.stepNm! } : {}) }, 'bytes');
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    throw new InputError(missing && error.field.endsWith('wavelengths') ? 'reading.fromNm' : 'bytes', error.value, `${name}: ${error.message}`);
  }
}
