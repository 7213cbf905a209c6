import type { ResultValue } from '../calculation/result.ts';
import { meanOfReplicates } from '../statistics/mean-of-replicates.ts';
import { hueDeg } from './lab.ts';

/** Mean hue angle of replicate colours about the hue of their mean, so that 359° and 1° make 0°; its interval may pass 0° or 360°. */
export function meanHue(colours: readonly (readonly [number, number])[], level: number): ResultValue {
  const mean = (place: 0 | 1) => colours.reduce((total, colour) => total + colour[place], 0) / colours.length;
  const centre = hueDeg(mean(0), mean(1));
  const turns = colours.map(([a, b]) => ((hueDeg(a, b) - centre + 540) % 360) - 180);
  const turn = meanOfReplicates(turns, '°', level);
  const moved = (end: number | null) => (end === null ? null : centre + end);
  return { ...turn, value: (centre + turn.value! + 360) % 360, low: moved(turn.low), high: moved(turn.high) };
}
