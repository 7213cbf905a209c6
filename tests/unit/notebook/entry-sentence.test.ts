import { describe, expect, test } from 'vitest';
import type { EntryNames } from '../../../shared-lib/notebook/entry-names.ts';
import { describeEntry } from '../../../shared-lib/notebook/entry-sentence.ts';
import type { DraftEntry, Entry, EntryKind } from '../../../shared-lib/notebook/entry.ts';
import { oneOfEach } from './one-of-each.ts';

const names: EntryNames = {
  person: () => 'Imke Rasmund',
  material: () => 'PET film',
  lot: () => 'PET film, lot 4711',
  instrument: () => 'the instrument Spectrodensitometer, SD-2207',
  fluid: () => 'Test fluids, lot TF-9',
  sample: () => 'S-014',
  method: () => 'Test fluids',
  test: () => 'Test fluids on S-014',
  row: (_testId, row) => `position ${row.slice(1)}`,
  field: (_testId, key) => (key === 'humidity' ? 'relative humidity' : 'wetting tension'),
  value: (_testId, key, value) => `${value} ${key === 'humidity' ? '%' : 'mN/m'}`,
  file: () => 'photo 1.jpg',
  report: () => 'LD-2025-001',
  trialSet: () => 'the trial set “Low-migration inks”',
  reference: () => 'the reference colour “Pouch red”',
  plan: () => '“Frozen dumpling pouch”',
  approval: () => 'the press approval of job J-4418',
  approvalLine: () => 'Barcode reads',
  trial: () => 'trial R0',
  property: () => 'Wetting tension by Test fluids',
};
const entryOf = (draft: DraftEntry) => ({ ...draft, seq: 1, id: 'e', recordedAt: draft.occurredAt, previous: '', hash: '' }) as Entry;
const textOf = (kind: EntryKind, body: object = {}) => {
  const draft = oneOfEach.find((one) => one.kind === kind)!;
  return describeEntry(entryOf({ ...draft, body: { ...draft.body, ...body } } as DraftEntry), names).text;
};

