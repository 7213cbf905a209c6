import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { draftChanges, draftPlace, draftWords } from '../../../renderer/state/draft-words.ts';
import { fitsAs } from '../../../renderer/state/fits-as.ts';
import { placeHash } from '../../../renderer/state/place.ts';
import { blankReading, writtenLinesSchema } from '../../../renderer/state/written-lines.ts';

const renderer = path.resolve(import.meta.dirname, '../../../renderer');

/** Forms that keep nothing: a search, a way of looking, a notebook that is not there yet. */
const unkept = ['notebook.create', 'samples.labels', 'samples.search', 'record.filter', 'trialSet.look', 'trialSet.plan', 'trialSet.equivalence'];

/** Names that the screens give to what they keep: where a form is asked for, and where the name of an editor is put together. */
function namesInUse(): string[] {
  const texts = readdirSync(renderer, { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.(svelte|ts)$/.test(file))
    .map((file) => readFileSync(path.join(renderer, file), 'utf8'));
  const places = texts.flatMap((text) => [...text.matchAll(/(?:app\.begun\.form|lotForm|materialForm)\([^=]*?(?:\(\) =>|\);)|const (?:kept|draftName|lineName|name) = [^;]*`;|\$derived\(`[^;]*`\);/g)].map(([place]) => place));
  return places.flatMap((place) => [...place.matchAll(/[`']([a-z][A-Za-z]*\.[a-zA-Z]+)[ `']/g)].map(([, name]) => name!));
}

describe('where a kept draft stands', () => {
  it('is known of every form and editor that keeps what is typed', () => {
    const names = namesInUse();
    expect(names).toEqual(expect.arrayContaining(['sample.change', 'lot.describe', 'approvalLine.fill', 'method.write', 'habit.describe', 'trial.change', 'limits.set', 'planLine.change']));
    expect(names.filter((name) => draftPlace(`${name} x`) === null && !unkept.includes(name))).toEqual([]);
  });

  it('is said in words and as an address', () => {
    const at = (name: string) => `${draftWords(name)}: ${placeHash(draftPlace(name)!)}`;
    expect(at('method.write ')).toBe('a written method: #/write-method');
    expect(at('method.write m1')).toBe('a written method: #/write-method/m1');
    expect(at('trial.change set1 trial1')).toBe('a change of a trial: #/trials/set1');
    expect(at('limits.set t1')).toBe('the limits of a test: #/bench-sheet/t1');
    expect(at('report.issue ')).toBe('a new report: #/new-report');
    expect(at('planLine.change p1 gloss (2)')).toBe('a line of a plan: #/make-plan/p1');
    expect(draftPlace('sieve.add')).toBeNull();
    expect([draftChanges('trial.change s t'), draftChanges('trial.add s')]).toEqual([true, false]);
  });
});

describe('what was kept by another version', () => {
  it.each<[unknown, unknown, boolean]>([
    ['a', '', true],
    [1, '', false],
    [null, '', false],
    [{ name: 'a' }, { name: '' }, true],
    [{}, { name: '' }, false],
    [[], { name: '' }, false],
    [['t1'], [], true],
    ['t1', [], false],
    [[{ sha256: 'a' }], [{ sha256: '' }], true],
    [[{ sha: 'a' }], [{ sha256: '' }], false],
  ])('%j stands where %j stood: %s', (value, model, fits) => {
    expect(fitsAs(value, model)).toBe(fits);
  });

  it('fits as a written method, or does not', () => {
    const lines = { title: 'Rub', shortTitle: '', shows: '', how: '', spoils: '', standards: '', cautions: [{ hazard: 'solvent', text: '' }], settings: [], rowName: '', replicates: 'x', readings: [blankReading('first')], properties: [] };
    expect(writtenLinesSchema.safeParse(lines).success).toBe(true);
    expect(writtenLinesSchema.safeParse({ ...lines, readings: [{ id: 'first' }] }).success).toBe(false);
    expect(writtenLinesSchema.safeParse({ ...lines, further: '' }).success).toBe(false);
  });
});
