import type { ParsedInput } from '../../../shared-lib/api.ts';
import type { Entry } from '../../../shared-lib/notebook/entry.ts';
import type { Signature } from '../../../shared-lib/notebook/signature.ts';
import type { PageOfWork } from '../../../shared-lib/notebook/witness-views.ts';
import type { PageWanted } from '../../../shared-lib/witness-calls.ts';
import { entryLine } from '../entry-line.ts';
import { entryNames } from '../entry-names.ts';
import type { OpenNotebook } from '../open-notebook.ts';
import { entriesOfPage, scopeOf } from '../queries/pages-of-work.ts';
import { nameOf } from '../queries/people.ts';
import { entriesAfter, witnessesOfPage } from '../queries/witnesses.ts';
import { Refusal } from '../refusal.ts';
import { sign } from '../signing/sign.ts';
import { witnessLine } from '../witness-lines.ts';
import type { Workplace } from '../workplace.ts';

/** More than this nobody reads through before signing. */
const MOST_ENTRIES = 2000;
const MEANING = 'has read and understood';

/** A page of work for a second person to read. */
export function pageOfWork({ notebook }: Workplace, { page }: ParsedInput<'work.page'>): PageOfWork {
  return viewOf(notebook, page);
}

/** The signature of a second person below a page of work: nobody who made or signed an entry of it. */
export async function witnessWork({ notebook }: Workplace, { page, toSeq, chainHash, personId, passphrase }: ParsedInput<'work.witness'>): Promise<PageOfWork> {
  const { store } = notebook;
  if (store.readOnly) throw new Refusal('read-only', store.readOnly);
  const view = requireRead(notebook, page, toSeq, chainHash);
  const author = view.authors.find((person) => person.personId === personId);
  if (author) throw new Refusal('conflict', `${author.name} made or signed entries of this page; a witness is somebody who did not.`);
  const signature = await sign(notebook, { personId, passphrase }, MEANING);
  // Hashing took its time, and an entry may have come in between.
  requireRead(notebook, page, toSeq, chainHash);
  notebook.append([{ kind: 'work.witnessed', body: { ...scopeOf(page), fromSeq: view.fromSeq, toSeq, chainHash, signature } }]);
  return viewOf(notebook, page);
}

function requireRead(notebook: OpenNotebook, page: PageWanted, toSeq: number, chainHash: string): PageOfWork {
  const view = viewOf(notebook, page);
  if (view.toSeq !== toSeq || view.chainHash !== chainHash) throw new Refusal('conflict', 'Entries were added to this page since it was shown; read them first, then sign.');
  return view;
}

function viewOf(notebook: OpenNotebook, page: PageWanted): PageOfWork {
  const { store, methods } = notebook;
  const names = entryNames(store, methods);
  const found = entriesOfPage(store, page, MOST_ENTRIES);
  const first = found[0]?.entry;
  const last = found.at(-1)?.entry;
  if (!first || !last) throw new Refusal('not-found', 'There are no entries on this page.');
  if (found.length > MOST_ENTRIES) throw new Refusal('conflict', `This page has more than ${MOST_ENTRIES} entries; take a shorter one.`);
  const scope = scopeOf(page);
  const span = { fromSeq: first.seq, toSeq: last.seq };
  const of = scope.testId === null ? '' : names.test(scope.testId);
  const whose = scope.by === null ? '' : `the work of ${names.person(scope.by)}, `;
  return {
    ...scope,
    ...span,
    chainHash: last.hash,
    title: of || `${whose}entries ${span.fromSeq} to ${span.toSeq}`,
    entries: found.map((entry) => entryLine(store, names, entry)),
    authors: [...new Set(found.flatMap(({ entry }) => handsOf(entry)))].map((personId) => ({ personId, name: nameOf(store, personId) })),
    witnesses: witnessesOfPage(store, { ...scope, ...span }).map((witness) => witnessLine(store, witness, scope.testId === null ? 0 : entriesAfter(store, scope.testId, witness.toSeq))),
  };
}

/** Who recorded it, and who signed it: another person may have been at the bench. */
function handsOf({ by, body }: Entry): string[] {
  const { signature } = body as { signature?: Signature };
  return signature ? [by, signature.personId] : [by];
}
