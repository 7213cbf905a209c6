import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { runCommandLine } from '../../../electron/command-line.ts';
import { withApplication, type CommandApplication } from '../../../electron/commands/open-application.ts';

let folder: string;
let printed: { out: string; err: string };

beforeEach(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'laydown-import-'));
  printed = { out: '', err: '' };
  vi.spyOn(process.stdout, 'write').mockImplementation((text) => Boolean((printed.out += String(text))));
  vi.spyOn(process.stderr, 'write').mockImplementation((text) => Boolean((printed.err += String(text))));
  await withApplication(() => undefined, folder, async (application) => {
    await application.call('notebook.create', { fileName: 'lab', title: 'T', laboratory: '', person: { name: 'Imke Rasmund', initials: 'IR', role: '' } });
    await application.call('sample.add', { code: 'Q-1', product: '', job: '', roll: '', note: '', lotIds: [] });
    return 0;
  });
});

afterEach(() => {
  vi.restoreAllMocks();
  rmSync(folder, { recursive: true, force: true });
});

const at = (name: string) => path.join(folder, name);
function write(name: string, content: string | Uint8Array): string {
  writeFileSync(at(name), content);
  return at(name);
}
const importFluids = (files: string[], ...settings: string[]) =>
  runCommandLine(['import', at('lab.laydown'), ...files, '--sample', 'Q-1', '--by', 'IR', '--method', 'test-fluids', ...settings.flatMap((text) => ['--set', text])]);

async function inNotebook<Found>(look: (application: CommandApplication) => Promise<Found>): Promise<Found> {
  let found: Found | undefined;
  await withApplication(() => undefined, folder, async (application) => {
    await application.open(at('lab.laydown'));
    found = await look(application);
    return 0;
  });
  return found as Found;
}
const tests = () => inNotebook((application) => application.call('tests.list', { state: 'all' }));

describe('laydown import', () => {
  it('puts tables one below the other, a cell with a line end in its own place', async () => {
    const first = write('one.csv', 'Position;wetsMNm;retractsMNm\n"edge\nleft";36;38\ncentre;38;40\n');
    const second = write('two.csv', 'Position;wetsMNm;retractsMNm\nright;40;42\n');
    expect(await importFluids([first, second]), printed.err).toBe(0);
    const [line] = await tests();
    const sheet = await inNotebook((application) => application.call('test.get', { testId: line!.testId }));
    expect(sheet.rows.slice(0, 3).map(({ cells }) => [cells.label?.value, cells.wetsMNm?.value, cells.retractsMNm?.value])).toEqual([
      ['edge\nleft', 36, 38],
      ['centre', 38, 40],
      ['right', 40, 42],
    ]);
  });

  it.each<[string, string | Uint8Array, string[], RegExp]>([
    ['a file that is no text', Uint8Array.of(0x50, 0x4b, 3, 4), [], /^The file is a workbook or another zipped file/],
    ['a column that is not on the sheet', 'wetsMNm;shoe size\n36;42\n', [], /the column "shoe size" is none of/],
    ['a row that is longer than the heads', 'wetsMNm;retractsMNm\n36;38\n36;38;40\n', [], /row 2 below the heads has more cells/],
    ['a setting that the method does not take', 'wetsMNm;retractsMNm\n36;38\n', ['temperature=23'], /^--set temperature: .* takes only .*temperatureC/],
  ])('refuses %s in a sentence and starts no test', async (_what, content, settings, sentence) => {
    expect(await importFluids([write('file.csv', content)], ...settings)).toBe(2);
    expect(printed.err).toMatch(sentence);
    expect(printed.err.trim()).not.toContain('\n');
    expect(await tests()).toEqual([]);
  });

  it('is told apart from a command that is only a name every object has', async () => {
    expect(await runCommandLine(['constructor'])).toBe(2);
    expect(printed.err).toContain('There is no command "constructor"');
  });

  it('says why a file cannot be written', async () => {
    expect(await runCommandLine(['demo', '--out', at('lab.laydown')])).toBe(2);
    expect(printed.err.trim()).toBe('lab.laydown cannot be read or written: something else of that name stands there.');
  });
});
