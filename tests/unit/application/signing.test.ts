import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { matchesHash } from '../../../electron/application/signing/passphrase-hash.ts';
import { secondsToWait, waitInWords } from '../../../electron/application/signing/refused-delay.ts';
import { testBench, TestBench } from './open-application.ts';

const RIGHT = 'four quiet rollers';

async function withPassphrase(): Promise<{ bench: TestBench; personId: string }> {
  const bench = await testBench();
  const { personId } = (await bench.do('session.get', {})).atBench!;
  await bench.do('passphrase.set', { personId, passphrase: RIGHT });
  return { bench, personId };
}

describe('a passphrase', () => {
  it('is derived as RFC 7914, section 12, says', async () => {
    // The third vector; our hash is the first of its two blocks of 32 bytes.
    const kept = {
      N: 16384,
      r: 8,
      p: 1,
      salt: Buffer.from('SodiumChloride').toString('hex'),
      hash: '7023bdcb3afd7348461c06cd81fd38ebfda8fbba904f8e3ea9b543f6545da1f2',
    };
    expect(await matchesHash('pleaseletmein', kept)).toBe(true);
    expect(await matchesHash('pleaseletmeout', kept)).toBe(false);
  });

  it('is set, known only as its hash, and changed only with the old one', async () => {
    const { bench, personId } = await withPassphrase();
    expect((await bench.do('session.get', {})).people).toMatchObject([{ hasPassphrase: true, retired: false }]);
    const next = 'five loud cylinders';
    expect(await bench.refused('passphrase.set', { personId, passphrase: next })).toMatchObject({ code: 'input', field: 'oldPassphrase', value: null });
    expect(await bench.refused('passphrase.set', { personId, passphrase: next, oldPassphrase: 'guessed at random' })).toMatchObject({
      field: 'oldPassphrase',
      message: 'This is not the passphrase of Imke Rasmund.',
    });
    await bench.do('passphrase.set', { personId, passphrase: next, oldPassphrase: RIGHT });
    await bench.application.close();
    const written = readdirSync(bench.folder, { recursive: true, withFileTypes: true })
      .filter((file) => file.isFile())
      .map((file) => readFileSync(path.join(file.parentPath, file.name), 'latin1'))
      .join('');
    expect(written).toContain('passphrase.set');
    for (const secret of [RIGHT, next, 'guessed at random']) expect(written).not.toContain(secret);
  });

  it('has another salt each time', async () => {
    const { bench, personId } = await withPassphrase();
    await bench.do('passphrase.set', { personId, passphrase: RIGHT, oldPassphrase: RIGHT });
    const { entries } = await bench.do('record.list', { kind: 'passphrase.set' });
    expect(entries.map(({ text }) => text)).toEqual(['Set a passphrase for Imke Rasmund.', 'Set a passphrase for Imke Rasmund.']);
    await bench.application.close();
    const file = readFileSync(bench.notebookFile, 'latin1');
    const salts = [...file.matchAll(/"salt":"([0-9a-f]{32})"/g)].map(([, salt]) => salt);
    expect(new Set(salts).size).toBe(2);
  });

  it.each([
    ['short', 'at least 8 characters'],
    ['x'.repeat(201), 'at most 200 characters'],
    ['Imke Rasmund', 'guessed at once'],
    ['aaaaaaaaaa', 'guessed at once'],
  ])('is refused as %s, with a sentence that does not repeat it', async (passphrase, sentence) => {
    const bench = await testBench();
    const { personId } = (await bench.do('session.get', {})).atBench!;
    const problem = await bench.refused('passphrase.set', { personId, passphrase });
    expect(problem).toMatchObject({ field: 'passphrase', value: null });
    expect(problem.message).toContain(sentence);
  });

  it('stands in no refusal, whatever else is wrong with the call', async () => {
    const { bench, personId } = await withPassphrase();
    const problem = await bench.refusedAnything('passphrase.set', { personId, passphrase: RIGHT, oldPassphrase: RIGHT, andMore: true });
    expect(problem.code).toBe('input');
    expect(JSON.stringify(problem)).not.toContain(RIGHT);
  });

  it('may be typed as one code point or two', async () => {
    const bench = await testBench();
    const { personId } = (await bench.do('session.get', {})).atBench!;
    await bench.do('passphrase.set', { personId, passphrase: 'vier kühle Walzen' });
    await bench.do('passphrase.set', { personId, passphrase: 'eine neue Walze', oldPassphrase: 'vier kühle Walzen'.normalize('NFD') });
  });
});

