import { writeFile } from 'node:fs/promises';
import type { Invocation } from './invocation.ts';
import { withApplication } from './open-application.ts';

/** `laydown report`: lists the issued reports, or writes one, as frozen when it was issued. */
export async function report({ words: [file, number], options, out, err }: Invocation): Promise<number> {
  if (!file) {
    err('Which notebook? Usage: laydown report NOTEBOOK [NUMBER] [--out FILE.pdf]');
    return 2;
  }
  return withApplication(err, process.cwd(), async (application) => {
    await application.open(file);
    const reports = await application.call('reports.list', {});
    if (!number) {
      for (const line of reports) out([line.number, line.issuedAt.slice(0, 10), line.verdict, line.title].join('\t'));
      if (reports.length === 0) out('No report has been issued in this notebook.');
      return 0;
    }
    const wanted = reports.find((line) => line.number === number);
    if (!wanted) {
      err(`There is no report ${number}; issued are: ${reports.map((line) => line.number).join(', ') || 'none'}.`);
      return 2;
    }
    const pdf = await application.call('report.pdf', { reportId: wanted.reportId });
    const target = typeof options.out === 'string' ? options.out : pdf.fileName;
    await writeFile(target, Buffer.from(pdf.bytes, 'base64'));
    out(`${target} written.`);
    return 0;
  });
}
