import Color from 'colorjs.io';
import { differenceCiede2000 } from 'culori';
import { deltaE2000 } from '../../shared-lib/colour/delta-e-2000.ts';
import type { Lab } from '../../shared-lib/colour/lab.ts';
import { observerWeights } from '../../shared-lib/colour/observer-weights.ts';
import { labFromXyz } from '../../shared-lib/colour/xyz.ts';
import { xyzFromSpectrum } from '../../shared-lib/colour/xyz-from-spectrum.ts';
import { seededRandom } from '../../shared-lib/statistics/random.ts';
import { compare, milliseconds } from './compare.ts';

const PAIRS = 10_000;
const ROUNDS = 100;
const random = seededRandom(5);
const colours = (): Lab[] => Array.from({ length: PAIRS }, () => [100 * random.uniform(), 200 * random.uniform() - 100, 200 * random.uniform() - 100]);
const references = colours();
const samples = colours();

/** Adds up all differences, so that none is left out; a loop of its own for each, so that each is compiled for its own colours. */
function ours(): number {
  let sum = 0;
  for (let round = 0; round < ROUNDS; round++) {
    for (let index = 0; index < PAIRS; index++) sum += deltaE2000(references[index]!, samples[index]!);
  }
  return sum;
}

const culoriDifference = differenceCiede2000();
const asCulori = ([l, a, b]: Lab) => ({ mode: 'lab65' as const, l, a, b });
const culori = { references: references.map(asCulori), samples: samples.map(asCulori) };

function byCulori(): number {
  let sum = 0;
  for (let round = 0; round < ROUNDS; round++) {
    for (let index = 0; index < PAIRS; index++) sum += culoriDifference(culori.references[index]!, culori.samples[index]!);
  }
  return sum;
}

const asColor = ([l, a, b]: Lab) => new Color('lab', [l, a, b]);
const colorJs = { references: references.map(asColor), samples: samples.map(asColor) };

function byColorJs(): number {
  let sum = 0;
  for (let round = 0; round < ROUNDS; round++) {
    for (let index = 0; index < PAIRS; index++) sum += Color.deltaE(colorJs.references[index]!, colorJs.samples[index]!, { method: '2000' });
  }
  return sum;
}

for (const [peer, sum] of [['culori', byCulori()], ['colorjs.io', byColorJs()]] as const) {
  if (!(Math.abs(sum - ours()) < 1e-6 * PAIRS * ROUNDS)) throw new Error(`ΔE00 does not agree with ${peer}.`);
}

const what = '1 000 000 colour differences ΔE00';
await compare({ what, peer: 'culori on colours ready in its own form', target: { atLeast: 3 }, unit: 'ms', runs: 9, ours: milliseconds(ours), theirs: milliseconds(byCulori) });
await compare({ what, peer: 'colorjs.io on colours ready in its own form', target: { atLeast: 10 }, unit: 'ms', runs: 3, ours: milliseconds(ours), theirs: milliseconds(byColorJs) });

const SPECTRA = 50_000;
const grid = { startNm: 380, stepNm: 10, count: 36 };
const weights = observerWeights(grid, 'D50', 2);
const spectra = Array.from({ length: SPECTRA }, () => Float64Array.from({ length: grid.count }, () => random.uniform()));

function toLab(): number {
  let sum = 0;
  for (const spectrum of spectra) sum += labFromXyz(xyzFromSpectrum(weights, spectrum), weights.white)[0];
  return sum;
}

/** X, Y and Z alone. */
function dotProducts(): number {
  const { x, y, z } = weights;
  let sum = 0;
  for (const spectrum of spectra) {
    let [X, Y, Z] = [0, 0, 0];
    for (let band = 0; band < x.length; band++) {
      X += spectrum[band]! * x[band]!;
      Y += spectrum[band]! * y[band]!;
      Z += spectrum[band]! * z[band]!;
    }
    sum += X + Y + Z;
  }
  return sum;
}

await compare({ what: '50 000 spectra of 36 bands to L*a*b*', peer: 'their three dot products in a plain loop', target: { atMost: 2 }, unit: 'ms', ours: milliseconds(toLab), theirs: milliseconds(dotProducts) });
