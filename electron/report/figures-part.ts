import type { Content } from 'pdfmake/interfaces.js';
import type { Figure } from '../../shared-lib/figure/figure.ts';
import { tellingFigures } from '../../shared-lib/figure/telling-figures.ts';
import { chartSvg } from './chart-svg.ts';
import { contentWidth, size } from './look.ts';

const GAP = 18;

/** Figures with their finding as caption: one across the page, more in pairs. */
export function figuresPart(all: Figure[]): Content[] {
  const figures = tellingFigures(all);
  if (figures.length === 1) return [figure(figures[0]!, contentWidth, 155)];
  const width = (contentWidth - GAP) / 2;
  const pairs = Array.from({ length: Math.ceil(figures.length / 2) }, (_, index) => figures.slice(2 * index, 2 * index + 2));
  return pairs.map((pair) => ({ unbreakable: true, columns: pair.map((item) => ({ width, stack: [figure(item, width, 170)] })), columnGap: GAP }));
}

function figure(item: Figure, width: number, height: number): Content {
  return {
    unbreakable: true,
    stack: [
      { text: item.title, fontSize: size.body, bold: true, margin: [0, 0, 0, 2] },
      { svg: chartSvg(item, width, height), width, height },
      { text: item.finding, style: 'quiet', margin: [0, 2, 0, 0] },
    ],
    margin: [0, 12, 0, 0],
  };
}
