import type { ParsedInput } from '../../../shared-lib/api.ts';
import type { BenchSheetView, TracePreview } from '../../../shared-lib/notebook/views.ts';
import { previewTraceCsv } from '../../exchange/trace-csv.ts';
import { attachmentDraft } from '../attachment-draft.ts';
import { benchSheet } from '../bench-sheet.ts';
import { decodeFile } from '../decode-file.ts';
import { fieldNamed } from '../field-named.ts';
import type { Draft } from '../open-notebook.ts';
import { loadTest } from '../queries/tests.ts';
import { Refusal } from '../refusal.ts';
import { requireReason } from '../require-reason.ts';
import type { Workplace } from '../workplace.ts';
import { fillInIfNew, openRow } from './readings.ts';

export function previewTrace({ name, bytes, reading }: ParsedInput<'trace.preview'>): TracePreview {
  return previewTraceCsv(name, decodeFile(bytes), reading);
}

/** Reads a trace into a cell; the file itself is kept in the notebook as it came. */
export function readTrace(workplace: Workplace, input: ParsedInput<'trace.read'>): BenchSheetView {
  const { testId, row, key, name, reading } = input;
  const { notebook } = workplace;
  const test = loadTest(notebook.store, testId);
  const method = notebook.methods.ofTest(test);
  const field = fieldNamed(method.readings.fields, key);
  if (field.kind !== 'trace') throw new Refusal('conflict', `${field.label} takes no trace.`);
  const before = openRow(test, method, row)?.cells[key];
  const bytes = decodeFile(input.bytes);
  const { sha256, drafts, attachments } = attachmentDraft(notebook.store, name, 'text/csv', bytes);
  const points = notebook.traces.read(sha256, bytes, reading, name).forceN.length;
  // Only a replacement has a reason: by it the record tells a correction from a first trace.
  if (before) requireReason(input.reason, `${field.label} was read before`);
  const reason = before ? input.reason.trim() : '';
  const read: Draft = { kind: 'trace.read', body: { traceId: workplace.newId(), testId, row, key, sha256, reading, points, reason } };
  notebook.append([...drafts, read, ...fillInIfNew(test, method, row, new Set([key]))], attachments);
  return benchSheet(notebook, testId);
}
