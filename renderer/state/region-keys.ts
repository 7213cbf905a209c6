import type { Region } from '../../shared-lib/picture/area-reading.ts';

type Rectangle = Extract<Region, { kind: 'rectangle' }>;
interface Size {
  width: number;
  height: number;
}

const directions: Record<string, [number, number]> = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
/** Pixels of the picture at one stroke, and with Alt. */
const STEP = 10;
const FINE = 1;

/** How far a key moves something in the picture, or `null` for other keys. */
export function stepOf({ key, altKey }: { key: string; altKey: boolean }): [number, number] | null {
  const direction = directions[key];
  const step = altKey ? FINE : STEP;
  return direction ? [direction[0] * step, direction[1] * step] : null;
}

/** The rectangle moved, or with `resize` its right and lower side alone, within the picture. */
export function steppedRectangle(from: Rectangle, [dx, dy]: [number, number], resize: boolean, picture: Size): Rectangle {
  if (resize) {
    return { ...from, width: within(from.width + dx, 1, picture.width - from.x), height: within(from.height + dy, 1, picture.height - from.y) };
  }
  return { ...from, x: within(from.x + dx, 0, picture.width - from.width), y: within(from.y + dy, 0, picture.height - from.height) };
}

/** The rectangle between two corners, in whole pixels within the picture. */
export function rectangleBetween([x1, y1]: [number, number], [x2, y2]: [number, number], picture: Size): Rectangle {
  const [left, right] = [within(Math.min(x1, x2), 0, picture.width - 1), within(Math.max(x1, x2), 1, picture.width)];
  const [top, bottom] = [within(Math.min(y1, y2), 0, picture.height - 1), within(Math.max(y1, y2), 1, picture.height)];
  return { kind: 'rectangle', x: left, y: top, width: Math.max(1, right - left), height: Math.max(1, bottom - top) };
}

export function within(value: number, low: number, high: number): number {
  return Math.round(Math.min(high, Math.max(low, value)));
}
