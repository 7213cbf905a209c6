import type { FigureTheme } from './theme.ts';
import type { StripDrawing, StripRole, StripShape } from './strip.ts';

/** Fill and stroke of a shape; `'none'` where there is none. Text and closed paths are filled, open ones stroked. */
export function stripPaint(shape: StripShape, theme: FigureTheme): { fill: string; stroke: string; strokeWidth: number } {
  const colour = colourOf(shape.role, theme);
  switch (shape.kind) {
    case 'line':
      return { fill: 'none', stroke: colour, strokeWidth: shape.width };
    case 'path':
      return shape.closed ? { fill: colour, stroke: 'none', strokeWidth: 0 } : { fill: 'none', stroke: colour, strokeWidth: shape.width };
    case 'circle':
      return shape.role === 'censored' ? { fill: theme.ground, stroke: colour, strokeWidth: 0.9 } : { fill: colour, stroke: 'none', strokeWidth: 0 };
    case 'rect':
      return shape.role === 'between' ? { fill: theme.ground, stroke: colour, strokeWidth: 1 } : { fill: colour, stroke: 'none', strokeWidth: 0 };
    case 'text':
      return { fill: theme.quiet, stroke: 'none', strokeWidth: 0 };
  }
}

/** The drawing as an SVG of its own size, for the PDF. */
export function stripSvg(drawing: StripDrawing, theme: FigureTheme): string {
  const { width, height } = drawing;
  const shapes = drawing.shapes.map((shape) => element(shape, theme)).join('');
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}">${shapes}</svg>`;
}

function colourOf(role: StripRole, theme: FigureTheme): string {
  switch (role) {
    case 'scale':
      return theme.rule;
    case 'allowed':
      return theme.allowed;
    case 'limit':
      return theme.limit;
    case 'interval':
    case 'between':
      return theme.accent;
    default:
      return theme.ink;
  }
}

function element(shape: StripShape, theme: FigureTheme): string {
  const { fill, stroke, strokeWidth } = stripPaint(shape, theme);
  const paint = `fill="${fill}" stroke="${stroke}" stroke-width="${strokeWidth}"`;
  switch (shape.kind) {
    case 'line':
      return `<line x1="${n(shape.x1)}" y1="${n(shape.y1)}" x2="${n(shape.x2)}" y2="${n(shape.y2)}" ${paint}/>`;
    case 'rect':
      return `<rect x="${n(shape.x)}" y="${n(shape.y)}" width="${n(shape.width)}" height="${n(shape.height)}" ${paint}/>`;
    case 'circle':
      return `<circle cx="${n(shape.x)}" cy="${n(shape.y)}" r="${n(shape.radius)}" ${paint}/>`;
    case 'path':
      return `<path d="M${shape.points.map(([x, y]) => `${n(x)} ${n(y)}`).join('L')}${shape.closed ? 'Z' : ''}" ${paint}/>`;
    case 'text':
      return `<text x="${n(shape.x)}" y="${n(shape.y)}" text-anchor="${shape.anchor}" font-size="${shape.size}" font-family="Source Sans 3" ${paint}>${shape.text}</text>`;
  }
}

function n(value: number): string {
  return String(Math.round(value * 100) / 100);
}
