import type { ParsedInput } from '../../../shared-lib/api.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import { spectrumText } from '../../../shared-lib/colour/spectrum-text.ts';
import type { Method, SpectrumField } from '../../../shared-lib/method/method.ts';
import type { SpectraPreview } from '../../../shared-lib/notebook/colour-views.ts';
import type { BenchSheetView } from '../../../shared-lib/notebook/views.ts';
import { previewSpectra, readSpectra, type NamedSpectrum } from '../../exchange/spectra-file.ts';
import { attachmentDraft } from '../attachment-draft.ts';
import { benchSheet } from '../bench-sheet.ts';
import { fieldNamed } from '../field-named.ts';
import type { Draft } from '../open-notebook.ts';
import { loadTest, type StoredTest } from '../queries/tests.ts';
import { Refusal } from '../refusal.ts';
import { requireReason } from '../require-reason.ts';
import { rowNumber } from '../sheet-rows.ts';
import type { Workplace } from '../workplace.ts';
import { decodeFile } from '../decode-file.ts';
import { fillInIfNew, openRow } from './readings.ts';

export function spectraPreview({ bytes, reading }: ParsedInput<'spectra.preview'>): SpectraPreview {
  return previewSpectra(decodeFile(bytes), reading);
}

/** Reads spectra of a file into a cell and those below it; the file itself is kept in the notebook as it came. */
export function readSpectrum({ notebook }: Workplace, input: ParsedInput<'spectrum.read'>): BenchSheetView {
  const { testId, row, key, name, reading, places } = input;
  const test = loadTest(notebook.store, testId);
  const method = notebook.methods.ofTest(test);
  const field = fieldNamed(row === '' ? method.conditions : method.readings.fields, key);
  if (field.kind !== 'spectrum') throw new Refusal('conflict', `${field.label} takes no spectrum.`);
  if (row === '' && places.length > 1) throw new InputError('places', places.length, `${field.label} takes one spectrum; choose which.`);
  const bytes = decodeFile(input.bytes);
  const found = readSpectra(bytes, reading);
  const { sha256, drafts, attachments } = attachmentDraft(notebook.store, name, 'text/plain', bytes);
  const chosen = places.map((place) => ({ place, ...(found[place] ?? refusePlace(place)) }));
  const file = (one: NamedSpectrum & { place: number }) => ({ sha256, reading, place: one.place, name: one.name || name });
  const read = row === '' ? [] : chosen.flatMap((one, down) => rowDrafts(test, method, field, `r${rowNumber(row) + down}`, one, file(one), input.reason));
  const condition = row === '' ? conditionDrafts(test, field, chosen[0]!, file(chosen[0]!), input.reason) : [];
  notebook.append([...drafts, ...condition, ...read], attachments);
  return benchSheet(notebook, testId);
}

type FileOfSpectrum = Extract<Draft, { kind: 'spectrum.read' }>['body']['file'];

function conditionDrafts(test: StoredTest, field: SpectrumField, { spectrum }: NamedSpectrum, file: FileOfSpectrum, typedReason: string): Draft[] {
  const reason = reasonFor(field, test.conditions[field.key] !== undefined, typedReason);
  return [{ kind: 'spectrum.read', body: { testId: test.testId, row: '', key: field.key, value: spectrumText(spectrum), file, reason } }];
}

/** The spectrum, its name where the row has none yet, and what a new row starts with. */
function rowDrafts(test: StoredTest, method: Method, field: SpectrumField, row: string, { name, spectrum }: NamedSpectrum, file: FileOfSpectrum, typedReason: string): Draft[] {
  const { testId } = test;
  const { key, nameTo } = field;
  const stored = openRow(test, method, row);
  const reason = reasonFor(field, stored?.cells[key] !== undefined, typedReason);
  const names = nameTo !== undefined && name !== '' && (stored?.cells[nameTo]?.value ?? null) === null;
  const text = name.slice(0, 100);
  return [
    { kind: 'spectrum.read', body: { testId, row, key, value: spectrumText(spectrum), file, reason } },
    ...(names ? [{ kind: 'reading.entered' as const, body: { testId, row, key: nameTo, value: text, typed: text } }] : []),
    ...fillInIfNew(test, method, row, new Set(names ? [key, nameTo] : [key])),
  ];
}

/** Only a replacement has a reason, also of a spectrum that was cleared since: by it the record tells a correction from a first spectrum. */
function reasonFor(field: SpectrumField, replaces: boolean, reason: string): string {
  if (!replaces) return '';
  requireReason(reason, `${field.label} was read before`);
  return reason.trim();
}

function refusePlace(place: number): never {
  throw new InputError('places', place, `The file has no spectrum ${place + 1}.`);
}
