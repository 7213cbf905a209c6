import { pointer, type StripBox } from './strip-box.ts';
import type { StripShape, StripSpec } from './strip.ts';

type Reading = StripSpec['readings'][number];

/** Length of the mark that says that a reading is a bound: an arrow, or where the rows are many a stroke. */
const ARROW = 6;
const STROKE = 3;

interface Placed {
  reading: Reading;
  x: number;
  beyond: -1 | 0 | 1;
  /** Ends of what is drawn, for stacking. */
  from: number;
  to: number;
  /** Length of what stands beside a bound. */
  mark: number;
}

/**
 * Readings above the baseline, no jitter: each in the lowest row where it does not cover another, rows drawn closer
 * together when there are many, so that the column's height still tells how many there are.
 */
export function layoutReadings(readings: StripSpec['readings'], box: StripBox): StripShape[] {
  const room = box.baseline - box.top;
  const radius = Math.min(2.6, Math.max(1.5, room * 0.13));
  const lowest = box.baseline - room * 0.22 - radius - 0.5;
  const highest = box.top + radius + 1;
  const apart = radius * 2 + 0.4;
  const wide = inRows(readings, radius, box, ARROW);
  const { placed, rows, count } = (wide.count - 1) * apart > lowest - highest ? inRows(readings, radius, box, STROKE) : wide;
  const step = count > 1 ? Math.min(apart, (lowest - highest) / (count - 1)) : 0;
  return placed.flatMap((item, index) => draw(item, lowest - rows[index]! * step, radius, box));
}

/** @param mark length of what stands beside a bound */
function inRows(readings: StripSpec['readings'], radius: number, box: StripBox, mark: number): { placed: Placed[]; rows: number[]; count: number } {
  const placed = readings.map((reading) => place(reading, radius, box, mark)).sort((a, b) => a.from - b.from || a.to - b.to);
  const rowEnds: number[] = [];
  const rows = placed.map((item) => {
    const free = rowEnds.findIndex((end) => end <= item.from);
    const row = free === -1 ? rowEnds.length : free;
    // Dots may touch; bars that touch would read as one.
    rowEnds[row] = isBracket(item.reading) ? item.to + 2.5 : item.to - radius * 0.5;
    return row;
  });
  return { placed, rows, count: rowEnds.length };
}

function isBracket({ low, high }: Reading): boolean {
  return low !== undefined && high !== undefined && high > low;
}

function place(reading: Reading, radius: number, box: StripBox, mark: number): Placed {
  const { x, beyond } = box.place(reading.value);
  const low = reading.low === undefined ? x : box.place(reading.low).x;
  const high = reading.high === undefined ? x : box.place(reading.high).x;
  const from = Math.min(low, x - radius - (reading.open === 'down' ? mark : 0));
  const to = Math.max(high, x + radius + (reading.open === 'up' ? mark : 0));
  return { reading, x, beyond, from, to, mark };
}

function draw({ reading, x, beyond, mark }: Placed, y: number, radius: number, box: StripBox): StripShape[] {
  const shapes: StripShape[] = [];
  const bracketed = isBracket(reading);
  if (bracketed) {
    const from = box.place(reading.low!).x;
    const to = box.place(reading.high!).x;
    shapes.push({ kind: 'rect', role: 'bracket', x: from, y: y - 0.8, width: Math.max(0.8, to - from), height: 1.6 });
  }
  if (reading.open !== undefined) {
    const side = reading.open === 'up' ? 1 : -1;
    const tip = Math.min(box.right + box.left, Math.max(0, x + side * (radius + mark)));
    shapes.push({ kind: 'line', role: 'censored', x1: x + side * radius, y1: y, x2: tip, y2: y, width: 0.9 });
    if (mark === ARROW) shapes.push({ kind: 'path', role: 'censored', points: [[tip - side * 2.2, y - 1.8], [tip, y], [tip - side * 2.2, y + 1.8]], closed: false, width: 0.9 });
  }
  if (reading.doubtful) {
    const arm = radius * 0.95;
    shapes.push({ kind: 'line', role: 'doubtful', x1: x - arm, y1: y - arm, x2: x + arm, y2: y + arm, width: 1.1 });
    shapes.push({ kind: 'line', role: 'doubtful', x1: x - arm, y1: y + arm, x2: x + arm, y2: y - arm, width: 1.1 });
  } else if (reading.open !== undefined) {
    shapes.push({ kind: 'circle', role: 'censored', x, y, radius: radius - 0.4 });
  } else if (!bracketed) {
    shapes.push({ kind: 'circle', role: 'reading', x, y, radius });
  }
  if (beyond !== 0) shapes.push(pointer(x, y, beyond, box));
  return shapes;
}
