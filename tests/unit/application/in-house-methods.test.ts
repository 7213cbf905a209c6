import { describe, expect, it } from 'vitest';
import type { WrittenMethod } from '../../../shared-lib/method/in-house/written-method.ts';
import { thumbTwistRub } from '../method/in-house/written-methods.ts';
import { testBench, TestBench } from './open-application.ts';

const changed = (change: (written: WrittenMethod) => void): WrittenMethod => {
  const copy = structuredClone(thumbTwistRub);
  change(copy);
  return copy;
};
/** With one sentence per grade reworded and ten twists in place of five. */
const tenTwists = changed((written) => {
  written.settings[1] = { kind: 'number', key: 'twists', label: 'Twists', unit: '', value: 10, tolerance: null };
  written.properties[0]!.limit = { lower: 3, upper: null, source: 'shop rule' };
});

async function withMethod(): Promise<{ bench: TestBench; methodId: string }> {
  const bench = await testBench();
  const { methodId } = await bench.do('inHouseMethod.add', { written: thumbTwistRub });
  return { bench, methodId };
}

async function grade(bench: TestBench, testId: string, grades: string[]): Promise<void> {
  await bench.do('condition.enter', { testId, key: 'temperature', typed: '23' });
  await bench.do('readings.paste', { testId, row: 'r1', key: 'grade', pasted: grades.map((one, index) => `${one}\t${10 + index}`).join('\n') });
}

describe('an in-house method', () => {
  it('is listed, started with its settings and limit, worked out, judged, finished and reported', async () => {
    const { bench, methodId } = await withMethod();
    expect((await bench.do('methods.list', {})).find(({ id }) => id === methodId)).toMatchObject({ title: 'Thumb-twist rub', version: '1', group: 'in-house' });
    const { test, conditions, limits } = await bench.startTest(methodId);
    expect(test).toMatchObject({ methodTitle: 'Thumb twist', methodVersion: '1' });
    expect(conditions).toMatchObject({ load: { value: 10 }, twists: { value: 5 }, cloth: { value: 'white cotton' } });
    expect(limits).toEqual([{ property: 'grade', lower: 4, upper: null, source: 'shop rule' }]);
    await grade(bench, test.testId, ['4', '5', '4', '5', '4', '4']);
    const { live } = await bench.do('test.finish', { testId: test.testId, remark: '' });
    expect(live!.lines.map(({ key, text, verdict }) => [key, text, verdict.verdict])).toEqual([
      ['grade', '4', 'meets'],
      ['twists', '12.5', 'no limit'],
      ['share', '100 %', 'no limit'],
    ]);
    const report = await bench.do('report.preview', { title: 'T', recipient: '', remark: '', testIds: [test.testId], replaces: null });
    expect(report.sections[0]!.method).toMatchObject({ title: 'Thumb-twist rub', version: '1', calculation: 'in-house' });
    expect(report.appendix[0]!.rows[0]!.cells).toEqual(['1', '4 cloth marked, print whole', '10', 'reached']);
    expect((await bench.do('record.verify', {})).problems).toEqual([]);
  });

  it('edited while a test runs leaves the test its version; new tests take the new one', async () => {
    const { bench, methodId } = await withMethod();
    const before = (await bench.startTest(methodId, 'Q-1')).test.testId;
    await bench.do('inHouseMethod.change', { methodId, written: tenTwists, reason: 'five show nothing' });
    await grade(bench, before, ['3', '3', '3', '4', '3', '3']);
    const old = await bench.do('test.finish', { testId: before, remark: '' });
    expect(old.test.methodVersion).toBe('1');
    expect(old.live!.result.flags).toEqual([]);
    expect(old.live!.lines[0]!.limitText).toBe('≥ 4');
    // The limit was the method's own, so the new version's takes its place.
    const after = await bench.startTest(methodId, 'Q-2');
    expect(after).toMatchObject({ test: { methodVersion: '2' }, conditions: { twists: { value: 10 } }, limits: [{ property: 'grade', lower: 3 }] });
    expect(await bench.do('method.get', { methodId, version: '1' })).toMatchObject({ version: '1', conditions: [expect.anything(), expect.objectContaining({ default: 5 }), expect.anything(), expect.anything()] });
    expect((await bench.do('record.verify', {})).problems).toEqual([]);

    const { versions } = await bench.do('inHouseMethod.get', { methodId });
    expect(versions.map(({ version, tests, running, reason }) => [version, tests, running, reason])).toEqual([
      ['2', 1, 1, 'five show nothing'],
      ['1', 1, 0, ''],
    ]);
    expect(versions[0]!.changes).toEqual(['Twists: 5 → 10.', 'Grade of rub, limit: at least 4 → at least 3.']);
  });

  it('keeps a limit that was set for the product, and drops one of a property that is gone', async () => {
    const { bench, methodId } = await withMethod();
    const { test } = await bench.startTest(methodId);
    const asked = [{ property: 'grade', lower: 5, upper: null, source: 'customer' }, { property: 'twists', lower: 3, upper: null, source: 'customer' }];
    await bench.do('test.setLimits', { testId: test.testId, limits: asked, rule: 'simple', reason: 'the customer asks for more' });
    await bench.do('inHouseMethod.change', { methodId, written: changed((written) => written.properties.splice(1, 1)), reason: 'twists were never counted' });
    expect((await bench.startTest(methodId, 'Q-2')).limits).toEqual([asked[0]]);
  });

  it('asks for a reason, for a difference and for a title of its own', async () => {
    const { bench, methodId } = await withMethod();
    expect(await bench.refused('inHouseMethod.change', { methodId, written: tenTwists, reason: ' ' })).toMatchObject({ field: 'reason' });
    expect((await bench.refused('inHouseMethod.change', { methodId, written: thumbTwistRub, reason: 'x' })).message).toMatch(/Nothing is different/);
    expect(await bench.refused('inHouseMethod.add', { written: thumbTwistRub })).toMatchObject({ field: 'written.title' });
    expect(await bench.refused('inHouseMethod.add', { written: { ...thumbTwistRub, title: 'Specular gloss' } })).toMatchObject({ field: 'written.title' });
    expect(await bench.refused('inHouseMethod.add', { written: changed((written) => (written.properties[0]!.reading = 'gone')) })).toMatchObject({ field: 'properties[0].reading' });
  });

  it('that is retired starts no test, finishes those that run and comes back with a new version', async () => {
    const { bench, methodId } = await withMethod();
    const { test, sample } = await bench.startTest(methodId);
    expect(await bench.refused('inHouseMethod.retire', { methodId, reason: '' })).toMatchObject({ field: 'reason' });
    await bench.do('inHouseMethod.retire', { methodId, reason: 'a rub tester was bought' });
    expect((await bench.do('methods.list', {})).some(({ id }) => id === methodId)).toBe(false);
    expect((await bench.refused('test.start', { sampleId: sample.sampleId, methodId })).message).toMatch(/retired/);
    await grade(bench, test.testId, ['5', '5']);
    await bench.do('test.finish', { testId: test.testId, remark: '' });
    expect((await bench.do('inHouseMethods.list', {}))[0]).toMatchObject({ retired: true });
    await bench.do('inHouseMethod.change', { methodId, written: thumbTwistRub, reason: 'the tester broke' });
    expect((await bench.do('methods.list', {})).find(({ id }) => id === methodId)).toMatchObject({ version: '2' });
  });
});

