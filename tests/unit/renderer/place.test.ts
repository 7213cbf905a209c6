import { describe, expect, it } from 'vitest';
import { parsePlace, placeHash, railScreenOf, type Place } from '../../../renderer/state/place.ts';

describe('places in the address', () => {
  it.each<Place>([
    { screen: 'notebook' },
    { screen: 'today' },
    { screen: 'samples', sampleId: null },
    { screen: 'samples', sampleId: '01M89/2' },
    { screen: 'bench-sheet', testId: '01M89' },
    { screen: 'trials', trialSetId: null },
    { screen: 'trials', trialSetId: 's' },
    { screen: 'methods', methodId: 'lamination-bond' },
    { screen: 'plans', planId: 'p' },
    { screen: 'make-plan', planId: null },
    { screen: 'reports', reportId: 'r' },
    { screen: 'new-report', replaces: null },
    { screen: 'record', testId: 't' },
  ])('%o comes back from its address', (place) => {
    expect(parsePlace(placeHash(place))).toEqual(place);
  });

  it.each(['', '#', '#/nowhere', '#/bench-sheet', '#token=abc', '#/bench-sheet/%E0%A4%A'])('%s leads to Today', (hash) => {
    expect(parsePlace(hash)).toEqual({ screen: 'today' });
  });

  it('counts the bench sheet to Samples and a new report to Reports', () => {
    expect(railScreenOf({ screen: 'bench-sheet', testId: 't' })).toBe('samples');
    expect(railScreenOf({ screen: 'new-report', replaces: null })).toBe('reports');
  });
});
