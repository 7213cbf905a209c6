import { readFile } from 'node:fs/promises';
import path from 'node:path';
import Papa from 'papaparse';
import type { CallInput, CallOutput } from '../../shared-lib/api.ts';
import type { BenchSheetView } from '../../shared-lib/notebook/views.ts';
import { decodeText } from '../exchange/decode-text.ts';
import { CommandProblem } from './command-problem.ts';
import type { Invocation } from './invocation.ts';
import { withApplication, type CommandApplication } from './open-application.ts';
import { takeBench } from './take-bench.ts';

type MethodView = CallOutput<'methods.list'>[number];

/**
 * `laydown import`: reads files into a new test of a sample. A method with traces takes one specimen per trace; any other
 * takes tables, one below the other, whose column heads are the sheet's field names or labels. The test is started once
 * every file is understood, and left running, for a person to look at and finish.
 */
export async function importReadings({ words: [notebook, ...files], options, out, err }: Invocation): Promise<number> {
  const { sample, method: methodId, by } = options;
  if (!notebook || files.length === 0 || typeof sample !== 'string' || typeof methodId !== 'string' || typeof by !== 'string') {
    err('A notebook, at least one file, --sample, --method and --by are needed. Usage: laydown import NOTEBOOK FILE.csv… --sample CODE --method ID --by INITIALS');
    return 2;
  }
  return withApplication(err, process.cwd(), async (application) => {
    await application.open(notebook);
    await takeBench(application, by);
    const method = await findMethod(application, methodId);
    const sampleId = await findSample(application, sample);
    const contents = await Promise.all(files.map(readNamed));
    const traceField = method.readings.fields.find((field) => field.kind === 'trace');
    const settings = readSettings(options.set, method, traceField !== undefined);
    const enterReadings = traceField
      ? await tracesOf(application, contents, traceField.key, settings.ofRows, options)
      : tablesOf(application, contents, method);

    let sheet = await application.call('test.start', { sampleId, methodId });
    const { testId } = sheet.test;
    for (const [key, typed] of settings.ofTest) sheet = await application.call('condition.enter', { testId, key, typed });
    sheet = await enterReadings(sheet);

    out(`Test of ${sample} by ${method.title}: ${sheet.test.readings} readings, left running.`);
    for (const line of sheet.live?.lines ?? []) out(`  ${line.title}: ${line.text}${line.intervalText ? ` (${line.intervalText}, n = ${line.n})` : ''}`);
    if (sheet.missing) out(`  ${sheet.missing.text}`);
    return 0;
  });
}

async function findMethod(application: CommandApplication, methodId: string): Promise<MethodView> {
  const methods = await application.call('methods.list', {});
  const method = methods.find((one) => one.id === methodId);
  if (!method) throw new CommandProblem(`There is no method ${methodId}; there are ${methods.map((one) => one.id).join(', ')}.`);
  return method;
}

async function findSample(application: CommandApplication, code: string): Promise<string> {
  const { samples } = await application.call('samples.list', { search: code });
  const found = samples.filter((one) => one.code === code);
  if (found.length !== 1) throw new CommandProblem(found.length === 0 ? `There is no sample ${code}.` : `${found.length} samples are called ${code}; give one of them a code of its own.`);
  return found[0]!.sampleId;
}

interface Content {
  name: string;
  bytes: Uint8Array;
}

async function readNamed(file: string): Promise<Content> {
  try {
    return { name: path.basename(file), bytes: await readFile(file) };
  } catch {
    throw new CommandProblem(`${file} cannot be read.`);
  }
}

type Setting = [key: string, typed: string];

