import path from 'node:path';
import type { Invocation } from './invocation.ts';
import { withApplication } from './open-application.ts';

/** `laydown new`: starts an empty notebook with its first person. */
export async function newNotebook({ words: [file], options, out, err }: Invocation): Promise<number> {
  const { title, person, initials } = options;
  if (!file || typeof title !== 'string' || typeof person !== 'string' || typeof initials !== 'string') {
    err('A notebook needs a file, --title, --person and --initials. Usage: laydown new FILE --title TITLE --person NAME --initials XY');
    return 2;
  }
  const target = path.resolve(file);
  return withApplication(err, path.dirname(target), async (application) => {
    const session = await application.call('notebook.create', {
      fileName: path.basename(target),
      title,
      laboratory: typeof options.laboratory === 'string' ? options.laboratory : '',
      person: { name: person, initials, role: typeof options.role === 'string' ? options.role : '' },
    });
    out(`${session.notebook?.fileName} is ready, with ${session.notebook?.entries} entries.`);
    return 0;
  });
}
