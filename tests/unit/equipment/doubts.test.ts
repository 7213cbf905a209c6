import { describe, expect, it } from 'vitest';
import { fluidDoubt } from '../../../shared-lib/equipment/fluid-doubt.ts';
import { instrumentDoubt } from '../../../shared-lib/equipment/instrument-doubt.ts';
import { calibrationStanding, standingOf } from '../../../shared-lib/equipment/standing.ts';

const name = 'Gloss meter, G-1';
const year = { calibratedOn: '2025-03-01', dueOn: '2026-02-28' };

describe('readings of an instrument', () => {
  it.each([
    ['on the first day of a calibration', [year], ['2025-03-01'], ''],
    ['on its last day', [year], ['2026-02-28'], ''],
    ['a day later', [year], ['2026-03-01'], 'Read with Gloss meter, G-1 on 2026-03-01, whose calibration ended on 2026-02-28.'],
    ['between two calibrations, the second of which makes nothing good', [year, { calibratedOn: '2026-03-05', dueOn: null }], ['2026-02-27', '2026-03-04', '2026-03-05'], 'Read with Gloss meter, G-1 on 2026-03-04, whose calibration ended on 2026-02-28.'],
    ['before the first', [year], ['2025-02-28'], 'Read with Gloss meter, G-1 on 2025-02-28, before its first calibration on record, of 2025-03-01.'],
    ['without any', [], ['2026-03-01', '2026-03-02'], 'Read with Gloss meter, G-1 on 2026-03-01 and 2026-03-02, which has no calibration on record.'],
    ['on many days', [year], ['2026-03-01', '2026-03-02', '2026-03-09'], 'Read with Gloss meter, G-1 on 2026-03-01 and 2 other days, the last of them 2026-03-09, whose calibration ended on 2026-02-28.'],
    ['that were not taken yet', [], [], ''],
  ])('%s', (_name, calibrations, days, says) => {
    expect(instrumentDoubt({ name, calibrations, retiredAt: null }, days)).toBe(says);
  });

  it('after it was taken out of use', () => {
    const trust = { name, calibrations: [{ calibratedOn: '2025-03-01', dueOn: null }], retiredAt: '2026-03-01T12:00:00.000Z' };
    expect(instrumentDoubt(trust, ['2026-03-01'])).toBe('');
    expect(instrumentDoubt(trust, ['2026-03-02'])).toBe('Read with Gloss meter, G-1 on 2026-03-02, which was taken out of use on 2026-03-01.');
  });
});

describe('readings with a test fluid', () => {
  const fluid = { name: 'Test fluids, lot TF-9', openedOn: '2026-01-05', expiresOn: '2026-03-05', retiredAt: null };
  it.each([
    ['on its last day', ['2026-03-05'], ''],
    ['a day later', ['2026-03-05', '2026-03-06'], 'Read with Test fluids, lot TF-9 on 2026-03-06, which expired on 2026-03-05.'],
    ['before it was opened', ['2026-01-04'], 'Read with Test fluids, lot TF-9 on 2026-01-04, before it was opened on 2026-01-05.'],
  ])('%s', (_name, days, says) => {
    expect(fluidDoubt(fluid, days)).toBe(says);
  });
});

it.each([
  [null, 'in order'],
  ['2026-04-01', 'in order'],
  ['2026-03-31', 'ends soon'],
  ['2026-03-01', 'ends soon'],
  ['2026-02-28', 'ended'],
])('a last day of %s is, on 1 March, %s', (lastDay, standing) => {
  expect(standingOf(lastDay, '2026-03-01')).toBe(standing);
});

it('an instrument stands by its latest calibration, not by the one that lasts longest', () => {
  expect(calibrationStanding([{ calibratedOn: '2025-01-01', dueOn: '2027-01-01' }, { calibratedOn: '2026-01-01', dueOn: '2026-02-01' }], '2026-03-01')).toEqual({ standing: 'ended', dueOn: '2026-02-01' });
  // Two on one day, the one entered last first: it is that which the list shows.
  expect(calibrationStanding([{ calibratedOn: '2026-01-01', dueOn: '2027-01-01' }, { calibratedOn: '2026-01-01', dueOn: '2026-02-01' }], '2026-03-01').standing).toBe('in order');
  expect(calibrationStanding([], '2026-03-01')).toEqual({ standing: 'none', dueOn: null });
});
