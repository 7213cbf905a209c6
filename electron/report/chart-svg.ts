import { createCanvas, GlobalFonts, SvgExportFlag } from '@napi-rs/canvas';
import { Chart, registerables } from 'chart.js';
import { chartConfiguration } from '../../shared-lib/figure/chart-configuration.ts';
import { printTheme, type FigureTheme } from '../../shared-lib/figure/theme.ts';
import type { Figure } from '../../shared-lib/figure/figure.ts';
import { FONT_FAMILY, fontFiles } from './fonts.ts';

let ready = false;

/**
 * The figure as a vector SVG of `width` × `height`, text as outlines, so that it needs no font where it is shown.
 * @throws Error when the typeface cannot be read: a chart in another face would have other line breaks on each machine.
 */
export function chartSvg(figure: Figure, width: number, height: number, theme: FigureTheme = printTheme): string {
  prepare();
  const canvas = createCanvas(width, height, SvgExportFlag.ConvertTextToPaths);
  const configuration = chartConfiguration(figure, { ...theme, fontFamily: `'${FONT_FAMILY}'` }, { width, height });
  configuration.options = { ...configuration.options, devicePixelRatio: 1 };
  const chart = new Chart(canvas as unknown as ConstructorParameters<typeof Chart>[0], configuration);
  chart.destroy();
  return withOwnIds(canvas.getContent().toString('utf8'));
}

/** The canvas numbers its clip paths through the whole process; numbered per drawing, the same figure gives the same text. */
function withOwnIds(svg: string): string {
  const ids = new Map<string, string>();
  return svg.replace(/\bcl_[0-9a-f]+\b/g, (id) => {
    if (!ids.has(id)) ids.set(id, `clip${ids.size + 1}`);
    return ids.get(id)!;
  });
}

function prepare(): void {
  if (ready) return;
  for (const file of [fontFiles.regular, fontFiles.semibold]) {
    if (GlobalFonts.registerFromPath(file, FONT_FAMILY) === null) throw new Error(`The typeface of the report cannot be read: ${file}`);
  }
  Chart.register(...registerables);
  ready = true;
}
