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
  // Typed arrays: whole words and doubles held in closures would each be put on the heap anew.
  const state = Int32Array.of(splitmix(), splitmix(), splitmix(), splitmix());
  const spare = new Float64Array(1);
  let hasSpare = false;

  const word = () => {
    const b = state[1]!;
    const c = state[2]! ^ state[0]!;
    const d = state[3]! ^ b;
    state[1] = b ^ c;
    state[0]! ^= d;
    state[2] = c ^ (b << 9);
    state[3] = rotate(d, 11);
    return Math.imul(rotate(Math.imul(b, 5), 7), 9) >>> 0;
  };
  const uniform = () => ((word() >>> 5) * 67108864 + (word() >>> 6)) / 9007199254740992;
  const normal = () => {
    if (hasSpare) {
      hasSpare = false;
      return spare[0]!;
    }
    for (;;) {
      const x = 2 * uniform() - 1;
      const y = 2 * uniform() - 1;
      const square = x * x + y * y;
      if (square > 0 && square < 1) {
        const factor = Math.sqrt((-2 * Math.log(square)) / square);
        spare[0] = y * factor;
        hasSpare = true;
        return x * factor;
      }
    }
  };
  return { uniform, normal };
}

function rotate(word: number, bits: number): number {
  return (word << bits) | (word >>> (32 - bits));
}
