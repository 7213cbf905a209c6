import { daysAfter } from '../../../shared-lib/quantity/iso-date.ts';
import type { DemoBench } from './demo-bench.ts';
import type { DemoLots } from './demo-materials.ts';

/** Colours of the trial ink: density at the start and the lamp hours in which they lose 30 % of it. */
const COLOURS = [
  { colour: 'cyan', density: 1.44, hours: 950 },
  { colour: 'magenta', density: 1.36, hours: 165 },
  { colour: 'yellow', density: 1.1, hours: 210 },
  { colour: 'black', density: 1.62, hours: 2200 },
];
const PATCHES = ['1', '2', '3'];
const FIRST_DAY = '2026-03-02';
const READ_SO_FAR_H = [0, 24, 48, 96, 192];
const STILL_TO_COME_H = [288];

/** All colours of the trial in one programme, read from the same patches; the last reading is still to come, so that Today asks for it. */
export async function followWeathering(bench: DemoBench, lots: DemoLots): Promise<void> {
  const { sampleId } = await bench.do('sample.add', {
    code: 'Q-26-082', product: 'window-shelf sachet', job: 'J-4430', roll: 'sheet 16', note: 'R7, all colours of the set', lotIds: [lots.petFresh, lots.inkR7],
  });
  const testId = await bench.start(sampleId, 'light-exposure', {
    cycle: 'light without pause, dry',
    exposedFrom: FIRST_DAY,
    irradianceWPerM2: '42',
    blackPanelC: '63',
    relativeHumidityPct: '45',
    readAt: [...READ_SO_FAR_H.slice(1), ...STILL_TO_COME_H].join(' '),
  });
  await bench.limit(testId, { property: 'exposureToLimit', lower: 120, upper: null, source: 'Customer specification for window shelves, revision A' });
  bench.clock.pass(900);
  await bench.do('readings.paste', { testId, row: 'r1', key: 'colour', pasted: COLOURS.flatMap((one) => PATCHES.flatMap((patch) => fading(bench, one, patch))).join('\n') });
}

/** Lines of colour, patch, exposure, density and day, from the notes beside the lamp. */
function fading(bench: DemoBench, { colour, density, hours: life }: (typeof COLOURS)[number], patch: string): string[] {
  const start = density * (1 + 0.01 * bench.random.normal());
  return READ_SO_FAR_H.map((hours) => {
    const left = start * Math.exp((Math.log(0.7) * hours) / life) + 0.005 * bench.random.normal();
    return [colour, patch, String(hours), bench.typed(left, 2), '', '', '', daysAfter(FIRST_DAY, hours / 24)].join('\t');
  });
}
