import { InputError } from '../calculation/input-error.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import { outOfOrder, rateByBlueWool, type BlueWoolReference } from './blue-wool.ts';

/**
 * Light fastness 1–8 of a specimen by the blue-wool references beside it; references out of order go to `flags`.
 * @param change the specimen's ΔEF.
 * @throws InputError when the specimen has no ΔEF or a reference is given twice.
 */
export function blueWoolResult(change: ResultValue, references: BlueWoolReference[], flags: Flag[], notes: string[]): ResultValue {
  if (change.value === null) {
    throw new InputError('lab', null, "The blue-wool comparison needs the specimen's own change: give lab before and after.");
  }
  const numbers = references.map(({ reference }) => reference);
  const twice = numbers.findIndex((number, index) => numbers.indexOf(number) !== index);
  if (twice >= 0) {
    throw new InputError(`blueWool[${twice}].reference`, numbers[twice], `Blue-wool reference ${numbers[twice]} is given twice.`);
  }
  for (const [slower, faster] of outOfOrder(references)) {
    flags.push({
      code: 'blue-wool-order',
      where: 'blueWool',
      text: `Reference ${faster.reference} changed more than reference ${slower.reference}, which should fade faster; the exposure or a reading is doubtful.`,
    });
  }
  const base = { unit: '', low: null, high: null, level: null, n: change.n };
  const rating = rateByBlueWool(change.value, references);
  switch (rating.kind) {
    case 'equal':
      notes.push(`The specimen changed as much as blue-wool reference ${rating.reference}.`);
      return { ...base, value: rating.reference, text: `${rating.reference}`, bound: 'exact' };
    case 'between':
      notes.push(`The specimen's change lies between those of blue-wool references ${rating.low} and ${rating.high}.`);
      return { ...base, value: (rating.low + rating.high) / 2, text: `${rating.low}-${rating.high}`, low: rating.low, high: rating.high, bound: 'between' };
    case 'more':
      notes.push(`The specimen changed more than blue-wool reference ${rating.reference}, the least fast one exposed.`);
      return { ...base, value: rating.reference, bound: 'at-most' };
    case 'less':
      notes.push(`The specimen changed less than blue-wool reference ${rating.reference}, the fastest one exposed.`);
      return { ...base, value: rating.reference, bound: 'at-least' };
  }
}
