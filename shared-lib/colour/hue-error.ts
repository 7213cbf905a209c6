/** Hue error, greyness and efficiency of a solid from its three filter densities, each 0–1 (Preucil; from memory). */
export interface HueErrorGreyness {
  /** `null` where all three are equal: a grey has no hue to err. */
  hueError: number | null;
  greyness: number;
  efficiency: number;
}

/** (M − L)/(H − L), L/H and 1 − (L + M)/(2H) of the highest, middle and lowest density; the highest must be above zero. */
export function hueErrorGreyness(red: number, green: number, blue: number): HueErrorGreyness {
  const [low, middle, high] = [red, green, blue].sort((one, other) => one - other) as [number, number, number];
  return {
    hueError: high === low ? null : (middle - low) / (high - low),
    greyness: low / high,
    efficiency: 1 - (low + middle) / (2 * high),
  };
}
