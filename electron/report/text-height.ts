import { textWidth } from './typeface.ts';

/** Height in points that a text takes at most, broken to `width`: an estimate on the safe side. */
export function textHeight(text: string, width: number, fontSize: number): number {
  const lines = text.split('\n').map((part) => {
    const natural = textWidth(part, fontSize);
    // Lines that break are not full.
    return natural <= width ? 1 : Math.ceil((natural * 1.2) / width);
  });
  return lines.reduce((sum, count) => sum + count, 0) * fontSize * 1.35;
}
