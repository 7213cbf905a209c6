import { describe, expect, it } from 'vitest';
import { dueAt } from '../../../shared-lib/plan/due-at.ts';
import { momentText } from '../../../shared-lib/plan/moment-text.ts';
import { planDifferences } from '../../../shared-lib/plan/plan-differences.ts';
import { stressText } from '../../../shared-lib/plan/stresses.ts';
import { allMethods } from '../../../shared-lib/registry/methods.ts';
import { frozenPlan } from './frozen-plan.ts';

describe('momentText', () => {
  it.each([
    ['film', 0, 'before printing'],
    ['printing', 0, 'on press'],
    ['lamination', 0, 'off the laminator'],
    ['printing', 24, '24 h after printing'],
    ['printing', 36, '36 h after printing'],
    ['lamination', 168, '7 days after lamination'],
  ] as const)('%s + %d h is %s', (from, hours, text) => {
    expect(momentText({ from, hours })).toBe(text);
  });
});

describe('dueAt', () => {
  const times = { printedAt: '2026-03-02T09:30:00.000Z', laminatedAt: '2026-03-03T06:00:00.000Z' };

  it('counts from the press or the laminator, over the end of a month', () => {
    expect(dueAt({ from: 'printing', hours: 24 }, times)).toBe('2026-03-03T09:30:00.000Z');
    expect(dueAt({ from: 'lamination', hours: 168 }, times)).toBe('2026-03-10T06:00:00.000Z');
    expect(dueAt({ from: 'printing', hours: 24 * 35 }, times)).toBe('2026-04-06T09:30:00.000Z');
    expect(dueAt({ from: 'film', hours: 0 }, times)).toBe(times.printedAt);
  });

  it('is not known while the time that it counts from is not stated', () => {
    expect(dueAt({ from: 'lamination', hours: 24 }, { ...times, laminatedAt: null })).toBeNull();
    expect(dueAt({ from: 'film', hours: 0 }, { printedAt: null, laminatedAt: null })).toBeNull();
  });
});

it('reads a stress with its degree, and one of another version as it stands', () => {
  expect(stressText({ stress: 'cold', degree: 'frozen' })).toBe('Cold: frozen, −18 °C');
  expect(stressText({ stress: 'weather', degree: '' })).toBe('Sun, rain and dew');
  expect(stressText({ stress: 'radiation', degree: 'strong' })).toBe('radiation: strong');
});

describe('planDifferences', () => {
  const methodOf = (id: string) => allMethods.find((method) => method.id === id);
  const [tape, bond] = frozenPlan.lines;

  it('finds none between a plan and itself', () => {
    expect(planDifferences(frozenPlan, structuredClone(frozenPlan), methodOf)).toEqual([]);
  });

  it('says in words what was changed, added and dropped', () => {
    const after = {
      ...frozenPlan,
      customer: '',
      stresses: [{ stress: 'cold', degree: 'chilled' }, { stress: 'weather', degree: '' }],
      lines: [
        { ...tape!, replicates: 5, limits: [{ ...tape!.limits[0]!, lower: 98, source: 'customer' }] },
        { ...bond!, lineId: 'new', methodId: 'gloss', preparation: 'washed' },
      ],
      dropped: [{ ...bond!, reason: 'Not laminated.' }],
    };
    expect(planDifferences(frozenPlan, after, methodOf)).toEqual([
      'Customer: Marrowfield Foods → nothing.',
      'Endures Cold: frozen, −18 °C → Cold: chilled, about 5 °C.',
      'Endures now: Sun, rain and dew.',
      'Tape adhesion 24 h after printing, how many: 3 specimens → 5 specimens.',
      'Tape adhesion 24 h after printing, limits: Print retained ≥ 95 % (common practice) → Print retained ≥ 98 % (customer).',
      'Added Gloss 7 days after lamination, washed.',
      'Dropped Lamination bond 7 days after lamination (Not laminated).',
    ]);
  });
});
