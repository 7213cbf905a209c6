import type { Content } from 'pdfmake/interfaces.js';
import { verdictMark, verdictMarkSvg } from '../../shared-lib/figure/verdict-mark.ts';
import type { VerdictWord } from '../../shared-lib/notebook/entry.ts';
import { theme } from './look.ts';

/** A verdict as shape and word on one line. */
export function verdictText(word: VerdictWord, fontSize: number): Content {
  const mark = fontSize * 0.95;
  return {
    columns: [
      { svg: verdictMarkSvg(word, theme, mark), width: mark, margin: [0, fontSize * 0.16, 0, 0] },
      { text: word, fontSize, bold: true, color: theme[verdictMark(word).colour], width: 'auto' },
    ],
    columnGap: fontSize * 0.35,
  };
}
