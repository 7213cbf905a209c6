import type { Flag } from '../../shared-lib/calculation/result.ts';
import { fluidDoubt } from '../../shared-lib/equipment/fluid-doubt.ts';
import { instrumentDoubt } from '../../shared-lib/equipment/instrument-doubt.ts';
import type { Method } from '../../shared-lib/method/method.ts';
import type { NotebookStore } from '../store/notebook-store.ts';
import { dayOf } from './day-of.ts';
import { calibrationDays, findFluid, findInstrument } from './queries/equipment.ts';
import { doubtfulLotsOfSample } from './queries/lots.ts';
import { readingDays } from './queries/reading-days.ts';
import { findSample } from './queries/samples.ts';
import type { StoredTest } from './queries/tests.ts';

/** What makes the readings of a test doubtful and does not stand among them: what they were taken with, and what the sample is made of. */
export function doubtFlags(store: NotebookStore, test: StoredTest, method: Method): Flag[] {
  return [...equipmentFlags(store, test, method), ...lotFlags(store, test)];
}

/** A reading taken with an instrument out of calibration, or an expired fluid, is flagged and counts. */
function equipmentFlags(store: NotebookStore, test: StoredTest, method: Method): Flag[] {
  const named = method.conditions.flatMap((field) => {
    const value = field.kind === 'item' && (field.of === 'instrument' || field.of === 'fluid') ? test.conditions[field.key]?.value : null;
    return typeof value === 'string' ? [{ key: field.key, value }] : [];
  });
  if (named.length === 0) return [];
  const days = readingDays(store, test.testId, method.readings);
  return named.flatMap(({ key, value }) => {
    const instrument = findInstrument(store, value);
    const fluid = findFluid(store, value);
    const text = instrument
      ? instrumentDoubt({ name: instrument.typed, calibrations: calibrationDays(store, value), retiredAt: instrument.retiredAt }, days)
      : fluid
        ? fluidDoubt({ name: fluid.typed, openedOn: fluid.openedOn, expiresOn: fluid.expiresOn, retiredAt: fluid.retiredAt }, days)
        : '';
    return text ? [{ code: instrument ? 'calibration' : 'expired-fluid', where: `conditions.${key}`, text }] : [];
  });
}

function lotFlags(store: NotebookStore, { sampleId }: StoredTest): Flag[] {
  const sample = findSample(store, sampleId);
  if (!sample) return [];
  return doubtfulLotsOfSample(store, sampleId, dayOf(sample.addedAt)).map(({ name, doubt }) => ({ code: 'doubtful-lot', where: '', text: `The sample is made of ${name}, which ${doubt}.` }));
}
