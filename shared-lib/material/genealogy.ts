/** A lot in a list that shows by indentation what went into what. */
export interface LotPlace {
  lotId: string;
  /** 0 for what went in directly. */
  depth: number;
  /** Listed with what it is made of further up already. */
  again: boolean;
}

/**
 * Everything below a lot in one list, each followed by its own. It ends also where two benches that were brought together
 * have made a loop.
 * @param next what a lot was made from, or what was made from it
 */
export function lotTree(lotId: string, next: (lotId: string) => string[]): LotPlace[] {
  const list: LotPlace[] = [];
  const seen = new Set([lotId]);
  const follow = (from: string, depth: number): void => {
    for (const part of next(from)) {
      const again = seen.has(part);
      list.push({ lotId: part, depth, again });
      if (again) continue;
      seen.add(part);
      follow(part, depth + 1);
    }
  };
  follow(lotId, 0);
  return list;
}

/**
 * The loop that making `lotId` from `partIds` would close, from the lot back to itself (`[A, B, A]`), or `null` where
 * there is none.
 * @param partsOf what a lot was made from
 */
export function loopThrough(lotId: string, partIds: readonly string[], partsOf: (lotId: string) => string[]): string[] | null {
  const seen = new Set<string>();
  const wayBack = (from: string): string[] | null => {
    if (from === lotId) return [from];
    if (seen.has(from)) return null;
    seen.add(from);
    for (const part of partsOf(from)) {
      const way = wayBack(part);
      if (way) return [from, ...way];
    }
    return null;
  };
  for (const part of partIds) {
    const way = wayBack(part);
    if (way) return [lotId, ...way];
  }
  return null;
}
