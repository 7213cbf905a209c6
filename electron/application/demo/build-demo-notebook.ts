import { mkdirSync, mkdtempSync, renameSync, rmSync } from 'node:fs';
import path from 'node:path';
import type { Surroundings } from '../surroundings.ts';
import { testCoffeeFromTraces, testCoffeeWithExpiredTester, testControlAfterOneDay, testControlAfterOneWeek, testTrialAfterOneWeek, testTrialBuildUp } from './bond-tests.ts';
import { testColours } from './colour-tests.ts';
import { DemoBench } from './demo-bench.ts';
import { addInstruments } from './demo-instruments.ts';
import { addMaterials } from './demo-materials.ts';
import { addSamples } from './demo-samples.ts';
import { setPassphrases, witnessTest } from './demo-signatures.ts';
import { startTrialFade, testControlFade } from './fade-tests.ts';
import { standardiseThumbTwist } from './in-house-tests.ts';
import { keepMaterials, readWithExpiredFluid } from './keeping.ts';
import { testCoatWeight, testInkInTheCan } from './liquid-tests.ts';
import { testJaws, testLaminationAgain, testPrints } from './mechanical-tests.ts';
import { followPlans, makePlans } from './plan-tests.ts';
import { testTapeFromPhotographs } from './photograph-tests.ts';
import { approvePressRuns } from './press-approvals.ts';
import { testOdour, testResidualSolvents } from './release-tests.ts';
import { testCure, testRubAndHeat } from './rub-and-heat-tests.ts';
import { testFreshFilm, testFreshFilmAgain, testFreshFilmDecay, testMetallisedFilm, testMetallisedFilmByAngles, testOldFilm } from './treatment-tests.ts';
import { addTrials } from './trial-formulations.ts';
import { studyReadingOfTraces, testTrials } from './trial-tests.ts';
import { followWeathering } from './weathering-tests.ts';

/**
 * Makes the demo notebook at `file`: eight weeks in the lab of Quillmere Flexibles (invented), worked through the same
 * calls as a person's, from a fixed seed and a fixed clock, so that its entries are the same each time. The file appears
 * only once it is whole.
 * @throws Error when something stands at `file` that cannot be replaced
 */
export async function buildDemoNotebook(file: string, print: Pick<Surroundings, 'renderReport' | 'renderApproval'>): Promise<void> {
  const folder = path.dirname(path.resolve(file));
  mkdirSync(folder, { recursive: true });
  const building = mkdtempSync(path.join(folder, '.demo-'));
  const bench = new DemoBench(building, print);
  try {
    await work(bench);
    await bench.do('notebook.checkpoint', {});
    await bench.application.close();
    renameSync(path.join(building, 'demo.laydown'), file);
  } finally {
    await bench.application.close();
    rmSync(building, { recursive: true, force: true });
  }
}

