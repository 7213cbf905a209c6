import { describe, expect, it } from 'vitest';
import type { TrialSetView } from '../../../shared-lib/notebook/trial-views.ts';
import { testBench, type TestBench } from './open-application.ts';

const BOND = 'lamination-bond/mean';
const bond = { methodId: 'lamination-bond', property: 'mean', goal: 'higher' as const, target: null, lowest: null, highest: null, weight: 1 };
const fluids = { methodId: 'test-fluids', property: 'wettingTension', goal: 'higher' as const, target: 42, lowest: 36, highest: null, weight: 1 };
const binder = { name: 'Binder', materialId: null, lotId: null, parts: 60, solidsPct: 40, costPerKg: 3 };
const wax = { name: 'Wax', materialId: null, lotId: null, parts: 3, solidsPct: 100, costPerKg: 6 };
const blank = { control: false, components: [], factors: {}, note: '' };

async function trialSet(bench: TestBench, responses: object[] = [bond]): Promise<string> {
  const { trialSetId } = await bench.do('trialSet.add', { title: 'Low-migration inks', question: 'Which is no worse?', product: 'dumpling pouch 600 g' });
  await bench.do('trialSet.setFactors', { trialSetId, factors: [{ key: 'waxPct', label: 'Wax', unit: '%' }, { key: 'promoterPct', label: 'Promoter', unit: '%' }] });
  await bench.do('trialSet.setResponses', { trialSetId, responses: responses as [] });
  return trialSetId;
}

/** Forces on 15 mm strips, so that N is N/15 mm; a force with t tore. */
async function addTrial(bench: TestBench, trialSetId: string, name: string, forces: (number | `${number}t`)[], more: object = {}): Promise<string> {
  const { trials } = await bench.do('trial.add', { trialSetId, ...blank, name, control: name === 'R0', ...more });
  const { trialId } = trials.at(-1)!;
  if (forces.length > 0) await bench.do('trial.linkSample', { trialId, sampleId: await bondSample(bench, `S-${name}`, forces) });
  return trialId;
}

async function bondSample(bench: TestBench, code: string, forces: (number | string)[], finish = true): Promise<string> {
  const { test } = await bench.startTest('lamination-bond', code);
  const pasted = forces.map((force) => `${String(force).replace('t', '')}\t\t${String(force).endsWith('t') ? 't' : 'a'}`).join('\n');
  await bench.do('readings.paste', { testId: test.testId, row: 'r1', key: 'forceN', pasted });
  if (finish) await bench.do('test.finish', { testId: test.testId, remark: '' });
  return test.sampleId;
}

const cell = (view: TrialSetView, name: string, key = BOND) => view.trials.find((trial) => trial.name === name)!.cells[key]!;

/**
 * Made up; the checks below compare with figures worked out by hand: means 3, 4 and 3.1, each with
 * s = 0.1 (values m − 0.1, m, m + 0.1).
 */
const about = (mean: number) => [mean - 0.1, mean, mean + 0.1].map((value) => Math.round(value * 100) / 100);

