import type { DemoBench } from './demo-bench.ts';
import type { DemoLots } from './demo-materials.ts';
import type { DemoSamples } from './demo-samples.ts';

/** What the films, inks and adhesive went into, when the films were treated, the bad lot retired, and where the samples are kept. */
export async function keepMaterials(bench: DemoBench, lots: DemoLots, samples: DemoSamples): Promise<void> {
  const film = async (lotId: string, treatedOn: string, thickness: string) => {
    const { code, receivedOn, note } = await bench.do('lot.get', { lotId });
    await bench.do('lot.describe', { lotId, code, receivedOn, note, treatedOn, treatedSide: 'outside', thickness });
  };
  await film(lots.petFresh, '2026-01-05', '12,1');
  await film(lots.petOld, '2025-07-30', '11,9');
  await film(lots.metallised, '2025-12-02', '12,0');
  await film(lots.pe, '2025-12-08', '60,4');
  for (const { materialId, kind, name, supplier, description } of await bench.do('materials.list', {})) {
    const structure = kind === 'laminate' ? description : film12[name];
    if (structure) await bench.do('material.describe', { materialId, name, supplier, description, structure });
  }
  const { petFresh, metallised, pe, inkR0, inkR7, adhesive } = lots;
  await bench.do('lot.makeFrom', { lotId: lots.dumplingR0, lotIds: [petFresh, inkR0, adhesive, pe] });
  await bench.do('lot.makeFrom', { lotId: lots.dumplingR7, lotIds: [petFresh, inkR7, adhesive, pe] });
  await bench.do('lot.makeFrom', { lotId: lots.coffee, lotIds: [petFresh, inkR0, adhesive, metallised, pe] });
  await bench.do('lot.retire', { lotId: lots.petOld, reason: 'Ink beads on it: the treatment is below what the press needs' });

  const keep = async (sampleId: string, said: { customer: string; across: string; along: string; retainedUntil: string }) => {
    const { code, product, job, roll, note, lots: of } = await bench.do('sample.get', { sampleId });
    await bench.do('sample.change', { sampleId, code, product, job, roll, note, lotIds: of.map(({ lotId }) => lotId), keptAt: 'dark store, shelf 4', ...said });
  };
  await keep(samples.dumplingR0, { customer: 'Marrowfield Foods', across: '350', along: '400', retainedUntil: '2026-04-02' });
  await keep(samples.coffee, { customer: 'Marrowfield Foods', across: '520', along: '1200', retainedUntil: '2027-03-31' });
}

/** Structures of the webs that are no laminates. */
const film12: Record<string, string> = { 'PET 12 µm': 'PET 12 treated outer', 'Metallised PET 12 µm': 'metallised PET 12 treated outer', 'PE 60 µm': 'PE 60 treated outer' };

/** The fluids of the lab: a set that had expired when film was read with it. */
export async function readWithExpiredFluid(bench: DemoBench, samples: DemoSamples): Promise<void> {
  const set = { kind: 'test fluids' as const, name: 'Test fluids 30 to 60 mN/m', methodIds: ['test-fluids'], note: '' };
  await bench.do('fluid.add', { ...set, lot: 'TF-4', openedOn: '2025-09-01', expiresOn: '2026-02-28' });
  await bench.do('fluid.add', { ...set, lot: 'TF-5', openedOn: null, expiresOn: '2026-08-31' });
  await bench.do('fluid.add', { kind: 'tape', name: 'Test tape 25 mm', lot: '7', methodIds: ['tape-adhesion', 'tape-label-lift'], openedOn: '2026-01-08', expiresOn: '2026-12-31', note: '' });

  const testId = await bench.start(samples.metallised, 'test-fluids', { temperatureC: '23', relativeHumidityPct: '50', fluidLot: 'Test fluids 30 to 60 mN/m, lot TF-4' });
  const readings = ['operator side', 'centre', 'drive side'].map((label) => {
    const held = Math.floor(40.2 + 0.5 * bench.random.normal());
    return { label, wetsMNm: String(held), retractsMNm: String(held + 1) };
  });
  await bench.type(testId, readings);
  await bench.do('test.finish', { testId, remark: 'Read before the new set was opened' });
}
