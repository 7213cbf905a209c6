import { describe, expect, it } from 'vitest';
import { printable } from '../../../electron/report/printable.ts';

const print = (text: string) => printable(text).content;

describe('printable', () => {
  it('keeps what the typeface has', () => {
    const text = 'µ ₂ ² ° ≤ ≥ ✓ Δ λ × ± − σ τ … “é” Ł Ж';
    expect(printable(text)).toEqual({ content: text, missing: [] });
  });

  it('puts one visible box for each character that is lacking and names it', () => {
    expect(printable('done 🙂, 前田')).toEqual({ content: 'done □, □□', missing: ['U+1F642', 'U+524D', 'U+7530'] });
  });

  it('puts one box for a joined emoji', () => {
    expect(print('👩‍🔬 and 🖨️')).toBe('□ and □');
  });

  it('shows control characters and broken halves of characters, and keeps line breaks', () => {
    expect(print('a\u0007b\nc\r\nd\ud83de')).toBe('a□b\nc\nd□e');
  });

  it('composes letters with their marks and keeps odd spaces as spaces', () => {
    expect(print('e\u0301')).toBe('é');
    expect(print('1\u3000000')).toBe('1\u00a0000');
  });

  it('goes through a whole content and leaves numbers alone', () => {
    expect(printable({ rows: [{ remark: '⚗🙂', n: 3, none: null }] }).content).toEqual({ rows: [{ remark: expect.stringMatching(/^□{2}$/), n: 3, none: null }] });
  });
});
