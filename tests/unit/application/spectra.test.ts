import { describe, expect, it } from 'vitest';
import { testBench, type TestBench } from './open-application.ts';

const ten = Array.from({ length: 31 }, (_, index) => 400 + 10 * index);
/** Reflectance in percent of a red that rises at `edge`. */
const red = (edge: number) => ten.map((nm) => Number((4 + 60 / (1 + Math.exp(-(nm - edge) / 14))).toFixed(2)));
const typed = (edge: number) => `400-700: ${red(edge).join(' ')}`;
const base64 = (text: string) => Buffer.from(text, 'utf8').toString('base64');
/** Wavelengths down, one spectrum in each column. */
const csv = (...edges: number[]) => base64([['nm', ...edges.map((edge) => `red ${edge}`)].join(';'), ...ten.map((nm, band) => [nm, ...edges.map((edge) => String(red(edge)[band]).replace('.', ','))].join(';'))].join('\n'));

const light = { illuminant: 'D50', observer: 2, condition: 'M1', geometry: null, note: '' } as const;
const tolerance = { customer: 'Hollin Foods', formula: 'deltaE00', limit: 2, cmcL: 2, cmcC: 1, deltaL: 1.5, deltaC: null, deltaH: null } as const;

async function withReference(bench: TestBench, more: { lab?: { L: number; a: number; b: number } } = {}) {
  const reference = await bench.do('reference.add', { name: 'Pouch red', ...light, spectrum: more.lab ? '' : typed(585), lab: more.lab ?? null });
  return bench.do('tolerance.set', { referenceId: reference.referenceId, ...tolerance });
}

