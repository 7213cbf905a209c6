import Color from 'colorjs.io';
import { converter, differenceCiede2000, differenceCie94, differenceCmc } from 'culori';
import { describe, expect, it } from 'vitest';
import { deltaE2000 } from '../../../shared-lib/colour/delta-e-2000.ts';
import { deltaE94 } from '../../../shared-lib/colour/delta-e-94.ts';
import { deltaECmc } from '../../../shared-lib/colour/delta-e-cmc.ts';
import type { Lab } from '../../../shared-lib/colour/lab.ts';
import { labFromXyz, xyzFromLab } from '../../../shared-lib/colour/xyz.ts';
import { seededRandom } from '../../../shared-lib/statistics/random.ts';

/** General colour libraries, on 10 000 seeded pairs: half anywhere, half as close together as prints are. */
const random = seededRandom(20);
const pairs = Array.from({ length: 10_000 }, (_, index): [Lab, Lab] => {
  const one: Lab = [100 * random.uniform(), 200 * random.uniform() - 100, 200 * random.uniform() - 100];
  if (index % 2 === 0) return [one, [100 * random.uniform(), 200 * random.uniform() - 100, 200 * random.uniform() - 100]];
  return [one, [one[0] + random.normal(), one[1] + 2 * random.normal(), one[2] + 2 * random.normal()]];
});
const lab65 = ([l, a, b]: Lab) => ({ mode: 'lab65' as const, l, a, b });
const color = ([l, a, b]: Lab) => new Color('lab', [l, a, b]);

describe('10 000 pairs against culori', () => {
  const ciede2000 = differenceCiede2000();
  const ciede94 = differenceCie94();
  const cmc = differenceCmc(2, 1);

  it('ΔE00', () => {
    const worst = Math.max(...pairs.map(([one, other]) => Math.abs(deltaE2000(one, other) - ciede2000(lab65(one), lab65(other)))));
    expect(worst).toBeLessThan(1e-9);
  });

  it('ΔE94', () => {
    const worst = Math.max(...pairs.map(([one, other]) => Math.abs(deltaE94(one, other) - ciede94(lab65(one), lab65(other)))));
    expect(worst).toBeLessThan(1e-6);
  });

  it('CMC 2:1', () => {
    const worst = Math.max(...pairs.map(([one, other]) => Math.abs(deltaECmc(one, other, { l: 2, c: 1 }) - cmc(lab65(one), lab65(other)))));
    expect(worst).toBeLessThan(1e-6);
  });

  it('X, Y, Z to L*a*b* under D65', () => {
    // The white point that culori derives from x, y 0.3127, 0.329.
    const white = [(100 * 0.3127) / 0.329, 100, (100 * (1 - 0.3127 - 0.329)) / 0.329] as const;
    const toLab = converter('lab65');
    for (const [one] of pairs.slice(0, 2000)) {
      const xyz = xyzFromLab(one, white);
      const theirs = toLab({ mode: 'xyz65', x: xyz[0] / 100, y: xyz[1] / 100, z: xyz[2] / 100 });
      const ours = labFromXyz(xyz, white);
      [theirs.l, theirs.a, theirs.b].forEach((value, place) => expect(Math.abs(ours[place]! - value)).toBeLessThan(1e-6));
    }
  });
});

describe('10 000 pairs against colorjs.io', () => {
  it('ΔE00', () => {
    const worst = Math.max(...pairs.map(([one, other]) => Math.abs(deltaE2000(one, other) - Color.deltaE(color(one), color(other), { method: '2000' }))));
    expect(worst).toBeLessThan(1e-9);
  });

  it('CMC 2:1', () => {
    const worst = Math.max(...pairs.map(([one, other]) => Math.abs(deltaECmc(one, other, { l: 2, c: 1 }) - Color.deltaE(color(one), color(other), { method: 'CMC' }))));
    expect(worst).toBeLessThan(1e-6);
  });
});
