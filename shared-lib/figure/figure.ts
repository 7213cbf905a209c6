/** A chart as data. The screen and the PDF draw the same description; nothing here knows how. */
export interface Figure {
  /** Unique within its result, kebab-case. */
  id: string;
  title: string;
  /** What the figure shows, in one sentence with the numbers: read aloud by screen readers, printed as the caption. */
  finding: string;
  x: Axis;
  y: Axis;
  series: Series[];
  /** Filled areas between two curves: an interval band, a tolerance. */
  bands?: Band[];
  /** Straight lines across the whole plot: a limit, a mean. */
  lines?: ReferenceLine[];
}

export interface Axis {
  title: string;
  unit?: string;
  scale: 'linear' | 'log' | 'category';
  /** Category names in order, for `scale: 'category'`; points then use the index 0, 1, … */
  categories?: string[];
  min?: number;
  max?: number;
}

export interface Series {
  name: string;
  /** `bars` only with a category x axis. */
  kind: 'points' | 'line' | 'steps' | 'bars';
  /** What the series is, from which colour, marker and dash follow. */
  role: 'reading' | 'fit' | 'reference' | 'doubtful';
  points: FigurePoint[];
  /** Each point's label stands beside it, where there is room. */
  named?: boolean;
}

export interface FigurePoint {
  x: number;
  /** `null` breaks a line. */
  y: number | null;
  /** Vertical error bar or bracket. */
  low?: number;
  high?: number;
  /** The true value lies beyond in this direction (a torn specimen: up). Drawn with an arrow. */
  open?: 'up' | 'down';
  label?: string;
}

export interface Band {
  name: string;
  points: { x: number; low: number; high: number }[];
}

export interface ReferenceLine {
  name: string;
  axis: 'x' | 'y';
  value: number;
  role: 'limit' | 'mean' | 'mark';
}
