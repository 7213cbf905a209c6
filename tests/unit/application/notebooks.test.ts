import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { START, testBench, TestBench } from './open-application.ts';

describe('a session', () => {
  it('has no notebook at first and refuses work without one', async () => {
    const bench = new TestBench();
    expect(await bench.do('session.get', {})).toMatchObject({ notebook: null, atBench: null, people: [], recent: [], version: '0.0.0-test' });
    expect(await bench.refused('materials.list', {})).toMatchObject({ code: 'conflict', message: 'No notebook is open; open one or make a new one first.' });
  });

  it('makes a notebook with its first person at the bench, and lists it as recent', async () => {
    const bench = await testBench();
    const session = await bench.do('session.get', {});
    expect(session.notebook).toMatchObject({ fileName: 'lab.laydown', title: 'Quillmere lab', laboratory: 'Quillmere Flexibles', readOnly: false, entries: 2 });
    expect(session.atBench).toMatchObject({ name: 'Imke Rasmund', initials: 'IR' });
    expect(session.recent).toEqual([{ handle: bench.notebookFile, fileName: 'lab.laydown', openedAt: new Date(START).toISOString() }]);
    expect(existsSync(bench.notebookFile)).toBe(true);
  });

  it.each(['../outside', 'a/b', 'a\\b', '.', '..', '  ', 'nul\0l', 'C:lab', '.hidden'])('refuses the file name %j', async (fileName) => {
    const bench = new TestBench();
    const person = { name: 'A', initials: 'A', role: '' };
    const problem = await bench.refused('notebook.create', { fileName, title: 'T', laboratory: '', person });
    expect(problem).toMatchObject({ code: 'input', field: 'fileName' });
    const folder = path.join(bench.folder, 'notebooks');
    expect(existsSync(folder) ? readdirSync(folder) : []).toEqual([]);
  });

  it('never writes over a notebook that is there', async () => {
    const bench = await testBench();
    const person = { name: 'A', initials: 'A', role: '' };
    const problem = await bench.refused('notebook.create', { fileName: 'lab.laydown', title: 'T', laboratory: '', person });
    expect(problem).toMatchObject({ code: 'input', field: 'fileName', message: 'There is already a notebook named lab.laydown; choose another name.' });
    expect(await bench.entries()).toBe(2);
  });

  it('opens again with everything in it and the same person at the bench', async () => {
    const bench = await testBench();
    const other = await bench.do('person.add', { name: 'Abena Quist', initials: 'AQ', role: 'quality lead' });
    await bench.do('session.takeBench', { personId: other.personId });
    await bench.application.close();
    expect((await bench.do('session.get', {})).notebook).toBeNull();
    const session = await bench.do('notebook.open', { handle: bench.notebookFile });
    expect(session.notebook?.entries).toBe(3);
    expect(session.atBench?.name).toBe('Abena Quist');
  });

  it('does not open just any path that the screens name', async () => {
    const bench = await testBench();
    expect(await bench.refused('notebook.open', { handle: '/etc/passwd' })).toMatchObject({ code: 'not-found' });
    const missing = path.join(bench.folder, 'notebooks', 'gone.laydown');
    expect(await bench.refused('notebook.open', { handle: missing })).toMatchObject({ code: 'file' });
    expect((await bench.do('session.get', {})).notebook?.fileName).toBe('lab.laydown');
  });

  it('keeps the open notebook when another file cannot be opened', async () => {
    const bench = await testBench();
    const foreign = path.join(bench.folder, 'foreign.laydown');
    writeFileSync(foreign, 'this is no notebook');
    const answer = await bench.application.open(foreign);
    expect(answer).toMatchObject({ ok: false, problem: { code: 'file' } });
    expect((await bench.do('session.get', {})).notebook?.fileName).toBe('lab.laydown');
  });

  it('gives a second opener the notebook for reading only, says why, and refuses every entry', async () => {
    const bench = await testBench();
    const second = new TestBench();
    const answer = await second.application.open(bench.notebookFile);
    expect(answer.ok).toBe(true);
    const { notebook, people } = await second.do('session.get', {});
    expect(notebook).toMatchObject({ readOnly: true, entries: 2 });
    expect(notebook!.readOnlyReason).not.toBe('');
    expect(people.map((person) => person.name)).toEqual(['Imke Rasmund']);
    const problem = await second.refused('person.add', { name: 'B', initials: 'B', role: '' });
    expect(problem).toMatchObject({ code: 'read-only', message: notebook!.readOnlyReason });
    expect(await second.refused('notebook.checkpoint', {})).toMatchObject({ code: 'read-only' });
    expect(await bench.entries()).toBe(2);
  });

  it('changes its title and laboratory with a reason, and keeps what stood before in the record', async () => {
    const bench = await testBench();
    expect(await bench.refused('notebook.describe', { title: 'Films 2026', laboratory: 'Quillmere Flexibles' })).toMatchObject({ field: 'reason' });
    expect((await bench.refused('notebook.describe', { title: 'Quillmere lab', laboratory: 'Quillmere Flexibles', reason: 'none' })).message).toBe('Nothing was changed.');
    await bench.do('notebook.describe', { title: 'Films 2026', laboratory: 'Quillmere North', reason: 'the laboratory moved' });
    await bench.application.close();
    const session = await bench.do('notebook.open', { handle: bench.notebookFile });
    expect(session.notebook).toMatchObject({ title: 'Films 2026', laboratory: 'Quillmere North' });
    expect((await bench.do('record.list', { limit: 1 })).entries[0]!.correction).toEqual({ before: '“Quillmere lab” (Quillmere Flexibles)', after: '“Films 2026” (Quillmere North)', reason: 'the laboratory moved' });
    expect(await bench.do('record.verify', {})).toMatchObject({ intact: true });
  });
});

