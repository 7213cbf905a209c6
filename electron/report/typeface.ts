import { openSync, type Font } from 'fontkit';
import { fontFiles } from './fonts.ts';

let cuts: { regular: Font; semibold: Font; all: Font[] } | null = null;

function typeface() {
  if (cuts) return cuts;
  const all = Object.values(fontFiles).map((file) => openSync(file) as Font);
  cuts = { regular: all[0]!, semibold: all[2]!, all };
  return cuts;
}

const known = new Map<number, boolean>();

/** Whether every cut of the report's typeface can print the character. */
export function hasGlyph(codePoint: number): boolean {
  let answer = known.get(codePoint);
  if (answer === undefined) {
    answer = typeface().all.every((cut) => cut.hasGlyphForCodePoint(codePoint));
    known.set(codePoint, answer);
  }
  return answer;
}

const advances = { regular: new Map<string, number>(), semibold: new Map<string, number>() };

/** Width of one line of text in points, without kerning. */
export function textWidth(text: string, size: number, cut: 'regular' | 'semibold' = 'regular'): number {
  let width = 0;
  for (const character of text) {
    let advance = advances[cut].get(character);
    if (advance === undefined) {
      const font = typeface()[cut];
      advance = font.glyphForCodePoint(character.codePointAt(0)!).advanceWidth / font.unitsPerEm;
      advances[cut].set(character, advance);
    }
    width += advance;
  }
  return width * size;
}
