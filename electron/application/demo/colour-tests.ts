import { observerWeights } from '../../../shared-lib/colour/observer-weights.ts';
import type { DemoBench } from './demo-bench.ts';
import type { DemoLots } from './demo-materials.ts';
import type { DemoSamples } from './demo-samples.ts';

const WAVELENGTHS_NM = Array.from({ length: 36 }, (_, band) => 380 + 10 * band);
const GRID = { startNm: 380, stepNm: 10, count: 36 } as const;
const CONDITIONS = { measurementCondition: 'M1', backing: 'white', instrument: 'spectrophotometer 2, calibrated 2026-03-09' };

/** Metres of the run, and by how much of its strength the ink has grown there: solvent is lost from the fountain. */
const RUN = [200, 1500, 3000, 4500, 6000, 7500, 9000, 10500, 12000].map((metres) => ({ metres, strength: 1 + (0.16 * metres) / 12000 }));

/** Reflectance in percent of a red solid: an edge at 592 nm, and what a thicker film takes away. */
function red(strength: number): number[] {
  return WAVELENGTHS_NM.map((nm) => {
    const light = 0.055 + 0.72 / (1 + Math.exp(-(nm - 592) / 13)) + 0.03 * Math.exp(-(((nm - 430) / 30) ** 2));
    return 100 * light ** strength;
  });
}

/** A brown, and one that looks alike under D50 only: it differs by a curve that the 2° observer cannot see there. */
function browns(): { standard: number[]; print: number[] } {
  const standard = WAVELENGTHS_NM.map((nm) => 6 + 24 / (1 + Math.exp(-(nm - 585) / 38)));
  const unseen = withoutShare(
    WAVELENGTHS_NM.map((nm) => Math.cos((nm - 380) / 26) * Math.exp(-(((nm - 555) / 85) ** 2))),
    [observerWeights(GRID, 'D50', 2)].flatMap(({ x, y, z }) => [x, y, z].map((weights) => [...weights])),
  );
  const largest = Math.max(...unseen.map(Math.abs));
  return { standard, print: standard.map((value, band) => value + (2.6 * unseen[band]!) / largest) };
}

/** What of `curve` stands square to all of `others` (Gram and Schmidt). */
function withoutShare(curve: number[], others: number[][]): number[] {
  const dot = (a: number[], b: number[]) => a.reduce((sum, value, index) => sum + value * b[index]!, 0);
  const less = (a: number[], b: number[]) => a.map((value, index) => value - (dot(a, b) / dot(b, b)) * b[index]!);
  const square: number[][] = [];
  for (const other of others) square.push(square.reduce(less, other));
  return square.reduce(less, curve);
}

/** With the scatter of an instrument that is laid down anew, as a row that is typed or pasted. */
function read(bench: DemoBench, spectrum: number[], repeatability = 0.004): string {
  const laid = 1 + repeatability * bench.random.normal();
  return `380-730 %: ${spectrum.map((value) => bench.typed(value * laid + 0.02 * bench.random.normal(), 2)).join(' ')}`;
}

/** A file as the instrument's program writes it: wavelengths down, a spectrum in each column. */
function csv(bench: DemoBench, spectra: { name: string; spectrum: number[] }[]): string {
  const columns = spectra.map(({ name, spectrum }) => [name, ...spectrum.map((value) => bench.typed(value * (1 + 0.0005 * bench.random.normal()), 2))]);
  const lines = ['nm', ...WAVELENGTHS_NM].map((first, line) => [first, ...columns.map((column) => column[line]!)].join(';'));
  return Buffer.from(lines.join('\r\n'), 'utf8').toString('base64');
}

/** The customers' colours, each with its tolerance. */
async function addReferences(bench: DemoBench): Promise<void> {
  const light = { illuminant: 'D50', observer: 2, condition: 'M1', geometry: '45:0', lab: null } as const;
  const pouch = await bench.do('reference.add', { name: 'Pouch red 12', ...light, spectrum: read(bench, red(1.04), 0), note: 'Card of 2025-11, over white' });
  const none = { cmcL: 2, cmcC: 1, deltaL: null, deltaC: null, deltaH: null, reason: '' };
  await bench.do('tolerance.set', { ...none, referenceId: pouch.referenceId, customer: 'Marrowfield Foods', formula: 'deltaE00', limit: 2, deltaL: 1.5 });
  const brown = await bench.do('reference.add', { name: 'Coffee brown', ...light, spectrum: read(bench, browns().standard, 0), note: 'Card of 2024-06' });
  await bench.do('tolerance.set', { ...none, referenceId: brown.referenceId, customer: 'Stillbeck Coffee', formula: 'deltaECMC', limit: 1.5 });
}

/** Measures a sample from rows that are pasted. */
async function measure(bench: DemoBench, sampleId: string, reference: string, rows: string[]): Promise<void> {
  const testId = await bench.start(sampleId, 'colour-measured', { reference, ...CONDITIONS });
  for (const [index, typed] of rows.entries()) await bench.do('reading.enter', { testId, row: `r${index + 1}`, key: 'spectrum', typed });
  await bench.do('test.finish', { testId, remark: '' });
}

/** The brand colour of the dumpling pouch on the control, on a good lot and over a long run; a coffee brown that matches in one light only. */
export async function testColours(bench: DemoBench, lots: DemoLots, samples: DemoSamples): Promise<void> {
  await addReferences(bench);
  await measure(bench, samples.dumplingR0, 'Pouch red 12', [1, 2, 3].map(() => read(bench, red(1.1))));
  const pouch = (code: string, roll: string) => bench.do('sample.add', { code, product: 'dumpling pouch 600 g', job: 'J-4431', roll, note: 'Red solid', lotIds: [lots.petFresh, lots.inkR0] });
  const good = await pouch('Q-26-071', 'roll 2');
  await measure(bench, good.sampleId, 'Pouch red 12', [1, 2, 3, 4, 5].map(() => read(bench, red(1.06))));
  const run = await pouch('Q-26-072', 'rolls 1 to 4');
  await measureRun(bench, run.sampleId);
  await measure(bench, samples.coffee, 'Coffee brown', [1, 2, 3].map(() => read(bench, browns().print, 0.002)));
}

/** Read from a file, with the metres of the run beside each. */
async function measureRun(bench: DemoBench, sampleId: string): Promise<void> {
  const testId = await bench.start(sampleId, 'colour-measured', { reference: 'Pouch red 12', control: 'Q-26-004', ...CONDITIONS });
  const name = 'pouch red, job 4431.csv';
  const bytes = csv(bench, RUN.map(({ metres, strength }) => ({ name: `${metres} m`, spectrum: red(strength) })));
  const { reading } = await bench.do('spectra.preview', { name, bytes, reading: {} });
  await bench.do('spectrum.read', { testId, row: 'r1', key: 'spectrum', name, bytes, reading, places: RUN.map((_, place) => place) });
  await bench.do('readings.paste', { testId, row: 'r1', key: 'run', pasted: RUN.map(({ metres }) => metres).join('\n') });
  await bench.do('test.finish', { testId, remark: 'Solvent was added too late' });
}
