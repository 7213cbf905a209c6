import type { Random } from '../../../shared-lib/statistics/random.ts';
import { writeGreyPng } from '../../picture/grey-png.ts';

const [WIDTH, HEIGHT] = [400, 300];
const [PRINT, BARE] = [82, 206];

/**
 * A photograph of a print after the tape, on a white base: light from one side, soft edges, grain.
 * @param share of the print that came off, about
 */
export function tapePhotograph(random: Random, share: number): Uint8Array {
  const spots: { x: number; y: number; radius: number }[] = [];
  for (let area = 0; area < share * WIDTH * HEIGHT; ) {
    const radius = 4 + 14 * random.uniform() ** 2;
    spots.push({ x: WIDTH * random.uniform(), y: HEIGHT * random.uniform(), radius });
    area += Math.PI * radius ** 2;
  }
  const grey = Uint8Array.from({ length: WIDTH * HEIGHT }, (_, index) => {
    const [x, y] = [index % WIDTH, Math.floor(index / WIDTH)];
    // Distance to the nearest edge, within one pixel: the lens blurs no further.
    const inside = spots.reduce((most, spot) => Math.max(most, spot.radius - Math.hypot(x - spot.x, y - spot.y)), -1);
    const bare = Math.min(1, Math.max(0, (inside + 1) / 2));
    const light = 1.08 - 0.2 * (x / WIDTH);
    return Math.min(255, Math.max(0, Math.round(light * (PRINT + (BARE - PRINT) * bare) + 4 * random.normal())));
  });
  return writeGreyPng({ width: WIDTH, height: HEIGHT, grey });
}
