import { scryptSync } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { hashPassphrase, matchesHash } from '../../../electron/application/signing/passphrase-hash.ts';
import { secondsToWait } from '../../../electron/application/signing/refused-delay.ts';
import { waitInWords } from '../../../shared-lib/quantity/wait-in-words.ts';
import { scryptSchema } from '../../../shared-lib/notebook/person-entries.ts';
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
    ['        ', 'at least 8 characters'],
    ['ab       c', 'at least 8 characters'],
    ['Imke Rasmund', 'guessed at once'],
    ['aaaaaaaaaa', 'guessed at once'],
    ['ＩＭＫＥ rasmund', 'guessed at once'],
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
    expect(early).toMatchObject({ code: 'input', field: 'oldPassphrase', message: 'Too many wrong passphrases for Imke Rasmund: wait 30 seconds, then type it again.', waitSeconds: 30 });
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

  it('doubles the wait up to an hour', () => {
    expect([4, 5, 6, 7, 11, 12, 5000].map((times) => secondsToWait(times, 0))).toEqual([0, 30, 60, 120, 1920, 3600, 3600]);
    expect(secondsToWait(5, 31)).toBe(0);
    expect([1, 30, 60, 61, 3600].map(waitInWords)).toEqual(['1 second', '30 seconds', '1 minute', '2 minutes', '60 minutes']);
  });
});

describe('an auditor who tries to guess', () => {
  const guess = (bench: TestBench, personId: string) => bench.refused('passphrase.set', { personId, passphrase: 'another long one', oldPassphrase: 'guessed at random' });

  it('gains nothing by setting the clock back: the whole wait begins when that is seen, and nobody waits for years', async () => {
    const { bench, personId } = await withPassphrase();
    for (let time = 1; time <= 5; time += 1) await guess(bench, personId);
    bench.time -= 365 * 86_400_000;
    expect((await guess(bench, personId)).message).toContain('wait 30 seconds');
    bench.time += 20_000;
    expect((await guess(bench, personId)).message).toContain('wait 10 seconds');
    // Set back once more: anew.
    bench.time -= 3_600_000;
    expect((await guess(bench, personId)).message).toContain('wait 30 seconds');
    bench.time += 30_000;
    await bench.do('passphrase.set', { personId, passphrase: 'another long one', oldPassphrase: RIGHT });
  });

  it('gains nothing by leaving the bench empty, where a wrong one could not be recorded', async () => {
    const { bench, personId } = await withPassphrase();
    await bench.do('person.add', { name: 'Abena Quist', initials: 'AQ', role: '' });
    await bench.application.close();
    // Two people and other settings: nobody is at the bench.
    const elsewhere = new TestBench();
    await elsewhere.application.open(bench.notebookFile);
    expect((await elsewhere.do('session.get', {})).atBench).toBeNull();
    const cpuOf = async (work: () => Promise<unknown>) => {
      const before = process.cpuUsage();
      await work();
      return process.cpuUsage(before).user;
    };
    const hashing = await cpuOf(() => hashPassphrase(RIGHT, Buffer.alloc(16)));
    for (const oldPassphrase of [RIGHT, 'guessed at random']) {
      // Neither the answer nor its time may tell them apart: the passphrase is not even hashed.
      const cost = await cpuOf(async () => expect(await elsewhere.refused('passphrase.set', { personId, passphrase: 'another long one', oldPassphrase })).toMatchObject({ code: 'conflict', message: expect.stringContaining('Choose who is at the bench first') }));
      expect(cost).toBeLessThan(hashing / 2);
    }
  });

  it('is not helped by a second process: it can only read, and the count goes on where it was', async () => {
    const { bench, personId } = await withPassphrase();
    for (let time = 1; time <= 4; time += 1) await guess(bench, personId);
    const second = new TestBench();
    second.time = bench.time;
    await second.application.open(bench.notebookFile);
    expect((await second.do('session.get', {})).notebook).toMatchObject({ readOnly: true });
    for (let time = 1; time <= 5; time += 1) expect(await guess(second, personId)).toMatchObject({ code: 'read-only' });
    expect((await guess(bench, personId)).message).toContain('Wait 30 seconds');
  });

  it('keeps nobody busy with an endless one', async () => {
    const { bench, personId } = await withPassphrase();
    // A letter that stands for 18: 10 MB of them would be 180 MB before they are hashed.
    const endless = '\uFDFA'.repeat(3_000_000);
    const started = performance.now();
    expect((await bench.refused('passphrase.set', { personId, passphrase: 'another long one', oldPassphrase: endless })).message).toContain('No passphrase is as long');
    expect(await bench.refused('passphrase.set', { personId, passphrase: endless, oldPassphrase: RIGHT })).toMatchObject({ field: 'passphrase', message: expect.stringContaining('at most 200') });
    expect(performance.now() - started).toBeLessThan(3000);
  });
});

