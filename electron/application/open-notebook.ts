import type { DraftEntry, Entry, EntryBody, EntryKind } from '../../shared-lib/notebook/entry.ts';
import type { VerdictWord } from '../../shared-lib/method/property-verdict.ts';
import type { NotebookStore } from '../store/notebook-store.ts';
import type { CheckpointSchedule } from './checkpoint-schedule.ts';
import type { DraftFile } from './draft-file.ts';
import { EntryCache } from './entry-cache.ts';
import { MethodBook } from './method-book.ts';
import type { Evaluation } from './evaluate-test.ts';
import { ActionHistory } from './undo/action-history.ts';
import { PhotoAreas } from './photo-areas.ts';
import { PictureShelf } from './picture-shelf.ts';
import { Refusal } from './refusal.ts';
import { findPerson } from './queries/people.ts';
import { isWithdrawn } from './queries/tests.ts';
import { TraceShelf } from './trace-shelf.ts';

/** What a use case wants to have recorded; who and when are added when it is appended. */
export type Draft = { [Kind in EntryKind]: { kind: Kind; body: EntryBody<Kind> } }[EntryKind];

const COUNTS_FOR_ANY_TEST = /^(lot|instrument|calibration|fluid|reference)\.(?!added)|^sample\.changed$/;

/** The notebook that is open, with who stands at the bench and what has been worked out from it. */
export class OpenNotebook {
  readonly path: string;
  readonly store: NotebookStore;
  readonly traces: TraceShelf;
  readonly photos: PhotoAreas;
  readonly pictures: PictureShelf;
  readonly methods: MethodBook;
  /** Live results by test, dropped when an entry touches the test. */
  readonly evaluations = new Map<string, Evaluation>();
  /** How many lines were waived in a signed press approval, by the hash of its content. */
  readonly waivedLines = new Map<string, number>();
  /** Verdicts of issued reports by `reportId`. */
  readonly reportVerdicts = new Map<string, VerdictWord>();
  /** What was worked out from the whole notebook and holds until the next entry. */
  readonly worked = new EntryCache();
  /** Of wrong passphrases that lie ahead of the clock, by `personId`: when that was seen (ms). */
  readonly refusedAhead = new Map<string, { lastAt: string; seenAt: number }>();
  readonly history = new ActionHistory();
  /** Made when it is first asked for. */
  drafts: DraftFile | null = null;
  /** `personId`, or `null` until somebody has taken the bench. */
  atBench: string | null;
  readonly now: () => string;
  readonly #schedule: CheckpointSchedule;

  constructor(path: string, store: NotebookStore, atBench: string | null, now: () => string, schedule: CheckpointSchedule) {
    this.path = path;
    this.store = store;
    this.atBench = atBench;
    this.now = now;
    this.#schedule = schedule;
    this.traces = new TraceShelf(store);
    this.photos = new PhotoAreas(store);
    this.pictures = new PictureShelf(store);
    this.methods = new MethodBook(store);
  }

  /**
   * Records `drafts` as one: all of them or none, on disk when this returns.
   * @param as 'undo': not an action to be undone in its turn
   * @throws Refusal when the notebook is read-only, nobody has taken the bench, or a test was withdrawn
   */
  append(drafts: Draft[], attachments: { sha256: string; bytes: Uint8Array }[] = [], as: 'action' | 'undo' = 'action'): Entry[] {
    const by = this.requireHand();
    for (const { kind, body } of drafts) {
      if (kind !== 'work.witnessed' && 'testId' in body && isWithdrawn(this.store, body.testId)) throw new Refusal('conflict', 'This test was withdrawn and takes nothing any more; start a new one.');
    }
    const occurredAt = this.now();
    const entries = this.store.append(
      drafts.map((draft): DraftEntry => ({ ...draft, by, occurredAt })),
      attachments,
    );
    if (as === 'action') this.history.note(entries);
    for (const { body } of drafts) if ('testId' in body && body.testId !== null) this.evaluations.delete(body.testId);
    if (drafts.some(({ body }) => 'testId' in body)) for (const [testId, { besideOthers }] of this.evaluations) if (besideOthers) this.evaluations.delete(testId);
    // A study counts in the verdict of every test by its method that is not finished; lots, instruments, fluids and reference colours in the flags of any.
    if (drafts.some(({ kind }) => kind === 'study.recorded' || COUNTS_FOR_ANY_TEST.test(kind))) this.evaluations.clear();
    this.#schedule.noteEntries(entries.length, this.store.fileBytes);
    return entries;
  }

  /**
   * Takes in entries of another notebook, sealed by `merge`; all or nothing, on disk when this returns.
   * @param brought as they were sealed there
   * @throws Refusal as `append`
   */
  bringIn(brought: Entry[], merge: Draft, attachments: Iterable<{ sha256: string; bytes: Uint8Array }>): void {
    this.history.note([this.store.bringIn(brought, { ...merge, by: this.requireHand(), occurredAt: this.now() } as DraftEntry, attachments)]);
    this.evaluations.clear();
    this.methods.forget();
    // Who was retired at the other bench takes this one no more.
    if (this.atBench !== null && findPerson(this.store, this.atBench)?.retired) this.atBench = null;
    this.#schedule.noteEntries(brought.length + 1, this.store.fileBytes);
  }

  /** Who records. @throws Refusal */
  requireHand(): string {
    if (this.store.readOnly) throw new Refusal('read-only', this.store.readOnly);
    if (this.atBench === null) throw new Refusal('conflict', 'Choose who is at the bench first; every entry carries a name.');
    return this.atBench;
  }

  close(): void {
    this.#schedule.stop();
    this.store.close();
  }
}
