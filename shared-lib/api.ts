import { z } from 'zod';
import { call } from './api-call.ts';
import { limitSchema } from './method/property-verdict.ts';
import { cellValueSchema, entryBodies } from './notebook/entry.ts';
import type {
  BenchSheetView,
  ReportLine,
  SessionView,
  TestLine,
  TracePreview,
  VerifyView,
} from './notebook/views.ts';
import type { RecordView } from './notebook/record-view.ts';
import type { InputProblem } from './calculation/input-error.ts';
import type { MethodData } from './method/method.ts';
import type { ReportContent } from './report/content.ts';
import { inHouseCalls } from './in-house-calls.ts';
import { approvalCalls } from './approval-calls.ts';
import { attachmentCalls } from './attachment-calls.ts';
import { colourCalls } from './colour-calls.ts';
import { equipmentCalls } from './equipment-calls.ts';
import { materialCalls } from './material-calls.ts';
import { mergeCalls } from './merge-calls.ts';
import { personCalls } from './person-calls.ts';
import { planCalls } from './plan-calls.ts';
import { draftCalls } from './draft-calls.ts';
import { searchCalls } from './search-calls.ts';
import { sampleCalls } from './sample-calls.ts';
import { trialCalls } from './trial-calls.ts';
import { todayCalls } from './today-calls.ts';
import { witnessCalls } from './witness-calls.ts';

/**
 * The one interface between the screens and the application. IPC and loopback HTTP both carry
 * `{ call, input }` → `Answer`; the input is parsed by its schema before anything is done.
 */
const id = z.string().min(1).max(64);
const line = z.string().trim().max(200);
const text = z.string().max(20_000);
const nothing = z.strictObject({});
/** File content as base64, at most 24 MB of it. */
const fileBytes = z.string().max(32_000_000);
const traceReading = entryBodies['trace.read'].shape.reading;

/** Pictures to print in the sections of their tests. */
const reportPictures = z.array(z.strictObject({ testId: id, sha256: z.string().length(64) })).max(40).default([]);

export const api = {
  'session.get': call<SessionView>()(nothing),
  'session.takeBench': call<SessionView>()(z.strictObject({ personId: id })),

  'notebook.create': call<SessionView>()(
    z.strictObject({
      fileName: z.string().trim().min(1).max(100),
      title: line.min(1),
      laboratory: line,
      person: z.strictObject({ name: line.min(1), initials: z.string().trim().min(1).max(5), role: line }),
    }),
  ),
  /** Another title or laboratory of the open notebook. */
  'notebook.describe': call<SessionView>()(z.strictObject({ title: line.min(1), laboratory: line, reason: text.default('') })),
  'notebook.open': call<SessionView>()(z.strictObject({ handle: z.string().min(1).max(4096) })),
  /** Notebooks that lie in the notebooks folder and were not opened lately, by name. */
  'notebooks.inFolder': call<{ folder: string; notebooks: { handle: string; fileName: string }[] }>()(nothing),
  'notebook.checkpoint': call<SessionView>()(nothing),

  'methods.list': call<MethodData[]>()(nothing),

  ...todayCalls,

  'test.start': call<BenchSheetView>()(z.strictObject({ sampleId: id, methodId: z.string().max(100) })),
  'test.get': call<BenchSheetView>()(z.strictObject({ testId: id })),
  'test.setLimits': call<BenchSheetView>()(
    z.strictObject({ testId: id, limits: z.array(limitSchema).max(40), rule: z.enum(['simple', 'guarded']), reason: text }),
  ),
  /** `typed` is what stands in the cell; the application reads it as a number or text. An empty string clears the cell. */
  'condition.enter': call<BenchSheetView>()(z.strictObject({ testId: id, key: z.string().max(100), typed: text, reason: text.default('') })),
  'reading.enter': call<BenchSheetView>()(
    z.strictObject({ testId: id, row: z.string().max(20), key: z.string().max(100), typed: text, reason: text.default('') }),
  ),
  /** A pasted column or block: fills down and right from the cell; all or nothing. */
  'readings.paste': call<BenchSheetView>()(
    z.strictObject({ testId: id, row: z.string().max(20), key: z.string().max(100), pasted: z.string().max(200_000) }),
  ),
  'row.void': call<BenchSheetView>()(z.strictObject({ testId: id, row: z.string().max(20), reason: text.min(1) })),
  'row.restore': call<BenchSheetView>()(z.strictObject({ testId: id, row: z.string().max(20), reason: text.min(1) })),
  'row.remark': call<BenchSheetView>()(z.strictObject({ testId: id, row: z.string().max(20), remark: text })),
  'trace.preview': call<TracePreview>()(
    z.strictObject({ name: line, bytes: fileBytes, reading: traceReading.partial() }),
  ),
  'trace.read': call<BenchSheetView>()(
    z.strictObject({
      testId: id,
      row: z.string().max(20),
      key: z.string().max(100),
      name: line,
      bytes: fileBytes,
      reading: traceReading,
      reason: text.default(''),
    }),
  ),
  'test.finish': call<BenchSheetView>()(z.strictObject({ testId: id, remark: text })),
  /** Newest first; `search` are words of sample or method, '' finds all. */
  'tests.list': call<TestLine[]>()(
    z.strictObject({ state: z.enum(['running', 'finished', 'outdated', 'all']), search: line.default(''), limit: z.number().int().min(1).max(500).default(200) }),
  ),
  /** In the order in which they are named; ids that name no test are left out. */
  'tests.named': call<TestLine[]>()(z.strictObject({ testIds: z.array(id).max(200) })),

  'reports.list': call<ReportLine[]>()(nothing),
  'report.preview': call<ReportContent>()(
    z.strictObject({ title: line.min(1), recipient: line, remark: text, testIds: z.array(id).min(1).max(200), pictures: reportPictures, replaces: id.nullable() }),
  ),
  'report.issue': call<ReportLine>()(
    z.strictObject({
      title: line.min(1),
      recipient: line,
      remark: text,
      testIds: z.array(id).min(1).max(200),
      pictures: reportPictures,
      replaces: z.strictObject({ reportId: id, reason: text.min(1) }).nullable(),
    }),
  ),
  'report.content': call<ReportContent>()(z.strictObject({ reportId: id })),
  'report.pdf': call<{ fileName: string; bytes: string }>()(z.strictObject({ reportId: id })),

  'record.list': call<RecordView>()(
    z.strictObject({
      search: line.default(''),
      kind: z.string().max(60).default(''),
      by: z.string().max(64).default(''),
      testId: z.string().max(64).default(''),
      /** Recorded at this instant or later, ISO 8601 in UTC; '' for any. */
      from: z.iso.datetime().or(z.literal('')).default(''),
      /** Recorded before this instant. */
      until: z.iso.datetime().or(z.literal('')).default(''),
      offset: z.number().int().min(0).default(0),
      limit: z.number().int().min(1).max(500).default(100),
    }),
  ),
  'record.verify': call<VerifyView>()(nothing),

  ...personCalls,
  ...materialCalls,
  ...sampleCalls,
  ...equipmentCalls,
  ...planCalls,
  ...approvalCalls,
  ...draftCalls,
  ...witnessCalls,
  ...trialCalls,
  ...colourCalls,
  ...attachmentCalls,
  ...inHouseCalls,
  ...mergeCalls,
  ...searchCalls,
} as const;

