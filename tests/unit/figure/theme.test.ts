import { describe, expect, it } from 'vitest';
import { darkTheme, lightTheme, printTheme } from '../../../shared-lib/figure/theme.ts';
import { verdictMark, verdictMarkSvg } from '../../../shared-lib/figure/verdict-mark.ts';

const themes = [lightTheme, darkTheme, printTheme];

type Triple = [number, number, number];

/** sRGB to linear light: IEC 61966-2-1. */
function linear(hex: string): Triple {
  return [1, 3, 5].map((at) => parseInt(hex.slice(at, at + 2), 16) / 255).map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4)) as Triple;
}

/** Contrast ratio of WCAG 2.2, from memory: (L1 + 0.05) / (L2 + 0.05). */
function contrast(a: string, b: string): number {
  const [low, high] = [a, b].map((hex) => { const [r, g, bl] = linear(hex); return 0.2126 * r + 0.7152 * g + 0.0722 * bl; }).sort((p, q) => p - q) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

/** CIELAB (D65) of linear sRGB: CIE 15, with the sRGB matrix of IEC 61966-2-1. */
function lab([r, g, b]: Triple): Triple {
  const f = (t: number) => (t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116);
  const x = f((0.4124564 * r + 0.3575761 * g + 0.1804375 * b) / 0.95047);
  const y = f(0.2126729 * r + 0.7151522 * g + 0.072175 * b);
  const z = f((0.0193339 * r + 0.119192 * g + 0.9503041 * b) / 1.08883);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

/** Full deficiency in linear sRGB: Machado, Oliveira and Fernandes, IEEE Trans. Vis. Comput. Graph. 15 (2009) 1291, severity 1.0; from memory. */
const visions: Record<string, number[]> = {
  normal: [1, 0, 0, 0, 1, 0, 0, 0, 1],
  protan: [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998],
  deutan: [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.01182, 0.04294, 0.968881],
  tritan: [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.3039],
};

function seen(hex: string, m: number[]): Triple {
  const v = linear(hex);
  return lab([0, 3, 6].map((row) => Math.min(1, Math.max(0, m[row]! * v[0] + m[row + 1]! * v[1] + m[row + 2]! * v[2]))) as Triple);
}

describe.each(themes)('the $name theme', (theme) => {
  it('gives text 4.5:1 against the ground (WCAG 2.2, 1.4.3)', () => {
    for (const key of ['ink', 'quiet', 'accent', 'meets', 'fallsShort', 'undecided', 'noLimit', 'limit'] as const) {
      expect(contrast(theme[key], theme.ground), key).toBeGreaterThanOrEqual(4.5);
    }
  });

  it('gives series 3:1 against the ground (WCAG 2.2, 1.4.11)', () => {
    for (const colour of theme.series) expect(contrast(colour, theme.ground), colour).toBeGreaterThanOrEqual(3);
  });

  it.each(Object.keys(visions))('keeps series colours apart under %s vision', (vision) => {
    theme.series.forEach((a, i) => {
      for (const b of theme.series.slice(i + 1)) {
        const [p, q] = [seen(a, visions[vision]!), seen(b, visions[vision]!)];
        // A difference of 15 in CIELAB is plain to see even between small marks; common practice.
        expect(Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]), `${a} ${b}`).toBeGreaterThan(15);
      }
    });
  });
});

describe('verdictMark', () => {
  const words = ['meets', 'falls short', 'undecided', 'no limit'] as const;

  it('tells verdicts apart by shape, not by colour alone', () => {
    expect(words.map((word) => verdictMark(word).shape)).toEqual(['filled circle', 'downward triangle', 'diamond', 'open circle']);
  });

  it('draws each in its theme colour', () => {
    for (const word of words) {
      const svg = verdictMarkSvg(word, darkTheme, 12);
      expect(svg).toContain(darkTheme[verdictMark(word).colour]);
      expect(svg).toContain('width="12"');
    }
    expect(verdictMarkSvg('no limit', lightTheme, 12)).toContain('fill="none"');
  });
});
