import { expect, it } from 'vitest';
import { inSentence, severalOf } from '../../../shared-lib/quantity/words.ts';

it.each([
  ['specimen', 'specimens'],
  ['patch', 'patches'],
  ['pass', 'passes'],
])('several of %s are %s', (one, several) => expect(severalOf(one)).toBe(several));

it.each([
  ['Bond strength', 'bond strength'],
  ['ΔE00', 'ΔE00'],
  ['L* of the print', 'L* of the print'],
  ['CMC difference', 'CMC difference'],
])('%s reads %s within a sentence', (title, said) => expect(inSentence(title)).toBe(said));