describe('a trial set', () => {
  it('lists, shows and names itself in the record', async () => {
    const bench = await testBench();
    const trialSetId = await trialSet(bench);
    await addTrial(bench, trialSetId, 'R0', [], { components: [binder] });
    expect(await bench.do('trialSets.list', {})).toMatchObject([{ trialSetId, title: 'Low-migration inks', trials: 1, control: 'R0', responses: 1, samples: 0 }]);
    const { entries } = await bench.do('record.list', {});
    expect(entries[0]!.text).toBe('Added trial R0 as the control to the trial set “Low-migration inks”, with 1 component.');
    expect(await bench.do('record.verify', {})).toMatchObject({ intact: true });
  });

  it('compares each trial with the control: difference, interval, word, star, and a sentence', async () => {
    const bench = await testBench();
    const trialSetId = await trialSet(bench);
    await addTrial(bench, trialSetId, 'R0', about(3));
    await addTrial(bench, trialSetId, 'R1', about(4));
    await addTrial(bench, trialSetId, 'R2', about(3.1));
    const view = await bench.do('trialSet.get', { trialSetId });
    const { comparison } = view.responses[0]!;
    expect(comparison!.procedure).toBe('Dunnett');
    expect(comparison!.conclusions.join(' ')).toContain('R1 is 1.00 N/15 mm higher than R0');
    expect(comparison!.conclusions[0]).toMatch(/: better\.$/);
    expect(comparison!.conclusions[1]).toContain('R2 cannot be told from R0');
    expect(cell(view, 'R0')).toMatchObject({ n: 3, value: 3, difference: null });
    // s = 0.1, n = 3: t(0.975; 2) = 4.3027 (any table), so 3 ± 4.3027 · 0.1 / √3
    expect(cell(view, 'R0').strip!.low).toBeCloseTo(3 - (4.3027 * 0.1) / Math.sqrt(3), 4);
    const { difference } = cell(view, 'R1');
    expect(difference).toMatchObject({ word: 'better', star: '*' });
    expect(difference!.value).toBeCloseTo(1, 9);
    // Dunnett, two treatments, 6 degrees of freedom, two-sided 95 %: 2.86 (C. W. Dunnett, Biometrics 20 (1964) 482, table II)
    const [low, high] = difference!.intervalText.match(/\d\.\d+/g)!.map(Number) as [number, number];
    expect(high - low).toBeCloseTo(2 * 2.86 * 0.1 * Math.sqrt(2 / 3), 1);
    expect(cell(view, 'R2').difference).toMatchObject({ word: 'open', star: '' });
    expect(cell(view, 'R1').strip!.domain).toEqual(cell(view, 'R2').strip!.domain);
    expect(cell(view, 'R1').tests).toMatchObject([{ sampleCode: 'S-R1', n: 3 }]);
  });

  it('calls lower better where that is the goal, and nearer the target', async () => {
    const bench = await testBench();
    const trialSetId = await trialSet(bench, [{ ...bond, goal: 'lower' }]);
    await addTrial(bench, trialSetId, 'R0', about(3));
    await addTrial(bench, trialSetId, 'R1', about(4));
    await addTrial(bench, trialSetId, 'R2', about(2));
    expect(cell(await bench.do('trialSet.get', { trialSetId }), 'R1').difference!.word).toBe('worse');
    await bench.do('trialSet.setResponses', { trialSetId, responses: [{ ...bond, goal: 'target', target: 2.8 }], reason: 'The customer asks for it' });
    const view = await bench.do('trialSet.get', { trialSetId });
    expect(view.responses[0]!.goalText).toBe('best at 2.8 N/15 mm');
    expect(cell(view, 'R1').difference!.word).toBe('worse');
    // on the other side of the target: neither
    expect(cell(view, 'R2').difference!.word).toBe('different');
  });

  it('without a control gives letters and says so', async () => {
    const bench = await testBench();
    const trialSetId = await trialSet(bench);
    for (const [name, mean] of [['R1', 3], ['R2', 4], ['R3', 4.02]] as const) await addTrial(bench, trialSetId, name, about(mean));
    const view = await bench.do('trialSet.get', { trialSetId });
    expect(['R1', 'R2', 'R3'].map((name) => cell(view, name).letters)).toEqual(['b', 'a', 'a']);
    expect(view.notes.join(' ')).toContain('No trial is the control');
    expect(cell(view, 'R1').difference).toBeNull();
  });

  it('takes a torn strip for the bound it is', async () => {
    const bench = await testBench();
    const trialSetId = await trialSet(bench);
    await addTrial(bench, trialSetId, 'R0', [2.9, 3, 3.1, 3.05, 2.95]);
    await addTrial(bench, trialSetId, 'R1', [3.4, 3.6, '3.7t', 3.5, 3.45]);
    const view = await bench.do('trialSet.get', { trialSetId });
    expect(cell(view, 'R1').strip!.readings.filter(({ open }) => open === 'up')).toHaveLength(1);
    expect(cell(view, 'R1').value!).toBeGreaterThan((3.4 + 3.6 + 3.7 + 3.5 + 3.45) / 5);
    expect(view.responses[0]!.comparison!.why.join(' ')).toContain('only bounds');
    expect(cell(view, 'R1').difference!.word).toBe('better');
  });

  it('counts finished tests only, and drops what is corrected until it is finished again', async () => {
    const bench = await testBench();
    const trialSetId = await trialSet(bench);
    const trialId = await addTrial(bench, trialSetId, 'R0', about(3));
    await bench.do('trial.linkSample', { trialId, sampleId: await bondSample(bench, 'S-later', [3.3, 3.4], false) });
    expect(cell(await bench.do('trialSet.get', { trialSetId }), 'R0').n).toBe(3);
    const [test] = await bench.do('tests.list', { state: 'finished' });
    await bench.do('reading.enter', { testId: test!.testId, row: 'r1', key: 'forceN', typed: '2.8', reason: 'misread' });
    expect(cell(await bench.do('trialSet.get', { trialSetId }), 'R0')).toMatchObject({ n: 0, text: '—', note: 'No finished test.' });
    await bench.do('test.finish', { testId: test!.testId, remark: '' });
    expect(cell(await bench.do('trialSet.get', { trialSetId }), 'R0').value).toBeCloseTo((2.8 + 3 + 3.1) / 3, 9);
  });

  it('with one reading, one trial or none says what is missing', async () => {
    const bench = await testBench();
    const trialSetId = await trialSet(bench);
    const empty = await bench.do('trialSet.get', { trialSetId });
    expect(empty.responses[0]!.comparison).toMatchObject({ procedure: '', why: ['No trial has readings yet.'] });
    await addTrial(bench, trialSetId, 'R0', [3]);
    await addTrial(bench, trialSetId, 'R1', []);
    const one = await bench.do('trialSet.get', { trialSetId });
    expect(one.responses[0]!.comparison!.why[0]).toContain('Only R0 has readings');
    expect(cell(one, 'R0')).toMatchObject({ n: 1, note: 'One reading: no interval.', intervalText: '' });
    await addTrial(bench, trialSetId, 'R2', [3.5]);
    const two = await bench.do('trialSet.get', { trialSetId });
    expect(cell(two, 'R2').difference).toMatchObject({ word: 'open', pValue: null });
    expect(JSON.stringify(two)).not.toContain('NaN');
  });

  it('rates trials over all responses, and says why it cannot', async () => {
    const bench = await testBench();
    const trialSetId = await trialSet(bench, [{ ...bond, target: 4, lowest: 2 }]);
    await addTrial(bench, trialSetId, 'R0', about(3));
    await addTrial(bench, trialSetId, 'R1', about(4.5));
    await addTrial(bench, trialSetId, 'R2', []);
    const view = await bench.do('trialSet.get', { trialSetId });
    // Derringer and Suich: (3 − 2)/(4 − 2), 1 from the target on
    expect(view.trials.map(({ desirability }) => desirability)).toEqual([0.5, 1, null]);
    expect(view.notes.join(' ')).toContain('no overall desirability');
    await bench.do('trialSet.setResponses', { trialSetId, responses: [bond], reason: 'open ends' });
    const open = await bench.do('trialSet.get', { trialSetId });
    expect(open.trials.map(({ desirability }) => desirability)).toEqual([0, 1, null]);
    expect(open.notes.join(' ')).toContain('stand in for ends that are not stated');
  });

  it('works out only the columns asked for', async () => {
    const bench = await testBench();
    const trialSetId = await trialSet(bench, [bond, fluids]);
    await addTrial(bench, trialSetId, 'R0', about(3));
    const some = await bench.do('trialSet.get', { trialSetId, responses: [BOND] });
    expect(some.responses.map(({ comparison }) => comparison === null)).toEqual([false, true]);
    expect(Object.keys(some.trials[0]!.cells)).toEqual([BOND]);
    expect(some.trials[0]!.desirability).toBeNull();
    expect((await bench.refused('trialSet.get', { trialSetId, responses: ['no/such'] })).field).toBe('responses[0]');
  });

  it('works its formulations out, against the control', async () => {
    const bench = await testBench();
    const trialSetId = await trialSet(bench);
    await addTrial(bench, trialSetId, 'R0', [], { components: [{ ...binder, parts: 97 }, wax] });
    await addTrial(bench, trialSetId, 'R1', [], { components: [{ ...binder, parts: 190 }, { ...wax, parts: 10, costPerKg: null }] });
    await addTrial(bench, trialSetId, 'R2', []);
    const [r0, r1, r2] = (await bench.do('trialSet.get', { trialSetId, responses: [] })).trials.map(({ formulation }) => formulation);
    expect(r0!.percent).toEqual([97, 3]);
    expect(r0!.solidsPct).toBeCloseTo(0.97 * 40 + 3, 9);
    expect(r1!.percent).toEqual([95, 5]);
    expect(r1!.costPerKg).toBeNull();
    expect(r1!.againstControl.map(({ name, change }) => [name, change])).toEqual([['Binder', 'less'], ['Wax', 'more']]);
    expect(r1!.againstControl[1]!.differencePct).toBeCloseTo(2, 9);
    expect(r2!.notes).toEqual(['No components are stated.']);
  });

  it('refuses what would make the set untrue', async () => {
    const bench = await testBench();
    const trialSetId = await trialSet(bench);
    const trialId = await addTrial(bench, trialSetId, 'R0', about(3));
    const add = (more: object) => bench.refused('trial.add', { trialSetId, ...blank, name: 'R1', ...more });
    expect((await add({ name: 'R0' })).field).toBe('name');
    expect((await add({ control: true })).message).toContain('R0 is the control of this set');
    expect((await add({ factors: { saltPct: 1 } })).field).toBe('factors.saltPct');
    expect((await add({ components: [{ ...binder, lotId: 'l1' }] })).field).toBe('components[0].materialId');
    expect((await add({ components: [{ ...binder, materialId: 'nowhere' }] })).field).toBe('components[0].materialId');
    expect((await add({ components: [{ ...binder, parts: -1 }] })).field).toContain('parts');
    expect((await bench.refused('trialSet.add', { title: 'Low-migration inks', question: '', product: '' })).field).toBe('title');
    const { sampleId } = (await bench.do('samples.list', {})).samples[0]!;
    expect((await bench.refused('trial.linkSample', { trialId, sampleId })).message).toContain('one of trial R0 already');
    expect((await bench.refused('trial.change', { trialId, ...blank, name: 'R0', reason: ' ' })).field).toBe('reason');
    expect((await bench.refused('trial.unlinkSample', { trialId, sampleId, reason: '' })).field).toBe('reason');
    await bench.do('trial.unlinkSample', { trialId, sampleId, reason: 'printed with R1' });
    expect((await bench.refused('trial.unlinkSample', { trialId, sampleId, reason: 'again' })).field).toBe('sampleId');
    expect((await bench.refused('trialSet.get', { trialSetId: 'none' })).code).toBe('not-found');
    const responses = async (more: object) => (await bench.refused('trialSet.setResponses', { trialSetId, responses: [{ ...bond, ...more }], reason: 'x' })).field;
    expect(await responses({ methodId: 'none' })).toBe('responses[0].methodId');
    expect(await responses({ property: 'none' })).toBe('responses[0].property');
    expect(await responses({ goal: 'target' })).toBe('responses[0].target');
    expect(await responses({ target: 2, lowest: 3 })).toBe('responses[0].lowest');
    const grade = { ...bond, methodId: 'light-exposure', property: 'greyScale' };
    expect(await bench.refused('trialSet.setResponses', { trialSetId, responses: [{ ...grade, target: 7 }], reason: 'x' })).toMatchObject({
      field: 'responses[0].target',
      message: 'Grey scale at the last exposure is graded from 1 to 5; 7 is outside that scale.',
    });
    expect((await bench.refused('trialSet.setResponses', { trialSetId, responses: [], reason: '' })).field).toBe('reason');
    expect((await bench.refused('trialSet.setResponses', { trialSetId, responses: [bond, bond], reason: 'x' })).field).toBe('responses[1].property');
  });
});