describe('a wrong passphrase', () => {
  it('costs a wait from the fifth on that grows, is said in words and survives closing', async () => {
    const { bench, personId } = await withPassphrase();
    const wrong = (on = bench) => on.refused('passphrase.set', { personId, passphrase: 'another long one', oldPassphrase: 'guessed at random' });
    for (let time = 1; time <= 4; time += 1) expect((await wrong()).message).toBe('This is not the passphrase of Imke Rasmund.');
    expect((await wrong()).message).toBe('This is not the passphrase of Imke Rasmund. Wait 30 seconds before typing it again.');
    // Too early: neither checked nor counted, also when it is right.
    const early = await bench.refused('passphrase.set', { personId, passphrase: 'another long one', oldPassphrase: RIGHT });
    expect(early).toMatchObject({ code: 'input', field: 'oldPassphrase', message: 'Too many wrong passphrases for Imke Rasmund: wait 30 seconds, then type it again.' });
    await bench.application.close();

    const later = new TestBench();
    later.time = bench.time + 29_000;
    await later.application.open(bench.notebookFile);
    expect((await later.refused('passphrase.set', { personId, passphrase: 'another long one', oldPassphrase: RIGHT })).message).toContain('wait 1 second,');
    later.time += 1000;
    expect((await wrong(later)).message).toContain('Wait 1 minute before');
    later.time += 60_000;
    await later.do('passphrase.set', { personId, passphrase: 'another long one', oldPassphrase: RIGHT });
    // The right one ends the count.
    expect((await wrong(later)).message).toBe('This is not the passphrase of Imke Rasmund.');
    expect((await later.do('record.list', { kind: 'signing.refused' })).entries.map(({ text }) => text)).toEqual(Array.from({ length: 7 }, () => 'Refused a wrong passphrase for Imke Rasmund.'));
    expect(await later.do('record.verify', {})).toMatchObject({ intact: true });
  });

  it('doubles the wait up to an hour, and no clock that was set back makes it longer', () => {
    expect([4, 5, 6, 7, 11, 12, 5000].map((times) => secondsToWait(times, 0))).toEqual([0, 30, 60, 120, 1920, 3600, 3600]);
    expect(secondsToWait(5, 31)).toBe(0);
    expect(secondsToWait(5, -10)).toBe(20);
    expect(secondsToWait(5, -1e9)).toBe(0);
    expect([1, 30, 60, 61, 3600].map(waitInWords)).toEqual(['1 second', '30 seconds', '1 minute', '2 minutes', '60 minutes']);
  });
});

describe('a person', () => {
  it('changes name and role with a reason, and old entries say the name', async () => {
    const bench = await testBench();
    const { personId } = (await bench.do('session.get', {})).atBench!;
    const change = { personId, name: 'Imke Halvard', role: 'laboratory lead' };
    expect(await bench.refused('person.change', { ...change, reason: ' ' })).toMatchObject({ field: 'reason' });
    expect(await bench.do('person.change', { ...change, reason: 'married' })).toMatchObject({ name: 'Imke Halvard', initials: 'IR' });
    const { entries } = await bench.do('record.list', {});
    expect(entries[0]).toMatchObject({ by: 'Imke Halvard', text: 'Changed Imke Rasmund, technician to Imke Halvard, laboratory lead.', correction: { before: 'Imke Rasmund, technician', reason: 'married' } });
  });

  it('who is retired takes no bench, stays named, and may return', async () => {
    const bench = await testBench();
    const imke = (await bench.do('session.get', {})).atBench!.personId;
    const { personId } = await bench.do('person.add', { name: 'Abena Quist', initials: 'AQ', role: '' });
    await bench.do('session.takeBench', { personId });
    await bench.do('material.add', { kind: 'film', name: 'PET 12', supplier: '', description: '' });
    expect((await bench.refused('person.retire', { personId, reason: 'left' })).message).toContain('somebody else takes the bench first');
    await bench.do('session.takeBench', { personId: imke });
    expect(await bench.do('person.retire', { personId, reason: 'left the lab' })).toMatchObject({ retired: true, retiredReason: 'left the lab' });
    expect((await bench.refused('session.takeBench', { personId })).message).toBe('Abena Quist is retired (left the lab) and neither takes the bench nor signs.');
    expect(await bench.refused('passphrase.set', { personId, passphrase: RIGHT })).toMatchObject({ code: 'conflict' });
    expect((await bench.do('record.list', { kind: 'material.added' })).entries).toMatchObject([{ by: 'Abena Quist' }]);
    await bench.do('person.return', { personId, reason: 'is back' });
    expect((await bench.do('session.takeBench', { personId })).atBench).toMatchObject({ personId, retired: false });
    expect(await bench.do('record.verify', {})).toMatchObject({ intact: true });
  });
});

