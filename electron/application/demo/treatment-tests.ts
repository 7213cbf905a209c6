import type { DemoBench, TypedRow } from './demo-bench.ts';
import type { DemoSamples } from './demo-samples.ts';

const SPECIFICATION = { property: 'wettingTension', lower: 38, upper: null, source: 'Customer specification QF-11, revision B' };
const ROOM = { temperatureC: '23', relativeHumidityPct: '50', fluidLot: 'Set 4, checked 2026-01-05' };
const WEB_MM = 1100;

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
  const { limits } = await bench.do('test.get', { testId });
  if (limits.length === 0) await bench.do('test.setLimits', { testId, limits: [SPECIFICATION], rule: 'guarded', reason: '' });
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
