import { commonDomain } from './strip-domain.ts';
import { pointer, stripBox, type StripBox } from './strip-box.ts';
import { layoutReadings } from './strip-readings.ts';
import { ticks } from './ticks.ts';
import type { StripDrawing, StripShape, StripSpec } from './strip.ts';

/** From this height on there is room for numbers under the baseline. */
const HEIGHT_WITH_NUMBERS = 34;
const NUMBER_SIZE = 9;
/** Numbers stand at least this far apart; a longer one is left to its tick. */
const NUMBER_ROOM = 48;

/**
 * Lays out one strip in a box of `width` × `height` px (readable from 120 × 18 on; a strip of 34 px and more also shows
 * numbers under its scale). Readings stand above the baseline, stacked where they coincide; interval and value lie on
 * it; each limit is a bracket open to its allowed side. Nothing is left out: what lies outside `spec.domain` is drawn
 * at the edge with a pointer.
 */
export function layoutStrip(spec: StripSpec, width: number, height: number): StripDrawing {
  const domain = spec.domain ?? commonDomain([spec]);
  const numbers = height >= HEIGHT_WITH_NUMBERS;
  const bottom = numbers ? height - NUMBER_SIZE - 3 : height - 1;
  const box = stripBox(domain, width, bottom);
  const shapes = [
    ...allowedSide(spec, box),
    scaleLine(box),
    ...(numbers ? scaleNumbers(domain, box, height) : []),
    ...result(spec, box),
    ...limitBrackets(spec, box),
    ...layoutReadings(spec.readings, box),
  ];
  return { width, height, domain, label: spec.label, shapes };
}

function allowedSide({ lowerLimit, upperLimit }: StripSpec, box: StripBox): StripShape[] {
  if (lowerLimit === null && upperLimit === null) return [];
  const from = lowerLimit === null ? 0 : box.place(lowerLimit).x;
  const to = upperLimit === null ? box.right + box.left : box.place(upperLimit).x;
  if (to <= from) return [];
  return [{ kind: 'rect', role: 'allowed', x: from, y: box.top, width: to - from, height: box.bottom - box.top }];
}

function scaleLine(box: StripBox): StripShape {
  return { kind: 'line', role: 'scale', x1: 1, y1: box.baseline, x2: box.right + box.left - 1, y2: box.baseline, width: 1 };
}

function scaleNumbers([low, high]: [number, number], box: StripBox, height: number): StripShape[] {
  const most = Math.max(2, Math.floor((box.right - box.left) / NUMBER_ROOM));
  return ticks(low, high, most).flatMap(({ value, text }): StripShape[] => {
    const { x } = box.place(value);
    const half = text.length * NUMBER_SIZE * 0.27;
    const anchor = x - half < 0 ? 'start' : x + half > box.right + box.left ? 'end' : 'middle';
    const tick: StripShape = { kind: 'line', role: 'scale', x1: x, y1: box.bottom - 2, x2: x, y2: box.bottom, width: 1 };
    if (half * 2 > NUMBER_ROOM) return [tick];
    return [tick, { kind: 'text', role: 'scale', x, y: height - 2, anchor, size: NUMBER_SIZE, text }];
  });
}

/** A limit opens to its allowed side, so that the side is seen without colour. */
function limitBrackets({ lowerLimit, upperLimit }: StripSpec, box: StripBox): StripShape[] {
  const bracket = (value: number | null, side: 1 | -1): StripShape[] => {
    if (value === null) return [];
    const { x, beyond } = box.place(value);
    const foot = x + side * 3;
    const top = box.top + 0.5;
    const bottom = box.bottom - 0.5;
    const shape: StripShape = { kind: 'path', role: 'limit', points: [[foot, top], [x, top], [x, bottom], [foot, bottom]], closed: false, width: 1.2 };
    return beyond === 0 ? [shape] : [shape, pointer(x, box.baseline, beyond, box)];
  };
  return [...bracket(lowerLimit, 1), ...bracket(upperLimit, -1)];
}

function result(spec: StripSpec, box: StripBox): StripShape[] {
  const thick = Math.min(6, Math.max(3, (box.bottom - box.top) * 0.2));
  const shapes: StripShape[] = [];
  const low = spec.low ?? spec.value;
  const high = spec.high ?? spec.value;
  if (low !== null && high !== null && high > low) {
    const from = box.place(low).x;
    const to = box.place(high).x;
    const role = spec.bound === 'between' ? 'between' : 'interval';
    shapes.push({ kind: 'rect', role, x: from, y: box.baseline - thick / 2, width: Math.max(0.8, to - from), height: thick });
  }
  if (spec.value === null || spec.bound === 'between') return shapes;
  const { x, beyond } = box.place(spec.value);
  if (spec.bound === 'at-least') shapes.push(...openSide(x, 1, box));
  if (spec.bound === 'at-most') shapes.push(...openSide(x, -1, box));
  shapes.push({ kind: 'line', role: 'value', x1: x, y1: box.baseline - thick, x2: x, y2: Math.min(box.bottom - 1, box.baseline + thick + 1), width: 2 });
  if (beyond !== 0) shapes.push(pointer(x, box.baseline, beyond, box));
  return shapes;
}

/** From a bound, an arrow to the end of the scale: the value may lie anywhere along it. */
function openSide(x: number, side: 1 | -1, box: StripBox): StripShape[] {
  const end = side === 1 ? box.right + box.left - 1 : 1;
  const tip = 4;
  return [
    { kind: 'line', role: 'interval', x1: x, y1: box.baseline, x2: end - side * tip, y2: box.baseline, width: 2 },
    { kind: 'path', role: 'interval', points: [[end - side * tip, box.baseline - 3], [end, box.baseline], [end - side * tip, box.baseline + 3]], closed: true, width: 0 },
  ];
}
