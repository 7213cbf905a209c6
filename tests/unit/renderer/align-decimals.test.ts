import { describe, expect, it } from 'vitest';
import { alignDecimals } from '../../../renderer/state/align-decimals.ts';

const figure = '\u2007';
const point = '\u2008';

describe('aligning a column at the decimal sign', () => {
  it('pads to the most decimals, with the width of a point where there is none', () => {
    expect(alignDecimals(['38', '38.5', '−0.25', '38,5'])).toEqual([`38${point}${figure}${figure}`, `38.5${figure}`, '−0.25', `38,5${figure}`]);
  });

  it('leaves words and columns of whole numbers as they are', () => {
    expect(alignDecimals(['38', '—', '40'])).toEqual(['38', '—', '40']);
    expect(alignDecimals(['38.5', 'film tore'])).toEqual(['38.5', 'film tore']);
  });
});
