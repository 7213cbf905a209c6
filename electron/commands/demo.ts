import { mkdir, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import type { ReportContent } from '../../shared-lib/report/content.ts';
import { buildDemoNotebook } from '../application/demo/build-demo-notebook.ts';
import type { Invocation } from './invocation.ts';
import { renderApprovalPdf } from '../report/approval-pdf.ts';
import { renderReportPdf } from '../report/report-pdf.ts';
import { withApplication } from './open-application.ts';

/** `laydown demo`: the whole job without a window. */
export async function demo({ options, out, err }: Invocation): Promise<number> {
  const folder = path.resolve(typeof options.out === 'string' ? options.out : 'out');
  const notebook = path.join(folder, 'demo.laydown');
  await mkdir(folder, { recursive: true });
  // A journal of the notebook that stood here before does not belong to the new one.
  for (const ending of ['', '.journal']) await rm(notebook + ending, { force: true });
  await buildDemoNotebook(notebook, { renderReport: renderReportPdf, renderApproval: renderApprovalPdf });

  return withApplication(err, folder, async (application) => {
    await application.open(notebook);
    const found = await application.call('record.verify', {});
    for (const problem of found.problems) out(problem);
    const reports = await application.call('reports.list', {});
    const newest = reports.find((line) => line.replacedBy === null);
    if (!newest) {
      err('The demo notebook has no report.');
      return 1;
    }
    const content = await application.call('report.content', { reportId: newest.reportId });
    for (const line of verdictTable(content)) out(line);
    const pdf = await application.call('report.pdf', { reportId: newest.reportId });
    const target = path.join(folder, pdf.fileName);
    await writeFile(target, Buffer.from(pdf.bytes, 'base64'));
    out('');
    out(`Record:  ${found.entries} entries, ${found.intact ? 'intact; every result follows from its readings' : 'NOT INTACT'}`);
    out(`Report:  ${path.relative(process.cwd(), target)}`);
    out(`Notebook: ${path.relative(process.cwd(), notebook)}   (npm start -- ${path.relative(process.cwd(), notebook)})`);
    return found.intact ? 0 : 1;
  });
}

function verdictTable(content: ReportContent): string[] {
  const rows = content.summary.map(({ sample, method, line }) => [sample, method, line.title, line.text, line.intervalText, `n = ${line.n}`, line.limitText, line.verdict.verdict]);
  const head = ['sample', 'test', 'property', 'value', 'interval', 'n', 'limit', 'verdict'];
  const widths = head.map((title, column) => Math.max(title.length, ...rows.map((row) => row[column]!.length)));
  const print = (row: string[]) => row.map((cell, column) => cell.padEnd(widths[column]!)).join('  ').trimEnd();
  return [`${content.number}  ${content.title}`, '', print(head), print(widths.map((width) => '─'.repeat(width))), ...rows.map(print)];
}
