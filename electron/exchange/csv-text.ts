/** A spreadsheet takes a cell that begins so as a formula. */
const FORMULA = /^[=+\-@\t\r]/;

/**
 * Rows as a CSV file (RFC 4180) that spreadsheets open as UTF-8. A cell that a spreadsheet would work out as a formula
 * begins with an apostrophe, so that it stays text.
 */
export function csvText(rows: readonly (readonly string[])[]): string {
  return `\ufeff${rows.map((row) => row.map(cell).join(',')).join('\r\n')}\r\n`;
}

function cell(text: string): string {
  const harmless = FORMULA.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}
