import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { previewTraceCsv, readTraceCsv } from '../../../electron/exchange/trace-csv.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import type { TraceReading } from '../../../shared-lib/notebook/entry.ts';

const utf8 = (text: string) => new TextEncoder().encode(text);
const preview = (text: string, reading: Partial<TraceReading> = {}) => previewTraceCsv('trace.csv', utf8(text), reading);
const read = (text: string, reading: Partial<TraceReading> = {}) => {
  const bytes = utf8(text);
  return readTraceCsv(bytes, previewTraceCsv('trace.csv', bytes, reading).reading);
};

function problem(act: () => unknown): InputError {
  try {
    act();
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error('expected to be refused');
}

const PLAIN = 'Extension (mm),Load (N)\n0.0,0.5\n0.5,2.1\n1.0,2.2\n1.5,2.15\n';

describe('a plain file', () => {
  test('is read with its units, header and columns', () => {
    const shown = preview(PLAIN);
    expect(shown.reading).toEqual({
      delimiter: ',', decimal: '.', headerLines: 1, displacementColumn: 0, displacementUnit: 'mm', forceColumn: 1, forceUnit: 'N', block: 0,
    });
    expect(shown.columns).toEqual(['Extension (mm)', 'Load (N)']);
    expect(shown.points).toBe(4);
    expect(shown.displacementMm).toEqual({ low: 0, high: 1.5 });
    expect(shown.forceN).toEqual({ low: 0.5, high: 2.2 });
    expect(shown.outline).toEqual([[0, 0.5], [0.5, 2.1], [1, 2.2], [1.5, 2.15]]);
    expect(shown.lines[0]).toBe('Extension (mm),Load (N)');
    expect(shown.blocks).toEqual([]);
    expect(shown.notes).toEqual([]);
    expect([...read(PLAIN).forceN]).toEqual([0.5, 2.1, 2.2, 2.15]);
  });

  test('with carriage returns, trailing blank lines and a footer is read, the footer noted', () => {
    const trace = read('Extension (mm);Load (N)\r\n0;1\r\n1;2\r\n;\r\n\r\nEnd of test\r\n');
    expect([...trace.displacementMm]).toEqual([0, 1]);
    expect(trace.notes).toEqual(['Left out the text after the data, from line 6 on.']);
  });
});

describe('headers', () => {
  test.each([
    ['names and units in two lines', 'Weg;Kraft\nmm;N\n0,0;1,5\n0,5;2,5\n', { decimal: ',', headerLines: 2, forceColumn: 1, displacementUnit: 'mm', forceUnit: 'N' }],
    ['units in brackets below the names', 'Time;Displacement;Force\n[s];[cm];[mN]\n0.1;0.01;100\n0.2;0.02;200\n', { displacementColumn: 1, forceColumn: 2, displacementUnit: 'cm', forceUnit: 'mN' }],
    ['force before displacement', 'Standardkraft in N\tTraversenweg in mm\n1.5\t0.0\n2.5\t0.5\n', { forceColumn: 0, displacementColumn: 1, delimiter: '\t' }],
    ['pounds and inches', 'Crosshead (in),Load (lbf)\n0,0.10\n0.1,0.50\n', { displacementUnit: 'in', forceUnit: 'lbf' }],
    ['units behind a slash', 'Position/mm;Force/gf\n0.0;10.5\n0.5;20.5\n', { displacementUnit: 'mm', forceUnit: 'gf' }],
    ['units alone', 'mm,kN\n0.0,0.0015\n0.5,0.0025\n', { displacementColumn: 0, forceColumn: 1, forceUnit: 'kN' }],
    ['lines about the specimen above', 'Method;T-peel\nWidth;15;mm\nLimits;0;100\nDate;12.03.2026\n\nExtension (mm);Load (N)\n0.0;1.5\n0.5;2.5\n', { headerLines: 6 }],
    ['a line that names the delimiter', 'sep=;\nExtension (mm);Load (N)\n0,0;1,5\n0,5;2,5\n', { delimiter: ';', headerLines: 2, decimal: ',' }],
  ])('%s', (_, text, expected) => {
    expect(preview(text).reading).toMatchObject(expected);
  });

  test('units are converted exactly', () => {
    const trace = read('Crosshead (in),Load (lbf)\n0,1\n1,2\n');
    expect([...trace.displacementMm]).toEqual([0, 25.4]);
    // 1 lbf = 4.4482216152605 N by definition (pound 0.45359237 kg, g0 9.80665 m/s²).
    expect([...trace.forceN]).toEqual([4.4482216152605, 8.896443230521]);
    expect(read('Extension (mm),Load (gf)\n0,1000\n1,2000\n').forceN[0]).toBeCloseTo(9.80665, 12);
  });

  test('two columns without names: the one that rises is the displacement', () => {
    expect(preview('2.1,0.0\n2.3,0.5\n2.2,1.0\n', { displacementUnit: 'mm', forceUnit: 'N' }).reading).toMatchObject({ displacementColumn: 1, forceColumn: 0, headerLines: 0 });
  });
});

describe('what the file does not tell is asked', () => {
  test.each([
    ['a missing force unit', 'Extension (mm),Load\n0.0,1.5\n0.5,2.5\n', 'reading.forceUnit', /line 2.*unit of the force.*N, mN, kN, gf, kgf, lbf/],
    ['an unknown displacement unit', 'Extension (furlong),Load (N)\n0.0,1.5\n0.5,2.5\n', 'reading.displacementUnit', /furlong.*mm, cm, m, in/],
    ['a meganewton', 'Extension (mm),Load (MN)\n0.0,1.5\n0.5,2.5\n', 'reading.forceUnit', /MN/],
    ['two columns that both rise', '0.0,1.5\n0.5,2.5\n', 'reading.displacementColumn', /which column holds the displacement/],
    ['three columns without names', '0.0,1.5,3.5\n0.5,2.5,1.5\n', 'reading.displacementColumn', /column/],
    ['a comma that may split thousands', 'Extension (mm);Load (mN)\n0;1,234\n1;2,345\n', 'reading.decimal', /Line 2: 1,234 can be read in two ways/],
    ['points and commas as decimals', 'Extension (mm);Load (N)\n0.5;1,25\n1.5;2,25\n', 'reading.decimal', /Line 2.*0\.5.*line 2.*1,25/],
    ['no delimiter at all', 'Extension Load\n0.5 1.5\n', 'reading.delimiter', /two numbers/],
  ])('%s', (_, text, field, message) => {
    const refused = problem(() => preview(text));
    expect(refused.field).toBe(field);
    expect(refused.message).toMatch(message);
  });

  test('an answer settles it', () => {
    const text = 'Extension (mm);Load (mN)\n0;1,234\n1;2,345\n';
    const second = (decimal: '.' | ',') => read(text, { decimal }).forceN[1];
    expect(second(',')).toBeCloseTo(2.345e-3, 15);
    expect(second('.')).toBeCloseTo(2.345, 12);
  });
});

describe('thousands and decimals', () => {
  test.each([
    ['1,234.5', '2,345.5', '.', [1234.5, 2345.5]],
    ['1.234,5', '2.345,5', ',', [1234.5, 2345.5]],
    ['1 234,5', '2 345,5', ',', [1234.5, 2345.5]],
    ["1'234.5", "2'345.5", '.', [1234.5, 2345.5]],
    ['1,234,567', '2,234,567', '.', [1234567, 2234567]],
    ['1.5e-1', '2.5E+1', '.', [0.15, 25]],
    ['−0,5', '+0,75', ',', [-0.5, 0.75]],
    ['.5', '1.', '.', [0.5, 1]],
  ])('%s and %s', (first, second, decimal, expected) => {
    const text = `Extension (mm);Load (N)\n0;${first}\n1;${second}\n`;
    expect(preview(text).reading.decimal).toBe(decimal);
    expect([...read(text).forceN]).toEqual(expected);
  });
});

describe('encodings', () => {
  const umlaut = 'Verlängerung (mm);Kraft (N)\n0;1,5\n1;2,5\n';
  const utf16 = (text: string, little: boolean, mark: boolean) => {
    const units = [...(mark ? '\ufeff' : '') + text].map((letter) => letter.charCodeAt(0));
    return Uint8Array.from(units.flatMap((unit) => (little ? [unit & 255, unit >> 8] : [unit >> 8, unit & 255])));
  };
  test.each([
    ['UTF-8', utf8(umlaut)],
    ['UTF-8 with a byte-order mark', utf8('\ufeff' + umlaut)],
    ['UTF-16 little-endian', utf16(umlaut, true, true)],
    ['UTF-16 big-endian', utf16(umlaut, false, true)],
    ['UTF-16 without a mark', utf16(umlaut, true, false)],
    ['Windows-1252', Uint8Array.from([...umlaut].map((letter) => letter.charCodeAt(0)))],
  ])('%s', (_, bytes) => {
    expect(previewTraceCsv('t.csv', bytes, {})).toMatchObject({ columns: ['Verlängerung (mm)', 'Kraft (N)'], points: 2 });
  });
});

describe('files that are refused', () => {
  test.each([
    ['an empty file', new Uint8Array(0), /empty/],
    ['a workbook', Uint8Array.from([0x50, 0x4b, 3, 4, 20, 0]), /workbook.*CSV/],
    ['an old workbook', Uint8Array.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1]), /workbook/],
    ['a PDF', utf8('%PDF-1.7 …'), /PDF/],
    ['other bytes', Uint8Array.from([65, 10, 66, 1, 2, 3]), /Line 2 holds bytes that are no text/],
    ['more than 24 MB', new Uint8Array(24 * 1024 * 1024 + 1).fill(49), /24\.0 MB; at most 24 MB/],
    ['an open quotation mark', utf8('Extension (mm),Load (N)\n0,1\n1,"2\n2,3\n'), /Line 3 opens a quotation mark/],
    ['a missing force', utf8('Extension (mm),Load (N)\n0,1\n1,\n2,3\n'), /^Line 3 has no force/],
    ['a missing first force', utf8('Extension (mm),Load (N)\n0,\n1,2\n2,3\n'), /^Line 2 has no force/],
    ['a missing displacement', utf8('Extension (mm),Load (N)\n0,1\n,2\n2,3\n'), /^Line 3 has no displacement/],
    ['a word among the forces', utf8('Extension (mm),Load (N)\n0,1\n1,over\n2,3\n'), /^Line 3: the force "over" is no number/],
    ['words in the middle', utf8('Extension (mm),Load (N)\n0,1\n---,---\n2,3\n3,3\n'), /^Line 3 holds no displacement and force/],
    ['a way back', utf8('Extension (mm),Load (N)\n0,1\n5,2\n10,2\n9,2\n8,1\n'), /^Line 5: the displacement goes back from 10 to 9 mm/],
    ['one point', utf8('Extension (mm),Load (N)\n0,1\n'), /Line 2: the trace needs at least 2 points/],
  ])('%s', (_, bytes, message) => {
    const refused = problem(() => previewTraceCsv('trace.csv', bytes, {}));
    expect(refused.field).toBe('bytes');
    expect(refused.message).toMatch(message);
  });

  test('a decimal mark that does not fit names the line', () => {
    expect(problem(() => read(PLAIN, { decimal: ',' })).message).toMatch(/^Line 2: the displacement "0\.0" is no number with decimal comma/);
  });

  test('columns and traces that do not exist', () => {
    expect(problem(() => preview(PLAIN, { forceColumn: 7 })).field).toBe('reading.forceColumn');
    expect(problem(() => preview(PLAIN, { forceColumn: 0 })).field).toBe('reading.forceColumn');
    expect(problem(() => preview(PLAIN, { block: 1 })).field).toBe('reading.block');
  });

  test('header lines that end too early name the line that is no data', () => {
    expect(problem(() => preview(PLAIN, { headerLines: 0, displacementColumn: 0, displacementUnit: 'mm', forceColumn: 1, forceUnit: 'N' })).message).toMatch(/^Line 1:/);
  });
});

