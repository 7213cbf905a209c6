import { expect, it } from 'vitest';
import { swatchesPart } from '../../../electron/report/swatches-part.ts';

it('prints two colours that touch, each with its name, and what must be said of them', () => {
  const printed = JSON.stringify(swatchesPart([{ title: 'Reference and sample', left: { name: 'Pouch red', colour: '#c8102e' }, right: { name: 'This print', colour: '#c41230' }, note: 'Approximate.' }]));
  const rects = [...printed.matchAll(/<rect x=\\"(\d+)\\"[^>]*? width=\\"(\d+)\\"[^>]*? fill=\\"(#\w+)\\"/g)].map(([, x, width, fill]) => ({ x: Number(x), width: Number(width), fill }));
  expect(rects.map(({ fill }) => fill)).toEqual(['#c8102e', '#c41230']);
  expect(rects[1]!.x).toBe(rects[0]!.x + rects[0]!.width);
  for (const text of ['Pouch red', 'This print', 'Approximate.']) expect(printed).toContain(text);
});
