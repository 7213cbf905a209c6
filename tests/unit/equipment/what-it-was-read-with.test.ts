import { describe, expect, it } from 'vitest';
import { instrumentField } from '../../../shared-lib/method/instrument-field.ts';
import type { ItemField, Method } from '../../../shared-lib/method/method.ts';
import { allMethods } from '../../../shared-lib/registry/methods.ts';

/** Methods that are read with no instrument that is calibrated, and why. */
const withoutInstrument: Record<string, string> = {
  'test-fluids': 'the fluids are the measure: their lot is asked for',
  'treatment-decay': 'the fluids are the measure: their lot is asked for',
  'lamination-recheck': 'counted by eye in a frame; curl by a rule',
  'tape-adhesion': 'the tape is the measure: its lot is asked for; looked at by eye or in a photograph',
  'tape-label-lift': 'the tape is the measure: its lot is asked for; looked at by eye',
  crinkle: 'crumpled by hand, looked at by eye or in a photograph',
  'surface-tack': 'touched with fibres and a gloved finger',
  'match-by-eye': 'the eye reads, under a lamp that is stated',
  'odour-triangle': 'noses',
  'odour-intensity': 'noses',
};

/** Where one apparatus acts on the specimen and another reads it, the second is asked for as well. */
const withApparatus: Record<string, string[]> = { rub: ['rubTester'], 'light-exposure': ['exposedIn'], 'cure-depth': ['radiometer'] };

/** Where what it is read with is used up or ages. */
const withFluid: Record<string, string> = { 'test-fluids': 'fluidLot', 'treatment-decay': 'fluidLot', 'tape-adhesion': 'tape', 'tape-label-lift': 'tape' };

const items = ({ conditions }: Method, of: ItemField['of']) => conditions.filter((field): field is ItemField => field.kind === 'item' && field.of === of);

describe('what a test is read with', () => {
  it.each(allMethods.map((method) => [method.id, method] as const))('%s asks for its instrument, or says why it has none', (id, method) => {
    const instruments = items(method, 'instrument');
    expect(instruments.map(({ key }) => key)).toEqual(id in withoutInstrument ? [] : ['instrument', ...(withApparatus[id] ?? [])]);
    if (instruments.length > 0) expect(instruments[0]).toBe(instrumentField);
    expect(items(method, 'fluid').map(({ key }) => key)).toEqual(id in withFluid ? [withFluid[id]] : []);
    // A lab that keeps no instruments is not held up by them.
    for (const field of instruments) expect(field.required).toBeUndefined();
  });

  it('the reasons are of methods that there are', () => {
    const ids = allMethods.map(({ id }) => id);
    for (const id of [...Object.keys(withoutInstrument), ...Object.keys(withApparatus), ...Object.keys(withFluid)]) expect(ids).toContain(id);
  });

  it('a sheet that says when a row was read has a day for it', () => {
    const said = allMethods.filter(({ readings }) => readings.readOn !== undefined);
    expect(said.map(({ id }) => id)).toEqual(['light-exposure']);
    for (const { readings } of said) expect(readings.fields.find(({ key }) => key === readings.readOn)).toMatchObject({ kind: 'text', format: 'date' });
  });
});
