import type { CellValue } from '../method/method.ts';
import { readDecimal } from '../quantity/decimal.ts';
import { areas } from './areas.ts';
import type { Entry } from './entry.ts';
import type { EntryNames } from './entry-names.ts';
import { because, ended, type EntrySentence } from './sentence.ts';

function fileSize(bytes: number): string {
  return bytes < 1000 ? `${bytes} bytes` : `${Math.round(bytes / 1000)} kB`;
}

/** Puts an entry into one sentence for the Record screen. */
export function describeEntry(entry: Entry, names: EntryNames): EntrySentence {
  const plain = (text: string): EntrySentence => ({ text, correction: null });
  switch (entry.kind) {
    case 'notebook.created':
      return plain(`Began the notebook ${quoted(entry.body.title)}${of(entry.body.laboratory)}.`);
    case 'person.added':
      return plain(`Added ${entry.body.name} (${entry.body.initials})${entry.body.role ? `, ${entry.body.role}` : ''}.`);
    case 'material.added':
      return plain(`Added the ${entry.body.kind === 'other' ? 'material' : entry.body.kind} ${entry.body.name}${of(entry.body.supplier)}.`);
    case 'lot.added':
      return plain(
        `Added lot ${entry.body.code} of ${names.material(entry.body.materialId)}${entry.body.receivedOn ? `, received on ${entry.body.receivedOn}` : ''}.`,
      );
    case 'sample.added': {
      const { code, product, lotIds } = entry.body;
      const made = lotIds.length === 0 ? '' : `, made from ${listed(lotIds.map((lotId) => names.lot(lotId)))}`;
      return plain(`Added sample ${code}${of(product)}${made}.`);
    }
    case 'test.started':
      return plain(`Started ${names.method(entry.body.methodId)} (version ${entry.body.methodVersion}) on ${names.sample(entry.body.sampleId)}.`);
    case 'limits.set': {
      const { testId, limits, rule, reason } = entry.body;
      const set = limits.length === 0 ? 'Removed the limits' : `Set ${limits.length === 1 ? 'the limit' : `${limits.length} limits`} (${rule} rule)`;
      return plain(`${set} for ${names.test(testId)}${because(reason)}`);
    }
    case 'condition.entered':
    case 'reading.entered':
      return plain(entered(entry, names));
    case 'condition.corrected':
    case 'reading.corrected': {
      const { testId, key, before, value, reason } = entry.body;
      const correction = { before: valueText(names, testId, key, before), after: valueText(names, testId, key, value), reason };
      return { text: `Corrected ${place(entry, names)} from ${correction.before} to ${correction.after}.`, correction };
    }
    case 'row.voided':
      return plain(`Voided ${names.row(entry.body.testId, entry.body.row)} of ${names.test(entry.body.testId)}: ${ended(entry.body.reason)}`);
    case 'row.restored':
      return plain(`Restored ${names.row(entry.body.testId, entry.body.row)} of ${names.test(entry.body.testId)}: ${ended(entry.body.reason)}`);
    case 'row.remarked': {
      const where = `${names.row(entry.body.testId, entry.body.row)} of ${names.test(entry.body.testId)}`;
      return plain(entry.body.remark === '' ? `Removed the remark on ${where}.` : `Remarked on ${where}: ${ended(entry.body.remark)}`);
    }
    case 'attachment.added':
      return plain(`Attached the file ${entry.body.name} (${fileSize(entry.body.size)}).`);
    case 'trace.read': {
      const { points, reason } = entry.body;
      const { block } = entry.body.reading;
      return plain(`Read a trace of ${points} points${block > 0 ? ` (block ${block + 1} of its file)` : ''} into ${place(entry, names)}${because(reason)}`);
    }
    case 'test.finished': {
      const verdicts = entry.body.verdicts.filter((verdict) => verdict.verdict !== 'no limit').map((verdict) => verdict.verdict);
      return plain(`Finished ${names.test(entry.body.testId)}${verdicts.length > 0 ? `: ${verdictText(verdicts)}` : ''}.`);
    }
    case 'report.issued': {
      const { number, recipient, testIds, replaces } = entry.body;
      const tests = testIds.length === 1 ? 'one test' : `${testIds.length} tests`;
      const instead = replaces ? ` in place of report ${names.report(replaces.reportId)}: ${ended(replaces.reason)}` : '.';
      return plain(`Issued report ${number} on ${tests}${recipient ? ` to ${recipient}` : ''}${instead}`);
    }
    default: {
      const sentence = areas[entry.kind].sentence(entry, names);
      return typeof sentence === 'string' ? plain(sentence) : sentence;
    }
  }
}

type CellEntry = Extract<Entry, { kind: 'condition.entered' | 'condition.corrected' | 'reading.entered' | 'reading.corrected' | 'trace.read' }>;

function entered(entry: Extract<Entry, { kind: 'condition.entered' | 'reading.entered' }>, names: EntryNames): string {
  const { testId, key, value } = entry.body;
  const typed = entry.body.typed.trim();
  if (value === null) return `Cleared ${place(entry, names)}.`;
  const text = asTyped(names.value(testId, key, value), value, typed);
  // The keystrokes matter where they read otherwise than the value, e.g. the shortcut of a choice.
  const shown = typed === '' || text.startsWith(typed) ? text : `${text} (typed ${quoted(shortened(typed))})`;
  return `Entered ${shown} for ${place(entry, names)}.`;
}

/** A pasted spectrum is long; the record keeps it whole. */
function shortened(typed: string): string {
  const characters = [...typed];
  return characters.length > 60 ? `${characters.slice(0, 60).join('')}…` : typed;
}

/** '38.5 mN/m' as '38,50 mN/m' where that was typed and is the same number. */
function asTyped(text: string, value: CellValue, typed: string): string {
  const read = readDecimal(typed);
  const digits = String(value);
  return 'value' in read && read.value === value && text.startsWith(digits) ? typed + text.slice(digits.length) : text;
}

function place(entry: CellEntry, names: EntryNames): string {
  const { testId, key } = entry.body;
  const row = 'row' in entry.body ? `, ${names.row(testId, entry.body.row)}` : '';
  return `${names.field(testId, key)}${row}, in ${names.test(testId)}`;
}

function valueText(names: EntryNames, testId: string, key: string, value: CellValue): string {
  return value === null ? 'nothing' : names.value(testId, key, value);
}

function verdictText(verdicts: string[]): string {
  const words = ['falls short', 'undecided', 'meets'].filter((word) => verdicts.includes(word));
  return words.map((word) => (verdicts.length === 1 ? word : `${verdicts.filter((verdict) => verdict === word).length} ${word}`)).join(', ');
}

function of(name: string): string {
  return name === '' ? '' : ` (${name})`;
}

function listed(items: string[]): string {
  return items.length < 2 ? items.join('') : `${items.slice(0, -1).join('; ')} and ${items.at(-1)}`;
}

function quoted(text: string): string {
  return `“${text}”`;
}
