const NO_BREAK = '\u00a0';

/** The text with each number kept on one line with the unit behind it: '150 °C', '≤ 10 mg/m²'. */
export function unbroken(text: string): string {
  return text.replace(/([≤≥]) (?=[\d−])/gu, `$1${NO_BREAK}`).replace(/(\d) (?=(?:°C|%|[mkµ]?[mgNJ]s?(?:\/(?:\d+ )?[mcgk]+[²³]?)?|mPa·s|h|d|K)(?![\p{L}\d]))/gu, `$1${NO_BREAK}`);
}