describe('a picture of a grade', () => {
  /** One grey pixel. */
  const png = 'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNoAAAAggCBd81ytgAAAABJRU5ErkJggg==';

  it('is chosen from the files of the method, stays in the notebook and is not asked for elsewhere', async () => {
    const { bench, methodId } = await withMethod();
    const [file] = await bench.do('attachment.add', { attachedTo: 'method', attachedId: methodId, name: 'grade 3.png', bytes: png });
    const pictured = (pictureSha256: string) => changed((written) => written.readings[0]!.kind === 'grade' && (written.readings[0]!.grades[3]!.pictureSha256 = pictureSha256));
    expect((await bench.refused('inHouseMethod.change', { methodId, written: pictured('0'.repeat(64)), reason: 'x' })).message).toMatch(/picture of grade 3 is not in the notebook/);
    const { versions } = await bench.do('inHouseMethod.change', { methodId, written: pictured(file!.sha256), reason: 'people took 3 for 2' });
    expect(versions[0]!.changes).toEqual(['Grade, grade 3: another picture.']);
    const [grade] = (await bench.do('method.get', { methodId })).readings.fields;
    expect(grade!.kind === 'choice' && grade!.choices[3]).toMatchObject({ value: '3', pictureSha256: file!.sha256 });
    const { text } = await bench.do('methodFile.write', { methodId });
    expect(text).not.toContain(file!.sha256);
    expect(await bench.do('methodFile.inspect', { file: text })).toMatchObject({ standing: 'here' });
    expect((await bench.do('record.list', { kind: 'attachment.linked' })).entries[0]!.text).toBe('Put the file grade 3.png with the method Thumb twist.');
  });
});