describe('questions about a set', () => {
  const asked = async () => {
    const bench = await testBench();
    const trialSetId = await trialSet(bench, [bond, fluids]);
    const ids: Record<string, string> = {};
    for (const [name, mean, waxPct, promoterPct] of [['R0', 3, 1, 0], ['R1', 4, 1, 1], ['R2', 2.5, 2, 0], ['R3', 3.1, 2, 1]] as const) {
      ids[name] = await addTrial(bench, trialSetId, name, about(mean), { factors: { waxPct, promoterPct } });
    }
    return { bench, trialSetId, ids };
  };

  it('how many readings it takes', async () => {
    const { bench, trialSetId } = await asked();
    const plan = await bench.do('trialSet.plan', { trialSetId, response: BOND, difference: 0.2 });
    expect(plan.standardDeviation).toBeCloseTo(0.1, 9);
    expect(plan.degreesOfFreedom).toBe(8);
    expect(plan.text).toContain('would show a difference of 0.2 N/15 mm with a chance of 90 %, with 3 comparisons at once');
    const easier = await bench.do('trialSet.plan', { trialSetId, response: BOND, difference: 1 });
    expect(easier.perTrial).toBeLessThan(plan.perTrial);
    expect((await bench.refused('trialSet.plan', { trialSetId, response: 'test-fluids/wettingTension', difference: 1 })).message).toContain('at least two');
    expect((await bench.refused('trialSet.plan', { trialSetId, response: BOND, difference: 0 })).field).toBe('difference');
  });

  it('whether one trial may stand in for another', async () => {
    const { bench, trialSetId, ids } = await asked();
    const ask = (bound: number, trialId = ids.R3!) => ({ trialSetId, response: BOND, trialId, fromTrialId: ids.R0!, lowerBound: -bound, upperBound: bound });
    expect(await bench.do('trialSet.equivalence', ask(0.5))).toMatchObject({ shown: true });
    const narrow = await bench.do('trialSet.equivalence', ask(0.15));
    expect(narrow.shown).toBe(false);
    expect(narrow.text).toContain('Not shown does not mean different');
    expect((await bench.refused('trialSet.equivalence', ask(0.5, ids.R0))).field).toBe('fromTrialId');
    expect((await bench.refused('trialSet.equivalence', { ...ask(0.5), lowerBound: 1 })).field).toBe('lowerBound');
    const torn = await addTrial(bench, trialSetId, 'R9', [3, '3.2t']);
    expect((await bench.refused('trialSet.equivalence', ask(0.5, torn))).message).toMatch(/^R9: Fewer than three readings.*neither shown nor ruled out/);
  });

  it('what a factor does, alone and with another', async () => {
    const { bench, trialSetId } = await asked();
    // by hand: means at 1 % are 3.5, at 2 % 2.8
    const line = await bench.do('trialSet.factorView', { trialSetId, response: BOND, factors: ['waxPct'] });
    expect(line.result.results.x1!.value).toBeCloseTo(-0.7, 9);
    expect(line.conclusions[0]).toContain('falls with Wax');
    expect(line.figures[0]).toMatchObject({ x: { title: 'Wax', unit: '%' }, y: { title: 'Mean bond strength' } });
    const both = await bench.do('trialSet.factorView', { trialSetId, response: BOND, factors: ['waxPct', 'promoterPct'] });
    expect(both.figures[0]!.id).toBe('interaction');
    expect(both.result.results.pInteraction!.value).not.toBeNull();
    await addTrial(bench, trialSetId, 'R8', about(3));
    const left = await bench.do('trialSet.factorView', { trialSetId, response: BOND, factors: ['waxPct'] });
    expect(left.conclusions.join(' ')).toContain('Left out, for they do not state Wax: R8');
    expect((await bench.refused('trialSet.factorView', { trialSetId, response: BOND, factors: ['salt'] })).field).toBe('factors[0]');
    expect((await bench.refused('trialSet.factorView', { trialSetId, response: 'test-fluids/wettingTension', factors: ['waxPct'] })).message).toContain('two settings');
  });

  it('what is given up for what', async () => {
    const { bench, trialSetId } = await asked();
    const view = await bench.do('trialSet.tradeOff', { trialSetId, x: BOND, y: 'test-fluids/wettingTension' });
    expect(view.best).toEqual([]);
    expect(view.text).toContain('No trial has readings in both');
    expect((await bench.refused('trialSet.tradeOff', { trialSetId, x: BOND, y: BOND })).field).toBe('y');
  });

  it('what a formulation would be, without recording it', async () => {
    const { bench } = await asked();
    const before = await bench.entries();
    const { table } = await bench.do('formulation.calculate', { components: [{ name: 'Wax', pct: 5, hold: true }, { name: 'Binder', parts: 10 }] });
    expect(table.map(({ pct }) => pct)).toEqual([5, 95]);
    expect((await bench.refused('formulation.calculate', { components: [] })).field).toBe('components');
    expect(await bench.entries()).toBe(before);
  });
});

describe('many trials', () => {
  it('200 with a large record answer column by column, and again at once', { timeout: 120_000 }, async () => {
    const bench = await testBench();
    const trialSetId = await trialSet(bench);
    for (let index = 0; index < 200; index++) {
      const mean = 3 + (index % 20) * 0.02;
      const { trials } = await bench.do('trial.add', { trialSetId, ...blank, name: `R${index}`, control: index === 0 });
      if (index % 10 === 0) await bench.do('trial.linkSample', { trialId: trials.at(-1)!.trialId, sampleId: await bondSample(bench, `S-${index}`, about(mean)) });
    }
    const view = await bench.do('trialSet.get', { trialSetId, responses: [BOND] });
    expect(view.trials).toHaveLength(200);
    expect(view.trials.filter(({ cells }) => cells[BOND]!.n > 0)).toHaveLength(20);
    const started = performance.now();
    await bench.do('trialSet.get', { trialSetId, responses: [BOND] });
    expect(performance.now() - started).toBeLessThan(500);
  });
});
