import { SvelteMap } from 'svelte/reactivity';
import { z } from 'zod';
import type { Answer, CallInput, Client } from '../../shared-lib/api.ts';
import type { Field, ItemField, Method } from '../../shared-lib/method/method.ts';
import type { ItemChoice } from '../../shared-lib/notebook/colour-views.ts';
import type { BenchSheetView, CellView, RowView } from '../../shared-lib/notebook/views.ts';
import type { PutBack } from './held-draft.svelte.ts';
import { nextRowId, type CellPlace } from './sheet-grid.ts';

/** What was typed in a cell and is not yet in the record. */
export interface PendingCell {
  typed: string;
  state: 'saving' | 'refused' | 'needs-reason';
  /** Why it was refused, or what the reason is asked for. */
  message: string;
  /** The reason as last given, so that it need not be typed again. */
  reason: string;
  /** The input field at fault as the application names it, with the value found there. */
  field: string;
  value: unknown;
}

/** The news of an own entry arrives within this time of its answer. */
const ownChangeMs = 250;

/** What a sheet needs of the application's state. */
export interface SheetApplication {
  call: Client['call'];
  /** When the notebook last changed as far as is known, in the page's clock. */
  readonly changedAt: number;
}

export type CommitOutcome = 'saved' | 'unchanged' | 'refused' | 'needs-reason';
export type BenchMethod = Omit<Method, 'evaluate'>;

/** One bench sheet: the view last answered, and what is on its way or was refused. Kept while the person is elsewhere. */
export class BenchSheet {
  readonly pending = new SvelteMap<string, PendingCell>();
  #view = $state.raw<BenchSheetView | null>(null);
  #method = $state.raw<BenchMethod | null>(null);
  #problem = $state('');
  #announcement = $state('');
  #addedRows = $state<string[]>([]);
  #lines = $state<string[]>([]);
  /** Entries are sent one after the other, so that the record has them in the order of typing. */
  #queue: Promise<unknown> = Promise.resolve();
  #queued = 0;
  /** When an entry of this sheet was last answered, in the page's clock. */
  #answeredAt = -Infinity;

  constructor(
    private readonly app: SheetApplication,
    readonly testId: string,
  ) {}

  get view(): BenchSheetView | null {
    return this.#view;
  }

  get method(): BenchMethod | null {
    return this.#method;
  }

  /** Why the sheet cannot be shown, or ''. */
  get problem(): string {
    return this.#problem;
  }

  /** For screen readers: what was refused, while the person is already in the next cell. */
  get announcement(): string {
    return this.#announcement;
  }

