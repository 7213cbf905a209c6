import type { Spectrum } from './spectrum.ts';

/**
 * The text that a spectrum is kept as: '400-700/10 %: 5.12 5.3 …'. It is what might have been typed, with a point as
 * decimal mark and blanks between the numbers; `0-1` stands for fractions.
 */
export function spectrumText({ startNm, stepNm, count, scale, values }: Spectrum): string {
  return `${startNm}-${startNm + (count - 1) * stepNm}/${stepNm} ${scale === 'percent' ? '%' : '0-1'}: ${values.join(' ')}`;
}

/**
 * The spectrum of such a text.
 * @throws Error for any other text: only what `spectrumText` wrote is ever kept.
 */
export function spectrumOf(text: string): Spectrum {
  const [, from, , by, scale, body] = /^([\d.]+)-([\d.]+)\/([\d.]+) (%|0-1): (.+)$/.exec(text) ?? [];
  if (body === undefined) throw new Error('This is not the text of a spectrum.');
  const values = body.split(' ').map(Number);
  return { startNm: Number(from), stepNm: Number(by), count: values.length, scale: scale === '%' ? 'percent' : 'fraction', values };
}

/** A spectrum in a few words, e.g. '400–700 nm by 10, 4.1 to 62.3 %'. */
export function spectrumInWords({ startNm, stepNm, count, scale, values }: Spectrum): string {
  const percent = values.map((value) => (scale === 'percent' ? value : 100 * value));
  const plain = (value: number) => String(Number(value.toFixed(1))).replace('-', '−');
  return `${startNm}–${startNm + (count - 1) * stepNm} nm by ${stepNm}, ${plain(Math.min(...percent))} to ${plain(Math.max(...percent))} %`;
}
