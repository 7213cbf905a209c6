import { onCommonGrid, type GridCurve } from './common-grid.ts';
import type { ColourUnderLight } from './measured-colour.ts';

/** The mean reflectance of the colours that have a spectrum, on the grid common to them; `null` where none has. */
export function meanCurve(colours: readonly Pick<ColourUnderLight, 'curve'>[]): GridCurve | null {
  const curves = colours.flatMap(({ curve }) => (curve === null ? [] : [curve]));
  if (curves.length === 0) return null;
  const common = onCommonGrid(curves);
  const values = common.curves[0]!.map((_, band) => common.curves.reduce((sum, curve) => sum + curve[band]!, 0) / common.curves.length);
  return { grid: common.grid, values };
}