  /** All rows on the sheet: those the application laid out, and those the person went on to before it answered. */
  readonly rows: RowView[] = $derived.by(() => {
    const rows = [...(this.#view?.rows ?? [])];
    const ahead = this.#addedRows.filter((added) => !rows.some(({ row }) => row === added));
    return [...rows, ...ahead.map((row) => ({ row, cells: {}, voided: null, remark: '' }))];
  });

  /** Cells whose typed value is not in the record. */
  readonly unsaved: number = $derived([...this.pending.values()].filter((cell) => cell.state !== 'saving').length);

  /** Ids of the rows that can be typed in. */
  readonly openRows: string[] = $derived(this.rows.filter((row) => !row.voided).map((row) => row.row));

  /** What is being typed in a cell or a line under a row just now, by the id of its field. */
  readonly typing = new SvelteMap<string, string>();

  /** A cell, or a line under a row, holds what is not in the record: being typed, on its way, or refused. */
  readonly holdsUnentered: boolean = $derived(this.pending.size > 0 || [...this.typing].some(([id, text]) => text.trim() !== (this.cell(placeOf(id))?.typed ?? '')));

  /** All that is typed and not in the record, by the id of its field; `null` where there is nothing. */
  readonly typed: Record<string, string> | null = $derived.by(() => {
    const typed = [...[...this.pending].map(([id, { typed }]) => [id, typed]), ...this.typing];
    return typed.length === 0 ? null : Object.fromEntries(typed);
  });

  readonly keys: string[] = $derived(this.#method?.readings.fields.map((field) => field.key) ?? []);

  async load(): Promise<void> {
    if (this.#queued > 0 || this.#isFresh()) return;
    if (!this.#method) {
      const sheet = await this.app.call('test.get', { testId: this.testId });
      if (!sheet.ok) return this.#refuse(sheet);
      const { methodId, methodVersion } = sheet.value.test;
      const method = await this.app.call('method.get', { methodId, version: methodVersion });
      if (!method.ok) return this.#refuse(method);
      this.#method = method.value;
      this.#view = sheet.value;
      return;
    }
    const sheet = await this.app.call('test.get', { testId: this.testId });
    if (this.#queued > 0) return;
    if (sheet.ok) this.#view = sheet.value;
    else this.#refuse(sheet);
  }

  /** Asks anew although it was answered just now: something else than this sheet changed it. */
  async reload(): Promise<void> {
    this.#answeredAt = -Infinity;
    await this.load();
  }

  cell(place: CellPlace): CellView | undefined {
    if (place.row === '') return this.#view?.conditions[place.key];
    return this.rows.find((row) => row.row === place.row)?.cells[place.key];
  }

  pendingIn(place: CellPlace): PendingCell | undefined {
    return this.pending.get(cellId(place));
  }

  /** What the cell shows: what was typed last, else what the record holds. */
  shown(place: CellPlace): string {
    return this.pendingIn(place)?.typed ?? this.cell(place)?.typed ?? '';
  }

  hasValue(place: CellPlace): boolean {
    return (this.cell(place)?.typed ?? '') !== '';
  }

  /** The record has an entry for the cell, also where it was cleared since: what comes next is a correction. */
  wasEntered(place: CellPlace): boolean {
    return this.cell(place) !== undefined;
  }

  isEmptyRow(row: string): boolean {
    return this.keys.every((key) => this.shown({ row, key }) === '');
  }

  /** What stands above in the same column, or ''. */
  above(place: CellPlace): string {
    const index = this.openRows.indexOf(place.row);
    return index > 0 ? this.shown({ row: this.openRows[index - 1]!, key: place.key }) : '';
  }

  /** What the application will put in beside the first reading of a row, or ''. */
  offered(place: CellPlace, field: Field): string {
    if (place.row === '' || !('default' in field || 'carryDown' in field) || !this.isEmptyRow(place.row)) return '';
    return (field.carryDown && this.above(place)) || String(field.default ?? '');
  }

  addRow(): string | null {
    const rows = this.rows.map((row) => row.row);
    if (!this.#method || rows.length >= this.#method.readings.maxRows) return null;
    const row = nextRowId(rows);
    this.#addedRows = [...this.#addedRows, row];
    return row;
  }

  /** Sends what was typed. Without a reason where one is needed, the cell asks for it and keeps what was typed. */
  commit(place: CellPlace, typed: string, reason = ''): Promise<CommitOutcome> {
    const text = typed.trim();
    if (text === (this.cell(place)?.typed ?? '')) {
      this.pending.delete(cellId(place));
      return Promise.resolve('unchanged');
    }
    const given = reason || (this.pendingIn(place)?.reason ?? '');
    this.pending.set(cellId(place), { typed: text, state: 'saving', message: '', reason: given, field: '', value: null });
    return this.#inTurn(async () => {
      const answer =
        place.row === ''
          ? await this.app.call('condition.enter', { testId: this.testId, key: place.key, typed: text, reason })
          : await this.app.call('reading.enter', { testId: this.testId, row: place.row, key: place.key, typed: text, reason });
      const current = this.pendingIn(place);
      const retyped = current !== undefined && current.typed !== text;
      if (answer.ok) {
        this.#takeAnswer(answer.value);
        if (!retyped) this.pending.delete(cellId(place));
        this.#announcement = '';
        return 'saved';
      }
      const needsReason = answer.problem.field === 'reason';
      if (!retyped) {
        this.pending.set(cellId(place), { typed: text, state: needsReason ? 'needs-reason' : 'refused', message: answer.problem.message, reason: given, field: answer.problem.field, value: answer.problem.value });
      }
      this.#announcement = `${text}: ${answer.problem.message}`;
      return needsReason ? 'needs-reason' : 'refused';
    });
  }

  /** Puts back what `typed` held before a crash: marked in its cell, Enter sends it. Text of a line under a row stands in `lines`. */
  restoreTyped(typed: unknown): PutBack {
    const read = z.record(z.string(), z.string()).safeParse(typed);
    if (!read.success) return 'misfit';
    for (const [id, text] of Object.entries(read.data)) {
      if (id === 'row-panel' || id.endsWith('-reason')) this.#lines = [...this.#lines, text].filter(Boolean);
      else this.pending.set(id, { typed: text, state: 'refused', message: 'Typed before, and not in the record: Enter enters it, Esc takes it back.', reason: '', field: '', value: null });
    }
    return 'fits';
  }

  /** It was entered or taken back in another window. */
  forgetTyped(): void {
    this.pending.clear();
    this.typing.clear();
  }

  /** Remarks and reasons that were typed and not entered before a crash. */
  get lines(): string[] {
    return this.#lines;
  }

  forgetLines(): void {
    this.#lines = [];
  }

  /** Takes back what was typed and not saved. */
  restore(place: CellPlace): void {
    this.pending.delete(cellId(place));
    this.typing.delete(cellId(place));
  }

  /** Fills down and right from the cell, all or nothing; a refusal stands at that cell. */
  async paste(place: CellPlace, pasted: string): Promise<void> {
    const refusal = await this.#act(() => this.app.call('readings.paste', { testId: this.testId, row: place.row, key: place.key, pasted }));
    if (refusal) this.pending.set(cellId(place), { typed: this.shown(place), state: 'refused', message: refusal, reason: '', field: 'pasted', value: null });
    this.#announcement = refusal;
  }

  setLimits(limits: Omit<CallInput<'test.setLimits'>, 'testId'>): Promise<Answer<BenchSheetView>> {
    return this.#inTurn(() => this.#taking(this.app.call('test.setLimits', { testId: this.testId, ...limits })));
  }

  measurePhoto(photo: Omit<CallInput<'photo.measure'>, 'testId'>): Promise<Answer<BenchSheetView>> {
    return this.#inTurn(() => this.#taking(this.app.call('photo.measure', { testId: this.testId, ...photo })));
  }

  readSpectrum(spectrum: Omit<CallInput<'spectrum.read'>, 'testId'>): Promise<Answer<BenchSheetView>> {
    return this.#inTurn(() => this.#taking(this.app.call('spectrum.read', { testId: this.testId, ...spectrum })));
  }

  /** What an item field can name, for a type-ahead. */
  async findItems(of: ItemField['of'], search: string): Promise<ItemChoice[]> {
    const answer = await this.app.call('items.find', { of, search, methodId: this.view?.test.methodId ?? '' });
    return answer.ok ? answer.value : [];
  }

  readTrace(trace: Omit<CallInput<'trace.read'>, 'testId'>): Promise<Answer<BenchSheetView>> {
    return this.#inTurn(() => this.#taking(this.app.call('trace.read', { testId: this.testId, ...trace })));
  }

  /** This and the next three give '' or the sentence that says why it could not be done. */
  voidRow(row: string, reason: string): Promise<string> {
    return this.#act(() => this.app.call('row.void', { testId: this.testId, row, reason }));
  }

  restoreRow(row: string, reason: string): Promise<string> {
    return this.#act(() => this.app.call('row.restore', { testId: this.testId, row, reason }));
  }

  remarkRow(row: string, remark: string): Promise<string> {
    return this.#act(() => this.app.call('row.remark', { testId: this.testId, row, remark }));
  }

  /** When all that was sent so far has its answer. */
  async settled(): Promise<void> {
    await this.#queue;
  }

  finish(remark: string): Promise<string> {
    return this.#act(() => this.app.call('test.finish', { testId: this.testId, remark }));
  }

  #act(send: () => Promise<Answer<BenchSheetView>>): Promise<string> {
    return this.#inTurn(async () => {
      const answer = await this.#taking(send());
      return answer.ok ? '' : answer.problem.message;
    });
  }

  /** The last change was this sheet's own entry, whose answer held the whole sheet: asking again would only slow the typing. */
  #isFresh(): boolean {
    return this.#view !== null && this.app.changedAt - this.#answeredAt < ownChangeMs;
  }

  #takeAnswer(view: BenchSheetView): void {
    this.#view = view;
    this.#answeredAt = performance.now();
  }

  async #taking(sent: Promise<Answer<BenchSheetView>>): Promise<Answer<BenchSheetView>> {
    const answer = await sent;
    if (answer.ok) this.#takeAnswer(answer.value);
    return answer;
  }

  #inTurn<Output>(send: () => Promise<Output>): Promise<Output> {
    this.#queued += 1;
    const sent = this.#queue.then(send).finally(() => (this.#queued -= 1));
    this.#queue = sent.catch(() => undefined);
    return sent;
  }

  #refuse(answer: Answer<unknown>): void {
    if (!answer.ok) this.#problem = answer.problem.message;
  }
}

/** Names a cell within its sheet, also for the ids of the page. */
export function cellId(place: CellPlace): string {
  return `${place.row || 'condition'}-${place.key}`;
}

function placeOf(id: string): CellPlace {
  const [row, ...key] = id.split('-');
  return { row: row === 'condition' ? '' : row!, key: key.join('-') };
}