describe('a spectrum in a cell', () => {
  it('is typed and kept as typed, with its value as one text', async () => {
    const bench = await testBench();
    const { test } = await bench.startTest('colour-measured');
    const sheet = await bench.do('reading.enter', { testId: test.testId, row: 'r1', key: 'spectrum', typed: typed(585) });
    const { value, typed: kept } = sheet.rows[0]!.cells.spectrum!;
    expect(value).toBe(`400-700/10 %: ${red(585).join(' ')}`);
    expect(kept).toBe(typed(585));
    const [entry] = (await bench.do('record.list', { kind: 'reading.entered' })).entries;
    expect(entry!.text).toMatch(/Entered a spectrum \(400–700 nm by 10, 4 to 64 %\)/);
  });

  it('asks for what cannot be told, and takes the answer in front of the numbers', async () => {
    const bench = await testBench();
    const { test } = await bench.startTest('colour-measured');
    const cell = { testId: test.testId, row: 'r1', key: 'spectrum' };
    expect(await bench.refused('reading.enter', { ...cell, typed: red(585).join('\t') })).toMatchObject({ code: 'input', field: 'typed.wavelengths' });
    expect(await bench.refused('reading.enter', { ...cell, typed: `400-700: ${ten.map(() => 1.4).join(' ')}` })).toMatchObject({ code: 'input', field: 'typed.scale' });
    const sheet = await bench.do('reading.enter', { ...cell, typed: `400-700 %: ${ten.map(() => 1.4).join(' ')}` });
    expect(sheet.rows[0]!.cells.spectrum!.value).toMatch(/^400-700\/10 %/);
  });

  it('beside L*, a*, b* is refused at its cell, in a sentence that is left whole', async () => {
    const bench = await testBench();
    const { test } = await bench.startTest('colour-measured');
    const enter = (key: string, value: string) => bench.do('reading.enter', { testId: test.testId, row: 'r1', key, typed: value });
    for (const key of ['referenceL', 'referenceA', 'referenceB']) await bench.do('condition.enter', { testId: test.testId, key, typed: '50' });
    await bench.do('condition.enter', { testId: test.testId, key: 'reference', typed: 'an old card' });
    // The keys are L, a and b: a sentence holds them as letters, too.
    expect((await enter('L', '50')).missing).toEqual({ where: 'rows[0].a', text: 'Reading 1: This row is not complete: its other readings need this one.' });
    expect((await enter('spectrum', typed(585))).missing).toEqual({ where: 'rows[0].L', text: 'Reading 1: This row has a spectrum, from which L*, a* and b* follow; clear the typed ones or the spectrum.' });
  });

  it('above 100 % is taken and flagged', async () => {
    const bench = await testBench();
    const { test } = await bench.startTest('colour-measured');
    const sheet = await bench.do('reading.enter', { testId: test.testId, row: 'r1', key: 'spectrum', typed: `400-700: ${red(585).map((value, band) => (band === 20 ? 104 : value)).join(' ')}` });
    expect(sheet.rows[0]!.cells.spectrum!.warning).toMatch(/above 100 %: fluorescence/);
  });

  it('comes from a file: several columns fill rows, with their names, and the file is kept once', async () => {
    const bench = await testBench();
    const { test } = await bench.startTest('colour-measured');
    const bytes = csv(585, 587, 589);
    const preview = await bench.do('spectra.preview', { name: 'run.csv', bytes, reading: {} });
    expect(preview.reading).toEqual({ format: 'csv', delimiter: ';', decimal: ',', layout: 'columns', fromNm: null, stepNm: null, scale: 'percent' });
    expect(preview.spectra.map(({ name }) => name)).toEqual(['red 585', 'red 587', 'red 589']);
    const cell = { testId: test.testId, key: 'spectrum', name: 'run.csv', bytes, reading: preview.reading };
    const sheet = await bench.do('spectrum.read', { ...cell, row: 'r1', places: [0, 2] });
    expect(sheet.rows.slice(0, 2).map(({ cells }) => cells.label!.value)).toEqual(['red 585', 'red 589']);
    expect(sheet.rows[1]!.cells.spectrum!.value).toBe(`400-700/10 %: ${red(589).join(' ')}`);
    expect(sheet.spectrumFiles).toEqual({ 'r1-spectrum': 'red 585', 'r2-spectrum': 'red 589' });

    expect(await bench.refused('spectrum.read', { ...cell, row: 'r2', places: [1] })).toMatchObject({ field: 'reason' });
    const replaced = await bench.do('spectrum.read', { ...cell, row: 'r2', places: [1], reason: 'Wrong column' });
    expect(replaced.rows[1]!.cells.spectrum!.corrections).toBe(1);
    expect((await bench.do('record.list', { kind: 'attachment.added' })).total).toBe(1);
    const cleared = await bench.do('reading.enter', { testId: test.testId, row: 'r2', key: 'spectrum', typed: typed(590), reason: 'Measured again' });
    expect(cleared.spectrumFiles).toEqual({ 'r1-spectrum': 'red 585' });
    // Cleared, it was still read before.
    await bench.do('reading.enter', { testId: test.testId, row: 'r1', key: 'spectrum', typed: '', reason: 'Wrong print' });
    expect(await bench.refused('spectrum.read', { ...cell, row: 'r1', places: [0] })).toMatchObject({ field: 'reason' });
    expect((await bench.do('record.verify', {})).intact).toBe(true);
  });
});

