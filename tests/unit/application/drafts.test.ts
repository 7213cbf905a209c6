import { readdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { testBench, TestBench } from './open-application.ts';

const draft = { name: 'method.write ', content: '{"from":"","typed":{}}' };

describe('what is typed and not entered', () => {
  it('comes back when the program is started again, and ends for every window', async () => {
    const bench = await testBench();
    await bench.do('draft.keep', { notebook: bench.notebookFile, ...draft });
    expect(bench.events.some(({ kind }) => kind === 'draft-ended')).toBe(false);
    await bench.application.close();
    const again = new TestBench(bench.folder);
    await again.application.open(bench.notebookFile);
    expect(await again.do('drafts.get', {})).toEqual({ drafts: { [draft.name]: draft.content } });
    await again.do('draft.keep', { notebook: bench.notebookFile, name: draft.name, content: null });
    expect(again.events.filter(({ kind }) => kind === 'draft-ended')).toEqual([{ kind: 'draft-ended', name: draft.name }]);
    expect(await again.do('drafts.get', {})).toEqual({ drafts: {} });
    expect(await again.do('record.verify', {})).toMatchObject({ intact: true });
  });

  it('is of one notebook: what another window sends late of the one before is left', async () => {
    const bench = await testBench();
    await bench.do('draft.keep', { notebook: bench.notebookFile, ...draft });
    await bench.do('notebook.create', { fileName: 'other', title: 'Other', laboratory: '', person: { name: 'Abena Quist', initials: 'AQ', role: '' } });
    await bench.do('draft.keep', { notebook: bench.notebookFile, name: 'habit.describe ', content: '{}' });
    expect(await bench.do('drafts.get', {})).toEqual({ drafts: {} });
    await bench.do('notebook.open', { handle: bench.notebookFile });
    expect(await bench.do('drafts.get', {})).toEqual({ drafts: { [draft.name]: draft.content } });
  });

  it('is lost, and nothing else, where its file cannot be read', async () => {
    const bench = await testBench();
    await bench.do('draft.keep', { notebook: bench.notebookFile, ...draft });
    await bench.application.close();
    const settings = path.join(bench.folder, 'settings');
    const [file] = readdirSync(settings).filter((name) => name.startsWith('drafts-'));
    writeFileSync(path.join(settings, file!), '{"method.write ":');
    const again = new TestBench(bench.folder);
    await again.application.open(bench.notebookFile);
    expect(await again.do('drafts.get', {})).toEqual({ drafts: {} });
    await again.do('draft.keep', { notebook: bench.notebookFile, ...draft });
    expect(await again.do('drafts.get', {})).toEqual({ drafts: { [draft.name]: draft.content } });
  });
});
