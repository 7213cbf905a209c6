import { Matrix, solve } from 'ml-matrix';
import { drawIntervals } from '../../shared-lib/surface-energy/angle-monte-carlo.ts';
import { angleScatter } from '../../shared-lib/surface-energy/angle-scatter.ts';
import { owensWendt, owensWendtOrdinate } from '../../shared-lib/surface-energy/owens-wendt.ts';
import type { WettingModel } from '../../shared-lib/surface-energy/wetting-model.ts';
import { seededRandom } from '../../shared-lib/statistics/random.ts';
import { compare, milliseconds } from './compare.ts';

const DRAWS = 10_000;
const radians = Math.PI / 180;

/** Water, diiodomethane and formamide (Ström and others 1987), mN/m; five drops of each on treated polyester. */
const liquids = [
  { name: 'water', totalMNm: 72.8, dispersiveMNm: 21.8, polarMNm: 51 },
  { name: 'diiodomethane', totalMNm: 50.8, dispersiveMNm: 50.8, polarMNm: 0 },
  { name: 'formamide', totalMNm: 58, dispersiveMNm: 39, polarMNm: 19 },
];
const scatter = angleScatter([
  [64.1, 66.0, 65.2, 63.8, 66.4],
  [36.2, 38.1, 37.0, 37.7, 36.5],
  [46.9, 48.8, 47.5, 49.0, 47.2],
]);
const ours = owensWendt(liquids);

/** The same model, its least squares by the library. */
const design = new Matrix(liquids.map(({ dispersiveMNm, polarMNm }) => [1, Math.sqrt(polarMNm / dispersiveMNm)]));
const byLibrary: WettingModel = {
  ...ours,
  solve: (cosines, out) => {
    const ordinates = liquids.map(({ totalMNm, dispersiveMNm }, index) => owensWendtOrdinate(totalMNm, dispersiveMNm, cosines[index]!));
    const roots = solve(design, Matrix.columnVector(ordinates));
    out[1] = roots.get(0, 0) ** 2;
    out[2] = roots.get(1, 0) ** 2;
    out[0] = out[1] + out[2];
    return true;
  },
};

const random = seededRandom(3);
const drawn = Array.from({ length: DRAWS }, () =>
  Float64Array.from(scatter, ({ meanDeg, uncertaintyDeg }) => Math.cos((meanDeg + uncertaintyDeg! * random.normal()) * radians)),
);

/** Solves every draw; the sum keeps the work from being left out. */
function solveAll(model: WettingModel): number {
  const out = new Float64Array(3);
  let sum = 0;
  for (const cosines of drawn) {
    model.solve(cosines, out);
    sum += out[0]!;
  }
  return sum;
}

const difference = Math.abs(solveAll(ours) - solveAll(byLibrary)) / DRAWS;
if (!(difference < 1e-9)) throw new Error(`The two do not solve the same: they differ by ${difference} mN/m.`);

await compare({
  what: 'contact angle: solving 10 000 draws of an Owens–Wendt fit',
  peer: 'the same draws solved by ml-matrix',
  target: { atLeast: 20 },
  unit: 'ms',
  ours: milliseconds(() => solveAll(ours)),
  theirs: milliseconds(() => solveAll(byLibrary)),
});

// Drawing errors and reading off the ends costs both the same, so that the whole cannot differ as much.
await compare({
  what: 'contact angle: the same with drawing and intervals',
  peer: 'the same draws and intervals around ml-matrix',
  target: { atLeast: 3 },
  unit: 'ms',
  ours: milliseconds(() => drawIntervals(ours, scatter, 0.95, 1)),
  theirs: milliseconds(() => drawIntervals(byLibrary, scatter, 0.95, 1)),
});
