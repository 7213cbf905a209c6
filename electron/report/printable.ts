import { hasGlyph } from './typeface.ts';

/** Stands for a character that the typeface lacks, so that nothing vanishes unseen. */
export const MISSING = '□';

const segmenter = new Intl.Segmenter('en', { granularity: 'grapheme' });
/** Joiners, variation selectors and direction marks: they shape their neighbours and print nothing. */
const SHAPING = /^[\u00ad\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufe00-\ufe0f\ufeff]$/u;
const SPACES = /^[\u2000-\u200a\u202f\u205f\u3000\t]$/u;

/**
 * A copy of `content` in which every string can be printed: each character that the typeface lacks, control characters
 * included, becomes one '□'.
 * @returns the copy and what was replaced, as 'U+1F642', each once.
 */
export function printable<Content>(content: Content): { content: Content; missing: string[] } {
  const missing = new Set<string>();
  return { content: copy(content, missing) as Content, missing: [...missing] };
}

function copy(value: unknown, missing: Set<string>): unknown {
  // A picture is no text.
  if (typeof value === 'string') return value.startsWith('data:image/jpeg;base64,') ? value : printableText(value, missing);
  if (Array.isArray(value)) return value.map((item) => copy(item, missing));
  if (value !== null && typeof value === 'object') {
    return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, copy(item, missing)]));
  }
  return value;
}

function printableText(text: string, missing: Set<string>): string {
  if (/^[\n\x20-\x7e]*$/.test(text)) return withBreaks(text);
  let printed = '';
  for (const { segment } of segmenter.segment(text.replaceAll('\r\n', '\n').normalize('NFC'))) {
    printed += printableCharacter(segment, missing);
  }
  return withBreaks(printed);
}

/**
 * A very long word may break anywhere, at a blank of no width: the layout would need minutes to find the places itself.
 * Longer than a SHA-256 in hexadecimal, which stays one word.
 */
function withBreaks(text: string): string {
  return text.replace(/\S{81,}/gu, (word) => word.match(/.{1,20}/gu)!.join('\u200b'));
}

function printableCharacter(segment: string, missing: Set<string>): string {
  if (segment === '\n') return segment;
  let printed = '';
  for (const character of segment) {
    const codePoint = character.codePointAt(0)!;
    if (SHAPING.test(character)) continue;
    if (SPACES.test(character) && !hasGlyph(codePoint)) {
      printed += '\u00a0';
    } else if (codePoint >= 0x20 && codePoint !== 0x7f && hasGlyph(codePoint)) {
      printed += character;
    } else {
      missing.add(`U+${codePoint.toString(16).toUpperCase().padStart(4, '0')}`);
      return MISSING;
    }
  }
  return printed;
}
