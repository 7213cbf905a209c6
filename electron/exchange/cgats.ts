import { InputError } from '../../shared-lib/calculation/input-error.ts';
import { wavelengthIn, type FoundSpectrum } from './found-spectrum.ts';

/** A word of the file, with its line from 1. */
interface Word {
  text: string;
  line: number;
}

/**
 * The spectra of a CGATS.17 text file (ISO 28178): records between BEGIN_DATA and END_DATA, their fields named between
 * BEGIN_DATA_FORMAT and END_DATA_FORMAT. A band is a field that names its wavelength (SPECTRAL_NM400), or a pair of fields
 * SPECTRAL_NM and SPECTRAL_PCT or SPECTRAL_DEC. Everything else in the records is left out.
 * @throws InputError (`bytes`) naming the line, for a file that breaks off, records that do not fit, readings without a
 *   wavelength, and a file without spectra.
 */
export function readCgats(text: string): FoundSpectrum[] {
  const words = wordsOf(text);
  const found: FoundSpectrum[] = [];
  let fields: string[] = [];
  let sets: number | null = null;
  for (let index = 0; index < words.length; index++) {
    const { text: word, line } = words[index]!;
    if (word === 'BEGIN_DATA_FORMAT') {
      const end = endOf(words, index, 'END_DATA_FORMAT', line);
      fields = words.slice(index + 1, end).map(({ text: name }) => name);
      index = end;
    } else if (word === 'NUMBER_OF_SETS') {
      sets = Number(words[index + 1]?.text);
    } else if (word === 'BEGIN_DATA') {
      const end = endOf(words, index, 'END_DATA', line);
      for (const one of records(words.slice(index + 1, end), fields, sets, line)) found.push(one);
      index = end;
    }
  }
  if (found.length === 0) throw new InputError('bytes', null, 'The file has no spectra: none of its data fields names a wavelength, such as SPECTRAL_NM400.');
  return found;
}

/** Words parted by blanks; those in quotation marks stay whole; what follows # is a comment. */
function wordsOf(text: string): Word[] {
  return text.split(/\r\n|\r|\n/).flatMap((content, index) =>
    [...content.matchAll(/"([^"]*)"|#.*|(\S+)/g)].flatMap(([, quoted, plain]) => (quoted === undefined && plain === undefined ? [] : [{ text: (quoted ?? plain)!, line: index + 1 }])),
  );
}

function endOf(words: Word[], from: number, keyword: string, line: number): number {
  const end = words.findIndex(({ text }, index) => index > from && text === keyword);
  if (end === -1) throw new InputError('bytes', line, `Line ${line}: what begins here is not closed by ${keyword}; the file breaks off.`);
  return end;
}

function records(words: Word[], fields: string[], sets: number | null, line: number): FoundSpectrum[] {
  if (fields.length === 0) throw new InputError('bytes', line, `Line ${line}: data without a data format before them.`);
  if (words.length % fields.length !== 0) {
    throw new InputError('bytes', words.length, `Line ${line}: the data have ${words.length} values, which do not divide into records of ${fields.length} fields; some are missing or there are too many.`);
  }
  const count = words.length / fields.length;
  if (sets !== null && Number.isFinite(sets) && sets !== count) throw new InputError('bytes', count, `Line ${line}: the file says NUMBER_OF_SETS ${sets} and holds ${count}.`);
  const upper = fields.map((field) => field.toUpperCase());
  const alone = upper.findIndex((field, index) => isReading(field) && upper[index - 1] !== 'SPECTRAL_NM');
  if (alone !== -1) throw new InputError('bytes', fields[alone], `Line ${line}: the data field ${fields[alone]} must follow SPECTRAL_NM, which says its wavelength.`);
  return Array.from({ length: count }, (_, record) => {
    const cells = words.slice(record * fields.length, (record + 1) * fields.length);
    const bands = bandsOf(upper, cells);
    if (bands.length === 0) return [];
    const name = nameOf(upper, cells) ?? `record ${record + 1}`;
    const scale = upper.includes('SPECTRAL_PCT') ? 'percent' : upper.includes('SPECTRAL_DEC') ? 'fraction' : undefined;
    return [{ name, values: bands.map(({ value }) => value), frame: { wavelengthsNm: bands.map(({ nm }) => nm), ...(scale ? { scale } : {}) } } satisfies FoundSpectrum];
  }).flat();
}

function bandsOf(fields: string[], cells: Word[]): { nm: number; value: number }[] {
  return fields.flatMap((field, index) => {
    if (isReading(field)) return [{ nm: numberIn(cells[index - 1]!), value: numberIn(cells[index]!) }];
    const nm = /NM|SPECTRAL|SPEC|^R/.test(field) ? wavelengthIn(field) : null;
    return nm === null ? [] : [{ nm, value: numberIn(cells[index]!) }];
  });
}

/** A reading whose wavelength stands in the field before it. */
function isReading(field: string): boolean {
  return field === 'SPECTRAL_PCT' || field === 'SPECTRAL_DEC';
}

function nameOf(fields: string[], cells: Word[]): string | undefined {
  const at = ['SAMPLE_NAME', 'SAMPLENAME', 'SAMPLE_ID', 'SAMPLEID'].map((name) => fields.indexOf(name)).find((index) => index !== -1);
  return at === undefined ? undefined : cells[at]!.text;
}

function numberIn({ text, line }: Word): number {
  const value = Number(text.replace(',', '.'));
  if (text.trim() === '' || !Number.isFinite(value)) throw new InputError('bytes', text.slice(0, 40), `Line ${line}: “${text.slice(0, 40)}” is no number; a spectrum needs one there.`);
  return value;
}
