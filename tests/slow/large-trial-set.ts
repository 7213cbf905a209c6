import { NotebookStore } from '../../electron/store/notebook-store.ts';
import type { DraftEntry } from '../../shared-lib/notebook/entry.ts';
import type { Response } from '../../shared-lib/notebook/trial-entries.ts';
import { allMethods } from '../../shared-lib/registry/methods.ts';
import type { Random } from '../../shared-lib/statistics/random.ts';
import { seededRandom } from '../../shared-lib/statistics/random.ts';

/** Nobody runs as many; a set that large must still open. */
const goals: [methodId: string, goal: Response['goal'], properties: string[]][] = [
  ['lamination-bond', 'higher', ['mean', 'minimum', 'median']],
  ['test-fluids', 'higher', ['wettingTension', 'weakestPosition', 'shareMeetingRequirement']],
  ['light-exposure', 'higher', ['retentionPct', 'exposureToLimit']],
  ['trap', 'higher', ['apparentPct', 'brunnerPct', 'ritzPct']],
  ['opacity', 'higher', ['contrastRatioPct', 't425Pct', 'd2805Pct']],
  ['print-contrast', 'higher', ['contrastPct']],
  ['hue-error', 'lower', ['hueErrorPct', 'greynessPct']],
  ['gloss', 'higher', ['gloss', 'spread']],
  ['crinkle', 'higher', ['grade']],
];

const responses = goals.flatMap(([methodId, goal, properties]) =>
  properties.map((property): Response => ({ methodId, property, goal, target: null, lowest: null, highest: null, weight: 1 })),
);

interface Sheet {
  conditions?: Record<string, number | string>;
  rows: Record<string, number | string>[];
}

/** Five readings by each method; `better` moves a trial by that many standard deviations. */
const sheets: Record<string, (better: number, random: Random) => Sheet> = {
  'lamination-bond': (better, random) => ({
    rows: five(() => ({ forceN: round(3.2 + 0.15 * (better + random.normal()), 2), mode: random.uniform() < 0.12 ? 'film-tear' : 'adhesive' })),
  }),
  'test-fluids': (better, random) => ({
    rows: five(() => {
      const wetsMNm = Math.floor(40 + 1.2 * (better + random.normal()));
      return { wetsMNm, retractsMNm: wetsMNm + 1 };
    }),
  }),
  'light-exposure': (better, random) => ({
    rows: [1, 2, 3].flatMap((patch) => {
      const start = 1.12 + 0.01 * random.normal();
      return [0, 48, 96].map((exposure) => ({ series: String(patch), exposure, density: round(start * (1 - (exposure / 96) * (0.25 - 0.02 * (better + random.normal()))), 3) }));
    }),
  }),
  trap: (better, random) => ({
    conditions: { firstInk: 'cyan', secondInk: 'magenta' },
    rows: five(() => ({ first: round(0.4 + 0.01 * random.normal(), 3), second: round(1.4 + 0.01 * random.normal(), 3), overprint: round(1.5 + 0.03 * (better + random.normal()), 3) })),
  }),
  opacity: (better, random) => ({ rows: five(() => ({ overBlackY: round(52 + 1.5 * (better + random.normal()), 1), overWhiteY: round(85 + 0.3 * random.normal(), 1) })) }),
  'print-contrast': (better, random) => ({ rows: five(() => ({ solid: round(1.4 + 0.02 * random.normal(), 3), tint: round(0.9 - 0.02 * (better + random.normal()), 3) })) }),
  'hue-error': (better, random) => ({
    conditions: { ink: 'magenta' },
    rows: five(() => ({ red: round(0.25 - 0.01 * better + 0.01 * random.normal(), 3), green: round(1.4 + 0.02 * random.normal(), 3), blue: round(0.6 + 0.01 * random.normal(), 3) })),
  }),
  gloss: (better, random) => ({ rows: five(() => ({ gloss: round(62 + 2 * (better + random.normal()), 1) })) }),
  crinkle: (better, random) => ({ rows: five(() => ({ grade: Math.min(5, Math.max(0, Math.round(3.4 + 0.6 * (better + random.normal()))))})) }),
};

const five = <Row>(row: () => Row): Row[] => Array.from({ length: 5 }, row);
const round = (value: number, decimals: number) => Number(value.toFixed(decimals));

/**
 * Writes a notebook with one trial set: so many trials, the first of them the control where `control`, 20 responses from
 * nine methods. Straight into the store, as that many calls would take minutes.
 * @returns id of the set, and how many entries there are
 */
export async function writeLargeTrialSet(file: string, trials: number, control = true): Promise<{ trialSetId: string; entries: number }> {
  const random = seededRandom(20);
  let number = 0;
  const newId = (kind: string) => `${kind}${String(++number).padStart(8, '0')}`;
  const store = await NotebookStore.create(file, { now: () => new Date('2026-03-02T08:00:00.000Z'), ulid: () => newId('e') });
  const meta = { by: 'p1', occurredAt: '2026-03-02T08:00:00.000Z' };
  const append = (...drafts: Omit<DraftEntry, 'by' | 'occurredAt'>[]) => store.append(drafts.map((draft) => ({ ...draft, ...meta }) as DraftEntry));
  append(
    { kind: 'notebook.created', body: { title: 'Many trials', laboratory: 'Quillmere Flexibles' } },
    { kind: 'person.added', body: { personId: 'p1', name: 'Teodor Vance', initials: 'TV', role: 'ink chemist' } },
    { kind: 'trialSet.added', body: { trialSetId: 'set', title: `${trials} trials`, question: 'Which are better than the control?', product: 'dumpling pouch 600 g' } },
    { kind: 'responses.set', body: { trialSetId: 'set', responses, reason: '' } },
  );
  for (let index = 0; index < trials; index++) {
    const [trialId, sampleId] = [newId('t'), newId('s')];
    const drafts: Omit<DraftEntry, 'by' | 'occurredAt'>[] = [
      { kind: 'trial.added', body: { trialId, trialSetId: 'set', name: `R${index}`, control: control && index === 0, components: [], factors: {}, note: '' } },
      { kind: 'sample.added', body: { sampleId, code: `Q-${1000 + index}`, product: 'dumpling pouch 600 g', job: '', roll: '', note: '', lotIds: [] } },
      { kind: 'sample.linked', body: { trialId, sampleId } },
    ];
    const better = index % 4 === 3 ? 1.5 : 0;
    for (const [methodId] of goals) drafts.push(...testEntries(newId('x'), sampleId, methodId, sheets[methodId]!(better, random)));
    append(...drafts);
  }
  const { entryCount } = store;
  store.close();
  return { trialSetId: 'set', entries: entryCount };
}

function testEntries(testId: string, sampleId: string, methodId: string, { conditions = {}, rows }: Sheet): Omit<DraftEntry, 'by' | 'occurredAt'>[] {
  const method = allMethods.find(({ id }) => id === methodId)!;
  const defaults = Object.fromEntries(method.conditions.flatMap((field) => ('default' in field && field.default !== undefined ? [[field.key, field.default]] : [])));
  return [
    { kind: 'test.started', body: { testId, sampleId, methodId, methodVersion: method.version, conditions: { ...defaults, ...conditions }, limits: [], rule: 'guarded' } },
    ...rows.flatMap((cells, row) => Object.entries(cells).map(([key, value]) => ({ kind: 'reading.entered' as const, body: { testId, row: `r${row + 1}`, key, value, typed: String(value) } }))),
    { kind: 'test.finished', body: { testId, calculation: method.calculation, calculationVersion: '1', results: {}, verdicts: [], remark: '' } },
  ];
}
