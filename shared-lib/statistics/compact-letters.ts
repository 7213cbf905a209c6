const ALPHABET = 'abcdefghijklmnopqrstuvwxyz';
/** More letters than this tell nobody anything. */
const MOST_SETS = 60;

/**
 * Letters such that two groups share one exactly when they are not told apart.
 * @param order the groups' places, the one to get 'a' first (usually falling means).
 * @param differs whether two groups are told apart; symmetric.
 * @returns the letters of each group by place; `null` where more than 60 would be needed.
 * Source: H.-P. Piepho, J. Comput. Graph. Stat. 13 (2004) 456 (insert and absorb).
 */
export function compactLetters(order: readonly number[], differs: (a: number, b: number) => boolean): string[] | null {
  const count = order.length;
  let sets: Set<number>[] = [new Set(order.map((_, place) => place))];
  for (let i = 0; i < count; i++) {
    for (let j = i + 1; j < count; j++) {
      if (!differs(order[i]!, order[j]!)) continue;
      const split: Set<number>[] = [];
      const kept = sets.filter((set) => {
        if (!set.has(i) || !set.has(j)) return true;
        for (const leaver of [j, i]) {
          const part = new Set(set);
          part.delete(leaver);
          split.push(part);
        }
        return false;
      });
      sets = absorb([...kept, ...split]);
      if (sets.length > MOST_SETS * 4) return null;
    }
  }
  if (sets.length > MOST_SETS) return null;
  const ordered = sets.map((set) => [...set].sort((a, b) => a - b)).sort(byPlaces);
  const letters = Array.from({ length: count }, () => '');
  ordered.forEach((set, index) => {
    for (const place of set) letters[order[place]!] += letter(index);
  });
  return letters;
}

/** Leaves out every set that lies within another. */
function absorb(sets: Set<number>[]): Set<number>[] {
  const bySize = [...sets].sort((a, b) => b.size - a.size);
  const kept: Set<number>[] = [];
  for (const set of bySize) if (!kept.some((larger) => [...set].every((place) => larger.has(place)))) kept.push(set);
  return kept;
}

function byPlaces(a: number[], b: number[]): number {
  for (let i = 0; i < Math.min(a.length, b.length); i++) if (a[i] !== b[i]) return a[i]! - b[i]!;
  return a.length - b.length;
}

function letter(index: number): string {
  const turn = Math.floor(index / ALPHABET.length);
  return ALPHABET[index % ALPHABET.length]! + (turn === 0 ? '' : String(turn + 1));
}
