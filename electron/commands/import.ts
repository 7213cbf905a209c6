import { readFile } from 'node:fs/promises';
import path from 'node:path';
import Papa from 'papaparse';
import type { CallOutput } from '../../shared-lib/api.ts';
import type { BenchSheetView } from '../../shared-lib/notebook/views.ts';
import { decodeText } from '../exchange/decode-text.ts';
import type { Invocation } from './invocation.ts';
import { CommandProblem, withApplication, type CommandApplication } from './open-application.ts';

type MethodView = CallOutput<'methods.list'>[number];

/**
 * `laydown import`: reads files into a new test of a sample. A method with traces takes one specimen per trace; any other
 * takes one table whose column heads are the sheet's field names or labels. The test is left running, for a person to
 * look at and finish.
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
    const settings = readSettings(options.set);

    let sheet = await application.call('test.start', { sampleId, methodId });
    for (const [key, typed] of settings.filter(([key]) => method.conditions.some((field) => field.key === key))) {
      sheet = await application.call('condition.enter', { testId: sheet.test.testId, key, typed });
    }
    const traceField = method.readings.fields.find((field) => field.kind === 'trace');
    if (traceField) sheet = await importTraces(application, sheet, traceField.key, contents, settings, method, options);
    else for (const content of contents) sheet = await importTable(application, sheet, method, content);

    out(`Test of ${sample} by ${method.title}: ${sheet.test.readings} readings, left running.`);
    for (const line of sheet.live?.lines ?? []) out(`  ${line.title}: ${line.text}${line.intervalText ? ` (${line.intervalText}, n = ${line.n})` : ''}`);
    if (sheet.missing) out(`  ${sheet.missing.text}`);
    return 0;
  });
}

async function takeBench(application: CommandApplication, initials: string): Promise<void> {
  const { people } = await application.call('session.get', {});
  const person = people.find((one) => one.initials === initials);
  if (!person) throw new CommandProblem(`Nobody here has the initials ${initials}; there are ${people.map((one) => one.initials).join(', ')}.`);
  await application.call('session.takeBench', { personId: person.personId });
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

/** `--set KEY=VALUE`, as often as needed: conditions of the test, and cells that every imported specimen shares. */
function readSettings(given: unknown): [string, string][] {
  const texts = Array.isArray(given) ? (given as string[]) : [];
  return texts.map((text) => {
    const [key, ...value] = text.split('=');
    if (!key || value.length === 0) throw new CommandProblem(`--set takes KEY=VALUE, not "${text}".`);
    return [key, value.join('=')];
  });
}

async function importTraces(
  application: CommandApplication,
  started: BenchSheetView,
  key: string,
  contents: Content[],
  settings: [string, string][],
  method: MethodView,
  options: Invocation['options'],
): Promise<BenchSheetView> {
  const shared = settings.filter(([name]) => method.readings.fields.some((field) => field.key === name));
  const units = {
    ...(typeof options['force-unit'] === 'string' ? { forceUnit: options['force-unit'] as 'N' } : {}),
    ...(typeof options['displacement-unit'] === 'string' ? { displacementUnit: options['displacement-unit'] as 'mm' } : {}),
  };
  const { testId } = started.test;
  let sheet = started;
  let specimen = 0;
  for (const { name, bytes } of contents) {
    const encoded = Buffer.from(bytes).toString('base64');
    const first = await application.call('trace.preview', { name, bytes: encoded, reading: units });
    for (let block = 0; block < Math.max(1, first.blocks.length); block++) {
      const { reading } = await application.call('trace.preview', { name, bytes: encoded, reading: { ...units, block } });
      specimen += 1;
      const row = `r${specimen}`;
      sheet = await application.call('trace.read', { testId, row, key, name, bytes: encoded, reading });
      for (const [field, typed] of shared) sheet = await application.call('reading.enter', { testId, row, key: field, typed });
    }
  }
  return sheet;
}

async function importTable(application: CommandApplication, started: BenchSheetView, method: MethodView, { name, bytes }: Content): Promise<BenchSheetView> {
  const [heads = [], ...rows] = Papa.parse<string[]>(decodeText(bytes), { skipEmptyLines: 'greedy' }).data;
  const columns = heads.map((head) => {
    const wanted = head.trim().toLowerCase();
    const field = method.readings.fields.find(({ key, label }) => key.toLowerCase() === wanted || label.toLowerCase() === wanted);
    if (!field) throw new CommandProblem(`${name}: the column "${head}" is none of ${method.readings.fields.map(({ key }) => key).join(', ')}.`);
    return field.key;
  });
  let sheet = started;
  for (const [index, key] of columns.entries()) {
    const pasted = rows.map((row) => row[index] ?? '').join('\n');
    if (pasted.trim() !== '') sheet = await application.call('readings.paste', { testId: sheet.test.testId, row: 'r1', key, pasted });
  }
  return sheet;
}