describe('settings', () => {
  it('sets a malformed file aside and says so', () => {
    const folder = new TestBench().folder;
    const settings = path.join(folder, 'settings');
    mkdirSync(settings, { recursive: true });
    writeFileSync(path.join(settings, 'settings.json'), '{"recent": [{"path": 7}]}');
    const bench = new TestBench(folder);
    const [event] = bench.events;
    expect(event).toMatchObject({ kind: 'trouble' });
    const aside = readdirSync(settings).find((name) => name.startsWith('settings-malformed-'))!;
    expect(event).toHaveProperty('text', expect.stringContaining(aside));
    expect(readFileSync(path.join(settings, aside), 'utf8')).toBe('{"recent": [{"path": 7}]}');
  });
});

describe('a folder that cannot be used', () => {
  it('for the settings keeps nobody from working, and is told', async () => {
    const folder = new TestBench().folder;
    rmSync(path.join(folder, 'settings'), { recursive: true });
    writeFileSync(path.join(folder, 'settings'), 'a file where the folder should be');
    const bench = await new TestBench(folder).withNotebook();
    expect(await bench.entries()).toBe(2);
    expect(bench.events).toContainEqual({ kind: 'trouble', text: 'The list of recent notebooks cannot be read: something else of that name stands there.' });
    expect(bench.events).toContainEqual({ kind: 'trouble', text: 'The list of recent notebooks cannot be written: a part of its path is not a folder.' });
  });

  it('for the notebooks is said in a sentence without the words of the system', async () => {
    const bench = new TestBench();
    writeFileSync(path.join(bench.folder, 'notebooks'), 'a file where the folder should be');
    const problem = await bench.refused('notebook.create', { fileName: 'lab', title: 'T', laboratory: '', person: { name: 'A', initials: 'A', role: '' } });
    expect(problem).toMatchObject({ code: 'file', message: 'notebooks cannot be read or written: something else of that name stands there.' });
  });
});

describe('the file', () => {
  it('is written when the bench has been idle, once for many entries, and on demand', async () => {
    const bench = await testBench();
    const journal = () => readdirSync(path.join(bench.folder, 'notebooks')).filter((name) => name.includes('journal')).map((name) => readFileSync(path.join(bench.folder, 'notebooks', name)).length);
    await bench.do('person.add', { name: 'B', initials: 'B', role: '' });
    await bench.do('person.add', { name: 'C', initials: 'C', role: '' });
    expect(bench.timers.pending).toHaveLength(1);
    expect(journal()[0]).toBeGreaterThan(0);
    bench.timers.fire();
    expect(bench.events.filter((event) => event.kind === 'checkpointed')).toHaveLength(1);
    expect(journal()[0] ?? 0).toBe(0);
    await bench.do('notebook.checkpoint', {});
    expect(bench.events.filter((event) => event.kind === 'checkpointed')).toHaveLength(2);
  });
});

describe('closing', () => {
  it('never throws; that the file could not be written is told', async () => {
    const bench = await testBench();
    rmSync(path.join(bench.folder, 'notebooks'), { recursive: true });
    await bench.application.close();
    expect(bench.events.filter((event) => event.kind === 'trouble')).toHaveLength(1);
    expect((await bench.do('session.get', {})).notebook).toBeNull();
    await bench.application.close();
  });
});

describe('a call', () => {
  it('is refused in a sentence when there is none of that name, or its input is not as the interface says', async () => {
    const bench = await testBench();
    expect(await bench.refusedAnything('toString', {})).toMatchObject({ code: 'not-found', message: "There is no call named 'toString'." });
    expect(await bench.refusedAnything('sample.get', { sampleId: 5 })).toMatchObject({ code: 'input', field: 'sampleId' });
    expect(await bench.refusedAnything('sample.get', null)).toMatchObject({ code: 'input' });
    expect(await bench.refusedAnything('sample.get', { sampleId: 'x', extra: 1 })).toMatchObject({ code: 'input', message: expect.stringContaining('extra') });
    expect(await bench.refusedAnything('sample.get', { sampleId: 'x' })).toMatchObject({ code: 'not-found', message: 'This sample is not in the notebook.' });
  });
});
