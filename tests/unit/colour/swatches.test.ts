import { expect, it } from 'vitest';
import type { Lab } from '../../../shared-lib/colour/lab.ts';
import { swatchPair } from '../../../shared-lib/colour/swatches.ts';

const light = { illuminant: 'D65', observer: 2 } as const;
const note = (reference: Lab, sample: Lab) => swatchPair({ name: 'card', lab: reference }, { name: 'print', lab: sample }, light).note;
const grey: Lab = [50, 0, 0];
/** No screen of three primaries within the spectrum shows it: its red is far below zero (IEC 61966-2-1). */
const cyan: Lab = [60, -90, -40];

it('two colours on screen say that they are approximate, and which of them the screen cannot show', () => {
  expect(note(grey, grey)).toBe('Approximate on screen and in print; never judge a match by it.');
  expect(note(grey, cyan)).toMatch(/ The sample lies beyond what an sRGB screen can show\.$/);
  expect(note(cyan, cyan)).toMatch(/ The reference and the sample lie beyond what an sRGB screen can show\.$/);
});
