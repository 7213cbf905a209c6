import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import initSqlJs from 'sql.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readPdf } from './pdf-text.ts';

const project = path.resolve(import.meta.dirname, '../..');
const folder = mkdtempSync(path.join(tmpdir(), 'laydown-command-line-'));
const demo = path.join(folder, 'demo.laydown');

interface Outcome {
  code: number | null;
  out: string;
  err: string;
}

/** `laydown …` as a user runs it, in a folder of its own. */
function laydown(args: string[], input = ''): Promise<Outcome> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [path.join(project, 'build', 'laydown.mjs'), ...args], { cwd: folder });
    const printed = { out: '', err: '' };
    child.stdout.on('data', (part: Buffer) => (printed.out += part.toString()));
    child.stderr.on('data', (part: Buffer) => (printed.err += part.toString()));
    child.on('close', (code) => resolve({ code, ...printed }));
    child.stdin.end(input);
  });
}

/** A peel trace of one force throughout, decimal commas, two header lines. */
function traceCsv(unit: string, force: string): string {
  return ['Weg;Kraft', `mm;${unit}`, ...Array.from({ length: 201 }, (_, index) => `${(index / 4).toFixed(2).replace('.', ',')};${force}`)].join('\n');
}

beforeAll(async () => {
  expect((await laydown(['demo', '--out', folder])).code).toBe(0);
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('laydown', () => {
  it('lists its commands, and refuses one that it does not have', async () => {
    const help = await laydown(['--help']);
    expect(help.code).toBe(0);
    for (const name of ['calc', 'new', 'import', 'report', 'merge', 'verify', 'serve', 'demo']) expect(help.out).toContain(`laydown ${name}`);
    const unknown = await laydown(['measure']);
    expect(unknown).toMatchObject({ code: 2, out: '' });
    expect(unknown.err).toContain('There is no command "measure".');
    expect((await laydown(['calc', '--colour'])).code).toBe(2);
  });
});

describe('laydown calc', () => {
  it('--list names every calculation', async () => {
    const { code, out } = await laydown(['calc', '--list']);
    expect(code).toBe(0);
    for (const id of ['wetting-fluid', 'bond-strength', 'fade-life', 'colour-difference', 'summary', 'verdict']) expect(out).toMatch(new RegExp(`^${id}\\t\\S`, 'm'));
  });

  it('--schema gives the JSON Schema of the input', async () => {
    const { code, out } = await laydown(['calc', 'treatment-dose', '--schema']);
    expect(code).toBe(0);
    const schema = JSON.parse(out) as { type: string; properties: Record<string, unknown>; additionalProperties: boolean };
    expect(schema).toMatchObject({ type: 'object', additionalProperties: false });
    expect(Object.keys(schema.properties)).toEqual(expect.arrayContaining(['powerW', 'widthMm', 'speedMPerMin', 'doseWMinPerM2']));
  });

  it('computes one input', async () => {
    // Dose = P/(b·v): 2000 W over 1 m at 100 m/min = 20 W·min/m² (the definition).
    const { code, out, err } = await laydown(['calc', 'treatment-dose'], JSON.stringify({ powerW: 2000, widthMm: 1000, speedMPerMin: 100, sides: 1 }));
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(JSON.parse(out)).toMatchObject({ calculation: 'treatment-dose', results: { dose: { value: 20 } } });
  });

  it('refuses bad input with exit 2 and one JSON error on standard error', async () => {
    const cases: [string[], string, string][] = [
      [['calc', 'bond-strength'], '{"specimens":[]}', 'specimens'],
      [['calc', 'bond-strength'], '{"specimens":[{"strengthNPer15mm":3,"mode":"melted"}]}', 'specimens[0].mode'],
      [['calc', 'bond-strength'], '{"specimen":[]}', ''],
      [['calc', 'bond-strength'], 'not json', ''],
      [['calc', 'bond-strengths'], '{}', 'calculation'],
    ];
    for (const [args, input, field] of cases) {
      const { code, out, err } = await laydown(args, input);
      expect({ code, out }, input).toEqual({ code: 2, out: '' });
      const { error } = JSON.parse(err) as { error: { field: string; value: unknown; message: string } };
      expect(error.message, input).toMatch(/^\S.+\.$/);
      if (field) expect(error.field).toBe(field);
      expect(err).not.toMatch(/\n\s+at /);
    }
  });

  it('takes an array and answers each, exit 2 only when all failed', async () => {
    const good = { values: [1, 2, 3, 4] };
    const bad = { values: ['a'] };
    const mixed = await laydown(['calc', 'summary'], JSON.stringify([good, bad]));
    expect(mixed.code).toBe(0);
    const answers = JSON.parse(mixed.out) as { results?: { mean: { value: number } }; error?: { field: string } }[];
    expect(answers[0]!.results!.mean.value).toBe(2.5);
    expect(answers[1]!.error!.field).toBe('values[0]');
    expect((await laydown(['calc', 'summary'], JSON.stringify([bad, bad]))).code).toBe(2);
  });
});

describe('laydown new', () => {
  it('starts a notebook and does not write over one', async () => {
    const args = ['new', 'lab.laydown', '--title', 'Film 2026', '--person', 'Imke Rasmund', '--initials', 'IR'];
    expect(await laydown(args)).toMatchObject({ code: 0, err: '' });
    const before = readFileSync(path.join(folder, 'lab.laydown'));
    const again = await laydown(args);
    expect(again.code).toBe(2);
    expect(again.err).toMatch(/already a notebook named lab\.laydown/);
    expect(readFileSync(path.join(folder, 'lab.laydown')).equals(before)).toBe(true);
    expect((await laydown(['verify', 'lab.laydown'])).code).toBe(0);
  });
});

describe('laydown import', () => {
  const base = ['--by', 'IR', '--sample', 'Q-26-004'];

  it('reads traces, one specimen each, into a new test', async () => {
    writeFileSync(path.join(folder, 'one.csv'), traceCsv('N', '2,400'));
    writeFileSync(path.join(folder, 'two.csv'), traceCsv('gf', '250,0'));
    const { code, out, err } = await laydown(['import', demo, 'one.csv', 'two.csv', ...base, '--method', 'lamination-bond', '--set', 'stripWidthMm=15', '--set', 'mode=adhesive']);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    // (2.4 + 250·9.80665·10⁻³)/2 = 2.4258 N on 15 mm.
    expect(out).toMatch(/Mean bond strength: 2\.4\d* N\/15 mm/);
    expect(out).toContain('n = 2');
  });

  it('reads a table of readings', async () => {
    writeFileSync(path.join(folder, 'fluids.csv'), 'Position;wetsMNm;retractsMNm\nedge;36;38\ncentre;38,0;40\nedge;40;42\n');
    const { code, out, err } = await laydown(['import', demo, 'fluids.csv', ...base, '--method', 'test-fluids']);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    // One bracket each side of the middle one: by symmetry the mean is 39.
    expect(out).toMatch(/Wetting tension: 39(\.0+)? mN\/m/);
    expect(out).toMatch(/Weakest position: between 36 and 38 mN\/m/);
  });

  it('refuses what it cannot use in a sentence, exit 2', async () => {
    const cases: [string[], RegExp][] = [
      [['import', 'lab.laydown', 'one.csv', '--by', 'ZZ', '--sample', 'Q-26-004', '--method', 'lamination-bond'], /Nobody here has the initials ZZ/],
      [['import', 'lab.laydown', 'one.csv', ...base, '--method', 'lamination-bond'], /There is no sample Q-26-004/],
      [['import', 'lab.laydown', 'one.csv', ...base, '--method', 'guess'], /There is no method guess/],
      [['import', demo, 'none.csv', ...base, '--method', 'lamination-bond'], /none\.csv cannot be read/],
      [['import', demo, 'lab.laydown', ...base, '--method', 'lamination-bond'], /bytes that are no text/],
      [['import', 'none.laydown', 'one.csv', ...base, '--method', 'lamination-bond'], /none\.laydown/],
    ];
    for (const [args, sentence] of cases) {
      const { code, err } = await laydown(args);
      expect(code, err).toBe(2);
      expect(err).toMatch(sentence);
      expect(err).not.toMatch(/\n\s+at /);
    }
  });
});

describe('laydown report', () => {
  it('lists the issued reports and writes one as it was issued', async () => {
    const list = await laydown(['report', demo]);
    expect(list.code).toBe(0);
    const number = /^LR-\d{4}-002/m.exec(list.out)![0];
    expect(await laydown(['report', demo, number, '--out', 'r.pdf'])).toMatchObject({ code: 0, err: '' });
    const { text } = await readPdf(readFileSync(path.join(folder, 'r.pdf')));
    expect(text).toContain(`Report${number}`);
    expect(text).toContain('fallsshort');
    const unknown = await laydown(['report', demo, 'LR-1999-001', '--out', 'none.pdf']);
    expect(unknown.code).toBe(2);
    expect(unknown.err).toContain(number);
    expect(existsSync(path.join(folder, 'none.pdf'))).toBe(false);
  });
});

describe('laydown verify', () => {
  it('finds the demo intact, and no file that is none', async () => {
    const { code, out } = await laydown(['verify', demo]);
    expect(code, out).toBe(0);
    expect(out).toMatch(/\d+ entries, head [0-9a-f]{64}: the record is intact/);
    writeFileSync(path.join(folder, 'letter.laydown'), 'Dear notebook');
    expect((await laydown(['verify', 'letter.laydown'])).code).toBe(2);
  });

  it('finds one reading changed by hand in the file, exit 1', async () => {
    const { Database } = await initSqlJs();
    const forged = path.join(folder, 'forged.laydown');
    const database = new Database(readFileSync(demo));
    const [entry] = database.exec(`SELECT seq, body FROM entry WHERE kind = 'reading.entered' AND body LIKE '%"value":41%' ORDER BY seq LIMIT 1`);
    const [seq, body] = entry!.values[0] as [number, string];
    database.run('DROP TRIGGER entry_unchanged');
    database.run('UPDATE entry SET body = ? WHERE seq = ?', [body.replace('"value":41', '"value":46'), seq]);
    writeFileSync(forged, database.export());
    database.close();
    const { code, out } = await laydown(['verify', forged]);
    expect(code).toBe(1);
    expect(out).toContain('THE RECORD DIFFERS');
    expect(out).toMatch(new RegExp(`\\b${seq}\\b`));
  });
});

describe('laydown merge', () => {
  it('brings in what another notebook has, once, and says who must do it', async () => {
    const person = ['--person', 'Imke Rasmund', '--initials', 'IR'];
    await laydown(['new', 'bench-a.laydown', '--title', 'Bench A', ...person]);
    await laydown(['new', 'bench-b.laydown', '--title', 'Bench B', '--person', 'Teodor Vance', '--initials', 'TV']);
    expect(await laydown(['merge', 'bench-a.laydown'])).toMatchObject({ code: 2, out: '' });
    const missing = await laydown(['merge', 'bench-a.laydown', '--from', 'gone.laydown']);
    expect(missing).toMatchObject({ code: 2, out: '' });
    expect(missing.err).toMatch(/gone\.laydown failed: it or its folder is not there\.$/m);
    const unsaid = await laydown(['merge', 'bench-a.laydown', '--from', 'bench-b.laydown']);
    expect(unsaid).toMatchObject({ code: 2, out: '' });
    expect(unsaid.err).toContain('bench-b (“Bench B”, no laboratory named) and bench-a (“Bench A”, no laboratory named) have no entry in common.');
    expect(unsaid.err).toContain('If it does, say so by --another-notebook.');
    const merged = await laydown(['merge', 'bench-a.laydown', '--from', 'bench-b.laydown', '--another-notebook']);
    expect(merged).toMatchObject({ code: 0, err: '', out: '2 entries of bench-b (“Bench B”) were brought in.\n' });
    const again = await laydown(['merge', 'bench-a.laydown', '--from', 'bench-b.laydown']);
    expect(again.err).toContain('Who brings it in? Give --by with the initials: IR, TV.');
    expect(await laydown(['merge', 'bench-a.laydown', '--from', 'bench-b.laydown', '--by', 'IR'])).toMatchObject({ code: 0, out: 'There is nothing new in it: every entry is here already.\n' });
    expect((await laydown(['verify', 'bench-a.laydown'])).out).toMatch(/^5 entries, head [0-9a-f]{64}: the record is intact/);
  });
});
