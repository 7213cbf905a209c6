import { describe, expect, it } from 'vitest';
import type { PhotoReading } from '../../../shared-lib/notebook/attachment-entries.ts';
import { madePicture, plain } from '../../reference/picture/made-picture.ts';
import { pictureFile, pngOfSize } from '../picture/picture-file.ts';
import { testBench } from './open-application.ts';

const { picture, removedPct } = madePicture({ ...plain, grain: 6, blur: 0.8 });
const source = { name: 'tape 1.png', bytes: pictureFile(picture).toString('base64') };
const reading: PhotoReading = { channel: 'grey', region: { kind: 'rectangle', x: 0, y: 0, width: 320, height: 240 }, removed: 'lighter', threshold: 135, light: 'as-is', smooth: false };

async function tapeTest() {
  const bench = await testBench();
  const { test } = await bench.startTest('tape-adhesion');
  await bench.do('condition.enter', { testId: test.testId, key: 'tape', typed: 'lab tape, 25 mm' });
  return { bench, testId: test.testId, cell: { testId: test.testId, row: 'r1', key: 'photo' } };
}

describe('a photograph', () => {
  it('is previewed at the size at which it is measured', async () => {
    const { bench } = await tapeTest();
    const preview = await bench.do('photo.preview', { source, channel: 'grey' });
    expect(preview).toMatchObject({ name: 'tape 1.png', width: 320, height: 240, notes: [] });
    expect(Buffer.from(preview.grey, 'base64')).toEqual(Buffer.from(picture.grey));
    expect(await bench.entries()).toBe(5);
  });

  it('is measured into a cell, gives the result with its interval, is kept once and corrected with a reason', async () => {
    const { bench, testId, cell } = await tapeTest();
    const sheet = await bench.do('photo.measure', { ...cell, source, reading });
    const retained = sheet.live!.result.results.retainedPct!;
    expect(Math.abs(100 - removedPct - retained.value!)).toBeLessThan(1);
    expect(retained.low!).toBeLessThan(100 - removedPct);
    expect(retained.high!).toBeGreaterThan(100 - removedPct);
    const photo = sheet.photos![String(sheet.rows[0]!.cells.photo!.value)]!;
    expect(photo).toMatchObject({ name: 'tape 1.png', reading });
    expect(photo.text).toMatch(/^2\d\.\d+ % removed$/);
    expect(photo.intervalText).toMatch(/^95 % interval 2/);

    const again = { ...cell, source: { sha256: photo.sha256 }, reading: { ...reading, threshold: 120 } };
    expect(await bench.refused('photo.measure', again)).toMatchObject({ code: 'input', field: 'reason' });
    const corrected = await bench.do('photo.measure', { ...again, reason: 'Haze counts as print' });
    expect(corrected.rows[0]!.cells.photo!.corrections).toBe(1);
    expect(corrected.live!.result.results.retainedPct!.value!).toBeLessThanOrEqual(retained.value!);
    expect((await bench.do('record.list', { kind: 'attachment.added' })).total).toBe(2);
    expect((await bench.do('attachments.list', { attachedTo: 'test', attachedId: testId })).map(({ name, measured }) => ({ name, measured }))).toEqual([{ name: 'tape 1.png', measured: true }]);

    await bench.do('test.finish', { testId, remark: '' });
    expect((await bench.do('record.verify', {})).problems).toEqual([]);
    const report = await bench.do('report.preview', { title: 'T', recipient: '', remark: '', testIds: [testId], replaces: null });
    expect(report.appendix[0]!.rows[0]!.cells.join(' | ')).toMatch(/tape 1\.png: 2\d\.\d+ % removed/);
    expect(report.appendix[0]!.corrections[0]).toMatchObject({ before: 'tape 1.png', after: 'tape 1.png', reason: 'Haze counts as print' });
  });

  it.each<[string, Partial<PhotoReading>, RegExp]>([
    ['a region that holds print alone', { region: { kind: 'rectangle', x: 60, y: 0, width: 20, height: 20 }, threshold: 60 }, /run into one another/],
    ['a region beyond the picture', { region: { kind: 'rectangle', x: 300, y: 0, width: 50, height: 50 } }, /reaches beyond the picture, which is 320 × 240 pixels/],
    ['a region of few pixels', { region: { kind: 'rectangle', x: 0, y: 0, width: 5, height: 5 } }, /holds 25 pixels; it needs at least 100/],
  ])('is refused with %s, and nothing is recorded', async (_name, change, says) => {
    const { bench, cell } = await tapeTest();
    const before = await bench.entries();
    expect((await bench.refused('photo.measure', { ...cell, source, reading: { ...reading, ...change } })).message).toMatch(says);
    expect(await bench.entries()).toBe(before);
  });

  it.each<[string, Buffer, RegExp]>([
    ['1 × 1', pngOfSize(1, 1), /reaches beyond the picture, which is 1 × 1 pixels/],
    ['100 megapixels', pngOfSize(10_000, 10_000), /100 million pixels/],
    ['not an image', Buffer.from('no picture'), /is no PNG, JPEG or WebP picture/],
  ])('is refused when it is %s', async (_name, bytes, says) => {
    const { bench, cell } = await tapeTest();
    const bad = { name: 'bad.png', bytes: bytes.toString('base64') };
    expect((await bench.refused('photo.measure', { ...cell, source: bad, reading })).message).toMatch(says);
  });

  it('and a typed percent do not both count', async () => {
    const { bench, testId, cell } = await tapeTest();
    await bench.do('photo.measure', { ...cell, source, reading });
    const sheet = await bench.do('reading.enter', { testId, row: 'r1', key: 'removedPct', typed: '20' });
    expect(sheet.live).toBeNull();
    expect(sheet.missing).toMatchObject({ where: 'rows[0].removedPct' });
  });

  it('that is with the test as a file as well is one line among its files, and can be printed', async () => {
    const { bench, testId, cell } = await tapeTest();
    const to = { attachedTo: 'test', attachedId: testId } as const;
    await bench.do('attachment.add', { ...to, ...source, caption: 'From above' });
    const sheet = await bench.do('photo.measure', { ...cell, source, reading });
    const { sha256 } = sheet.photos![String(sheet.rows[0]!.cells.photo!.value)]!;
    expect((await bench.do('attachments.list', to)).map(({ sha256: of, caption, measured }) => ({ of, caption, measured }))).toEqual([{ of: sha256, caption: 'From above', measured: true }]);
  });

  it('goes into a cell that was cleared as a correction, with a reason', async () => {
    const { bench, cell } = await tapeTest();
    await bench.do('photo.measure', { ...cell, source, reading });
    const cleared = await bench.do('reading.enter', { ...cell, typed: '', reason: 'Another specimen' });
    // By this the sheet knows that it must ask for the reason.
    expect(cleared.rows[0]!.cells.photo).toMatchObject({ value: null });
    expect(await bench.refused('photo.measure', { ...cell, source, reading })).toMatchObject({ code: 'input', field: 'reason' });
    expect((await bench.do('photo.measure', { ...cell, source, reading, reason: 'The right one' })).rows[0]!.cells.photo!.corrections).toBe(2);
  });

  it('goes into a photograph field only', async () => {
    const { bench, testId } = await tapeTest();
    expect((await bench.refused('photo.measure', { testId, row: 'r1', key: 'label', source, reading })).code).toBe('conflict');
    expect((await bench.refused('reading.enter', { testId, row: 'r1', key: 'photo', typed: '12' })).message).toMatch(/takes a photograph that is measured/);
  });
});
