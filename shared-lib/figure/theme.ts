/** Colours, markers and type of every drawing. One theme serves the screen, the strip and the PDF. */
export interface FigureTheme {
  name: 'light' | 'dark' | 'print';
  /** What the drawing lies on. */
  ground: string;
  /** Text and readings. */
  ink: string;
  /** Axis numbers, captions. */
  quiet: string;
  /** Grid lines and baselines. */
  rule: string;
  accent: string;
  /** Interval bands. */
  band: string;
  /** The allowed side of a limit. */
  allowed: string;
  limit: string;
  meets: string;
  fallsShort: string;
  undecided: string;
  noLimit: string;
  /** Series colours in order; from the sixth series on they repeat with another marker and dash. */
  series: readonly string[];
  fontFamily: string;
  /** Pixels on screen, points in print. */
  fontSize: number;
}

const FONT = "'Source Sans 3', 'Source Sans Pro', sans-serif";

/**
 * Our own choice, starting from the set for colour-deficient viewers by M. Okabe and K. Ito, 'Color Universal Design'
 * (2008): vermillion, sky blue, reddish purple and yellow, each moved in lightness until every pair stays apart under
 * protan, deutan and tritan vision and each has 3:1 against its ground. `tests/unit/figure/theme.test.ts` holds both.
 */
const ON_LIGHT = ['#0b6b72', '#d55e00', '#3c8fdc', '#56143f', '#8a8478'] as const;
const ON_DARK = ['#4fb3b8', '#e8742a', '#b3d8ff', '#b34089', '#f0e442'] as const;

export const lightTheme: FigureTheme = {
  name: 'light',
  ground: '#fbfaf8',
  ink: '#25231f',
  quiet: '#6b665e',
  rule: '#ddd8d0',
  accent: '#0b6b72',
  band: '#cfe0df',
  allowed: '#e3ebe8',
  limit: '#25231f',
  meets: '#00705a',
  fallsShort: '#b84300',
  undecided: '#7f5a00',
  noLimit: '#6b665e',
  series: ON_LIGHT,
  fontFamily: FONT,
  fontSize: 12,
};

export const darkTheme: FigureTheme = {
  name: 'dark',
  ground: '#1c1b19',
  ink: '#ece8e1',
  quiet: '#a39d93',
  rule: '#3d3a35',
  accent: '#5fb8bd',
  band: '#2b4547',
  allowed: '#2a3634',
  limit: '#ece8e1',
  meets: '#4fc3a1',
  fallsShort: '#f5935a',
  undecided: '#e6b84c',
  noLimit: '#a39d93',
  series: ON_DARK,
  fontFamily: FONT,
  fontSize: 12,
};

export const printTheme: FigureTheme = {
  ...lightTheme,
  name: 'print',
  ground: '#ffffff',
  ink: '#1a1916',
  quiet: '#5c5850',
  rule: '#d6d1c8',
  band: '#d3e3e2',
  allowed: '#e4ece9',
  limit: '#1a1916',
  noLimit: '#5c5850',
  fontSize: 8,
};
