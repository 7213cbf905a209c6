import { InputError } from '../calculation/input-error.ts';
import { factorise, solveUpper } from '../statistics/householder.ts';
import type { AreaReading } from './area-reading.ts';
import { againstSurroundings } from './against-surroundings.ts';
import { levelsOf } from './levels.ts';
import type { GreyPicture } from './picture.ts';
import { startThreshold } from './start-threshold.ts';

/** Pixels that the surface is fitted to, about: it has five terms, more pixels would only take longer. */
const MOST_FITTED = 3_000;
const FEWEST_FITTED = 60;
const ROUNDS = 12;
/** A column of the fit that is left with less than this share of the largest says nothing of its own. */
const DEPENDENT = 1e-6;
/** Light that differs by more than this within the region cannot be evened out. */
const STEEPEST = 4;

/** Every `step`-th pixel of a picture, and where in the whole, from −1 to 1, each of them lies. */
interface Thinned extends GreyPicture {
  inside: Uint8Array;
  across: Float64Array;
  down: Float64Array;
}

/**
 * The light over a region, 1 on average: a surface of second order, fitted to the logarithm of grey, because light
 * multiplies what a print reflects. Print and bare places each have a grey of their own; which pixel is on which side and
 * the surface are found in turns, from two starts (the picture as it is, and held against its surroundings), and the better
 * fit is taken.
 * @param inside 1 for pixels of the region
 * @returns light per pixel of the picture
 * @throws InputError on `light` when the pixels named do not reach over the region, or light differs more than fourfold
 */
export function lightOver(picture: GreyPicture, inside: Uint8Array, removed: AreaReading['removed'], on: Exclude<AreaReading['light'], 'as-is'>): Float64Array {
  const thin = thinned(picture, inside);
  const wanted = on === 'both' ? null : (on === 'bare') === (removed === 'lighter') ? 1 : 0;
  const starts = [thin.grey, againstSurroundings(thin, thin.inside)].map((grey) => sidesOf(thin, grey));
  const fits = starts.map((sides) => settle(thin, sides, wanted));
  const { terms } = fits.reduce((a, b) => (b.misfit < a.misfit ? b : a));
  const light = lightOfAll(picture, terms);
  let [sum, count, low, high] = [0, 0, Infinity, 0];
  for (let index = 0; index < light.length; index++) {
    if (!inside[index]) continue;
    const value = light[index]!;
    [sum, count, low, high] = [sum + value, count + 1, Math.min(low, value), Math.max(high, value)];
  }
  if (!(high / low < STEEPEST)) throw new InputError('light', on, 'The light differs more than fourfold within the region; light it evenly and take the picture again, or choose a smaller region.');
  return light.map((value) => (value * count) / sum);
}

function lightOfAll({ width, height }: GreyPicture, terms: number[]): Float64Array {
  const light = new Float64Array(width * height);
  const [x1, y1, xx, xy, yy] = terms as [number, number, number, number, number];
  for (let row = 0; row < height; row++) {
    const y = placeOf(row, height);
    for (let column = 0; column < width; column++) {
      const x = placeOf(column, width);
      light[row * width + column] = Math.exp(x1 * x + y1 * y + xx * x * x + xy * x * y + yy * y * y);
    }
  }
  return light;
}

/** The middle of a pixel, with the picture reaching from −1 to 1. */
function placeOf(pixel: number, pixels: number): number {
  return (2 * pixel + 1) / pixels - 1;
}

function thinned({ width, height, grey }: GreyPicture, inside: Uint8Array): Thinned {
  const step = Math.max(1, Math.round(Math.sqrt((width * height) / MOST_FITTED)));
  const columns = Math.max(1, Math.floor(width / step));
  const rows = Math.max(1, Math.floor(height / step));
  const at = Array.from({ length: columns * rows }, (_, index) => ({ x: (index % columns) * step + (step >> 1), y: Math.floor(index / columns) * step + (step >> 1) }));
  return {
    width: columns,
    height: rows,
    grey: Uint8Array.from(at, ({ x, y }) => grey[y * width + x]!),
    inside: Uint8Array.from(at, ({ x, y }) => inside[y * width + x]!),
    across: Float64Array.from(at, ({ x }) => placeOf(x, width)),
    down: Float64Array.from(at, ({ y }) => placeOf(y, height)),
  };
}