describe('an in-house method elsewhere', () => {
  it('is a response of trials and a control chart; versions that read differently side by side are said', async () => {
    const { bench, methodId } = await withMethod();
    const { trialSetId } = await bench.do('trialSet.add', { title: 'Less wax', question: '', product: '' });
    const finish = async (code: string, grades: string[]) => {
      const { test, sample } = await bench.startTest(methodId, code);
      await grade(bench, test.testId, grades);
      await bench.do('test.finish', { testId: test.testId, remark: '' });
      return sample.sampleId;
    };
    const trial = async (name: string, control: boolean, grades: string[]) => {
      const sampleId = await finish(`Q-${name}`, grades);
      const set = await bench.do('trial.add', { trialSetId, name, control, components: [], factors: {}, note: '' });
      await bench.do('trial.linkSample', { trialId: set.trials.find((added) => added.name === name)!.trialId, sampleId });
    };
    await trial('R0', true, ['4', '4', '5', '4', '5', '4']);
    await trial('R1', false, ['1', '2', '1', '1', '2', '1']);
    const response = { methodId, property: 'grade', goal: 'higher' as const, target: null, lowest: null, highest: null, weight: 1 };
    await bench.do('trialSet.setResponses', { trialSetId, responses: [response, { ...response, property: 'twists' }] });
    const view = await bench.do('trialSet.get', { trialSetId });
    const [r0, r1] = view.trials.map(({ cells }) => cells[`${methodId}/grade`]!);
    expect(view.responses[0]).toMatchObject({ methodTitle: 'Thumb twist', title: 'Grade of rub', kind: 'grade' });
    expect([r0!.n, r0!.value, r1!.n, r1!.value]).toEqual([6, 4, 6, 1]);
    expect(r1!.difference!.word).toBe('worse');
    expect(view.notes.join(' ')).not.toMatch(/versions/);

    await bench.do('inHouseMethod.change', { methodId, written: tenTwists, reason: 'five show nothing' });
    await trial('R2', false, ['3', '4', '3', '4', '3', '3']);
    expect((await bench.do('trialSet.get', { trialSetId })).notes.join(' ')).toMatch(/Grade of rub: tests by the versions 1 and 2 of the method stand side by side/);
    const chart = await bench.do('controlChart.get', { methodId, property: 'twists', product: 'dumpling pouch 600 g' });
    expect(chart.tests.length).toBe(3);
    expect(chart.conclusions.join(' ')).toMatch(/Twists until it smears: tests by the versions 1 and 2/);
  });
});

