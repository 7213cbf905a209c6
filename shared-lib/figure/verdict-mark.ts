import type { FigureTheme } from './theme.ts';

/** A verdict as shape and colour; the word always stands beside it. */
export interface VerdictMark {
  shape: 'filled circle' | 'downward triangle' | 'diamond' | 'open circle';
  colour: 'meets' | 'fallsShort' | 'undecided' | 'noLimit';
  /** SVG path data in a box of 16 × 16. */
  path: string;
  /** Filled with the colour, or drawn as a line of width 2. */
  filled: boolean;
}

const CIRCLE = 'M8 2.5a5.5 5.5 0 1 1 0 11a5.5 5.5 0 1 1 0-11z';

const marks = {
  meets: { shape: 'filled circle', colour: 'meets', path: CIRCLE, filled: true },
  'falls short': { shape: 'downward triangle', colour: 'fallsShort', path: 'M1.5 3h13L8 14.5z', filled: true },
  undecided: { shape: 'diamond', colour: 'undecided', path: 'M8 1.5L14.5 8L8 14.5L1.5 8z', filled: true },
  'no limit': { shape: 'open circle', colour: 'noLimit', path: CIRCLE, filled: false },
} as const satisfies Record<string, VerdictMark>;

/** The shape and theme colour of a verdict, for the screen and the PDF alike. */
export function verdictMark(word: keyof typeof marks): VerdictMark {
  return marks[word];
}

/** The mark of a verdict as an SVG of `size` × `size`. */
export function verdictMarkSvg(word: keyof typeof marks, theme: FigureTheme, size: number): string {
  const mark = verdictMark(word);
  const colour = theme[mark.colour];
  const paint = mark.filled ? `fill="${colour}"` : `fill="none" stroke="${colour}" stroke-width="2"`;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${size}" height="${size}" viewBox="0 0 16 16"><path d="${mark.path}" ${paint}/></svg>`;
}
