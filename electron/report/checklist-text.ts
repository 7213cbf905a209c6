import type { Content } from 'pdfmake/interfaces.js';
import { checklistMark, checklistMarkSvg, type ChecklistWord } from '../../shared-lib/figure/checklist-mark.ts';
import { theme } from './look.ts';

/** How a line of a checklist stands, as shape and word on one line. @param text what stands beside the shape, where it says more than the word */
export function checklistText(word: ChecklistWord, fontSize: number, text: string = word): Content {
  const mark = fontSize * 0.95;
  return {
    columns: [
      { svg: checklistMarkSvg(word, theme, mark), width: mark, margin: [0, fontSize * 0.16, 0, 0] },
      { text, fontSize, bold: true, color: theme[checklistMark(word).colour], width: '*' },
    ],
    columnGap: fontSize * 0.35,
  };
}
