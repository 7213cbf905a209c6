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
