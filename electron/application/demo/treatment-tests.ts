import { owensWendt } from '../../../shared-lib/surface-energy/owens-wendt.ts';
import { findProbeLiquid } from '../../../shared-lib/surface-energy/probe-liquids.ts';
import type { DemoBench, TypedRow } from './demo-bench.ts';
import type { DemoSamples } from './demo-samples.ts';

const SPECIFICATION = { property: 'wettingTension', lower: 38, upper: null, source: 'Customer specification QF-11, revision B' };
const ROOM = { temperatureC: '23', relativeHumidityPct: '50', fluidLot: 'Set 4, checked 2026-01-05' };
const METAL_ENERGY = { property: 'total', lower: 40, upper: null, source: 'Adhesive data sheet, Corrie' };
const PRINTED_WITHIN = { property: 'daysUntilRequired', lower: 60, upper: null, source: 'In-house specification: printed within 60 days of treatment' };
const WEB_MM = 1100;
/** Eight days before the first test of the fresh lot. */
const TREATED_ON = '2026-01-05';
const DECAY_DAYS = [8, 9, 11, 14, 18, 23, 29, 36, 43];
const LIQUIDS = ['water', 'diiodomethane', 'ethylene glycol'];
const DROPS = 5;
/** Total, dispersive and polar part of the metal's surface. */
const METAL_MNM = Float64Array.of(42.6, 36.8, 5.8);

/** Treatment fades with the days towards a floor (common practice: most of it in the first weeks). */
function treatmentAfter(days: number): number {
  const floor = 35.2;
  return floor + (42.4 - floor) * Math.exp(-days / 110);
}

/** Brackets of 1 mN/m at places across the web; the edges are treated less than the middle. */
function acrossWeb(bench: DemoBench, meanMNm: number, spreadMNm: number, positions: number): TypedRow[] {
  return Array.from({ length: positions }, (_, index) => {
    const acrossMm = 50 + ((WEB_MM - 100) * index) / (positions - 1);
    const edge = Math.abs(acrossMm / WEB_MM - 0.5) * 2;
    const tension = meanMNm + 0.4 - 1.0 * edge ** 3 + spreadMNm * bench.random.normal();
    const held = Math.floor(tension);
    return { acrossMm: String(Math.round(acrossMm)), wetsMNm: String(held), retractsMNm: String(held + 1) };
  });
}

async function startTreatment(bench: DemoBench, sampleId: string): Promise<string> {
  const testId = await bench.start(sampleId, 'test-fluids', ROOM);
  await bench.limit(testId, SPECIFICATION);
  return testId;
}

/** The fresh lot: well above the specification; one reading was corrected. */
export async function testFreshFilm(bench: DemoBench, samples: DemoSamples): Promise<string> {
  const testId = await startTreatment(bench, samples.petFresh);
  const rows = acrossWeb(bench, treatmentAfter(8), 0.5, 11);
  rows[4]!.wetsMNm = '37';
  await bench.type(testId, rows);
  const { rows: typed } = await bench.do('test.get', { testId });
  const held = Number(typed[4]!.cells.retractsMNm!.value) - 1;
  await bench.do('reading.enter', { testId, row: 'r5', key: 'wetsMNm', typed: String(held), reason: 'Took the wrong bottle down from the rack; label checked' });
  await bench.do('test.finish', { testId, remark: '' });
  return testId;
}

/** The lot that stood over the summer: its treatment has gone. One position was touched and is voided. */
export async function testOldFilm(bench: DemoBench, samples: DemoSamples): Promise<string> {
  const testId = await startTreatment(bench, samples.petOld);
  await bench.type(testId, acrossWeb(bench, treatmentAfter(145), 0.6, 11));
  await bench.do('row.void', { testId, row: 'r7', reason: 'Touched with the glove while unwinding' });
  await bench.do('row.remark', { testId, row: 'r1', remark: 'Operator side, where the ink beaded' });
  await bench.do('test.finish', { testId, remark: 'Lot blocked; supplier told' });
  return testId;
}

/** Too near to the limit for five positions to decide. */
export async function testMetallisedFilm(bench: DemoBench, samples: DemoSamples): Promise<string> {
  const testId = await startTreatment(bench, samples.metallised);
  await bench.do('test.setLimits', { testId, limits: [{ ...SPECIFICATION, lower: 40, source: 'Adhesive data sheet, Corrie' }], rule: 'guarded', reason: 'The adhesive asks for more on the metal' });
  await bench.type(testId, acrossWeb(bench, 40.6, 0.8, 5));
  await bench.do('test.finish', { testId, remark: 'Five more positions are to follow from the next roll' });
  return testId;
}

/** The fresh lot four weeks later. */
export async function testFreshFilmAgain(bench: DemoBench, samples: DemoSamples): Promise<string> {
  const testId = await startTreatment(bench, samples.petFresh);
  await bench.type(testId, acrossWeb(bench, treatmentAfter(36), 0.5, 11));
  await bench.do('test.finish', { testId, remark: 'From the store, four weeks after the first test' });
  return testId;
}

/** How the fresh lot loses its treatment: single readings of the same roll since it was treated, up to six weeks. */
export async function testFreshFilmDecay(bench: DemoBench, samples: DemoSamples): Promise<string> {
  const { fluidLot: _set, ...room } = ROOM;
  const testId = await bench.start(samples.petFresh, 'treatment-decay', { requiredMNm: '38', treatedOn: TREATED_ON, ...room, storage: 'Film store, wound and wrapped' });
  await bench.do('test.setLimits', { testId, limits: [PRINTED_WITHIN], rule: 'guarded', reason: '' });
  const lines = DECAY_DAYS.map((days) => {
    const held = Math.floor(treatmentAfter(days) + 0.3 * bench.random.normal());
    return [days, held, held + 1].join('\t');
  });
  await bench.do('readings.paste', { testId, row: 'r1', key: 'days', pasted: lines.join('\n') });
  await bench.do('test.finish', { testId, remark: 'From the day book of roll 3' });
  return testId;
}

/** Drops on the metal that the test fluids could not decide on. */
export async function testMetallisedFilmByAngles(bench: DemoBench, samples: DemoSamples): Promise<string> {
  const testId = await bench.start(samples.metallised, 'contact-angle', { temperatureC: '23', relativeHumidityPct: '50' });
  await bench.do('test.setLimits', { testId, limits: [METAL_ENERGY], rule: 'guarded', reason: '' });
  const model = owensWendt(LIQUIDS.map((liquid) => findProbeLiquid('strom', liquid)!));
  const lines = LIQUIDS.flatMap((liquid, index) => {
    const angleDeg = (180 / Math.PI) * Math.acos(model.predict(METAL_MNM, index));
    return Array.from({ length: DROPS }, () => [liquid, bench.typed(angleDeg + 1.4 * bench.random.normal(), 1)].join('\t'));
  });
  await bench.do('readings.paste', { testId, row: 'r1', key: 'liquid', pasted: lines.join('\n') });
  await bench.do('test.finish', { testId, remark: '' });
  return testId;
}
