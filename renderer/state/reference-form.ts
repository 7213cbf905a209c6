import type { CallInput } from '../../shared-lib/api.ts';
import type { ReferenceView } from '../../shared-lib/notebook/colour-views.ts';
import { readOptional } from './optional-number.ts';

/** A reference colour as it is typed. */
export interface ReferenceDraft {
  name: string;
  /** A spectrum typed or pasted, or chosen from a file; or L*, a*, b*. */
  by: 'spectrum' | 'file' | 'lab';
  spectrum: string;
  L: string;
  a: string;
  b: string;
  illuminant: CallInput<'reference.add'>['illuminant'];
  observer: '2' | '10';
  condition: '' | NonNullable<CallInput<'reference.add'>['condition']>;
  geometry: '' | NonNullable<CallInput<'reference.add'>['geometry']>;
  note: string;
  reason: string;
}

/** A blank form, or one that begins with what an edition has. */
export function referenceDraft(edition?: ReferenceView): ReferenceDraft {
  return {
    name: edition?.name ?? '',
    by: edition && edition.spectrum === null ? 'lab' : 'spectrum',
    spectrum: '',
    L: '',
    a: '',
    b: '',
    illuminant: edition?.illuminant ?? 'D50',
    observer: edition?.observer === 10 ? '10' : '2',
    condition: edition?.condition ?? '',
    geometry: edition?.geometry ?? '',
    note: edition?.note ?? '',
    reason: '',
  };
}

interface Problem { field: keyof ReferenceDraft; message: string }

/** What is sent, or which field is at fault. The file, where one was chosen, is added by the form. */
export function referenceInput(draft: ReferenceDraft, replaces: string | null): { input: CallInput<'reference.add'> } | { problem: Problem } {
  const { name, by, spectrum, illuminant, observer, condition, geometry, note, reason } = draft;
  const lab: Record<string, number> = {};
  if (by === 'lab') {
    for (const key of ['L', 'a', 'b'] as const) {
      const read = readOptional(draft[key]);
      if ('problem' in read) return { problem: { field: key, message: read.problem } };
      if (read.value === null) return { problem: { field: key, message: `${key}* is needed.` } };
      lab[key] = read.value;
    }
  }
  return {
    input: {
      name,
      spectrum: by === 'spectrum' ? spectrum : '',
      lab: by === 'lab' ? { L: lab.L!, a: lab.a!, b: lab.b! } : null,
      illuminant,
      observer: observer === '10' ? 10 : 2,
      condition: condition || null,
      geometry: geometry || null,
      note,
      replaces: replaces === null ? null : { referenceId: replaces, reason },
    },
  };
}
