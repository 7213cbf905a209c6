import type { Entry } from './entry.ts';
import type { MergeConflict } from './merge-entries.ts';

/** Things of which a merge calls one otherwise. */
export type Marked = NonNullable<MergeConflict['mark']>['of'];

/** What people tell apart by a code or name that no two of them share, and the columns that hold it. */
export const codeColumns = {
  sample: ['code'],
  lot: ['code'],
  report: ['number'],
  person: ['initials'],
  material: ['name', 'supplier'],
  instrument: ['name', 'serial'],
  fluid: ['name', 'lot'],
  reference: ['name'],
  trialSet: ['title'],
  trial: ['name'],
  plan: ['title'],
  inHouseMethod: ['title'],
} as const;

/** What is typed, or printed on paper, by its code alone: the later of two goes by another. Elsewhere a person names or retires one of them. */
export const goesByAnother: ReadonlySet<keyof typeof codeColumns> = new Set<Marked>(['sample', 'lot', 'report', 'person']);

/** What an entry calls a thing. */
export interface Coded {
  of: keyof typeof codeColumns;
  id: string;
  /** As it is typed; of several columns with a blank between. */
  code: string;
  entry: Entry;
}

/** The codes that an entry gives or changes. */
export function codesSaid(entry: Entry): Coded[] {
  const coded = (of: Coded['of'], id: string, ...code: string[]): Coded[] => [{ of, id, code: code.join(' ').trim(), entry }];
  const changed = <Fields>(of: Coded['of'], id: string, { before, after }: { before: Fields; after: Fields }, code: (fields: Fields) => string[]): Coded[] =>
    code(before).join('\n') === code(after).join('\n') ? [] : coded(of, id, ...code(after));
  switch (entry.kind) {
    case 'sample.added':
      return coded('sample', entry.body.sampleId, entry.body.code);
    case 'sample.changed':
      return changed('sample', entry.body.sampleId, entry.body, ({ code }) => [code]);
    case 'lot.added':
      return coded('lot', entry.body.lotId, entry.body.code);
    case 'lot.described':
      return changed('lot', entry.body.lotId, entry.body, ({ code }) => [code]);
    case 'report.issued':
      return coded('report', entry.body.reportId, entry.body.number);
    case 'person.added':
      return coded('person', entry.body.personId, entry.body.initials);
    case 'material.added':
      return coded('material', entry.body.materialId, entry.body.name, entry.body.supplier);
    case 'material.described':
      return changed('material', entry.body.materialId, entry.body, ({ name, supplier }) => [name, supplier]);
    case 'instrument.added':
      return coded('instrument', entry.body.instrumentId, entry.body.name, entry.body.serial);
    case 'instrument.changed':
      return changed('instrument', entry.body.instrumentId, entry.body, ({ name, serial }) => [name, serial]);
    case 'fluid.added':
      return coded('fluid', entry.body.fluidId, entry.body.name, entry.body.lot);
    case 'fluid.changed':
      return changed('fluid', entry.body.fluidId, entry.body, ({ name, lot }) => [name, lot]);
    case 'reference.added':
      return coded('reference', entry.body.referenceId, entry.body.name);
    case 'trialSet.added':
      return coded('trialSet', entry.body.trialSetId, entry.body.title);
    case 'trial.added':
    case 'trial.changed':
      return coded('trial', entry.body.trialId, entry.body.name);
    case 'plan.added':
    case 'plan.versioned':
      return coded('plan', entry.body.planId, entry.body.content.title);
    case 'inHouseMethod.added':
    case 'inHouseMethod.versioned':
      return coded('inHouseMethod', entry.body.methodId, entry.body.written.title);
    case 'notebook.merged':
      return entry.body.conflicts.flatMap(({ mark }) => (mark ? coded(mark.of, mark.id, mark.code) : []));
    default:
      return [];
  }
}

/** What each thing is called last, by its id. */
export function lastCodes(entries: readonly Entry[]): Map<string, Coded> {
  return new Map(entries.flatMap(codesSaid).map((coded) => [coded.id, coded]));
}
