import { scrypt, timingSafeEqual } from 'node:crypto';
import type { Scrypt } from '../../../shared-lib/notebook/person-entries.ts';

/** 32 MB and a fraction of a second for each guess; OWASP, Password Storage Cheat Sheet, one of its least settings for scrypt. */
const COST = { N: 2 ** 15, r: 8, p: 3 };
const HASH_BYTES = 32;
export const SALT_BYTES = 16;

/** What is kept of a passphrase. @param salt fresh random bytes */
export async function hashPassphrase(passphrase: string, salt: Uint8Array): Promise<Scrypt> {
  const hash = await derive(passphrase, salt, COST);
  return { ...COST, salt: Buffer.from(salt).toString('hex'), hash: hash.toString('hex') };
}

/** Whether it is the passphrase that was kept. */
export async function matchesHash(passphrase: string, kept: Scrypt): Promise<boolean> {
  return timingSafeEqual(await derive(passphrase, Buffer.from(kept.salt, 'hex'), kept), Buffer.from(kept.hash, 'hex'));
}

/** As it is hashed: of two keyboards, one may type a letter as one code point and the other as two, or a space as another space. */
export function normalPassphrase(typed: string): string {
  return typed.normalize('NFKC');
}

function derive(passphrase: string, salt: Uint8Array, { N, r, p }: Pick<Scrypt, 'N' | 'r' | 'p'>): Promise<Buffer> {
  const typed = normalPassphrase(passphrase);
  return new Promise((resolve, reject) => {
    // Node refuses more than 32 MB unless it is told how much scrypt may take.
    scrypt(typed, salt, HASH_BYTES, { N, r, p, maxmem: 128 * r * (N + p + 2) }, (error, hash) => (error ? reject(error) : resolve(hash)));
  });
}