describe('describeEntry', () => {
  test.each<[EntryKind, string]>([
    ['notebook.created', 'Began the notebook “Low-migration series” (Quillmere Flexibles).'],
    ['notebook.described', 'Changed the notebook from “Low-migration series” (Quillmere Flexibles) to “Low-migration series 2025” (Quillmere Flexibles): a second series begins.'],
    ['person.added', 'Added Imke Rasmund (IR), technician.'],
    ['material.added', 'Added the film PET film (Osprey Vale).'],
    ['material.described', 'Described PET film: structure PET 12 µm treated inner.'],
    ['lot.described', 'Described PET film, lot 4711: expires on 2026-04-30; thickness 12.1 µm: certificate came.'],
    ['lot.madeFrom', 'Put down that PET film, lot 4711 was made from PET film, lot 4711.'],
    ['lot.retired', 'Retired PET film, lot 4711: beads along the edge.'],
    ['lot.returned', 'Took PET film, lot 4711 back into use: edge was cut off.'],
    ['reference.retired', 'Retired the reference colour “Pouch red”: the design ended.'],
    ['reference.returned', 'Took the reference colour “Pouch red” back into use: printed once more.'],
    ['sample.changed', 'Changed sample S-014: customer Marrowfield Foods; across the web 350 mm; lots nothing: moved from another job.'],
    ['sample.retired', 'Put down sample S-014 as disposed of: used up.'],
    ['sample.returned', 'Put down sample S-014 as kept again: found in another box.'],
    ['instrument.added', 'Added the instrument Spectrodensitometer, serial number SD-2207.'],
    ['instrument.changed', 'Changed the instrument Spectrodensitometer, SD-2207: serial number SD-2208: misread.'],
    ['instrument.calibrated', 'Put down that the instrument Spectrodensitometer, SD-2207 was calibrated on 2025-04-01, due again on 2026-03-31: by the maker.'],
    ['calibration.voided', 'Voided a calibration of the instrument Spectrodensitometer, SD-2207: of another instrument.'],
    ['instrument.retired', 'Took the instrument Spectrodensitometer, SD-2207 out of use: lamp failed.'],
    ['instrument.returned', 'Took the instrument Spectrodensitometer, SD-2207 back into use: lamp replaced.'],
    ['fluid.added', 'Added the test fluids Test fluids, lot TF-9, expires on 2025-12-31.'],
    ['fluid.changed', 'Changed Test fluids, lot TF-9: opened on 2025-05-02.'],
    ['fluid.retired', 'Took Test fluids, lot TF-9 out of use: empty.'],
    ['fluid.returned', 'Took Test fluids, lot TF-9 back into use: half full.'],
    ['plan.added', 'Made the plan “Frozen dumpling pouch” of 2 tests, without 1 proposed test.'],
    ['plan.versioned', 'Made version 2 of the plan “Frozen dumpling pouch”: customer asked. Customer: nothing → Marrowfield Foods.'],
    ['plan.retired', 'Retired the plan “Frozen dumpling pouch”: product ended.'],
    ['plan.followed', 'Sample S-014 follows the plan “Frozen dumpling pouch”, version 1, printed 2025-05-02 09:30 UTC.'],
    ['plan.left', 'Sample S-014 follows its plan no more: taken for another job.'],
    ['planLine.tested', 'Took Test fluids on S-014 as a test of the plan “Frozen dumpling pouch”.'],
    ['approval.drafted', 'Drafted the press approval of job J-4418 from the plan “Frozen dumpling pouch”, version 1, to take the place of the signed one: second ink lot.'],
    ['approval.changed', 'Changed the press approval of job J-4418: lots nothing; samples S-014; note second roll: it was roll 2.'],
    ['approvalLine.added', 'Added the line “Barcode reads” to the press approval of job J-4418.'],
    ['approvalLine.dropped', 'Dropped a line that had been added to the press approval of job J-4418: no barcode on it.'],
    ['approvalLine.linked', 'Took Test fluids on S-014 for the line “Barcode reads” of the press approval of job J-4418: measured again.'],
    ['approvalLine.observed', 'Imke Rasmund observed “Barcode reads”: in order, on the press approval of job J-4418: ten of ten.'],
    ['approvalLine.waived', 'Imke Rasmund waived the line “Barcode reads” of the press approval of job J-4418, which is undecided, because: bond still builds.'],
    ['approval.signed', 'Imke Rasmund approves the press run of job J-4418: 2 lines: 2 meet their limits. It takes the place of the one signed before.'],
    ['approval.withdrawn', 'Imke Rasmund withdrew the press approval of job J-4418: complaint.'],
    ['lot.added', 'Added lot 4711 of PET film, received on 2025-04-30.'],
    ['sample.added', 'Added sample S-014 (dumpling pouch 600 g), made from PET film, lot 4711.'],
    ['test.started', 'Started Test fluids (version 1) on S-014.'],
    ['limits.set', 'Set the limit (simple rule) for Test fluids on S-014: new specification.'],
    ['condition.entered', 'Entered 50 % for relative humidity, in Test fluids on S-014.'],
    ['condition.corrected', 'Corrected relative humidity, in Test fluids on S-014 from 50 % to 48 %.'],
    ['reading.entered', 'Entered 38,5 mN/m for wetting tension, position 1, in Test fluids on S-014.'],
    ['reading.corrected', 'Corrected wetting tension, position 1, in Test fluids on S-014 from 38.5 mN/m to 36 mN/m.'],
    ['row.voided', 'Voided position 1 of Test fluids on S-014: touched by hand.'],
    ['row.restored', 'Restored position 1 of Test fluids on S-014: it was row 2.'],
    ['row.remarked', 'Remarked on position 1 of Test fluids on S-014: near the edge.'],
    ['person.changed', 'Changed Imke Rasmund, technician to Imke Rasmund, laboratory lead.'],
    ['person.retired', 'Retired Imke Rasmund: left the lab.'],
    ['person.returned', 'Brought Imke Rasmund back: is here again.'],
    ['passphrase.set', 'Set a passphrase for Imke Rasmund.'],
    ['passphrase.renewed', 'Imke Rasmund let the forgotten passphrase of Imke Rasmund be set anew: forgotten over the holidays.'],
    ['signing.refused', 'Refused a wrong passphrase for Imke Rasmund.'],
    ['work.witnessed', 'Imke Rasmund has read and understood: entries 10 to 14 of Test fluids on S-014 by Imke Rasmund.'],
    ['test.withdrawn', 'Withdrew Test fluids on S-014: wrong sample.'],
    ['attachment.added', 'Attached the file peel-1.csv (12 bytes).'],
    ['trialSet.added', 'Began the trial set “Low-migration inks” (dumpling pouch 600 g).'],
    ['responses.set', 'Set 1 response of the trial set “Low-migration inks”.'],
    ['factors.set', 'Set the factors Wax of the trial set “Low-migration inks”: varied on purpose.'],
    ['trial.added', 'Added trial R0 as the control to the trial set “Low-migration inks”, with 1 component.'],
    ['trial.changed', 'Changed trial R0: lot was misread.'],
    ['sample.linked', 'Took sample S-014 as one of trial R0.'],
    ['sample.unlinked', 'Took sample S-014 away from trial R0: printed with R1.'],
    ['study.recorded', 'Recorded a measurement study of Wetting tension by Test fluids: 1 part read by 2 people, 2 readings.'],
    ['reference.added', 'Added the reference colour Pouch red (L* 45, a* 55, b* 30 under D50, 2°).'],
    ['tolerance.set', 'Set the tolerance of Hollin Foods on the reference colour “Pouch red” to ΔE CMC (2:1) ≤ 1.5, ΔL* ±0.8.'],
    ['spectrum.read', 'Read the spectrum solid 1 (400–700 nm by 100, 5 to 40 %) into wetting tension, position 2, in Test fluids on S-014.'],
    ['attachment.linked', 'Put the file photo 1.jpg with PET film, lot 4711: as delivered.'],
    ['attachment.unlinked', 'Took the file photo 1.jpg away from PET film, lot 4711: belongs to lot 4712.'],
    ['photo.measured', 'Measured the photograph photo 1.jpg at threshold 128 for wetting tension, position 2, in Test fluids on S-014.'],
    ['trace.read', 'Read a trace of 400 points into wetting tension, position 2, in Test fluids on S-014.'],
    ['test.finished', 'Finished Test fluids on S-014: meets.'],
    ['report.issued', 'Issued report LD-2025-001 on one test to Tamarind.'],
  ])('puts %s into a sentence', (kind, text) => {
    expect(textOf(kind)).toBe(text);
  });

  test('gives before, after and reason of a correction, and of nothing else', () => {
    for (const draft of oneOfEach) {
      const { correction } = describeEntry(entryOf(draft), names);
      if (draft.kind === 'reading.corrected') expect(correction).toEqual({ before: '38.5 mN/m', after: '36 mN/m', reason: 'wrong bottle' });
      else if (draft.kind === 'condition.corrected') expect(correction).toEqual({ before: '50 %', after: '48 %', reason: 'misread' });
      else if (draft.kind === 'person.changed') expect(correction).toEqual({ before: 'Imke Rasmund, technician', after: 'Imke Rasmund, laboratory lead', reason: 'took over the lab' });
      else if (draft.kind === 'notebook.described') expect(correction?.before).toBe('“Low-migration series” (Quillmere Flexibles)');
      else if (draft.kind === 'lot.described') expect(correction).toEqual({ before: 'expires on nothing; thickness 12 µm', after: 'expires on 2026-04-30; thickness 12.1 µm', reason: 'certificate came' });
      else if (draft.kind === 'sample.changed') expect(correction?.before).toBe('customer nothing; across the web nothing; lots PET film, lot 4711');
      else if (draft.kind === 'instrument.changed') expect(correction).toEqual({ before: 'serial number SD-2207', after: 'serial number SD-2208', reason: 'misread' });
      else if (draft.kind === 'approval.changed') expect(correction).toEqual({ before: 'lots PET film, lot 4711; samples all of the job; note nothing', after: 'lots nothing; samples S-014; note second roll', reason: 'it was roll 2' });
      else expect(correction, draft.kind).toBeNull();
    }
  });

  test.each<[number | string, string, string]>([
    [1, '1,00', '1,00 mN/m'],
    [38.5, ' 38,50 ', '38,50 mN/m'],
    [38, '', '38 mN/m'],
    [38, '38 mN/m', '38 mN/m'],
    [38, '40', '38 mN/m (typed “40”)'],
    ['adhesive', 's', 'adhesive mN/m (typed “s”)'],
  ])('gives %s typed as “%s” as %s', (value, typed, shown) => {
    expect(textOf('reading.entered', { value, typed })).toBe(`Entered ${shown} for wetting tension, position 1, in Test fluids on S-014.`);
  });

  test('names the result whose place another one or an observation takes', () => {
    expect(textOf('approvalLine.linked', { insteadOf: 't2' })).toBe('Took Test fluids on S-014 for the line “Barcode reads” of the press approval of job J-4418, instead of Test fluids on S-014: measured again.');
    expect(textOf('approvalLine.observed', { insteadOf: 't2', reason: 'run on line' })).toContain('ten of ten. It takes the place of Test fluids on S-014: run on line.');
    expect(textOf('approvalLine.observed', { reason: 'looked again' })).toContain('ten of ten. Observed again: looked again.');
  });

  test('says so when a cell was cleared, and how verdicts are spread', () => {
    expect(textOf('reading.entered', { value: null, typed: '' })).toBe('Cleared wetting tension, position 1, in Test fluids on S-014.');
    expect(textOf('reading.corrected', { value: null, typed: '' })).toContain('from 38.5 mN/m to nothing.');
    const verdict = (word: string) => ({ property: 'p', limit: null, verdict: word, probability: null });
    expect(textOf('test.finished', { verdicts: ['meets', 'meets', 'falls short', 'no limit'].map(verdict) })).toBe(
      'Finished Test fluids on S-014: 1 falls short, 2 meets.',
    );
    expect(textOf('report.issued', { replaces: { reportId: 'rep0', reason: 'wrong lot!' } })).toContain('in place of report LD-2025-001: wrong lot!');
  });
});
