import type { Content } from 'pdfmake/interfaces.js';
import type { SwatchPair } from '../../shared-lib/calculation/result.ts';
import { size } from './look.ts';

const WIDTH = 220;
const HEIGHT = 46;

/** Pairs of colours that touch, with what must be said of them. */
export function swatchesPart(pairs: readonly SwatchPair[]): Content[] {
  return pairs.map((pair) => ({
    unbreakable: true,
    stack: [
      { text: pair.title, fontSize: size.body, bold: true, margin: [0, 0, 0, 2] },
      { svg: svgOf(pair), width: WIDTH, height: HEIGHT },
      {
        columns: [
          { width: WIDTH / 2, text: pair.left.name, fontSize: size.small },
          { width: WIDTH / 2, text: pair.right.name, fontSize: size.small },
        ],
        margin: [0, 2, 0, 0],
      },
      { text: pair.note, style: 'quiet', margin: [0, 1, 0, 0] },
    ],
    margin: [0, 12, 0, 0],
  }));
}

/** Colours are checked, as everything that becomes part of a drawing. */
function svgOf({ left, right }: SwatchPair): string {
  const rect = (x: number, colour: string) => `<rect x="${x}" y="0" width="${WIDTH / 2}" height="${HEIGHT}" fill="${/^#[0-9a-f]{6}$/i.test(colour) ? colour : '#ffffff'}"/>`;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${HEIGHT}" viewBox="0 0 ${WIDTH} ${HEIGHT}">${rect(0, left.colour)}${rect(WIDTH / 2, right.colour)}</svg>`;
}
