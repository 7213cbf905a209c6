import { describe, expect, it } from 'vitest';
import { pictureFile, pngOfSize } from '../picture/picture-file.ts';
import { testBench } from './open-application.ts';

const base64 = (text: string) => Buffer.from(text).toString('base64');
const photo = pictureFile({ width: 400, height: 300, grey: new Uint8Array(120_000).fill(90) }).toString('base64');

async function benchWithLot() {
  const bench = await testBench();
  const { materialId } = await bench.do('material.add', { kind: 'film', name: 'PET', supplier: 'Osprey Vale', description: '' });
  const { lotId } = await bench.do('lot.add', { materialId, code: 'OV-1', receivedOn: null, note: '' });
  const { sampleId } = await bench.do('sample.add', { code: 'Q-1', product: '', job: '', roll: '', note: '', lotIds: [lotId] });
  return { bench, materialId, lotId, sampleId };
}

describe('a file', () => {
  it('is put with samples, lots and materials, and kept once', async () => {
    const { bench, materialId, lotId, sampleId } = await benchWithLot();
    const certificate = { name: 'certificate.pdf', bytes: base64('%PDF-1.7 certificate'), caption: 'Film certificate' };
    await bench.do('attachment.add', { attachedTo: 'lot', attachedId: lotId, ...certificate });
    await bench.do('attachment.add', { attachedTo: 'material', attachedId: materialId, ...certificate, name: 'again.pdf' });
    const lines = await bench.do('attachment.add', { attachedTo: 'sample', attachedId: sampleId, ...certificate });
    expect(lines).toEqual([
      expect.objectContaining({ name: 'certificate.pdf', mediaType: 'application/pdf', size: 20, caption: 'Film certificate', linkedBy: 'Imke Rasmund', measured: false }),
    ]);
    const { entries } = await bench.do('record.list', { kind: 'attachment.added' });
    expect(entries).toHaveLength(1);
    expect(await bench.do('attachments.counts', {})).toHaveLength(3);
    expect(await bench.do('attachment.get', { sha256: lines[0]!.sha256 })).toEqual({ name: 'certificate.pdf', mediaType: 'application/pdf', bytes: certificate.bytes });
    expect((await bench.do('record.verify', {})).problems).toEqual([]);
  });

  it('is taken away with a reason, and can be put back', async () => {
    const { bench, sampleId } = await benchWithLot();
    const to = { attachedTo: 'sample' as const, attachedId: sampleId };
    const [line] = await bench.do('attachment.add', { ...to, name: 'a.txt', bytes: base64('a'), caption: '' });
    expect(await bench.refused('attachment.unlink', { ...to, sha256: line!.sha256, reason: '' })).toMatchObject({ code: 'input', field: 'reason' });
    expect(await bench.do('attachment.unlink', { ...to, sha256: line!.sha256, reason: 'Another roll' })).toEqual([]);
    expect((await bench.refused('attachment.unlink', { ...to, sha256: line!.sha256, reason: 'again' })).code).toBe('not-found');
    expect(await bench.do('attachment.add', { ...to, name: 'a.txt', bytes: base64('a'), caption: '' })).toHaveLength(1);
    const { entries } = await bench.do('record.list', { kind: 'attachment.unlinked' });
    expect(entries[0]).toMatchObject({ sampleId, text: 'Took the file a.txt away from sample Q-1: Another roll.' });
  });

  it.each([
    ['twice with the same thing', base64('same'), 'conflict', /has that file already, as first\.txt/],
    ['when it is empty', '', 'input', /is empty/],
    ['when it did not arrive whole', 'abc', 'input', /did not arrive whole/],
    ['when it is too large', Buffer.alloc(24_000_001).toString('base64'), 'input', /This file has 24\.1 MB; at most 24 MB go into a notebook/],
  ])('is refused %s', async (_name, bytes, code, says) => {
    const { bench, sampleId } = await benchWithLot();
    const to = { attachedTo: 'sample' as const, attachedId: sampleId };
    await bench.do('attachment.add', { ...to, name: 'first.txt', bytes: base64('same'), caption: '' });
    expect(await bench.refused('attachment.add', { ...to, name: 'x.bin', bytes, caption: '' })).toMatchObject({ code, message: expect.stringMatching(says) });
  });

  it('is refused for a thing that is not in the notebook', async () => {
    const { bench } = await benchWithLot();
    expect((await bench.refused('attachment.add', { attachedTo: 'lot', attachedId: 'nowhere', name: 'a', bytes: base64('a'), caption: '' })).code).toBe('not-found');
  });
});

describe('a picture', () => {
  it('is shown small, and says why where it cannot be', async () => {
    const { bench, sampleId } = await benchWithLot();
    const to = { attachedTo: 'sample' as const, attachedId: sampleId, caption: '' };
    const [shown] = await bench.do('attachment.add', { ...to, name: 'photo.png', bytes: photo });
    const thumbnail = await bench.do('attachment.picture', { sha256: shown!.sha256, size: 'thumbnail' });
    expect(thumbnail).toMatchObject({ width: 133, height: 100, original: { width: 400, height: 300 }, problem: '' });
    expect(thumbnail.picture.length).toBeLessThan(20_000);

    const huge = (await bench.do('attachment.add', { ...to, name: 'huge.png', bytes: pngOfSize(10_000, 10_000).toString('base64') }))[0]!;
    expect((await bench.do('attachment.picture', { sha256: huge.sha256, size: 'thumbnail' })).problem).toMatch(/100 million pixels/);
  });
});
