import type { SearchView } from '../../../../shared-lib/notebook/search-views.ts';
import { readLabel } from '../../../../shared-lib/report/label-sheet.ts';
import type { OpenNotebook } from '../../open-notebook.ts';
import { samplesOfLabel } from '../label-samples.ts';
import { approvals } from './approvals.ts';
import { files } from './files.ts';
import { fluids } from './fluids.ts';
import { instruments } from './instruments.ts';
import { lots } from './lots.ts';
import { materials } from './materials.ts';
import { methods } from './methods.ts';
import { people } from './people.ts';
import { plans } from './plans.ts';
import { recordEntries } from './record-entries.ts';
import { referenceColours } from './reference-colours.ts';
import { reports } from './reports.ts';
import { samples, samplesById } from './samples.ts';
import type { SearchKind } from './search-kind.ts';
import { tests } from './tests.ts';
import { trialSets } from './trial-sets.ts';
import { trials } from './trials.ts';

/** In the order in which they are shown. */
const kinds: readonly SearchKind[] = [samples, tests, materials, lots, referenceColours, trialSets, trials, methods, plans, approvals, reports, instruments, fluids, people, files, recordEntries];

/** Looks for all `search`'s words in everything; nothing is found for ''. What a label's code holds finds its sample, and nothing else. */
export function findEverything(notebook: OpenNotebook, search: string, limit: number): SearchView {
  const labelled = samplesOfLabel(notebook.store, search);
  if (labelled.length > 0) return { search, groups: [{ title: samples.title, ...samplesById(notebook.store, labelled) }] };
  const words = readLabel(search).code.split(/\s+/).filter(Boolean);
  if (words.length === 0) return { search, groups: [] };
  const groups = kinds.map(({ title, find }) => ({ title, ...find(notebook, words, limit) }));
  return { search, groups: groups.filter(({ total }) => total > 0) };
}
