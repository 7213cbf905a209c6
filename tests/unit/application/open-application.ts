import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { monotonicFactory } from 'ulid';
import { onTestFinished } from 'vitest';
import { Application } from '../../../electron/application/application.ts';
import type { Timers } from '../../../electron/application/surroundings.ts';
import type { ApplicationEvent, CallInput, CallName, CallOutput, CallProblem } from '../../../shared-lib/api.ts';
import type { BenchSheetView } from '../../../shared-lib/notebook/views.ts';
import type { ReportContent } from '../../../shared-lib/report/content.ts';
import type { ApprovalContent } from '../../../shared-lib/report/approval-content.ts';
import type { PlanSheet } from '../../../shared-lib/report/plan-sheet.ts';

export const START = Date.parse('2026-03-02T08:00:00.000Z');

/** A bench with a real notebook in a folder of its own, a clock that is moved by hand, and timers that are fired by hand. */
export class TestBench {
  readonly folder = mkdtempSync(path.join(tmpdir(), 'laydown-application-'));
  readonly events: ApplicationEvent[] = [];
  readonly rendered: ReportContent[] = [];
  readonly renderedPlans: PlanSheet[] = [];
  readonly renderedApprovals: ApprovalContent[] = [];
  readonly timers = new HandTimers();
  time = START;
  readonly application: Application;

  constructor(folder?: string) {
    this.folder = folder ?? this.folder;
    const ulid = monotonicFactory();
    this.application = new Application({
      clock: { now: () => new Date(this.time), ulid: () => ulid(this.time) },
      settingsFolder: path.join(this.folder, 'settings'),
      notebooksFolder: path.join(this.folder, 'notebooks'),
      version: '0.0.0-test',
      renderReport: async (content) => {
        this.rendered.push(content);
        return Buffer.from(`%PDF of ${content.number}`);
      },
      renderPlan: async (sheet) => {
        this.renderedPlans.push(sheet);
        return Buffer.from(`%PDF of ${sheet.title}`);
      },
      renderApproval: async (content) => {
        this.renderedApprovals.push(content);
        return Buffer.from(`%PDF of ${content.approval.approvalId} at ${content.signature.at}`);
      },
      renderLabels: async (labels, size) => Buffer.from(`%PDF of ${labels.map(({ code }) => code).join(', ')} on ${size}`),
      emit: (event) => this.events.push(event),
      timers: this.timers,
    });
    onTestFinished(async () => {
      await this.application.close();
      rmSync(this.folder, { recursive: true, force: true });
    });
  }

  get notebookFile(): string {
    return path.join(this.folder, 'notebooks', 'lab.laydown');
  }

  /** The value of a call that must succeed. */
  async do<Name extends CallName>(name: Name, input: CallInput<Name>): Promise<CallOutput<Name>> {
    const answer = await this.application.call(name, input);
    if (!answer.ok) throw new Error(`${name} was refused: ${JSON.stringify(answer.problem)}`);
    return answer.value as CallOutput<Name>;
  }

  /** The problem of a call that must be refused. */
  async refused<Name extends CallName>(name: Name, input: CallInput<Name>): Promise<CallProblem> {
    return this.refusedAnything(name, input);
  }

  async refusedAnything(name: string, input: unknown): Promise<CallProblem> {
    const answer = await this.application.call(name, input);
    if (answer.ok) throw new Error(`${name} was done and should have been refused`);
    return answer.problem;
  }

  async entries(): Promise<number> {
    return (await this.do('session.get', {})).notebook!.entries;
  }

  /** A notebook with Imke Rasmund at the bench. */
  async withNotebook(): Promise<this> {
    await this.do('notebook.create', {
      fileName: 'lab',
      title: 'Quillmere lab',
      laboratory: 'Quillmere Flexibles',
      person: { name: 'Imke Rasmund', initials: 'IR', role: 'technician' },
    });
    return this;
  }

  async startTest(methodId: string, code = 'Q-1'): Promise<BenchSheetView> {
    const known = (await this.do('samples.list', { search: code })).samples.find((sample) => sample.code === code);
    const sample = known ?? (await this.do('sample.add', { code, product: 'dumpling pouch 600 g', job: 'J-100', roll: 'R1', note: '', lotIds: [] }));
    return this.do('test.start', { sampleId: sample.sampleId, methodId });
  }
}

/** Runs nothing by itself. */
export class HandTimers implements Timers {
  pending: { milliseconds: number; action: () => void }[] = [];

  after(milliseconds: number, action: () => void): () => void {
    const timer = { milliseconds, action };
    this.pending.push(timer);
    return () => void (this.pending = this.pending.filter((other) => other !== timer));
  }

  fire(): void {
    const due = this.pending;
    this.pending = [];
    for (const { action } of due) action();
  }
}

export async function testBench(): Promise<TestBench> {
  return new TestBench().withNotebook();
}
