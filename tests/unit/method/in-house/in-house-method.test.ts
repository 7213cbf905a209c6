import { describe, expect, it } from 'vitest';
import { checkWrittenMethod } from '../../../../shared-lib/method/in-house/check-written-method.ts';
import { differencesInWords } from '../../../../shared-lib/method/in-house/differences-in-words.ts';
import { inHouseMethod } from '../../../../shared-lib/method/in-house/in-house-method.ts';
import { keyFromLabel } from '../../../../shared-lib/method/in-house/key-from-label.ts';
import { areMeasuringAlike } from '../../../../shared-lib/method/in-house/measuring-alike.ts';
import { readMethodFile, writeMethodFile } from '../../../../shared-lib/method/in-house/method-file.ts';
import { writtenMethodSchema, type WrittenMethod } from '../../../../shared-lib/method/in-house/written-method.ts';
import { instrumentField } from '../../../../shared-lib/method/instrument-field.ts';
import type { BenchReadings, CellValue, Field } from '../../../../shared-lib/method/method.ts';
import { thumbTwistRub } from './written-methods.ts';

const method = inHouseMethod('m1', '1', thumbTwistRub);
const bench = (rows: Record<string, CellValue>[], conditions: Record<string, CellValue> = {}): BenchReadings => ({
  conditions: { load: 10, twists: 5, cloth: 'white cotton', temperature: 23, ...conditions },
  rows: rows.map((values, index) => ({ row: `r${index + 1}`, values })),
  limits: [],
  traces: {},
});
const graded = (...grades: string[]) => grades.map((grade, index) => ({ grade, twistsToSmear: 10 + index, twistsToSmear_end: 'reached' }));

describe('a written method', () => {
  it('is whole', () => {
    expect(writtenMethodSchema.parse(thumbTwistRub)).toEqual(thumbTwistRub);
    checkWrittenMethod(thumbTwistRub);
  });

  it('becomes a bench sheet: settings stand there, a grade is picked by its digit', () => {
    expect(method.conditions.map((field) => ('default' in field ? field.default : undefined))).toEqual([10, 5, 'white cotton', undefined]);
    const [grade, twists, end] = method.readings.fields as [Field, Field, Field];
    expect(grade).toMatchObject({ kind: 'choice', required: true });
    expect(grade.kind === 'choice' && grade.choices[4]).toEqual({ value: '4', label: '4 cloth marked, print whole', shortcut: '4' });
    expect(twists).toMatchObject({ kind: 'number', min: 0, required: true });
    expect(end).toMatchObject({ kind: 'choice', default: 'reached' });
    expect(method.readings).toMatchObject({ startRows: 6, minRows: 1, rowName: 'place' });
    expect(method.properties[0]).toMatchObject({ kind: 'grade', scale: { low: 0, high: 5 }, unit: '' });
    expect(method.limits).toEqual([{ property: 'grade', lower: 4, upper: null, source: 'shop rule' }]);
    expect(method.help.how.at(-1)).toMatch(/^Grade: 0 bare film; .*5 nothing to be seen\.$/);
  });

  it('works its results out of the rows that were read, blank ones left out', () => {
    const { results, flags } = method.evaluate(bench([...graded('5', '4'), {}, ...graded('4', '4', '3', '5')]));
    expect(results.grade).toMatchObject({ value: 4, low: 3, high: 5, level: null, n: 6 });
    expect(results.share!.value).toBeCloseTo((100 * 5) / 6, 10);
    // 10, 10, 11, 11, 12, 13
    expect(results.twists).toMatchObject({ value: 11, n: 6 });
    expect(flags).toEqual([]);
  });

  it('flags what departs from what is written, beyond its tolerance', () => {
    const { flags } = method.evaluate(bench(graded('5', '4', '4', '4', '3', '5'), { load: 10.5, twists: 6, cloth: 'paper' }));
    expect(flags.map(({ where, text }) => [where, text])).toEqual([
      ['conditions.twists', 'Twists was 6; the method has 5.'],
      ['conditions.cloth', 'Cloth was paper; the method has white cotton.'],
    ]);
  });

  it('names the cell at fault, past blank rows', () => {
    const rows: Record<string, CellValue>[] = [{}, { grade: '5', twistsToSmear: 2.5 }];
    expect(() => method.evaluate(bench(rows))).toThrow(expect.objectContaining({ field: 'rows[1].twistsToSmear' }));
  });
});

