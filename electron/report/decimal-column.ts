import type { ContentText } from 'pdfmake/interfaces.js';
import { textWidth } from './typeface.ts';

const NUMBER = /^([<>≤≥≈±−+-]?\s*)(\d[\d\s]*)([.,]\d+)?$/u;

/** Whether a text is one number, with or without a sign such as ≥ before it. */
export function isNumberText(text: string): boolean {
  return NUMBER.test(text.trim());
}

/** Texts of one column as cells whose decimal points stand under one another; other texts are set flush right. */
export function decimalColumn(texts: readonly string[], fontSize: number): ContentText[] {
  const fractions = texts.map((text) => NUMBER.exec(text.trim())?.[3] ?? '');
  const widths = fractions.map((fraction) => textWidth(fraction, fontSize));
  const widest = Math.max(0, ...widths);
  return texts.map((text, index) => ({
    text,
    fontSize,
    alignment: 'right',
    margin: [0, 0, isNumberText(text) ? widest - widths[index]! : 0, 0],
  }));
}
