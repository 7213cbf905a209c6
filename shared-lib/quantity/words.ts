/** The plural of what a row is called: 'specimens', 'patches'. */
export function severalOf(name: string): string {
  return `${name}${/(s|x|ch|sh)$/.test(name) ? 'es' : 's'}`;
}

/** A title within a sentence: its first letter small, unless it begins with a symbol or a short form (ΔE00, L*, CMC). */
export function inSentence(title: string): string {
  return /^\p{Lu}\p{Ll}/u.test(title) ? title.charAt(0).toLowerCase() + title.slice(1) : title;
}
