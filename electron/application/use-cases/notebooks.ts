import { existsSync, mkdirSync, readdirSync } from 'node:fs';
import path from 'node:path';
import type { CallOutput, ParsedInput } from '../../../shared-lib/api.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import type { SessionView } from '../../../shared-lib/notebook/views.ts';
import { NotebookStore } from '../../store/notebook-store.ts';
import { problemOf } from '../answer.ts';
import { CheckpointSchedule } from '../checkpoint-schedule.ts';
import { OpenNotebook } from '../open-notebook.ts';
import { notebookHeading } from '../queries/notebook-heading.ts';
import { listPeople } from '../queries/people.ts';
import { Refusal } from '../refusal.ts';
import { requireChange } from '../require-change.ts';
import { systemTimers } from '../surroundings.ts';
import type { Workplace } from '../workplace.ts';
import { sessionView } from './session.ts';

const EXTENSION = '.laydown';

/** Makes a notebook in the notebooks folder and puts its first person at the bench. */
export async function createNotebook(workplace: Workplace, input: ParsedInput<'notebook.create'>): Promise<SessionView> {
  const folder = workplace.surroundings.notebooksFolder;
  mkdirSync(folder, { recursive: true });
  const file = path.join(folder, fileNameFor(input.fileName));
  if (existsSync(file)) throw new InputError('fileName', input.fileName, `There is already a notebook named ${path.basename(file)}; choose another name.`);
  const store = await NotebookStore.create(file, workplace.surroundings.clock);
  const personId = workplace.newId();
  putOnDesk(workplace, file, store, personId);
  workplace.notebook.append([
    { kind: 'notebook.created', body: { title: input.title, laboratory: input.laboratory } },
    { kind: 'person.added', body: { personId, ...input.person } },
  ]);
  return sessionView(workplace);
}

/** Says title and laboratory anew; what was printed before keeps what it was printed with. @throws Refusal when nothing differs; InputError without a reason */
export function describeNotebook(workplace: Workplace, { reason, ...after }: ParsedInput<'notebook.describe'>): SessionView {
  const { notebook } = workplace;
  const { createdAt, ...before } = notebookHeading(notebook.store);
  notebook.append([{ kind: 'notebook.described', body: { createdAt, before, after, reason: requireChange(before, after, reason) } }]);
  return sessionView(workplace);
}

/** Opens the notebook at `file`; the one that was open is closed only when that has succeeded. */
export async function openNotebookAt(workplace: Workplace, file: string): Promise<void> {
  const { surroundings, settings, open } = workplace;
  const full = path.resolve(file);
  if (open?.path === full) return;
  const store = await NotebookStore.open(full, surroundings.clock);
  const people = listPeople(store).filter((person) => !person.retired).map((person) => person.personId);
  const last = settings.recent.find((known) => known.path === full)?.atBench;
  const alone = people.length === 1 ? people[0]! : null;
  putOnDesk(workplace, full, store, last && people.includes(last) ? last : alone);
}

/** The screens may only open what was opened before or lies in the notebooks folder; other places come from the host's dialog. */
export async function openNotebookByHandle(workplace: Workplace, { handle }: { handle: string }): Promise<SessionView> {
  requireKnown(workplace, handle);
  await openNotebookAt(workplace, handle);
  return sessionView(workplace);
}

/** What lies in the notebooks folder and is not among the recent ones: put there by hand, or opened long ago. */
export function notebooksInFolder({ surroundings, settings }: Workplace): CallOutput<'notebooks.inFolder'> {
  const folder = path.resolve(surroundings.notebooksFolder);
  const names = existsSync(folder) ? readdirSync(folder).filter((name) => name.endsWith(EXTENSION)) : [];
  const notebooks = names.sort().map((fileName) => ({ handle: path.join(folder, fileName), fileName }));
  return { folder, notebooks: notebooks.filter(({ handle }) => !settings.recent.some((known) => known.path === handle)) };
}

/** @throws Refusal for a file that was neither chosen, nor opened here before, nor lies in the notebooks folder */
export function requireKnown({ settings, surroundings, handedOver }: Workplace, handle: string): void {
  const known = handedOver.has(handle) || settings.recent.some((recent) => recent.path === handle);
  const inFolder = path.dirname(path.resolve(handle)) === path.resolve(surroundings.notebooksFolder) && handle.endsWith(EXTENSION);
  if (!known && !inFolder) throw new Refusal('not-found', 'This notebook was not opened here before; open it from the menu.');
}

export function checkpointNotebook(workplace: Workplace): SessionView {
  const { store } = workplace.notebook;
  if (store.readOnly) throw new Refusal('read-only', store.readOnly);
  writeFile(workplace, store);
  return sessionView(workplace);
}

/** Writes the notebook's file and lets go of it; tells when the file could not be written. Entries are safe all the same. */
export function closeNotebook(workplace: Workplace): void {
  const { open, surroundings } = workplace;
  workplace.open = null;
  try {
    open?.close();
  } catch (error) {
    surroundings.emit({ kind: 'trouble', text: problemOf(error).message });
  }
}

function putOnDesk(workplace: Workplace, file: string, store: NotebookStore, atBench: string | null): void {
  const { surroundings, settings } = workplace;
  closeNotebook(workplace);
  const schedule = new CheckpointSchedule(surroundings.timers ?? systemTimers, () => {
    try {
      writeFile(workplace, store);
    } catch (error) {
      surroundings.emit({ kind: 'trouble', text: problemOf(error).message });
    }
  });
  const now = () => workplace.now().toISOString();
  workplace.open = new OpenNotebook(file, store, atBench, now, schedule);
  settings.remember({ path: file, openedAt: now(), atBench });
  surroundings.emit({ kind: 'notebook-changed' });
}

function writeFile({ surroundings }: Workplace, store: NotebookStore): void {
  const { notes } = store.checkpoint();
  for (const text of notes) surroundings.emit({ kind: 'trouble', text });
  surroundings.emit({ kind: 'checkpointed', at: surroundings.clock.now().toISOString() });
}

/** A plain file name, whatever was typed: it goes into the notebooks folder and nowhere else. */
function fileNameFor(typed: string): string {
  const name = typed.replace(/\.laydown$/i, '').trim();
  if (name === '' || /[\\/:*?"<>|\u0000-\u001f]/.test(name) || /^\.|\.$/.test(name)) {
    throw new InputError('fileName', typed, 'A file name must not be empty, begin or end with a point, or hold any of \\ / : * ? " < > |.');
  }
  return name + EXTENSION;
}