/** `--set KEY=VALUE`, as often as needed: conditions of the test, and cells that every specimen read from a trace shares. */
function readSettings(given: unknown, method: MethodView, withTraces: boolean): { ofTest: Setting[]; ofRows: Setting[] } {
  const texts = Array.isArray(given) ? (given as string[]) : [];
  const conditions = method.conditions.map(({ key }) => key);
  const cells = withTraces ? method.readings.fields.filter(({ kind }) => kind !== 'trace').map(({ key }) => key) : [];
  const settings = texts.map((text): Setting => {
    const [key, ...value] = text.split('=');
    if (!key || value.length === 0) throw new CommandProblem(`--set takes KEY=VALUE, not "${text}".`);
    if (![...conditions, ...cells].includes(key)) throw new CommandProblem(`--set ${key}: ${method.title} takes only ${[...conditions, ...cells].join(', ')}.`);
    return [key, value.join('=')];
  });
  return { ofTest: settings.filter(([key]) => conditions.includes(key)), ofRows: settings.filter(([key]) => cells.includes(key)) };
}

/** Enters what was read from the files into a started test. */
type EnterReadings = (started: BenchSheetView) => Promise<BenchSheetView>;

async function tracesOf(application: CommandApplication, contents: Content[], key: string, shared: Setting[], options: Invocation['options']): Promise<EnterReadings> {
  const units = {
    ...(typeof options['force-unit'] === 'string' ? { forceUnit: options['force-unit'] as 'N' } : {}),
    ...(typeof options['displacement-unit'] === 'string' ? { displacementUnit: options['displacement-unit'] as 'mm' } : {}),
  };
  const traces: Omit<CallInput<'trace.read'>, 'testId' | 'row' | 'key'>[] = [];
  for (const content of contents) {
    const file = { name: content.name, bytes: Buffer.from(content.bytes).toString('base64') };
    const first = await application.call('trace.preview', { ...file, reading: units });
    traces.push({ ...file, reading: first.reading });
    for (let block = 1; block < first.blocks.length; block++) {
      const { reading } = await application.call('trace.preview', { ...file, reading: { ...units, block } });
      traces.push({ ...file, reading });
    }
  }
  return async (started) => {
    const { testId } = started.test;
    let sheet = started;
    for (const [index, trace] of traces.entries()) {
      const row = `r${index + 1}`;
      sheet = await application.call('trace.read', { testId, row, key, ...trace });
      for (const [field, typed] of shared) sheet = await application.call('reading.enter', { testId, row, key: field, typed });
    }
    return sheet;
  };
}

function tablesOf(application: CommandApplication, contents: Content[], method: MethodView): EnterReadings {
  const tables = contents.map((content) => readTable(content, method));
  return async (started) => {
    let sheet = started;
    let above = 0;
    for (const { keys, rows } of tables) {
      for (const [index, key] of keys.entries()) {
        const pasted = Papa.unparse(rows.map((row) => [row[index] ?? '']), { delimiter: '\t', newline: '\n' });
        if (pasted.trim() !== '') sheet = await application.call('readings.paste', { testId: sheet.test.testId, row: `r${above + 1}`, key, pasted });
      }
      above += rows.length;
    }
    return sheet;
  };
}

/** Fields by column, and the rows below the heads. */
function readTable({ name, bytes }: Content, method: MethodView): { keys: string[]; rows: string[][] } {
  const [heads = [], ...rows] = Papa.parse<string[]>(decodeText(bytes), { skipEmptyLines: 'greedy' }).data;
  const { fields } = method.readings;
  const keys = heads.map((head) => {
    const wanted = head.trim().toLowerCase();
    const field = fields.find(({ key, label }) => key.toLowerCase() === wanted || label.toLowerCase() === wanted);
    if (!field) throw new CommandProblem(`${name}: the column "${head}" is none of ${fields.map(({ key }) => key).join(', ')}.`);
    return field.key;
  });
  const long = rows.findIndex((row) => row.slice(keys.length).some((cell) => cell.trim() !== ''));
  if (long !== -1) throw new CommandProblem(`${name}: row ${long + 1} below the heads has more cells than there are heads.`);
  return { keys, rows };
}