describe('what cannot be a method', () => {
  const changed = (change: (written: WrittenMethod) => void): WrittenMethod => {
    const copy = structuredClone(thumbTwistRub);
    change(copy);
    return copy;
  };
  const cases: [string, string, (written: WrittenMethod) => void][] = [
    ['two settings of one name', 'settings[1].label', (w) => (w.settings[1]!.label = 'load')],
    ['a reading called like a setting', 'readings[1].key', (w) => (w.readings[1]!.key = 'load')],
    ['a grade that stands twice', 'readings[0].grades[1].grade', (w) => (w.readings[0] = { kind: 'grade', key: 'grade', label: 'Grade', grades: [{ grade: 0, meaning: 'a' }, { grade: 0, meaning: 'b' }] })],
    ['a result of no reading', 'properties[0].reading', (w) => (w.properties[0]!.reading = 'gone')],
    ['a mean of grades', 'properties[0].statistic', (w) => (w.properties[0]!.statistic = 'mean')],
    ['a share without what passes', 'properties[2].passes', (w) => (w.properties[2]!.passes = null)],
    ['a change against nothing', 'properties[1].against', (w) => (w.properties[1]!.statistic = 'change-pct')],
    ['a limit upside down', 'properties[0].limit.lower', (w) => (w.properties[0]!.limit = { lower: 4, upper: 3, source: '' })],
    ['a limit off the scale of its grades', 'properties[0].limit.lower', (w) => (w.properties[0]!.limit = { lower: 6, upper: null, source: '' })],
    ['what passes off the scale', 'properties[2].passes.lower', (w) => (w.properties[2]!.passes = { lower: 7, upper: null })],
    ['a share of more than all', 'properties[2].limit.upper', (w) => (w.properties[2]!.limit = { lower: null, upper: 150, source: '' })],
    ['a limit without ends', 'properties[0].limit', (w) => (w.properties[0]!.limit = { lower: null, upper: null, source: '' })],
  ];
  it.each(cases)('%s is refused', (_what, field, change) => {
    expect(() => checkWrittenMethod(changed(change))).toThrow(expect.objectContaining({ field }));
  });
});

describe('two versions', () => {
  const later = structuredClone(thumbTwistRub);
  later.settings[1] = { kind: 'number', key: 'twists', label: 'Twists', unit: '', value: 10, tolerance: null };
  later.how = ['Lay the film on glass.', 'Press the cloth with the weight, twist slowly.', 'Grade what is missing.'];
  later.properties[0]!.limit = null;

  it('differ in words', () => {
    expect(differencesInWords(thumbTwistRub, later)).toEqual([
      'Twists: 5 → 10.',
      'Grade of rub, limit: at least 4 → nothing.',
      'Grade of rub, source of the limit: shop rule → nothing.',
      'How it is done: took out ‘Press the cloth with the weight, twist.’',
      'How it is done: added ‘Press the cloth with the weight, twist slowly.’',
    ]);
    expect(differencesInWords(thumbTwistRub, structuredClone(thumbTwistRub))).toEqual([]);
  });

  it('say readings by what they are called, and a new name of one once', () => {
    const before = structuredClone(thumbTwistRub);
    before.readings.push({ kind: 'number', key: 'load2', label: 'Load felt', unit: 'N', lowest: 0, highest: null, orMore: false });
    const after = structuredClone(before);
    after.readings[1]!.label = 'Twists until it smears';
    after.properties[1] = { ...after.properties[1]!, reading: 'load2', statistic: 'mean' };
    expect(differencesInWords(before, after)).toEqual([
      'Readings: the name: Twists to smear → Twists until it smears.',
      'Twists until it smears, worked out as: median of Twists to smear → mean of Load felt.',
    ]);
    const renamed = structuredClone(before);
    renamed.readings[1]!.label = 'Twists until it smears';
    expect(differencesInWords(before, renamed)).toEqual(['Readings: the name: Twists to smear → Twists until it smears.']);
  });

  it('share a measurement study only while they measure alike', () => {
    const reworded = { ...structuredClone(thumbTwistRub), shows: 'Something else.', replicates: 3 };
    expect(areMeasuringAlike(thumbTwistRub, reworded, 'grade')).toBe(true);
    expect(areMeasuringAlike(thumbTwistRub, later, 'grade')).toBe(false);
  });

  it('of which one asks for its instrument measure alike, and differ in a word', () => {
    const named = structuredClone(thumbTwistRub);
    named.settings.push({ kind: 'instrument', key: 'gauge', label: 'Force gauge' });
    checkWrittenMethod(named);
    expect(areMeasuringAlike(thumbTwistRub, named, 'grade')).toBe(true);
    expect(differencesInWords(thumbTwistRub, named)).toEqual(['Settings: added Force gauge.']);
    expect(inHouseMethod('m1', '2', named).conditions.at(-1)).toEqual({ ...instrumentField, key: 'gauge', label: 'Force gauge' });
    const held = structuredClone(thumbTwistRub);
    held.settings.push({ kind: 'text', key: 'gauge', label: 'Force gauge', value: 'FG-1' });
    expect(differencesInWords(held, named)).toEqual(['Force gauge: FG-1 → an instrument, named each time.']);
  });
});

