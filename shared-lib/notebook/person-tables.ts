/** People, and what they sign with. See `tables.ts`. */
export interface PersonTables {
  person: { personId: string; name: string; initials: string; role: string; retired: 0 | 1; retiredReason: string; addedSeq: number };
  passphrase: { personId: string; N: number; r: number; p: number; /** Hex. */ salt: string; /** Hex. */ hash: string; setAt: string };
  /** Wrong passphrases since the last right one. */
  signing_refused: { personId: string; times: number; lastAt: string };
}
