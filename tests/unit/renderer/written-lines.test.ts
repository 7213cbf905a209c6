import { describe, expect, it } from 'vitest';
import { parseInput } from '../../../shared-lib/calculation/calculation.ts';
import { checkWrittenMethod } from '../../../shared-lib/method/in-house/check-written-method.ts';
import { writtenMethodSchema } from '../../../shared-lib/method/in-house/written-method.ts';
import { blankProperty, blankReading, linesOf, type ReadingLine, type WrittenLines } from '../../../renderer/state/written-lines.ts';
import { isKept, placeOf, suggestedTitle, writtenOf } from '../../../renderer/state/written-of.ts';
import { thumbTwistRub } from '../method/in-house/written-methods.ts';

describe('a method as it is typed', () => {
  it('comes back as it was written, keys and all', () => {
    expect(writtenOf(linesOf(thumbTwistRub))).toEqual(thumbTwistRub);
  });

  it('leaves out suggestions that nobody took, and keeps what is asked each time', () => {
    const lines = linesOf(thumbTwistRub);
    const setting = { key: '', tolerance: '', unit: '', eachTime: false, instrument: false };
    lines.settings = [
      { ...setting, label: 'Angle', value: '' },
      { ...setting, label: 'Load', value: '1,5', tolerance: '0,1', unit: 'N' },
      { ...setting, label: 'Cloth', value: '', eachTime: true },
      { ...setting, label: 'Dwell', value: '', unit: 's', eachTime: true },
      { ...setting, label: 'Force gauge', value: '', instrument: true },
    ];
    expect(writtenOf(lines).settings).toEqual([
      { kind: 'number', key: 'load', label: 'Load', unit: 'N', value: 1.5, tolerance: 0.1 },
      { kind: 'text', key: 'cloth', label: 'Cloth', value: '' },
      { kind: 'number', key: 'dwell', label: 'Dwell', unit: 's', value: null, tolerance: null },
      { kind: 'instrument', key: 'forceGauge', label: 'Force gauge' },
    ]);
    expect(writtenOf(linesOf(writtenOf(lines))).settings).toEqual(writtenOf(lines).settings);
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

  it.each<[string, string, (lines: WrittenLines) => void]>([
    ['who asks for a limit that has no end', 'properties[0].limit', (lines) => Object.assign(lines.properties[0]!, { limitLower: '', limitUpper: '', limitSource: 'customer' })],
    ['a tolerance of what is no number', 'settings[2].tolerance', (lines) => Object.assign(lines.settings[2]!, { tolerance: '1' })],
    ['a value without a name', 'settings[0].label', (lines) => Object.assign(lines.settings[0]!, { key: '', label: ' ' })],
    ['no replicates', 'replicates', (lines) => (lines.replicates = '')],
    ['a picture of no grade', 'readings[0].grades[5].grade', (lines) => Object.assign((lines.readings[0] as ReadingLine).grades[5]!, { grade: '', meaning: '', pictureSha256: '0'.repeat(64) })],
  ])('refuses %s rather than drop it', (_, field, change) => {
    const lines = linesOf(thumbTwistRub);
    change(lines);
    expect(() => checkWrittenMethod(parseInput(writtenMethodSchema, writtenOf(lines)))).toThrow(expect.objectContaining({ field }));
  });

  it('says where in the method a line stands, past those that are left out', () => {
    const line = { key: '', label: 'x', value: '', tolerance: '', unit: '', eachTime: false, instrument: false };
    const lines = [line, { ...line, value: '1' }, line, { ...line, eachTime: true }, { ...line, instrument: true }];
    expect(lines.map((_, index) => placeOf(lines, isKept.setting, index))).toEqual([-1, 0, -1, 1, 2]);
  });

  it('keeps a name in its own letters within a title', () => {
    const reading = { ...blankReading('r'), label: 'ΔE of the patch' };
    expect(suggestedTitle(blankProperty('r'), [reading])).toBe('Mean ΔE of the patch');
  });
});