describe('a method file', () => {
  const from = { methodId: 'm1', version: '2', laboratory: 'Quillmere Flexibles', notebook: 'Film', writtenBy: 'Imke Rasmund', writtenOn: '2026-03-02' };
  const text = writeMethodFile({ method: thumbTwistRub, from });

  it('comes back exactly, and is written the same again', () => {
    const read = readMethodFile(text);
    expect(read).toEqual({ method: thumbTwistRub, from });
    expect(writeMethodFile(read)).toBe(text);
  });

  const tampered = (change: (content: Record<string, unknown>) => void): string => {
    const content = JSON.parse(text) as Record<string, unknown>;
    change(content);
    return JSON.stringify(content);
  };
  it.each([
    ['no JSON', text.slice(0, 200), /not JSON, or only a part/],
    ['another file', '[1, 2]', /not a method file/],
    ['a file that is none of ours', '{"title":"x"}', /does not say that it is one/],
    ['a newer format', tampered((content) => (content.formatVersion = 2)), /newer version of Laydown/],
    ['an unknown field', tampered((content) => (content.script = 'alert(1)')), /not known here: script/],
    ['a prototype', text.replace('"method": {', '"method": { "__proto__": { "polluted": true },'), /not known here|does not hold/],
    ['a field too long', tampered((content) => ((content.method as WrittenMethod).title = 'x'.repeat(5000))), /at most 120 characters/],
    ['too many rows', tampered((content) => ((content.method as WrittenMethod).replicates = 1e9)), /at most 100/],
    ['a key with a script', tampered((content) => ((content.method as WrittenMethod).readings[0]!.key = '<b>')), /A key is letters/],
    ['a result of nothing', tampered((content) => ((content.method as WrittenMethod).properties[0]!.reading = 'gone')), /not on the sheet/],
    ['something huge', ' '.repeat(1_000_001), /larger than 1 MB/],
    ['something deep', '['.repeat(200_000), /not JSON, or only a part/],
  ])('refuses %s in words', (_what, content, words) => {
    expect(() => readMethodFile(content)).toThrow(words);
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
  });
});

describe('a key', () => {
  it.each([
    ['Tape pull, N', [], 'tapePullN'],
    ['Séché à l’air', [], 'secheALAir'],
    ['强度', [], 'reading'],
    ['Load', ['load'], 'load2'],
    ['2nd pass', [], 'reading'],
  ])('for %s', (label, taken, key) => {
    expect(keyFromLabel(label, taken, 'reading')).toBe(key);
  });
});
