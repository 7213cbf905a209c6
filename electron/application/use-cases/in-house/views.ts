import { fitnessOf } from '../../../../shared-lib/method/in-house/fitness.ts';
import type { Fitness } from '../../../../shared-lib/method/in-house/studied.ts';
import type { InHouseMethod } from '../../../../shared-lib/method/in-house/in-house-method.ts';
import { studiedProperty } from '../../../../shared-lib/method/in-house/studied-property.ts';
import type { WrittenProperty, WrittenReading } from '../../../../shared-lib/method/in-house/written-method.ts';
import type { InHouseLine, InHouseState, InHouseView } from '../../../../shared-lib/notebook/in-house-views.ts';
import type { OpenNotebook } from '../../open-notebook.ts';
import { findHabit, findInHouseMethod, listHabits, listInHouseMethods, testsByVersion, versionsOf } from '../../queries/in-house-methods.ts';
import { nameOf } from '../../queries/people.ts';
import { listStudies } from '../../queries/studies.ts';
import { Refusal } from '../../refusal.ts';
import type { Workplace } from '../../workplace.ts';

/** The shop's own methods, retired ones last, and the habits that are not written down yet. */
export function inHouseMethodsList({ notebook }: Workplace): InHouseLine[] {
  const written = listInHouseMethods(notebook.store).map(({ methodId, title, version, retired }) => ({
    methodId,
    title,
    version,
    retired,
    state: stateOf(fitnessesOf(notebook, notebook.methods.inHouse(methodId, version)!)).state,
  }));
  const habits = listHabits(notebook.store)
    .filter(({ methodId }) => !written.some((method) => method.methodId === methodId))
    .map(({ methodId, title }) => ({ methodId, title, version: '', retired: false, state: 'not written' as const }));
  return [...written.filter(({ retired }) => !retired), ...habits, ...written.filter(({ retired }) => retired)];
}

/** @throws Refusal when there is neither such a method nor such a habit */
export function inHouseView(notebook: OpenNotebook, methodId: string): InHouseView {
  const { store } = notebook;
  const method = findInHouseMethod(store, methodId);
  const habit = findHabit(store, methodId);
  if (!method) {
    if (!habit) throw new Refusal('not-found', 'This method is not in the notebook.');
    return { methodId, title: habit.title, version: '', retired: false, retiredReason: '', state: 'not written', why: ['It is a habit: nothing is written down that another person could repeat.'], habit, written: null, versions: [], fitness: [] };
  }
  const current = notebook.methods.inHouse(methodId, method.version)!;
  const fitness = fitnessesOf(notebook, current);
  const tests = testsByVersion(store, methodId);
  const versions = versionsOf(store, methodId).map(({ methodId: _same, writtenBy, ...version }) => ({
    ...version,
    writtenBy: nameOf(store, writtenBy),
    ...(tests.get(version.version) ?? { tests: 0, running: 0 }),
  }));
  const { title, version, retired, retiredReason } = method;
  return { methodId, title, version, retired, retiredReason, ...stateOf(fitness), habit, written: current.written, versions, fitness };
}

/** The properties that lists show decide on the state of the whole. */
function stateOf(fitness: (Fitness & { headline: boolean })[]): { state: InHouseState; why: string[] } {
  const shown = fitness.some(({ headline }) => headline) ? fitness.filter(({ headline }) => headline) : fitness;
  const why = shown.map(({ text }) => text);
  if (shown.some(({ standing }) => standing === 'not fit')) return { state: 'not fit to decide', why };
  if (shown.every(({ standing }) => standing === 'fit')) return { state: 'fit to decide', why };
  return { state: shown.some(({ standing }) => standing !== 'not studied') ? 'studied' : 'written', why };
}

function fitnessesOf(notebook: OpenNotebook, method: InHouseMethod): (Fitness & { headline: boolean })[] {
  const studies = listStudies(notebook.store, method.id);
  return method.written.properties.flatMap((written) => {
    const property = method.properties.find(({ key }) => key === written.key)!;
    const reading = method.written.readings.find(({ key }) => key === written.reading)!;
    if (written.statistic === 'share-passing' && (reading.kind === 'number' || reading.kind === 'count')) return [];
    const study = studies.find(({ property: key, methodVersion }) => key === written.key && notebook.methods.measuresAlike(method.id, key, methodVersion, method.version));
    const { title } = written;
    if (!study) return [{ ...fitnessOf(written.key, { title, kind: null }), headline: written.headline }];
    const studied = studiedProperty(method, property);
    return [
      {
        ...fitnessOf(written.key, {
          title,
          unit: studied.unit,
          kind: study.kind,
          limit: limitOfReadings(written, reading),
          replicates: method.written.replicates,
          averaged: written.statistic === 'mean' || written.statistic === 'change-pct' || written.statistic === 'ratio',
          results: study.results,
          readings: study.readings,
        }),
        headline: written.headline,
      },
    ];
  });
}

/** Where single readings are decided on: a share says what passes, any other property has a limit. */
function limitOfReadings({ statistic, passes, limit }: WrittenProperty, { kind }: WrittenReading): { lower: number | null; upper: number | null } | null {
  if (statistic !== 'share-passing') return limit;
  return kind === 'yes-no' ? { lower: 1, upper: null } : passes;
}
