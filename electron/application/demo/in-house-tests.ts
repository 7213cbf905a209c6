import type { WrittenMethod } from '../../../shared-lib/method/in-house/written-method.ts';
import { seededRandom } from '../../../shared-lib/statistics/random.ts';
import type { DemoBench } from './demo-bench.ts';
import type { DemoSamples } from './demo-samples.ts';

const grades = [
  { grade: 0, meaning: 'bare film under the thumb' },
  { grade: 1, meaning: 'more of the ink gone than left' },
  { grade: 2, meaning: 'holes that one sees at arm’s length' },
  { grade: 3, meaning: 'thin spots against the light, no holes' },
  { grade: 4, meaning: 'cloth marked, print whole' },
  { grade: 5, meaning: 'nothing to be seen on print or cloth' },
];

/** As it was written at first: the load is still a matter of feeling. */
const byFeel: WrittenMethod = {
  title: 'Thumb-twist rub',
  shortTitle: 'Thumb twist',
  shows: 'Whether fresh ink smears or comes off when a thumb is twisted on it, minutes after the press. A quick look; it does not replace a rub tester.',
  how: ['Lay the printed film on glass, print upwards.', 'Lay a fresh piece of cloth over the thumb, press it on the solid and twist.', 'Hold print and cloth against the light and grade.'],
  spoils: ['A cloth that was used before.', 'Ink that has had more time to dry than agreed.'],
  standards: [],
  cautions: [{ hazard: 'solvent', text: 'Fresh prints give off solvent: work where the air is drawn off. The safety data sheets and local codes hold.' }],
  settings: [
    { kind: 'number', key: 'twists', label: 'Twists', unit: '', value: 5, tolerance: null },
    { kind: 'text', key: 'cloth', label: 'Cloth', value: 'white cotton, washed' },
    { kind: 'number', key: 'minutesAfterPress', label: 'After the press', unit: 'min', value: 10, tolerance: 2 },
  ],
  rowName: 'place',
  replicates: 6,
  readings: [{ kind: 'grade', key: 'grade', label: 'Grade', grades }],
  properties: [
    {
      ...{ key: 'grade', title: 'Grade of rub', reading: 'grade', statistic: 'median-grade', against: null, passes: null, areaCm2: null },
      ...{ better: 'higher', headline: true, limit: { lower: 4, upper: null, source: 'shop rule' } },
    },
  ],
};

/** As it stands after the first study: a weight presses, not the arm. */
const withWeight: WrittenMethod = {
  ...byFeel,
  how: ['Lay the printed film on glass, print upwards.', 'Set the 1 kg weight with its cloth foot on the solid and twist it by its handle.', 'Hold print and cloth against the light and grade.'],
  settings: [{ kind: 'number', key: 'load', label: 'Load', unit: 'N', value: 10, tolerance: 0.5 }, ...byFeel.settings],
};

/**
 * A habit of the press hall is told, written down and studied by two people, who differ by what they press with; with a
 * weight in place of the arm a second study finds it fit to decide with. Two rolls are then tested by it.
 */
export async function standardiseThumbTwist(bench: DemoBench, samples: DemoSamples): Promise<void> {
  // A stream of its own: what else is in the demo must not move.
  const noise = seededRandom(53);
  const { methodId } = await bench.do('habit.describe', {
    habit: {
      title: 'Thumb-twist rub',
      purpose: 'Whether the ink is dry enough to go on, before the roll leaves the press.',
      looksAt: 'colour-rubbed',
      outcome: 'yes-no',
      answers: [
        { question: 'who', today: 'whoever stands at the press', varies: true, fixed: '' },
        { question: 'force', today: 'as hard as it feels right', varies: true, fixed: '' },
        { question: 'strokes', today: 'a few twists', varies: true, fixed: '5' },
        { question: 'contact', today: 'the overall, or a rag', varies: true, fixed: 'white cotton, washed' },
        { question: 'dwell', today: 'when there is time', varies: true, fixed: '' },
      ],
    },
  });
  await bench.do('inHouseMethod.add', { methodId, written: byFeel });
  bench.clock.pass(3600);
  // One arm presses harder: a grade lower on most parts.
  await study(bench, methodId, (person) => (person === 'TV' ? (noise.uniform() < 0.7 ? -1 : 0) : noise.uniform() < 0.1 ? 1 : 0), 'The load by feel. Teodor presses harder.');
  bench.clock.pass(1800);
  await bench.do('inHouseMethod.change', { methodId, written: withWeight, reason: 'In the study one person pressed harder than the other and graded lower.' });
  bench.clock.pass(3600);
  await study(bench, methodId, () => (noise.uniform() < 0.06 ? -1 : 0), 'With the weight.');
  for (const [sampleId, rub] of [[samples.dumplingR0, ['5', '4', '5', '5', '4', '5']], [samples.dumplingR7, ['4', '4', '3', '4', '5', '4']]] as const) {
    const testId = await bench.start(sampleId, methodId, {});
    bench.clock.pass(300);
    await bench.do('readings.paste', { testId, row: 'r1', key: 'grade', pasted: rub.join('\n') });
    await bench.do('test.finish', { testId, remark: '' });
  }
}

/** Twelve parts over the whole scale, read twice by each of two people. */
async function study(bench: DemoBench, methodId: string, deviation: (person: string) => number, remark: string): Promise<void> {
  const readings = Array.from({ length: 12 }, (_, part) => part).flatMap((part) =>
    ['IR', 'TV'].flatMap((appraiser) =>
      ['1', '2'].map((trial) => ({ part: `sheet ${part + 1}`, appraiser, trial, value: Math.min(5, Math.max(0, (part % 6) + deviation(appraiser))) })),
    ),
  );
  await bench.do('study.record', { methodId, property: 'grade', readings, remark });
}
