export interface Random {
  /** Uniform on [0, 1), 53 bits. */
  uniform(): number;
  /** Standard normal. */
  normal(): number;
}

/**
 * A repeatable stream of random numbers: xoshiro128** (Blackman and Vigna, ACM Trans. Math. Softw. 47 (2021) 36),
 * its state filled by splitmix32 from `seed`; normals by Marsaglia's polar method (SIAM Rev. 6 (1964) 260).
 * Not for secrets.
 */
export function seededRandom(seed: number): Random {
  let mixing = seed | 0;
  const splitmix = () => {
    mixing = (mixing + 0x9e3779b9) | 0;
    let word = mixing ^ (mixing >>> 16);
    word = Math.imul(word, 0x21f0aaad);
    word ^= word >>> 15;
    word = Math.imul(word, 0x735a2d97);
    return word ^ (word >>> 15);
  };
  let a = splitmix();
  let b = splitmix();
  let c = splitmix();
  let d = splitmix();
  let spare: number | null = null;

  const word = () => {
    const scrambled = Math.imul(rotate(Math.imul(b, 5), 7), 9);
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = rotate(d, 11);
    return scrambled >>> 0;
  };
  const uniform = () => ((word() >>> 5) * 67108864 + (word() >>> 6)) / 9007199254740992;
  const normal = () => {
    if (spare !== null) {
      const kept = spare;
      spare = null;
      return kept;
    }
    for (;;) {
      const x = 2 * uniform() - 1;
      const y = 2 * uniform() - 1;
      const square = x * x + y * y;
      if (square > 0 && square < 1) {
        const factor = Math.sqrt((-2 * Math.log(square)) / square);
        spare = y * factor;
        return x * factor;
      }
    }
  };
  return { uniform, normal };
}

function rotate(word: number, bits: number): number {
  return (word << bits) | (word >>> (32 - bits));
}
