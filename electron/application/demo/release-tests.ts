import { pairServings, triangleServings } from '../../../shared-lib/release/blind-servings.ts';
import type { DemoBench } from './demo-bench.ts';
import type { DemoSamples } from './demo-samples.ts';

const PIECE_M2 = 0.01;
const STANDARDS_UG = [2, 5, 10, 20, 40];

/** A solvent of the ink: peak area for each µg, mg/m² left in R0 and R7, and its own limit. */
interface Solvent {
  name: string;
  countsPerUg: number;
  left: { dumplingR0: number; dumplingR7: number };
  limit: string;
}

const SOLVENTS: Solvent[] = [
  { name: 'ethyl acetate', countsPerUg: 410, left: { dumplingR0: 2.1, dumplingR7: 0.9 }, limit: '5' },
  { name: 'n-propanol', countsPerUg: 265, left: { dumplingR0: 1.2, dumplingR7: 0.6 }, limit: '5' },
  // Not in the formulation; the customer wants to see that.
  { name: 'toluene', countsPerUg: 620, left: { dumplingR0: 0, dumplingR7: 0 }, limit: '0,1' },
];

/** Control and trial, taken from the roll within the hour: three pieces each, two injections of each. */
export async function testResidualSolvents(bench: DemoBench, samples: DemoSamples): Promise<void> {
  for (const sample of ['dumplingR0', 'dumplingR7'] as const) {
    const testId = await bench.start(samples[sample], 'residual-solvent', { areaCm2: '100', vialC: '120', minutes: '20', takenAt: 'from the winder, wrapped in foil' });
    await bench.do('test.setLimits', {
      testId,
      limits: [
        { property: 'total', lower: null, upper: 10, source: 'Customer specification, revision B' },
        { property: 'shareOfLimitPct', lower: null, upper: 100, source: 'Customer specification, revision B' },
      ],
      rule: 'guarded',
      reason: '',
    });
    bench.clock.pass(5400);
    await bench.do('readings.paste', { testId, row: 'r1', key: 'solvent', pasted: SOLVENTS.flatMap((solvent) => peaks(bench, solvent, solvent.left[sample])).join('\n') });
    await bench.do('test.finish', { testId, remark: '' });
  }
}

/** Lines of solvent, vial, specimen, amount, peak area and limit. */
function peaks(bench: DemoBench, { name, countsPerUg, limit }: Solvent, left: number): string[] {
  const area = (ug: number) => String(Math.max(0, Math.round(countsPerUg * ug * (1 + 0.012 * bench.random.normal()) + 8 * bench.random.normal())));
  const standards = STANDARDS_UG.map((ug, index) => [name, 's', '', String(ug), area(ug), index === 0 ? limit : ''].join('\t'));
  const specimens = ['1', '2', '3'].flatMap((specimen) => {
    const ug = left * PIECE_M2 * 1000 * (1 + 0.06 * bench.random.normal());
    return [1, 2].map(() => [name, 'p', specimen, '', area(ug)].join('\t'));
  });
  return [...standards, ...specimens];
}

/** Whether a panel smells the trial out from unprinted film, and how strongly: most can, hardly anyone minds. */
export async function testOdour(bench: DemoBench, samples: DemoSamples): Promise<void> {
  const seed = 4127;
  const triangle = await bench.start(samples.dumplingR7, 'odour-triangle', { seed: String(seed), control: 'unprinted film of the same roll', storage: '200 cm² in 250 ml, 20 h at 40 °C' });
  bench.clock.pass(7200);
  const answers = triangleServings(seed, 12).map((serving, index) => {
    const odd = serving.find(({ content }) => serving.filter((jar) => jar.content === content).length === 1)!;
    const smelled = bench.random.uniform() < 0.5;
    const guess = serving[Math.floor(3 * bench.random.uniform())]!;
    return [`P${index + 1}`, String((smelled ? odd : guess).code)].join('\t');
  });
  await bench.do('readings.paste', { testId: triangle, row: 'r1', key: 'assessor', pasted: answers.join('\n') });
  await bench.do('test.finish', { testId: triangle, remark: '' });

  const strength = await bench.start(samples.dumplingR7, 'odour-intensity', { seed: String(seed + 1), control: 'unprinted film of the same roll', storage: '200 cm² in 250 ml, 20 h at 40 °C' });
  await bench.do('test.setLimits', { testId: strength, limits: [{ property: 'median', lower: null, upper: 2, source: 'Customer specification, revision B' }], rule: 'guarded', reason: '' });
  bench.clock.pass(3600);
  const halves = (grade: number) => bench.typed(Math.max(0, Math.min(4, Math.round(2 * grade) / 2)), 1);
  const grades = pairServings(seed + 1, 8).map((serving, index) =>
    [`P${index + 1}`, ...serving.map(({ content }) => halves((content === 'print' ? 1.2 : 0.2) + 0.35 * bench.random.normal()))].join('\t'),
  );
  await bench.do('readings.paste', { testId: strength, row: 'r1', key: 'assessor', pasted: grades.join('\n') });
  await bench.do('test.finish', { testId: strength, remark: '' });
}
