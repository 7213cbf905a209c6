import { textWidth } from './typeface.ts';

/** Height in points that a text takes at most, broken to `width`: an estimate on the safe side. */
export function textHeight(text: string, width: number, fontSize: number): number {
  const lines = text.split('\n').reduce((sum, part) => sum + Math.ceil((textWidth(part, fontSize) * 1.2) / width + 0.01), 0);
  return lines * fontSize * 1.35;
}