describe('whether one can decide with it', () => {
  /** Ten parts, two people, two readings each; `difference` between the people. */
  const readings = (difference: (part: number) => number) =>
    Array.from({ length: 10 }, (_, part) => part).flatMap((part) =>
      ['IR', 'TV'].flatMap((appraiser) => ['1', '2'].map((trial) => ({ part: String(part), appraiser, trial, value: Math.min(5, Math.max(0, 1 + (part % 5) - (appraiser === 'TV' ? difference(part) : 0))) }))),
    );
  const study = (bench: TestBench, methodId: string, difference: (part: number) => number) =>
    bench.do('study.record', { methodId, property: 'grade', readings: readings(difference), remark: '' });

  it('goes from written to fit by a study in which people agree', async () => {
    const { bench, methodId } = await withMethod();
    expect(await bench.do('inHouseMethod.get', { methodId })).toMatchObject({ state: 'written', fitness: [{ property: 'grade', standing: 'not studied' }, { property: 'twists' }, { property: 'share' }] });
    await study(bench, methodId, () => 0);
    const { state, fitness } = await bench.do('inHouseMethod.get', { methodId });
    expect(state).toBe('fit to decide');
    expect(fitness[0]).toMatchObject({ standing: 'fit', text: 'Grade of rub is good enough to decide with at its limit.' });
    expect(fitness[0]!.reasons.join(' ')).toMatch(/kappa 1\.00.*10 of 10 parts were put on the same side/);
    // The method's studies count in the verdict, and are checked by verify.
    expect((await bench.do('record.verify', {})).problems).toEqual([]);
  });

  it('is not fit where one person reads a grade lower, and says what to improve first', async () => {
    const { bench, methodId } = await withMethod();
    await study(bench, methodId, () => 1);
    const { state, why, fitness } = await bench.do('inHouseMethod.get', { methodId });
    expect(state).toBe('not fit to decide');
    expect(why[0]).toMatch(/not good enough to decide/);
    expect(fitness[0]!.improve).toMatch(/^Improve reproducibility first/);
  });

  it('refuses a reading between two grades of its scale', async () => {
    const { bench, methodId } = await withMethod();
    const between = readings(() => 0).map((reading, index) => (index === 3 ? { ...reading, value: 2.5 } : reading));
    expect(await bench.refused('study.record', { methodId, property: 'grade', readings: between, remark: '' })).toMatchObject({ field: 'readings[3].value', message: expect.stringMatching(/read as 0, 1, 2, 3, 4, 5; 2\.5 is none/) });
  });

  it('needs a new study once it reads otherwise, and not for other words', async () => {
    const { bench, methodId } = await withMethod();
    await study(bench, methodId, () => 0);
    await bench.do('inHouseMethod.change', { methodId, written: { ...thumbTwistRub, shows: 'Other words.' }, reason: 'clearer' });
    expect(await bench.do('inHouseMethod.get', { methodId })).toMatchObject({ state: 'fit to decide' });
    expect(await bench.do('studies.list', { methodId })).toMatchObject([{ inUse: true }]);
    await bench.do('inHouseMethod.change', { methodId, written: tenTwists, reason: 'more twists' });
    expect(await bench.do('inHouseMethod.get', { methodId })).toMatchObject({ state: 'written' });
    expect(await bench.do('studies.list', { methodId })).toMatchObject([{ inUse: false }]);
  });

  it('keeps a study in the unit of the version that was studied', async () => {
    const bench = await testBench();
    const inUnit = (unit: string) =>
      changed((w) => {
        w.readings = [{ kind: 'number', key: 'force', label: 'Force', unit, lowest: 0, highest: null, orMore: false }];
        w.properties = [{ ...w.properties[1]!, key: 'force', title: 'Force', reading: 'force', statistic: 'mean' }];
      });
    const { methodId } = await bench.do('inHouseMethod.add', { written: inUnit('N') });
    const noise = (appraiser: string, trial: string) => (appraiser === 'TV' ? 0.1 : 0) + (trial === '2' ? 0.05 : 0);
    const values = readings(() => 0).map((reading) => ({ ...reading, value: reading.value + noise(reading.appraiser, reading.trial) }));
    const { studyId } = await bench.do('study.record', { methodId, property: 'force', readings: values, remark: '' });
    await bench.do('inHouseMethod.change', { methodId, written: inUnit('cN'), reason: 'a finer balance' });
    const study = await bench.do('study.get', { studyId });
    expect(study.unit).toBe('N');
    expect(study.result.results.repeatability!.unit).toBe('N');
  });

  it('takes a yes or no as 1 and 0, and refuses the study of a share of numbers', async () => {
    const bench = await testBench();
    const written = changed((w) => {
      w.readings = [
        { kind: 'yes-no', key: 'holds', label: 'Holds', yes: 'holds', no: 'gives way' },
        { kind: 'number', key: 'force', label: 'Force', unit: 'N', lowest: 0, highest: null, orMore: false },
      ];
      const share = { ...w.properties[2]!, statistic: 'share-passing' as const };
      w.properties = [
        { ...share, key: 'holding', title: 'Holding', reading: 'holds', passes: null },
        { ...share, key: 'strong', title: 'Strong', reading: 'force', passes: { lower: 2, upper: null } },
      ];
    });
    const { methodId } = await bench.do('inHouseMethod.add', { written });
    const values = readings(() => 0).map((reading) => ({ ...reading, value: reading.value > 2 ? 1 : 0 }));
    // Of the single yes and no, not of the share in per cent.
    expect(await bench.do('study.record', { methodId, property: 'holding', readings: values, remark: '' })).toMatchObject({ kind: 'grade', unit: '' });
    expect((await bench.do('inHouseMethod.get', { methodId })).fitness[0]).toMatchObject({ property: 'holding', standing: 'fit' });
    expect((await bench.refused('study.record', { methodId, property: 'strong', readings: values, remark: '' })).message).toMatch(/share of many readings/);
    expect((await bench.refused('study.record', { methodId, property: 'holding', readings: readings(() => 0), remark: '' })).message).toMatch(/scale/);
  });
});