describe('several traces in a file', () => {
  const headed = 'Specimen 1\nExtension (mm);Load (N)\n0,0;1,5\n0,5;2,5\n1,0;2,0\n\nSpecimen 2\nExtension (mm);Load (N)\n0,0;3,5\n0,5;4,5\n';

  test('with headers between them', () => {
    const shown = preview(headed);
    expect(shown.blocks).toEqual(['1: Specimen 1, from line 3', '2: Specimen 2, from line 9']);
    expect(shown.points).toBe(3);
    expect([...read(headed, { block: 1 }).forceN]).toEqual([3.5, 4.5]);
  });

  test('the reading shown for the first trace, with another trace chosen, reads that one', () => {
    const reading = { ...preview(headed).reading, block: 1 };
    expect([...readTraceCsv(utf8(headed), reading).forceN]).toEqual([3.5, 4.5]);
  });

  test('where the displacement begins again', () => {
    const text = 'Extension (mm),Load (N)\n0,1\n5,2\n10,3\n0.1,4\n5,5\n10,6\n';
    expect(preview(text).blocks).toHaveLength(2);
    expect([...read(text, { block: 1 }).forceN]).toEqual([4, 5, 6]);
  });
});

describe('coarse displacement', () => {
  test('readings at one displacement are kept and spread to the next', () => {
    const trace = read('Extension (mm),Load (N)\n0,1\n0,2\n1,3\n1,4\n1,5\n1,6\n');
    expect([...trace.displacementMm]).toEqual([0, 0.5, 1, 1.25, 1.5, 1.75]);
    expect([...trace.forceN]).toEqual([1, 2, 3, 4, 5, 6]);
    expect(trace.notes[0]).toMatch(/^4 of 6 points share/);
  });
});