describe('a reference colour', () => {
  it('is listed with its colour, light and tolerance', async () => {
    const bench = await testBench();
    await withReference(bench);
    const [reference] = await bench.do('references.list', {});
    expect(reference).toMatchObject({ name: 'Pouch red', light: 'D50, 2°, M1', known: 'spectrum 400–700 nm by 10, 4 to 64 %', editions: 0 });
    expect(reference!.tolerances).toEqual([{ ...tolerance, text: 'ΔE00 ≤ 2, ΔL* ±1.5' }]);
    expect(reference!.swatch.colour).toMatch(/^#[0-9a-f]{6}$/);
    expect(reference!.colour.a).toBeGreaterThan(40);
  });

  it('makes its customer’s tolerance the limits of a test, and is named there', async () => {
    const bench = await testBench();
    await withReference(bench);
    expect(await bench.do('items.find', { of: 'reference', search: 'pouch' })).toEqual([{ typed: 'Pouch red · Hollin Foods', detail: 'ΔE00 ≤ 2, ΔL* ±1.5' }]);
    const { test } = await bench.startTest('colour-measured');
    await bench.do('condition.enter', { testId: test.testId, key: 'reference', typed: 'pouch red' });
    const sheet = await bench.do('reading.enter', { testId: test.testId, row: 'r1', key: 'spectrum', typed: typed(586) });
    expect(sheet.limits).toEqual([
      { property: 'deltaE00', lower: null, upper: 2, source: 'Hollin Foods, tolerance on Pouch red' },
      { property: 'deltaL', lower: -1.5, upper: 1.5, source: 'Hollin Foods, tolerance on Pouch red' },
    ]);
    expect(sheet.conditions.customer).toMatchObject({ value: 'Hollin Foods', typed: 'Hollin Foods' });
    expect(Object.values(sheet.items!)).toEqual(['Pouch red']);
    expect(sheet.missing).toBeNull();
    expect(sheet.live!.result.results.deltaE00!.value).toBeGreaterThan(0);
    expect(sheet.live!.result.results.partingBand!.text).toMatch(/nm$/);
    expect(sheet.live!.result.results.metamerismIndex!.value).not.toBeNull();
    expect(sheet.live!.result.swatches).toHaveLength(1);
    expect(sheet.live!.result.figures.map(({ id }) => id)).toEqual(expect.arrayContaining(['a-b', 'reflectance', 'reflectance-difference']));
  });

  it('is retired with a reason: not offered any more, flagged on a sheet that is begun after it, and comes back', async () => {
    const bench = await testBench();
    const { referenceId } = await withReference(bench);
    const { test: before } = await bench.startTest('colour-measured', 'Q-1');
    const onSheet = async (testId: string) => {
      await bench.do('condition.enter', { testId, key: 'reference', typed: 'pouch red' });
      return bench.do('reading.enter', { testId, row: 'r1', key: 'spectrum', typed: typed(586) });
    };
    await onSheet(before.testId);
    expect(await bench.refused('reference.retire', { referenceId, reason: ' ' })).toMatchObject({ field: 'reason' });
    expect(await bench.do('reference.retire', { referenceId, reason: 'The design ended' })).toMatchObject({ retiredReason: 'The design ended' });
    expect(await bench.refused('reference.retire', { referenceId, reason: 'twice' })).toMatchObject({ code: 'conflict' });
    expect(await bench.do('items.find', { of: 'reference', search: 'pouch' })).toEqual([]);
    expect(await bench.do('references.list', {})).toMatchObject([{ name: 'Pouch red', retiredReason: 'The design ended' }]);
    expect((await bench.do('search.find', { search: 'pouch red' })).groups.find(({ title }) => title === 'Reference colours')?.hits).toMatchObject([{ title: 'Pouch red', detail: 'retired' }]);
    // The name stays taken, and no new edition comes into use around it.
    const same = { name: 'Pouch red', ...light, spectrum: typed(588), lab: null };
    expect((await bench.refused('reference.add', same)).message).toContain('take it back into use');
    expect(await bench.refused('reference.add', { ...same, replaces: { referenceId, reason: 'New card' } })).toMatchObject({ code: 'conflict' });
    const flags = async (testId: string) => (await bench.do('test.get', { testId })).live!.result.flags.filter(({ code }) => code === 'retired-reference').map(({ text }) => text);
    expect(Object.values((await bench.do('test.get', { testId: before.testId })).items!)).toEqual(['Pouch red']);
    expect(await flags(before.testId)).toEqual([]);
    bench.time += 60_000;
    const { test: after } = await bench.startTest('colour-measured', 'Q-2');
    await onSheet(after.testId);
    expect(await flags(after.testId)).toEqual([expect.stringMatching(/^Held against Pouch red, which was retired on \d{4}-\d\d-\d\d: The design ended$/)]);
    await bench.do('reference.return', { referenceId, reason: 'Printed once more' });
    expect(await flags(after.testId)).toEqual([]);
    expect(await bench.refused('reference.return', { referenceId, reason: 'twice' })).toMatchObject({ code: 'conflict' });
    expect(await bench.do('items.find', { of: 'reference', search: 'pouch' })).toHaveLength(1);
    expect((await bench.do('record.list', { search: 'pouch red retired' })).entries.map(({ text }) => text)).toEqual(['Retired the reference colour “Pouch red”: The design ended.']);
    expect((await bench.do('record.verify', {})).intact).toBe(true);
  });

  it('with tolerances of two customers asks for which, and changes only with a reason', async () => {
    const bench = await testBench();
    const { referenceId } = await withReference(bench);
    await bench.do('tolerance.set', { referenceId, ...tolerance, customer: 'Marl', limit: 3 });
    expect(await bench.refused('tolerance.set', { referenceId, ...tolerance, limit: 1 })).toMatchObject({ field: 'reason' });
    const { test } = await bench.startTest('colour-measured');
    const cell = { testId: test.testId, key: 'reference' };
    expect(await bench.refused('condition.enter', { ...cell, typed: 'Pouch red' })).toMatchObject({ message: expect.stringContaining('Hollin Foods, Marl') });
    expect((await bench.do('condition.enter', { ...cell, typed: 'Pouch red · Marl' })).limits[0]).toMatchObject({ upper: 3 });
    const other = await bench.do('condition.enter', { ...cell, typed: 'Pouch red · Hollin Foods', reason: 'Order of Hollin' });
    expect(other.limits[0]).toMatchObject({ upper: 2 });
    expect(other.conditions.customer!.value).toBe('Hollin Foods');
  });

  it('of L*, a*, b* under another light than the sheet is refused with what to do', async () => {
    const bench = await testBench();
    const reference = await bench.do('reference.add', { name: 'Typed red', ...light, illuminant: 'D65', observer: 10, spectrum: '', lab: { L: 45, a: 55, b: 30 } });
    const { test } = await bench.startTest('colour-measured');
    await bench.do('condition.enter', { testId: test.testId, key: 'reference', typed: reference.name });
    const sheet = await bench.do('reading.enter', { testId: test.testId, row: 'r1', key: 'spectrum', typed: typed(586) });
    expect(sheet.live).toBeNull();
    expect(sheet.missing!.text).toMatch(/reference stands under D65, 10°.*Set this sheet to D65 and 10°/);
    await bench.do('condition.enter', { testId: test.testId, key: 'illuminant', typed: 'D65' });
    expect((await bench.do('condition.enter', { testId: test.testId, key: 'observer', typed: '10' })).live).not.toBeNull();
  });

  it('that the notebook does not keep stands by its name, which is never cut off', async () => {
    const bench = await testBench();
    const { test } = await bench.startTest('colour-measured');
    const cell = { testId: test.testId, key: 'reference' };
    expect(await bench.refused('condition.enter', { ...cell, typed: 'x'.repeat(201) })).toMatchObject({ code: 'input', message: 'Reference takes at most 200 characters; this has 201.' });
    expect((await bench.do('condition.enter', { ...cell, typed: 'x'.repeat(200) })).conditions.reference!.value).toBe('x'.repeat(200));
  });

  it('gets a new edition; tests keep the one that they were made against', async () => {
    const bench = await testBench();
    const old = await withReference(bench);
    const { test } = await bench.startTest('colour-measured');
    await bench.do('condition.enter', { testId: test.testId, key: 'reference', typed: 'Pouch red' });
    const edition = await bench.do('reference.add', { name: 'Pouch red', ...light, spectrum: typed(588), lab: null, replaces: { referenceId: old.referenceId, reason: 'New standard card' } });
    expect(edition).toMatchObject({ editions: 1, tolerances: [{ customer: 'Hollin Foods' }] });
    expect(await bench.do('references.list', {})).toHaveLength(1);
    const sheet = await bench.do('reading.enter', { testId: test.testId, row: 'r1', key: 'spectrum', typed: typed(585) });
    expect(sheet.live!.result.results.deltaE00!.value).toBeCloseTo(0, 6);
  });

  it('is refused without a colour, with two, or with a name that is taken', async () => {
    const bench = await testBench();
    await withReference(bench);
    expect(await bench.refused('reference.add', { name: 'Blue', ...light, spectrum: '', lab: null })).toMatchObject({ field: 'spectrum' });
    expect(await bench.refused('reference.add', { name: 'Blue', ...light, spectrum: typed(585), lab: { L: 1, a: 1, b: 1 } })).toMatchObject({ field: 'lab' });
    expect(await bench.refused('reference.add', { name: 'pouch RED', ...light, spectrum: typed(585), lab: null })).toMatchObject({ field: 'name' });
    expect(await bench.refused('reference.add', { name: 'Blue', ...light, spectrum: '1 2 3', lab: null })).toMatchObject({ field: 'spectrum.wavelengths' });
    const { reading } = await bench.do('spectra.preview', { name: 'run.csv', bytes: csv(585), reading: {} });
    const file = { name: 'run.csv', bytes: csv(585), reading, place: 0 };
    expect(await bench.refused('reference.add', { name: 'Blue', ...light, spectrum: typed(590), lab: null, file })).toMatchObject({ field: 'spectrum' });
    expect((await bench.do('reference.add', { name: 'Blue', ...light, spectrum: '', lab: null, file })).fileName).toBe('red 585');
  });
});

describe('a print beside others', () => {
  it('is held against the reference, the last lot that met its limits and the control, and only the reference decides', async () => {
    const bench = await testBench();
    await withReference(bench);
    const measure = async (code: string, edge: number, control?: string) => {
      const { test } = await bench.startTest('colour-measured', code);
      await bench.do('condition.enter', { testId: test.testId, key: 'reference', typed: 'Pouch red' });
      if (control) await bench.do('condition.enter', { testId: test.testId, key: 'control', typed: control });
      await bench.do('reading.enter', { testId: test.testId, row: 'r1', key: 'spectrum', typed: typed(edge) });
      await bench.do('test.setLimits', { testId: test.testId, limits: [{ property: 'deltaE00', lower: null, upper: 2, source: '' }], rule: 'simple', reason: 'One reading' });
      return bench.do('test.finish', { testId: test.testId, remark: '' });
    };
    await measure('Q-good', 585.5);
    await measure('Q-bad', 600);
    const sheet = await measure('Q-now', 586, 'Q-bad');
    const table = sheet.live!.result.tables!.find(({ title }) => title === 'This print against')!;
    expect(table.rows.map(({ against }) => against)).toEqual(['Pouch red', 'last approved lot Q-good, 2026-03-02', 'control Q-bad, 2026-03-02']);
    expect(table.rows.map(({ decides }) => decides)).toEqual(['decides: ΔE00 at most 2', 'to know, decides nothing', 'to know, decides nothing']);
    expect(table.rows[2]!.words).not.toBe(table.rows[0]!.words);
    expect(await bench.refused('condition.enter', { testId: sheet.test.testId, key: 'control', typed: 'Q-none', reason: 'x' })).toMatchObject({ message: expect.stringContaining('there is none with the code “Q-none”') });
  });

  it('begins with the control of the sample’s trial set', async () => {
    const bench = await testBench();
    const sample = (code: string) => bench.do('sample.add', { code, product: 'dumpling pouch 600 g', job: '', roll: '', note: '', lotIds: [] });
    const [control, tried] = [await sample('Q-R0'), await sample('Q-R3')];
    const { trialSetId } = await bench.do('trialSet.add', { title: 'Series', question: '', product: 'dumpling pouch 600 g' });
    const trial = { trialSetId, components: [], factors: {}, note: '' };
    await bench.do('trial.add', { ...trial, name: 'R0', control: true });
    const { trials } = await bench.do('trial.add', { ...trial, name: 'R3', control: false });
    const idOf = (wanted: string) => trials.find(({ name }) => name === wanted)!.trialId;
    await bench.do('trial.linkSample', { trialId: idOf('R0'), sampleId: control.sampleId });
    await bench.do('trial.linkSample', { trialId: idOf('R3'), sampleId: tried.sampleId });
    const sheet = await bench.do('test.start', { sampleId: tried.sampleId, methodId: 'colour-measured' });
    expect(sheet.conditions.control).toMatchObject({ value: control.sampleId, typed: 'Q-R0' });
    expect((await bench.do('test.start', { sampleId: control.sampleId, methodId: 'colour-measured' })).conditions.control).toBeUndefined();
  });
});
