import type { DemoBench } from './demo-bench.ts';
import type { DemoLots } from './demo-materials.ts';

/** Sample ids by what the sample is for. */
export interface DemoSamples {
  petFresh: string;
  petOld: string;
  metallised: string;
  dumplingR0: string;
  dumplingR7: string;
  coffee: string;
  /** One sample for each colour of the control, and the yellow of the trial. */
  sachetYellow: string;
  sachetMagenta: string;
  sachetCyan: string;
  sachetTrial: string;
}

export async function addSamples(bench: DemoBench, lots: DemoLots): Promise<DemoSamples> {
  const add = async (code: string, product: string, job: string, roll: string, note: string, lotIds: string[]) =>
    (await bench.do('sample.add', { code, product, job, roll, note, lotIds })).sampleId;
  const sachet = (code: string, sheet: string, ink: string) => add(code, 'window-shelf sachet', 'J-4430', sheet, 'Solid patches', [lots.petFresh, ink]);
  const { adhesive, pe } = lots;
  return {
    petFresh: await add('Q-26-001', 'dumpling pouch 600 g', 'J-4417', 'roll 3, outer wraps', 'Film before printing', [lots.petFresh]),
    petOld: await add('Q-26-002', 'dumpling pouch 600 g', 'J-4417', 'roll 1, outer wraps', 'Ink beaded at the operator side', [lots.petOld]),
    metallised: await add('Q-26-003', 'ground coffee brick', 'J-4423', 'roll 2', 'Film before lamination, metal side', [lots.metallised]),
    dumplingR0: await add('Q-26-004', 'dumpling pouch 600 g', 'J-4418', 'roll 1, 400 m', 'Control', [lots.dumplingR0, lots.petFresh, lots.inkR0, adhesive, pe]),
    dumplingR7: await add('Q-26-005', 'dumpling pouch 600 g', 'J-4418', 'roll 2, 400 m', 'Trial R7', [lots.dumplingR7, lots.petFresh, lots.inkR7, adhesive, pe]),
    coffee: await add('Q-26-006', 'ground coffee brick', 'J-4423', 'roll 1, 1200 m', '', [lots.coffee, lots.metallised, adhesive, pe]),
    sachetYellow: await sachet('Q-26-007 Y', 'sheet 12, R0 yellow', lots.inkR0),
    sachetMagenta: await sachet('Q-26-007 M', 'sheet 12, R0 magenta', lots.inkR0),
    sachetCyan: await sachet('Q-26-007 C', 'sheet 12, R0 cyan', lots.inkR0),
    sachetTrial: await sachet('Q-26-008 Y', 'sheet 15, R7 yellow', lots.inkR7),
  };
}
