import type { Bound } from '../calculation/result.ts';

/** What a strip shows: the readings, the interval and the limit of one property on one line. */
export interface StripSpec {
  unit: string;
  readings: { value: number; open?: 'up' | 'down'; low?: number; high?: number; doubtful?: boolean }[];
  value: number | null;
  low: number | null;
  high: number | null;
  bound: Bound;
  lowerLimit: number | null;
  upperLimit: number | null;
  /** Common scale for a column of strips; `null`: the strip finds its own. */
  domain: [number, number] | null;
  /** One sentence for screen readers. */
  label: string;
}

/** What a shape of a strip stands for; colour and weight follow from it. */
export type StripRole =
  /** Baseline and scale. */
  | 'scale'
  /** The allowed side of the limit. */
  | 'allowed'
  | 'limit'
  | 'interval'
  /** A stated range within which nothing better is known. */
  | 'between'
  | 'value'
  | 'reading'
  /** A reading whose true value lies beyond, in the arrow's direction. */
  | 'censored'
  /** A reading known only to lie within a bracket. */
  | 'bracket'
  | 'doubtful'
  /** Something that lies outside the common scale; drawn at the edge. */
  | 'beyond';

export type StripShape =
  | { kind: 'line'; role: StripRole; x1: number; y1: number; x2: number; y2: number; width: number }
  | { kind: 'rect'; role: StripRole; x: number; y: number; width: number; height: number }
  | { kind: 'circle'; role: StripRole; x: number; y: number; radius: number }
  | { kind: 'path'; role: StripRole; points: [number, number][]; closed: boolean; width: number }
  | { kind: 'text'; role: StripRole; x: number; y: number; anchor: 'start' | 'middle' | 'end'; size: number; text: string };

/** A strip laid out: shapes in painting order, in pixels, y down. */
export interface StripDrawing {
  width: number;
  height: number;
  domain: [number, number];
  label: string;
  shapes: StripShape[];
}
