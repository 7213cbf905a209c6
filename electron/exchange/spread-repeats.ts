/**
 * Machines log faster than their displacement resolves, so that several forces stand at one displacement. Spreads such
 * readings evenly over the step to the next displacement (at the end: over the step before), so that each force is kept
 * and the displacement rises. In place.
 * @param displacementMm not falling.
 * @returns how many points were moved.
 */
export function spreadRepeats(displacementMm: Float64Array): number {
  let moved = 0;
  let step = 0;
  for (let start = 0; start < displacementMm.length; ) {
    const at = displacementMm[start]!;
    let end = start + 1;
    while (end < displacementMm.length && displacementMm[end] === at) end += 1;
    if (end < displacementMm.length) step = displacementMm[end]! - at;
    for (let index = start + 1; index < end; index += 1) displacementMm[index] = at + (step * (index - start)) / (end - start);
    moved += end - start - 1;
    start = end;
  }
  return moved;
}
