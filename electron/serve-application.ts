import { existsSync } from 'node:fs';
import type { Answer } from '../shared-lib/api.ts';
import { problemOf } from './application/answer.ts';
import { Application } from './application/application.ts';
import { buildDemoNotebook } from './application/demo/build-demo-notebook.ts';
import { systemClock } from './store/clock.ts';
import type { ApplicationMessage, HostMessage, Port } from './application-port.ts';
import { renderApprovalPdf } from './report/approval-pdf.ts';
import { renderLabelsPdf } from './report/labels-pdf.ts';
import { renderPlanPdf } from './report/plan-pdf.ts';
import { renderReportPdf } from './report/report-pdf.ts';

/** The application's end of the port: answers calls one after the other, in the order they came. */
export function serveApplication(port: Port): void {
  let application: Application | null = null;
  let queue: Promise<unknown> = Promise.resolve();
  const post = (message: ApplicationMessage) => port.post(message);

  port.onMessage((received) => {
    const message = received as HostMessage;
    queue = queue.then(async () => {
      if (message.kind === 'start') {
        application = new Application({
          clock: systemClock(),
          settingsFolder: message.options.settingsFolder,
          notebooksFolder: message.options.notebooksFolder,
          version: message.options.version,
          renderReport: renderReportPdf,
          renderPlan: renderPlanPdf,
          renderLabels: renderLabelsPdf,
          renderApproval: renderApprovalPdf,
          emit: (event) => post({ kind: 'event', event }),
        });
        return;
      }
      post({ kind: 'answer', number: message.number, answer: await answer(application, message) });
    });
  });
}

async function answer(application: Application | null, message: Exclude<HostMessage, { kind: 'start' }>): Promise<Answer<unknown>> {
  if (!application) return { ok: false, problem: { code: 'internal', field: '', value: null, message: 'The notebook has not been started.' } };
  switch (message.kind) {
    case 'call':
      return application.call(message.name, message.input);
    case 'open':
      return application.open(message.path);
    case 'hand-over':
      application.handOver(message.path);
      return { ok: true, value: { handle: message.path } };
    case 'open-demo':
      return openDemo(application, message.path);
    case 'close':
      await application.close();
      return { ok: true, value: null };
  }
}

async function openDemo(application: Application, file: string): Promise<Answer<unknown>> {
  try {
    if (!existsSync(file)) await buildDemoNotebook(file, { renderReport: renderReportPdf, renderApproval: renderApprovalPdf });
  } catch (error) {
    return { ok: false, problem: problemOf(error) };
  }
  return application.open(file);
}
