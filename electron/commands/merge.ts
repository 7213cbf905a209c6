import type { ConflictSide } from '../../shared-lib/notebook/merge-views.ts';
import { CommandProblem } from './command-problem.ts';
import type { Invocation } from './invocation.ts';
import { withApplication } from './open-application.ts';
import { takeBench } from './take-bench.ts';

const USAGE = 'laydown merge NOTEBOOK --from OTHER [--by INITIALS] [--another-notebook]';

/** `laydown merge`: takes in what another notebook has and this one has not. Exit 1 when something did not go together. */
export async function merge({ words: [notebook], options: { from, by, 'another-notebook': another }, out, err }: Invocation): Promise<number> {
  if (!notebook || typeof from !== 'string') {
    err(`A notebook and --from are needed. Usage: ${USAGE}`);
    return 2;
  }
  return withApplication(err, process.cwd(), async (application) => {
    await application.open(notebook);
    if (typeof by === 'string') await takeBench(application, by);
    const { atBench, people } = await application.call('session.get', {});
    if (!atBench) throw new CommandProblem(`Who brings it in? Give --by with the initials: ${people.filter(({ retired }) => !retired).map(({ initials }) => initials).join(', ')}.`);
    const merged = await application.merge(from, another === true).catch((error: unknown) => {
      throw error instanceof CommandProblem && error.field === 'belongsHere' ? new CommandProblem(`${error.message} If it does, say so by --another-notebook.`) : error;
    });
    if (!merged) {
      out('There is nothing new in it: every entry is here already.');
      return 0;
    }
    out(`${merged.entries} entries of ${merged.bench} (“${merged.title}”) were brought in.`);
    for (const { here, there, taken } of merged.conflicts) {
      for (const side of [here, there]) out(`  ${sideText(side)}`);
      out(`    ${taken}`);
    }
    if (merged.conflicts.length > 0) out(`${merged.conflicts.length} ${merged.conflicts.length === 1 ? 'conflict' : 'conflicts'} to settle, on the screen Notebook.`);
    return merged.conflicts.length === 0 ? 0 : 1;
  });
}

function sideText({ bench, by, at, text }: ConflictSide): string {
  return `${bench === '' ? 'here' : bench}, ${at.slice(0, 16).replace('T', ' ')}, ${by}: ${text}`;
}
