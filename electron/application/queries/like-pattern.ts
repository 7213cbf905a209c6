/** For LIKE … ESCAPE '\': the text anywhere, its own wildcards taken as they stand. */
export function likePattern(text: string): string {
  return `%${text.replace(/[\\%_]/g, (character) => `\\${character}`)}%`;
}
