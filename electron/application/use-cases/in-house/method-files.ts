import { isDeepStrictEqual } from 'node:util';
import type { ParsedInput } from '../../../../shared-lib/api.ts';
import { InputError } from '../../../../shared-lib/calculation/input-error.ts';
import { differencesInWords } from '../../../../shared-lib/method/in-house/differences-in-words.ts';
import { readMethodFile, writeMethodFile, type MethodFile } from '../../../../shared-lib/method/in-house/method-file.ts';
import { withoutPictures } from '../../../../shared-lib/method/in-house/without-pictures.ts';
import type { MethodOrigin } from '../../../../shared-lib/method/in-house/written-method.ts';
import type { InHouseView, MethodFileView } from '../../../../shared-lib/notebook/in-house-views.ts';
import type { OpenNotebook } from '../../open-notebook.ts';
import { findVersion, versionsTakenIn, type StoredVersion } from '../../queries/in-house-methods.ts';
import { notebookHeading } from '../../queries/notebook-heading.ts';
import { nameOf } from '../../queries/people.ts';
import { Refusal } from '../../refusal.ts';
import type { Workplace } from '../../workplace.ts';
import { nextVersion, requireMethod, titleInUse } from './methods.ts';
import { inHouseView } from './views.ts';

/** One version as a file. What was taken in unchanged goes out as what it came as, so that it is known again anywhere. */
export function writeOutMethodFile({ notebook }: Workplace, { methodId, version }: ParsedInput<'methodFile.write'>): { fileName: string; text: string } {
  const stored = findVersion(notebook.store, methodId, version ?? requireMethod(notebook, methodId).version);
  if (!stored) throw new Refusal('not-found', 'This version of the method is not in the notebook.');
  const from = stored.origin ?? ownOrigin(notebook, stored);
  const name = stored.written.title.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-|-$/g, '') || 'method';
  return { fileName: `${name}-v${from.version}.laydown-method.json`, text: writeMethodFile({ method: stored.written, from }) };
}

export function inspectMethodFile({ notebook }: Workplace, { file }: ParsedInput<'methodFile.inspect'>): MethodFileView {
  const read = readMethodFile(file);
  const { methodId, standing, against } = standingOf(notebook, read);
  const { method: written, from } = read;
  const changes = against ? differencesInWords(against.written, written) : [];
  return { title: written.title, from, written, standing, text: standingText(standing, from, against), changes, methodId };
}

/** Takes the file in as a copy that says where it comes from. The same version again changes nothing. */
export function takeInMethodFile(workplace: Workplace, { file }: ParsedInput<'methodFile.takeIn'>): InHouseView {
  const { notebook } = workplace;
  const read = readMethodFile(file);
  const { methodId: known, standing, against } = standingOf(notebook, read);
  const { method: written, from: origin } = read;
  if (standing === 'here') return inHouseView(notebook, known!);
  const methodId = known ?? workplace.newId();
  if (standing === 'new') notebook.append([{ kind: 'inHouseMethod.added', body: { methodId, version: '1', written, origin } }]);
  else {
    const changes = differencesInWords(against!.written, written);
    const reason = `Version ${origin.version} of ${labOf(origin)} taken in.`;
    notebook.append([{ kind: 'inHouseMethod.versioned', body: { methodId, version: nextVersion(notebook, methodId), written, origin, changes, reason } }]);
  }
  return inHouseView(notebook, methodId);
}

interface Standing {
  standing: MethodFileView['standing'];
  /** The method here. */
  methodId: string | null;
  /** The version that new tests take here. */
  against: StoredVersion | null;
}

/** @throws InputError for another text under a version that is here, one older than what was taken in, or a title that is in use here */
function standingOf(notebook: OpenNotebook, { method, from }: MethodFile): Standing {
  const { store } = notebook;
  const own = findVersion(store, from.methodId, from.version);
  const takenIn = versionsTakenIn(store).filter(({ origin }) => origin!.methodId === from.methodId);
  const same = own && !own.origin ? own : takenIn.find(({ origin }) => origin!.version === from.version);
  const methodId = same?.methodId ?? takenIn[0]?.methodId ?? null;
  const against = methodId === null ? null : findVersion(store, methodId, requireMethod(notebook, methodId).version)!;
  if (same) {
    if (isDeepStrictEqual(withoutPictures(same.written), method)) return { standing: 'here', methodId, against };
    throw refused(`The file says that it is version ${from.version} of ‘${same.written.title}’ of ${labOf(from)}, which is here already and says something else: ${differencesInWords(withoutPictures(same.written), method).slice(0, 3).join(' ')} Ask for it to be written out as a new version.`);
  }
  const newest = Math.max(0, ...takenIn.map(({ origin }) => Number(origin!.version)));
  if (Number(from.version) < newest) throw refused(`Version ${newest} of this method of ${labOf(from)} was taken in already; version ${from.version} is older.`);
  const taken = titleInUse(notebook, method.title, methodId);
  if (taken !== null) throw refused(`There is already a method ‘${taken}’ here, and the two could not be told apart. Give the one here another title, or ask for the file under one.`);
  return { standing: methodId === null ? 'new' : 'version', methodId, against };
}

function standingText(standing: MethodFileView['standing'], from: MethodOrigin, against: StoredVersion | null): string {
  const whose = `version ${from.version} of ${labOf(from)}, written by ${from.writtenBy || 'somebody'} on ${from.writtenOn}`;
  if (standing === 'here') return `This is ${whose}, which is here already. Taking it in would change nothing.`;
  if (standing === 'new') return `This is ${whose}. It is taken in as a method of its own.`;
  return `This is ${whose}. An earlier one was taken in; it becomes a new version after version ${against!.version} here, and running tests keep theirs.`;
}

function ownOrigin({ store }: OpenNotebook, { methodId, version, writtenAt, writtenBy }: StoredVersion): MethodOrigin {
  const { laboratory, title } = notebookHeading(store);
  return { methodId, version, laboratory, notebook: title, writtenBy: nameOf(store, writtenBy), writtenOn: writtenAt.slice(0, 10) };
}

function labOf({ laboratory, notebook }: MethodOrigin): string {
  return laboratory || notebook || 'another notebook';
}

function refused(message: string): InputError {
  return new InputError('file', null, message);
}
