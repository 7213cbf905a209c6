import { parseArgs } from 'node:util';
import { problemOf } from './application/answer.ts';
import { CommandProblem } from './commands/command-problem.ts';
import type { Invocation } from './commands/invocation.ts';

interface Command {
  usage: string;
  summary: string;
  options: Record<string, { type: 'string' | 'boolean'; multiple?: boolean }>;
  /** Returns the exit code: 0 done, 1 the answer is no, 2 the input cannot be used. */
  load: () => Promise<(invocation: Invocation) => Promise<number>>;
}

const text = { type: 'string' } as const;
const yes = { type: 'boolean' } as const;

/** Loaded one at a time, so that `laydown calc` starts without the notebook. */
const commands: Record<string, Command> = {
  demo: {
    usage: 'laydown demo [--out FOLDER]',
    summary: 'build the demo notebook, compute, verify its record, write the supplier report',
    options: { out: text },
    load: async () => (await import('./commands/demo.ts')).demo,
  },
  new: {
    usage: 'laydown new FILE --title TITLE --person NAME --initials XY [--laboratory NAME] [--role ROLE]',
    summary: 'start a notebook',
    options: { title: text, laboratory: text, person: text, initials: text, role: text },
    load: async () => (await import('./commands/new.ts')).newNotebook,
  },
  calc: {
    usage: 'laydown calc ID < INPUT.json   |   laydown calc --list   |   laydown calc ID --schema',
    summary: 'one calculation, JSON in and out',
    options: { list: yes, schema: yes },
    load: async () => (await import('./commands/calc.ts')).calc,
  },
  import: {
    usage: 'laydown import NOTEBOOK FILE.csv… --sample CODE --method ID --by INITIALS [--set KEY=VALUE]… [--force-unit N] [--displacement-unit mm]',
    summary: 'read CSV traces (one specimen each) or a table of readings into a new test',
    options: { sample: text, method: text, by: text, set: { type: 'string', multiple: true }, 'force-unit': text, 'displacement-unit': text },
    load: async () => (await import('./commands/import.ts')).importReadings,
  },
  report: {
    usage: 'laydown report NOTEBOOK [NUMBER] [--out FILE.pdf]',
    summary: 'list the issued reports, or write one as PDF',
    options: { out: text },
    load: async () => (await import('./commands/report.ts')).report,
  },
  merge: {
    usage: 'laydown merge NOTEBOOK --from OTHER [--by INITIALS] [--another-notebook]',
    summary: 'bring in what another notebook has, list what does not go together; --another-notebook: no copy of it, but of this laboratory',
    options: { from: text, by: text, 'another-notebook': yes },
    load: async () => (await import('./commands/merge.ts')).merge,
  },
  verify: {
    usage: 'laydown verify NOTEBOOK',
    summary: 'recompute the chain and every result, list what differs',
    options: {},
    load: async () => (await import('./commands/verify.ts')).verify,
  },
  serve: {
    usage: 'laydown serve [NOTEBOOK] [--port N]',
    summary: 'serve the application on 127.0.0.1 for a browser on this machine; without NOTEBOOK, the one that was open last',
    options: { port: text },
    load: async () => (await import('./commands/serve.ts')).serve,
  },
};

/**
 * Runs `laydown COMMAND …`.
 * @returns the exit code: 0 done, 1 the answer is no (a record that does not verify), 2 the input cannot be used
 */
export async function runCommandLine(argv: string[]): Promise<number> {
  const out = (line: string) => void process.stdout.write(`${line}\n`);
  const err = (line: string) => void process.stderr.write(`${line}\n`);
  const [name, ...rest] = argv;
  const command = name !== undefined && Object.hasOwn(commands, name) ? commands[name] : undefined;
  if (!command) {
    const asked = name === undefined || name === 'help' || name === '--help' || name === '-h';
    if (!asked) err(`There is no command "${name}".`);
    (asked ? out : err)(overview());
    return asked ? 0 : 2;
  }
  let parsed;
  try {
    parsed = parseArgs({ args: rest, options: command.options, allowPositionals: true });
  } catch (error) {
    err(`${error instanceof Error ? error.message : String(error)}\nUsage: ${command.usage}`);
    return 2;
  }
  const run = await command.load();
  try {
    return await run({
      words: parsed.positionals,
      options: parsed.values as Invocation['options'],
      input: process.stdin,
      out,
      err,
    });
  } catch (error) {
    err(error instanceof CommandProblem ? error.message : problemOf(error).message);
    return 2;
  }
}

function overview(): string {
  const lines = Object.values(commands).map(({ usage, summary }) => `  ${usage}\n      ${summary}`);
  return `Laydown, a lab notebook for printed flexible-packaging film\n\n${lines.join('\n')}`;
}
