import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../shared-lib/statistics/random.ts';
import { plain, type Making } from '../reference/picture/made-picture.ts';
import { read } from '../reference/picture/read-made-picture.ts';

const PICTURES = 300;

/** Pictures of every kind that a bench sees: patches of 6 to 30 pixels, blur to 2 pixels, grain to 12 grey, uneven light. */
function anyPicture(seed: number): Making {
  const random = seededRandom(seed);
  const u = () => random.uniform();
  const print = 20 + 100 * u();
  return {
    ...plain, seed, share: 0.01 + 0.6 * u() ** 2, patch: 6 + 24 * u(), print, bare: Math.min(250, print + 60 + 90 * u()),
    blur: u() < 0.2 ? 0 : 2 * u(), grain: 12 * u(), slope: 0.9 * u(), vignette: 0.4 * u(), blurIn: u() < 0.5 ? 'light' : 'grey',
  };
}

describe('areas of made pictures, whose removed pixels were counted', () => {
  it(`lie within the 95 % interval in 95 of 100 of ${PICTURES} pictures, and within 1 % of the region where the interval says so`, () => {
    const made = Array.from({ length: PICTURES }, (_, index) => {
      const making = anyPicture(9000 + index);
      return read(making, { light: 'both', smooth: making.grain > 6 });
    });
    const covered = made.filter(({ truth, area }) => area.removedPct.low! <= truth && truth <= area.removedPct.high!).length;
    const firm = made.filter(({ area }) => !area.flags.some(({ code }) => code === 'soft-edges'));
    const right = firm.filter(({ truth, area }) => Math.abs(area.removedPct.value! - truth) <= 1).length;
    process.stdout.write(`covered ${covered} of ${PICTURES}; ${firm.length} with firm edges, of which ${right} right to 1 %\n`);
    expect(covered / PICTURES).toBeGreaterThanOrEqual(0.95);
    expect(right).toBe(firm.length);
    // An interval that covers everything would tell nothing.
    expect(firm.length / PICTURES).toBeGreaterThan(0.5);
  });
});