async function work(bench: DemoBench): Promise<void> {
  const { atBench: imke } = await bench.do('notebook.create', {
    fileName: 'demo',
    title: 'Film and laminate tests 2026',
    laboratory: 'Quillmere Flexibles, film laboratory',
    person: { name: 'Imke Rasmund', initials: 'IR', role: 'technician' },
  });
  const teodor = await bench.do('person.add', { name: 'Teodor Vance', initials: 'TV', role: 'ink chemist' });
  const abena = await bench.do('person.add', { name: 'Abena Quist', initials: 'AQ', role: 'quality lead' });
  const takeBench = (person: { personId: string }, moment: string) => {
    bench.clock.goTo(moment);
    return bench.do('session.takeBench', { personId: person.personId });
  };
  const lots = await addMaterials(bench);
  const samples = await addSamples(bench, lots);
  await addInstruments(bench);

  await takeBench(imke!, '2026-01-13T08:05:00.000Z');
  const fresh = await testFreshFilm(bench, samples);
  const old = await testOldFilm(bench, samples);
  await takeBench(imke!, '2026-01-14T09:10:00.000Z');
  await testMetallisedFilm(bench, samples);
  await testMetallisedFilmByAngles(bench, samples);
  await takeBench(teodor, '2026-01-16T13:30:00.000Z');
  await testControlAfterOneDay(bench, samples);
  await takeBench(imke!, '2026-01-19T09:00:00.000Z');
  await testTrialBuildUp(bench, samples);
  await takeBench(imke!, '2026-01-22T08:20:00.000Z');
  const control = await testControlAfterOneWeek(bench, samples);
  await takeBench(teodor, '2026-01-22T13:15:00.000Z');
  const trial = await testTrialAfterOneWeek(bench, samples);
  await takeBench(imke!, '2026-01-29T08:30:00.000Z');
  const coffee = await testCoffeeFromTraces(bench, samples);
  await takeBench(abena, '2026-01-30T08:00:00.000Z');
  await studyReadingOfTraces(bench);
  await takeBench(teodor, '2026-01-30T09:00:00.000Z');
  const { trialIds } = await addTrials(bench);
  await testTrials(bench, lots, samples, trialIds);

  await takeBench(abena, '2026-02-03T10:00:00.000Z');
  const first = await bench.do('report.issue', {
    title: 'Film treatment and bond of the low-migration trial R7 against R0',
    recipient: 'Tamarind',
    remark: 'For the supplier meeting.',
    testIds: [fresh, old, control, trial],
    replaces: null,
  });
  await takeBench(imke!, '2026-02-10T08:00:00.000Z');
  await testFreshFilmAgain(bench, samples);
  await takeBench(imke!, '2026-02-17T08:10:00.000Z');
  await testFreshFilmDecay(bench, samples);
  await takeBench(teodor, '2026-02-24T09:00:00.000Z');
  const fade = await testControlFade(bench, samples);
  await takeBench(teodor, '2026-02-26T09:00:00.000Z');
  await startTrialFade(bench, samples);
  await takeBench(abena, '2026-02-27T15:00:00.000Z');
  await bench.do('report.issue', {
    title: 'Film treatment, bond and light fastness of the low-migration trial R7 against R0',
    recipient: 'Tamarind',
    remark: 'For the supplier meeting.',
    testIds: [fresh, old, control, trial, coffee, ...fade],
    replaces: { reportId: first.reportId, reason: 'Light exposure of the control and the coffee brick laminate added' },
  });

  await takeBench(imke!, '2026-03-02T10:00:00.000Z');
  await testPrints(bench, samples);
  await testJaws(bench, samples);
  await testLaminationAgain(bench, lots);

  await takeBench(teodor, '2026-03-06T08:30:00.000Z');
  await testRubAndHeat(bench, samples);
  await testCure(bench, samples);

  await takeBench(imke!, '2026-03-06T13:00:00.000Z');
  await standardiseThumbTwist(bench, samples);

  await takeBench(imke!, '2026-03-10T08:20:00.000Z');
  await testColours(bench, lots, samples);

  await takeBench(imke!, '2026-03-10T14:00:00.000Z');
  await testTapeFromPhotographs(bench, lots, samples);

  await takeBench(teodor, '2026-03-11T07:50:00.000Z');
  await testInkInTheCan(bench, lots);
  await testCoatWeight(bench, samples);
  await testResidualSolvents(bench, samples);
  await testOdour(bench, samples);
  await followWeathering(bench, lots);

  await takeBench(abena, '2026-03-12T07:30:00.000Z');
  const plans = await makePlans(bench);
  await takeBench(imke!, '2026-03-12T08:00:00.000Z');
  await followPlans(bench, plans, lots, samples);

  await setPassphrases(bench);
  await witnessTest(bench, coffee);

  await takeBench(imke!, '2026-03-12T13:00:00.000Z');
  await approvePressRuns(bench, plans.pouch);

  await takeBench(imke!, '2026-03-13T07:30:00.000Z');
  await keepMaterials(bench, lots, samples);
  await readWithExpiredFluid(bench, samples);
  await testCoffeeWithExpiredTester(bench, samples);
}