describe('a passphrase that was kept', () => {
  it('is told from the same in other letters and with other spaces', async () => {
    const { bench, personId } = await withPassphrase();
    for (const other of [RIGHT.toUpperCase(), RIGHT.replace(/ /g, ''), ` ${RIGHT}`, '']) {
      expect(await bench.refused('passphrase.set', { personId, passphrase: 'another long one', oldPassphrase: other })).toMatchObject({ field: 'oldPassphrase' });
    }
    // A space that does not break, as some keyboards give with AltGr.
    await bench.do('passphrase.set', { personId, passphrase: 'another long one', oldPassphrase: RIGHT.replace(/ /g, '\u00A0') });
  });

  it('is checked at the cost that it was hashed at, also when new ones cost more', async () => {
    const salt = Buffer.alloc(16, 7);
    const earlier = { N: 2 ** 12, r: 8, p: 1 };
    const kept = { ...earlier, salt: salt.toString('hex'), hash: scryptSync(RIGHT, salt, 32, earlier).toString('hex') };
    expect(await matchesHash(RIGHT, kept)).toBe(true);
    expect(await matchesHash(RIGHT, { ...kept, N: 2 ** 13 })).toBe(false);
  });

  it('is refused where no scrypt, or one that takes all memory, would check it', () => {
    const kept = { N: 2 ** 15, r: 8, p: 3, salt: 'a'.repeat(32), hash: 'b'.repeat(64) };
    expect(scryptSchema.safeParse(kept).success).toBe(true);
    expect(scryptSchema.safeParse({ ...kept, N: 2 ** 15 + 1 }).success).toBe(false);
    expect(scryptSchema.safeParse({ ...kept, N: 2 ** 20, r: 32 }).success).toBe(false);
  });
});

