import type { Content, ContentTable } from 'pdfmake/interfaces.js';
import { size } from './look.ts';

/** Labels and values in two narrow columns; pairs without a value are left out. */
export function keyValues(pairs: [label: string, value: string | Content[]][], labelWidth = 74): ContentTable {
  const body = pairs.filter(([, value]) => value.length > 0).map(([label, value]) => [{ text: label, style: 'label', margin: [0, 0.8, 0, 0] as [number, number, number, number] }, { text: value, fontSize: size.body }]);
  return {
    table: { widths: [labelWidth, '*'], body: body.length > 0 ? body : [['', '']] },
    layout: { defaultBorder: false, paddingLeft: () => 0, paddingRight: () => 6, paddingTop: () => 1.2, paddingBottom: () => 1.2 },
  };
}
