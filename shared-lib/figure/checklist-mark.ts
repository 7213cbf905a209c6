import type { FigureTheme } from './theme.ts';
import { verdictMark, type VerdictMark } from './verdict-mark.ts';

/** A shape and a colour; the word always stands beside it. */
export type ChecklistMark = Pick<VerdictMark, 'colour' | 'path' | 'filled'>;

const SQUARE = 'M3 3h10v10H3z';
const DIAMOND = verdictMark('undecided').path;

const marks = {
  open: { colour: 'undecided', path: SQUARE, filled: false },
  reopened: { colour: 'undecided', path: `${SQUARE}M3 13L13 3`, filled: false },
  'falls short': verdictMark('falls short'),
  'too few': { colour: 'undecided', path: 'M3 13V9M8 13V5', filled: false },
  undecided: verdictMark('undecided'),
  'not in order': verdictMark('falls short'),
  meets: verdictMark('meets'),
  tested: verdictMark('no limit'),
  'in order': { colour: 'meets', path: SQUARE, filled: true },
  'seen, not measured': { colour: 'noLimit', path: `${SQUARE}M6 8h4`, filled: false },
  waived: { colour: 'noLimit', path: DIAMOND, filled: false },
  blocked: { colour: 'undecided', path: 'M3 5h10M3 11h10', filled: false },
  'ready to sign': { colour: 'noLimit', path: SQUARE, filled: false },
  signed: { colour: 'meets', path: 'M2.5 8.5L6.5 12.5L13.5 4', filled: false },
  'signed, corrected later': { colour: 'undecided', path: 'M1 8.5L4 11.5L9 5M12 3v6M12 11v2', filled: false },
  'signed, lot retired later': { colour: 'undecided', path: 'M1 8.5L4 11.5L9 5M10 8h5', filled: false },
  withdrawn: { colour: 'fallsShort', path: 'M3 3L13 13M13 3L3 13', filled: false },
  replaced: { colour: 'noLimit', path: 'M2 8h11M9 4l4 4l-4 4', filled: false },
} as const satisfies Record<string, ChecklistMark>;

export type ChecklistWord = keyof typeof marks;

/** The mark of a line of an approval, or of an approval as a whole. */
export function checklistMark(word: ChecklistWord): ChecklistMark {
  return marks[word];
}

/** Such a mark as an SVG of `size` × `size`. */
export function checklistMarkSvg(word: ChecklistWord, theme: FigureTheme, size: number): string {
  const mark: ChecklistMark = marks[word];
  const colour = theme[mark.colour];
  const paint = mark.filled ? `fill="${colour}"` : `fill="none" stroke="${colour}" stroke-width="2"`;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${size}" height="${size}" viewBox="0 0 16 16"><path d="${mark.path}" ${paint}/></svg>`;
}
