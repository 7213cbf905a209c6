import { describe, expect, it } from 'vitest';
import { blankProperty, blankReading, linesOf, suggestedTitle, writtenOf } from '../../../renderer/state/written-lines.ts';
import { thumbTwistRub } from '../method/in-house/written-methods.ts';

describe('a method as it is typed', () => {
  it('comes back as it was written, keys and all', () => {
    expect(writtenOf(linesOf(thumbTwistRub))).toEqual(thumbTwistRub);
  });

  it('leaves out suggestions that nobody took, and keeps what is asked each time', () => {
    const lines = linesOf(thumbTwistRub);
    const setting = { key: '', tolerance: '', unit: '', eachTime: false };
    lines.settings = [
      { ...setting, label: 'Angle', value: '' },
      { ...setting, label: 'Load', value: '1,5', tolerance: '0,1', unit: 'N' },
      { ...setting, label: 'Cloth', value: '', eachTime: true },
      { ...setting, label: 'Dwell', value: '', unit: 's', eachTime: true },
    ];
    expect(writtenOf(lines).settings).toEqual([
      { kind: 'number', key: 'load', label: 'Load', unit: 'N', value: 1.5, tolerance: 0.1 },
      { kind: 'text', key: 'cloth', label: 'Cloth', value: '' },
      { kind: 'number', key: 'dwell', label: 'Dwell', unit: 's', value: null, tolerance: null },
    ]);
  });

  it('names what has no name yet, without taking a name twice', () => {
    const lines = linesOf(thumbTwistRub);
    const reading = { ...blankReading('new 1'), label: 'Load' };
    lines.readings.push(reading);
    lines.properties.push(blankProperty('new 1'));
    const written = writtenOf(lines);
    // ‘load’ is a setting already.
    expect(written.readings.at(-1)!.key).toBe('load2');
    expect(written.properties.at(-1)).toMatchObject({ key: 'meanLoad', title: 'Mean load', reading: 'load2', statistic: 'mean', limit: null });
    expect(suggestedTitle(blankProperty('gone'), lines.readings)).toBe('');
  });

  it('says where a number cannot be read', () => {
    const lines = linesOf(thumbTwistRub);
    lines.properties[0]!.limitLower = 'four';
    expect(() => writtenOf(lines)).toThrow(expect.objectContaining({ field: 'properties[0].limit.lower' }));
  });
});
