import type { StripShape } from './strip.ts';

const EDGE = 6;

/** The drawing area of a strip: `place` gives the x of a value, kept inside, and whether it lay outside. */
export interface StripBox {
  left: number;
  right: number;
  top: number;
  bottom: number;
  baseline: number;
  place: (value: number) => { x: number; beyond: -1 | 0 | 1 };
}

/** The drawing area for a strip of `width` whose drawing ends at `bottom`. */
export function stripBox(domain: [number, number], width: number, bottom: number): StripBox {
  const left = EDGE;
  const right = width - EDGE;
  const baseline = Math.round((1 + (bottom - 1) * 0.7) * 2) / 2;
  return { left, right, top: 1, bottom, baseline, place: placer(domain, left, right) };
}

function placer([low, high]: [number, number], left: number, right: number): StripBox['place'] {
  // Halved first: the span of the largest numbers would not be finite.
  const span = high / 2 - low / 2;
  return (value) => {
    const share = span > 0 ? (value / 2 - low / 2) / span : 0.5;
    if (share < 0) return { x: left, beyond: -1 };
    if (share > 1) return { x: right, beyond: 1 };
    return { x: left + share * (right - left), beyond: 0 };
  };
}

/** A small filled triangle at the edge, pointing out of the box. */
export function pointer(x: number, y: number, side: 1 | -1, box: StripBox): StripShape {
  const tip = Math.min(box.right + box.left, Math.max(0, x + side * 5));
  return { kind: 'path', role: 'beyond', points: [[x + side, y - 3], [tip, y], [x + side, y + 3]], closed: true, width: 0 };
}