export { cellValueSchema };

export type Api = typeof api;
export type CallName = keyof Api;
export type CallInput<Name extends CallName> = z.input<Api[Name]['input']>;
export type ParsedInput<Name extends CallName> = z.output<Api[Name]['input']>;
export type CallOutput<Name extends CallName> = Api[Name]['output'];

/** What comes back over the wire: thrown errors would lose all but their message. */
export type Answer<Output> = { ok: true; value: Output } | { ok: false; problem: CallProblem };

export interface CallProblem extends InputProblem {
  /** `unreachable`: the application has ended, so nobody has done anything about it. */
  code: 'input' | 'read-only' | 'not-found' | 'file' | 'conflict' | 'internal' | 'unreachable';
  /** So long nothing is taken in this field; the sentence holds it in words (`waitInWords`). */
  waitSeconds?: number;
}

/** What the application tells the screens unasked. */
export type ApplicationEvent =
  | { kind: 'notebook-changed' }
  /** Entries are safe once acknowledged; this tells that the file itself was written. */
  | { kind: 'checkpointed'; at: string }
  | { kind: 'trouble'; text: string }
  /** The application has ended, and what to do. */
  | { kind: 'unreachable'; text: string }
  /** What was typed under that name was entered or put down in one of the windows. */
  | { kind: 'draft-ended'; name: string }
  /** A command chosen in the shell's menu, for the screen to carry out. */
  | { kind: 'command'; command: 'new-notebook' | 'open-notebook' | 'bring-in' | 'search' | 'new-sample' | 'show-today' | 'show-samples' | 'show-materials' | 'show-trials' | 'show-methods' | 'show-plans' | 'show-approvals' | 'show-reports' | 'show-record' };

/** What the renderer holds; whether IPC or loopback HTTP stands behind it, it cannot tell. */
export interface Client {
  call<Name extends CallName>(name: Name, input: CallInput<Name>): Promise<Answer<CallOutput<Name>>>;
  subscribe(listener: (event: ApplicationEvent) => void): () => void;
  /**
   * Makes a file that a person chose on the screen known to the application by a handle, however large it is.
   * @param file the page's own `File`; one that was not chosen there is refused
   */
  handOver(file: { readonly name: string }): Promise<Answer<{ handle: string }>>;
}