describe('a forgotten passphrase', () => {
  const SECOND = 'three dry cylinders';
  const NEXT = 'seven slow winders';
  async function withTwo() {
    const { bench, personId } = await withPassphrase();
    const abena = (await bench.do('person.add', { name: 'Abena Quist', initials: 'AQ', role: 'quality lead' })).personId;
    const renewal = { personId, passphrase: NEXT, reason: 'forgotten over the holidays', secondPersonId: abena, secondPassphrase: SECOND };
    return { bench, personId, abena, renewal };
  }

  it('is set anew when a second person signs for it, and earlier signatures stay', async () => {
    const { bench, personId, abena, renewal } = await withTwo();
    await bench.do('passphrase.set', { personId: abena, passphrase: SECOND });
    await bench.do('session.takeBench', { personId: abena });
    await bench.do('material.add', { kind: 'film', name: 'PET 12', supplier: '', description: '' });
    const { entries } = await bench.do('record.list', { kind: 'material.added' });
    const page = { fromSeq: entries[0]!.seq, toSeq: entries[0]!.seq };
    const read = await bench.do('work.page', { page });
    await bench.do('work.witness', { page, toSeq: read.toSeq, chainHash: read.chainHash, personId, passphrase: RIGHT });

    expect(await bench.do('passphrase.renew', renewal)).toMatchObject({ personId, hasPassphrase: true });
    expect((await bench.do('record.list', { kind: 'passphrase.renewed' })).entries).toMatchObject([{ text: 'Abena Quist let the forgotten passphrase of Imke Rasmund be set anew: forgotten over the holidays.' }]);
    expect((await bench.do('work.page', { page })).witnesses).toMatchObject([{ name: 'Imke Rasmund' }]);
    expect(await bench.refused('passphrase.set', { personId, passphrase: 'yet another one', oldPassphrase: RIGHT })).toMatchObject({ field: 'oldPassphrase' });
    await bench.do('passphrase.set', { personId, passphrase: 'yet another one', oldPassphrase: NEXT });
    expect(await bench.do('record.verify', {})).toMatchObject({ intact: true });
    await bench.application.close();
    const written = readFileSync(bench.notebookFile, 'latin1');
    for (const secret of [RIGHT, NEXT, SECOND]) expect(written).not.toContain(secret);
  });

  it('is not set anew by the person alone, without a reason, by one without passphrase, or by one who is retired', async () => {
    const { bench, personId, abena, renewal } = await withTwo();
    const nobody = await bench.refused('passphrase.renew', renewal);
    expect(nobody).toMatchObject({ code: 'conflict', message: 'Nobody else has a passphrase, so that of Imke Rasmund cannot be set anew: retire Imke Rasmund, and add Imke Rasmund again with other initials. What was signed stays signed.' });
    await bench.do('passphrase.set', { personId: abena, passphrase: SECOND });
    const third = (await bench.do('person.add', { name: 'Tomas Vrel', initials: 'TV', role: '' })).personId;
    for (const [change, problem] of [
      [{ secondPersonId: personId, secondPassphrase: RIGHT }, { field: 'secondPersonId' }],
      [{ secondPersonId: '' }, { field: 'secondPersonId' }],
      [{ secondPersonId: third }, { field: 'secondPassphrase', message: expect.stringContaining('Tomas Vrel has no passphrase yet') }],
      [{ secondPassphrase: RIGHT }, { field: 'secondPassphrase', message: 'This is not the passphrase of Abena Quist.' }],
      [{ secondPassphrase: '' }, { field: 'secondPassphrase' }],
      [{ reason: ' ' }, { field: 'reason' }],
      [{ passphrase: 'short' }, { field: 'passphrase' }],
      [{ passphrase: SECOND }, { field: 'passphrase', message: expect.stringContaining('nobody else knows') }],
      [{ personId: third }, { code: 'conflict', message: expect.stringContaining('has no passphrase yet') }],
    ] as const) {
      const refused = await bench.refused('passphrase.renew', { ...renewal, ...change });
      expect(refused).toMatchObject(problem);
      expect(JSON.stringify(refused)).not.toMatch(/cylinders|rollers|winders/);
    }
    await bench.do('person.retire', { personId: abena, reason: 'left' });
    expect((await bench.refused('passphrase.renew', renewal)).message).toContain('Nobody else has a passphrase');
    expect((await bench.do('record.list', { kind: 'passphrase.renewed' })).entries).toEqual([]);
  });

  it('makes the second person wait after five wrong ones as well', async () => {
    const { bench, abena, renewal } = await withTwo();
    await bench.do('passphrase.set', { personId: abena, passphrase: SECOND });
    for (let time = 1; time <= 5; time += 1) await bench.refused('passphrase.renew', { ...renewal, secondPassphrase: 'guessed at random' });
    expect(await bench.refused('passphrase.renew', renewal)).toMatchObject({ field: 'secondPassphrase', message: 'Too many wrong passphrases for Abena Quist: wait 30 seconds, then type it again.' });
    bench.time += 30_000;
    await bench.do('passphrase.renew', renewal);
    // Her right one ended her count.
    expect((await bench.refused('passphrase.renew', { ...renewal, secondPassphrase: 'guessed at random' })).message).toBe('This is not the passphrase of Abena Quist.');
  });
});

describe('a person', () => {
  it('is not taken for another of the same name', async () => {
    const bench = await testBench();
    const again = { name: 'imke  RASMUND', initials: 'IR2', role: '' };
    expect(await bench.refused('person.add', again)).toMatchObject({ field: 'name', message: expect.stringContaining('Imke Rasmund is in the notebook already') });
    expect(await bench.refused('person.add', { name: 'Irmel Roth', initials: 'ＩＲ', role: '' })).toMatchObject({ field: 'initials' });
    const { personId } = await bench.do('person.add', { name: 'Abena Quist', initials: 'AQ', role: '' });
    expect(await bench.refused('person.change', { personId, name: 'Imke Rasmund', role: '', reason: 'x' })).toMatchObject({ field: 'name' });
    // One who is retired may be added again, and then does not return beside herself.
    await bench.do('person.retire', { personId, reason: 'forgot her passphrase' });
    await bench.do('person.add', { name: 'Abena Quist', initials: 'AQ2', role: '' });
    expect(await bench.refused('person.return', { personId, reason: 'is back' })).toMatchObject({ code: 'conflict', message: expect.stringContaining('AQ2') });
  });

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

