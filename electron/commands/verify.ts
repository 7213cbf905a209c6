import type { Invocation } from './invocation.ts';
import { withApplication } from './open-application.ts';

/** `laydown verify`: exit 0 when the record is intact and every result follows from its readings, else 1. */
export async function verify({ words: [file], out, err }: Invocation): Promise<number> {
  if (!file) {
    err('Which notebook? Usage: laydown verify NOTEBOOK');
    return 2;
  }
  return withApplication(err, process.cwd(), async (application) => {
    await application.open(file);
    const found = await application.call('record.verify', {});
    for (const problem of found.problems) out(problem);
    for (const remark of found.remarks) out(remark);
    out(`${found.entries} entries, head ${found.chainHash}: ${found.intact ? 'the record is intact and every result follows from its readings' : 'THE RECORD DIFFERS, see above'}`);
    return found.intact ? 0 : 1;
  });
}