describe('any trace', () => {
  const trace = fc.array(fc.tuple(fc.integer({ min: 1, max: 5000 }), fc.integer({ min: -9999, max: 9999 })), { minLength: 3, maxLength: 60 });

  test('comes back as it was written, whatever the delimiter and decimal mark', () => {
    fc.assert(
      fc.property(trace, fc.constantFrom(...(['\t', ';', '|'] as const)), fc.constantFrom(...(['.', ','] as const)), (steps, delimiter, decimal) => {
        let at = 0;
        const points = steps.map(([step, force]) => [(at += step) / 1000, force / 1000] as const);
        const cell = (value: number) => value.toFixed(3).replace('.', decimal);
        const text = ['Extension (mm)' + delimiter + 'Load (N)', ...points.map(([x, y]) => cell(x) + delimiter + cell(y))].join('\n');
        const back = read(text, { decimal });
        expect([...back.displacementMm]).toEqual(points.map(([x]) => x));
        expect([...back.forceN]).toEqual(points.map(([, y]) => y));
      }),
    );
  });

  test('of 200 000 lines is read whole', () => {
    const lines = Array.from({ length: 200_000 }, (_, index) => `${(index / 2000).toFixed(4)},${(2 + Math.sin(index)).toFixed(4)}`);
    const trace = read(['Extension (mm),Load (N)', ...lines].join('\n'));
    expect(trace.forceN.length).toBe(200_000);
    expect(trace.displacementMm[199_999]).toBe(99.9995);
  });
});