function settle(thin: Thinned, start: Uint8Array, wanted: 0 | 1 | null): { terms: number[]; misfit: number } {
  let sides = start;
  for (let round = 0; ; round++) {
    const terms = fitSurface(thin, sides, wanted);
    const even = surface(thin, terms).map((light, index) => thin.grey[index]! / light);
    const next = sidesOf(thin, even);
    if (round === ROUNDS || next.every((side, index) => side === sides[index])) return { terms, misfit: misfit(thin, even, next) };
    sides = next;
  }
}

/** Squares weigh by grey², since the same grain is a smaller part of a lighter grey. */
function fitSurface(thin: Thinned, sides: Uint8Array, wanted: 0 | 1 | null): number[] {
  const used = [...thin.grey.keys()].filter((index) => thin.inside[index] && thin.grey[index]! > 0 && (wanted === null || sides[index] === wanted));
  if (wanted !== null) requireReach(thin, used);
  const both = wanted === null && used.some((index) => sides[index] === 1) && used.some((index) => sides[index] === 0);
  const weighted = (value: (index: number) => number) => used.map((index) => thin.grey[index]! * value(index));
  const columns = [...[0, 1, 2, 3, 4].map((term) => weighted((index) => termsAt(thin, index)[term]!)), weighted(() => 1), ...(both ? [weighted((index) => sides[index]!)] : [])];
  if (used.length > columns.length) {
    const { upper, rotated } = factorise(columns, weighted((index) => Math.log(thin.grey[index]!)));
    const sizes = upper.map((row, place) => Math.abs(row[place]!));
    if (Math.min(...sizes) > DEPENDENT * Math.max(...sizes)) return solveUpper(upper, rotated).slice(0, 5);
  }
  throw new InputError('light', null, 'The region is too narrow or too dark for evening out its light; choose a larger one, or take the picture as it is.');
}

function requireReach(thin: Thinned, used: number[]): void {
  const all = [...thin.inside.keys()].filter((index) => thin.inside[index]);
  const reach = (pixels: number[], along: Float64Array) => {
    let [low, high] = [1, -1];
    for (const index of pixels) [low, high] = [Math.min(low, along[index]!), Math.max(high, along[index]!)];
    return high - low;
  };
  const enough = used.length >= FEWEST_FITTED && [thin.across, thin.down].every((along) => reach(used, along) >= 0.6 * reach(all, along));
  if (!enough) throw new InputError('light', null, 'The places that the light is to be read from do not reach over the region; read it from the others or from both.');
}

/** Mean squared distance from the mean of the own side, as a share of the squared distance between the sides. */
function misfit({ inside }: Thinned, even: Float64Array, sides: Uint8Array): number {
  const side = [0, 1].map((which) => even.filter((_, index) => inside[index] === 1 && sides[index] === which));
  const [dark, light] = side.map((values) => {
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    return { mean, squares: values.reduce((sum, value) => sum + (value - mean) ** 2, 0), count: values.length };
  });
  if (dark!.count === 0 || light!.count === 0) return Infinity;
  return (dark!.squares + light!.squares) / (dark!.count + light!.count) / Math.max(1e-9, (light!.mean - dark!.mean) ** 2);
}

function sidesOf({ width, height, inside }: Thinned, grey: ArrayLike<number>): Uint8Array {
  const cut = startThreshold(levelsOf(width, height, inside, (index) => grey[index]!));
  return Uint8Array.from(inside, (_, index) => (grey[index]! > cut ? 1 : 0));
}

function surface(thin: Thinned, terms: number[]): Float64Array {
  return Float64Array.from(thin.grey, (_, index) => Math.exp(termsAt(thin, index).reduce((sum, term, place) => sum + term * terms[place]!, 0)));
}

function termsAt({ across, down }: Thinned, index: number): [number, number, number, number, number] {
  const [x, y] = [across[index]!, down[index]!];
  return [x, y, x * x, x * y, y * y];
}
