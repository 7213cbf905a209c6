import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { FIRST_PREVIOUS, sealEntry, verifyChain } from '../../../shared-lib/notebook/hash-chain.ts';
import type { DraftEntry, Entry } from '../../../shared-lib/notebook/entry.ts';

const at = '2025-05-03T10:42:07.000Z';

function chain(count: number): Entry[] {
  const entries: Entry[] = [];
  for (let seq = 1; seq <= count; seq++) {
    const draft: DraftEntry = {
      kind: 'reading.entered',
      body: { testId: 't1', row: `r${seq}`, key: 'tensionMNm', value: 36 + seq / 2, typed: String(36 + seq / 2) },
      by: 'p1',
      occurredAt: at,
    };
    entries.push(sealEntry(draft, { seq, id: `e${seq}`, recordedAt: at, previous: entries.at(-1)?.hash ?? FIRST_PREVIOUS }));
  }
  return entries;
}

describe('sealEntry', () => {
  test('hashes the sorted text of everything but the hash (recomputed here with another SHA-256)', () => {
    const entry = sealEntry(
      { kind: 'row.voided', body: { testId: 't1', row: 'r2', reason: 'torn “early”' }, by: 'p1', occurredAt: at },
      { seq: 1, id: 'e1', recordedAt: at, previous: FIRST_PREVIOUS },
    );
    const text =
      `{"body":{"reason":"torn “early”","row":"r2","testId":"t1"},"by":"p1","id":"e1","kind":"row.voided",` +
      `"occurredAt":"${at}","previous":"${'0'.repeat(64)}","recordedAt":"${at}","seq":1}`;
    expect(entry.hash).toBe(createHash('sha256').update(text, 'utf8').digest('hex'));
  });

  test('gives a copy that the caller cannot change afterwards, with −0 as 0', () => {
    const body = { testId: 't1', row: 'r1', key: 'k', value: -0, typed: '-0' };
    const entry = sealEntry({ kind: 'reading.entered', body, by: 'p1', occurredAt: at }, { seq: 1, id: 'e', recordedAt: at, previous: FIRST_PREVIOUS });
    body.value = 99;
    expect(Object.is((entry.body as typeof body).value, 0)).toBe(true);
    expect(verifyChain([entry])).toEqual([]);
  });
});

describe('verifyChain', () => {
  test('finds nothing in a record as it was written', () => {
    expect(verifyChain(chain(20))).toEqual([]);
    expect(verifyChain([])).toEqual([]);
  });

  test('names an entry whose content was changed, and only that one', () => {
    const entries = chain(5);
    entries[2] = { ...entries[2]!, body: { ...entries[2]!.body, value: 44 } } as Entry;
    expect(verifyChain(entries)).toEqual([{ seq: 3, kind: 'content', text: expect.stringContaining('Entry 3 (reading.entered') as string }]);
  });

  test('names the entry after one that was sealed anew', () => {
    const entries = chain(5);
    const { hash: _, ...old } = entries[2]!;
    entries[2] = sealEntry({ ...old, body: { ...old.body, value: 44 } } as DraftEntry, old);
    expect(verifyChain(entries).map(({ seq, kind }) => [seq, kind])).toEqual([[4, 'link']]);
  });

  test('names a missing, a doubled and a swapped entry', () => {
    const [a, b, c, d] = chain(4) as [Entry, Entry, Entry, Entry];
    const kinds = (entries: Entry[]) => verifyChain(entries).map(({ seq, kind }) => `${seq} ${kind}`);
    expect(kinds([a, c, d])).toEqual(['3 order', '3 link']);
    expect(kinds([b, c])).toEqual(['2 order', '2 link']);
    expect(kinds([a, b, b, c])).toEqual(['2 order', '2 link']);
    expect(kinds([a, c, b, d])).toEqual(['3 order', '3 link', '2 order', '2 link', '4 order', '4 link']);
    expect(verifyChain([a, d])[0]!.text).toContain('entries 2 to 3 are missing');
  });

  test('names an entry whose body is no JSON object any more', () => {
    const entries = chain(2);
    entries[1] = { ...entries[1]!, body: '{"testId": broken' } as unknown as Entry;
    expect(verifyChain(entries).map(({ seq, kind }) => [seq, kind])).toEqual([[2, 'content']]);
  });
});