describe('a habit', () => {
  const habit = { title: 'Thumb test', purpose: 'does the ink smear?', looksAt: 'colour-rubbed' as const, outcome: 'yes-no' as const, answers: [{ question: 'force' as const, today: 'by feel', varies: true, fixed: '' }] };

  it('is kept, told again, written down and then has a method', async () => {
    const bench = await testBench();
    const { methodId, state } = await bench.do('habit.describe', { habit });
    expect(state).toBe('not written');
    await bench.do('habit.describe', { methodId, habit: { ...habit, purpose: 'does the ink smear within a minute?' } });
    expect(await bench.refused('habit.describe', { habit })).toMatchObject({ field: 'habit.title' });
    expect(await bench.do('inHouseMethods.list', {})).toMatchObject([{ title: 'Thumb test', state: 'not written' }]);
    const written = await bench.do('inHouseMethod.add', { methodId, written: thumbTwistRub });
    expect(written).toMatchObject({ methodId, state: 'written', habit: { purpose: 'does the ink smear within a minute?' } });
    expect(await bench.refused('inHouseMethod.add', { methodId, written: { ...thumbTwistRub, title: 'Again' } })).toMatchObject({ code: 'conflict' });
    expect((await bench.do('record.list', {})).entries.map(({ text }) => text)).toEqual(expect.arrayContaining(['Wrote down the method “Thumb-twist rub”.', 'Described the habit “Thumb test”, in which 1 thing varies.']));
  });
});

describe('a method file', () => {
  it('goes to another notebook as a copy that says where it is from; the same version again changes nothing', async () => {
    const { bench, methodId } = await withMethod();
    const { fileName, text } = await bench.do('methodFile.write', { methodId });
    expect(fileName).toBe('thumb-twist-rub-v1.laydown-method.json');
    const other = await new TestBench().withNotebook();
    expect(await other.do('methodFile.inspect', { file: text })).toMatchObject({ standing: 'new', from: { laboratory: 'Quillmere Flexibles', writtenBy: 'Imke Rasmund' } });
    const taken = await other.do('methodFile.takeIn', { file: text });
    expect(taken.methodId).not.toBe(methodId);
    expect(taken.versions).toMatchObject([{ version: '1', written: thumbTwistRub, origin: { methodId, version: '1' } }]);

    const entries = await other.entries();
    expect(await other.do('methodFile.inspect', { file: text })).toMatchObject({ standing: 'here', methodId: taken.methodId });
    await other.do('methodFile.takeIn', { file: text });
    expect(await other.entries()).toBe(entries);
    // Out again it is the same file, which its own notebook knows.
    expect((await other.do('methodFile.write', { methodId: taken.methodId })).text).toBe(text);
    await bench.do('methodFile.takeIn', { file: text });
    expect((await bench.do('inHouseMethods.list', {})).length).toBe(1);
  });

  it('of a later version becomes a version, an older one is refused, and so is another text under the same version', async () => {
    const { bench, methodId } = await withMethod();
    const first = (await bench.do('methodFile.write', { methodId })).text;
    await bench.do('inHouseMethod.change', { methodId, written: tenTwists, reason: 'more twists' });
    const second = (await bench.do('methodFile.write', { methodId })).text;
    const other = await new TestBench().withNotebook();
    await other.do('methodFile.takeIn', { file: first });
    expect(await other.do('methodFile.inspect', { file: second })).toMatchObject({ standing: 'version', changes: ['Twists: 5 → 10.', 'Grade of rub, limit: at least 4 → at least 3.'] });
    expect((await other.do('methodFile.takeIn', { file: second })).versions.map(({ version, origin }) => [version, origin!.version])).toEqual([['2', '2'], ['1', '1']]);
    const third = await new TestBench().withNotebook();
    await third.do('methodFile.takeIn', { file: second });
    expect((await third.refused('methodFile.inspect', { file: first })).message).toMatch(/version 1 is older/);
    expect((await third.refused('methodFile.takeIn', { file: second.replace('bare film', 'nothing left') })).message).toMatch(/is here already and says something else/);
    expect(await third.refused('methodFile.inspect', { file: 'PK\u0003' })).toMatchObject({ code: 'input', field: 'file' });
  });

  it('is not taken in under a title that is in use', async () => {
    const { bench } = await withMethod();
    const file = (await bench.do('methodFile.write', { methodId: (await bench.do('inHouseMethods.list', {}))[0]!.methodId })).text;
    const other = await new TestBench().withNotebook();
    const { methodId } = await other.do('inHouseMethod.add', { written: changed((written) => (written.title = 'thumb-twist RUB')) });
    expect((await other.refused('methodFile.inspect', { file })).message).toMatch(/already a method ‘thumb-twist RUB’ here/);
    expect(await other.refused('methodFile.takeIn', { file })).toMatchObject({ field: 'file' });
    await other.do('inHouseMethod.change', { methodId, written: changed((written) => (written.title = 'Our own rub')), reason: 'another came' });
    expect(await other.do('methodFile.takeIn', { file })).toMatchObject({ title: 'Thumb-twist rub' });
  });
});
