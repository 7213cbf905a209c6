export interface PdfText {
  /** Text of each page, without blanks: they are not kept where a line breaks. */
  pages: string[];
  text: string;
}

/** Text without blanks, to look for in a `PdfText`. */
export const solid = (text: string) => text.replace(/[\s\u200b]/gu, '');

/** Reads a PDF with another program than the one that wrote it. */
export async function readPdf(bytes: Uint8Array): Promise<PdfText> {
  const { getDocument } = await import('pdfjs-dist/legacy/build/pdf.mjs');
  const document = await getDocument({ data: Uint8Array.from(bytes), verbosity: 0 }).promise;
  const pages: string[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const { items } = await (await document.getPage(number)).getTextContent();
    pages.push(solid(items.map((item) => ('str' in item ? item.str : '')).join('')));
  }
  await document.destroy();
  return { pages, text: pages.join('') };
}
