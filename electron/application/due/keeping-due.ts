import { calibrationStanding, standingOf, SOON_DAYS } from '../../../shared-lib/equipment/standing.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import { calibrationDays, listFluids, listInstruments } from '../queries/equipment.ts';
import type { StandingDue } from './standing-due.ts';

const DAY_MS = 86_400_000;

/**
 * What is kept and ends within 30 days or has ended: calibrations, test fluids, lots, and the time for which samples are kept.
 * @param standing what plans still ask for on those samples is among it
 */
export function keepingDue(store: NotebookStore, today: string, standing: readonly StandingDue[]): StandingDue[] {
  return [...calibrationsDue(store, today), ...fluidsDue(store, today), ...lotsDue(store, today), ...retentionsDue(store, today, standing)];
}

function calibrationsDue(store: NotebookStore, today: string): StandingDue[] {
  return listInstruments(store).flatMap(({ instrumentId, typed, retiredAt }) => {
    const { standing, dueOn } = calibrationStanding(calibrationDays(store, instrumentId), today);
    if (retiredAt !== null || standing === 'in order') return [];
    const why = standing === 'none' ? 'It has no calibration on record; readings taken with it are flagged.' : standing === 'ended' ? `The calibration ended on ${dueOn}; readings taken with it since are flagged.` : `The calibration ends on ${dueOn}.`;
    return [due('instrument', `Calibrate ${typed}`, why, dueOn ?? today, { equipmentId: instrumentId })];
  });
}

function fluidsDue(store: NotebookStore, today: string): StandingDue[] {
  return listFluids(store).flatMap(({ fluidId, typed, expiresOn, retiredAt }) => {
    const standing = standingOf(expiresOn, today);
    if (retiredAt !== null || standing === 'in order') return [];
    const why = standing === 'ended' ? `It expired on ${expiresOn}; readings taken with it since are flagged.` : `It expires on ${expiresOn}.`;
    return [due('fluid', `Replace ${typed}`, why, expiresOn!, { equipmentId: fluidId })];
  });
}

function lotsDue(store: NotebookStore, today: string): StandingDue[] {
  return store
    .all<{ lotId: string; name: string; expiresOn: string }>(
      `SELECT lotId, material.name || ', lot ' || lot.code AS name, expiresOn FROM lot JOIN material USING (materialId)
       WHERE retiredAt IS NULL AND expiresOn <= ?`,
      [daysOn(today, SOON_DAYS)],
    )
    .map(({ lotId, name, expiresOn }) =>
      due('lot', `Use up or retire ${name}`, expiresOn < today ? `It expired on ${expiresOn}; samples made of it since are flagged.` : `It expires on ${expiresOn}.`, expiresOn, { lotId }),
    );
}

/** Not before its last planned test: what is disposed of cannot be tested. */
function retentionsDue(store: NotebookStore, today: string, standing: readonly StandingDue[]): StandingDue[] {
  const lastTests = new Map(standing.filter(({ kind }) => kind === 'plan').sort(byDay).map(({ sampleId, dueOn }) => [sampleId, dueOn]));
  return store
    .all<{ sampleId: string; code: string; keptAt: string; retainedUntil: string }>(
      'SELECT sampleId, code, keptAt, retainedUntil FROM sample WHERE retiredAt IS NULL AND retainedUntil <= ?',
      [daysOn(today, SOON_DAYS)],
    )
    .map(({ sampleId, code, keptAt, retainedUntil }) => {
      const lastTest = lastTests.get(sampleId);
      const why = `It is kept until ${retainedUntil}${keptAt ? `, at ${keptAt}` : ''}${lastTest ? `; its plan still asks for tests until ${lastTest}` : ''}.`;
      return due('sample', `Dispose of sample ${code}, or keep it longer`, why, lastTest && lastTest > retainedUntil ? lastTest : retainedUntil, { sampleId });
    });
}

function byDay({ dueOn: one }: StandingDue, { dueOn: other }: StandingDue): number {
  return (one ?? '').localeCompare(other ?? '');
}

function due(kind: StandingDue['kind'], what: string, why: string, dueOn: string, at: { sampleId?: string; lotId?: string; equipmentId?: string }): StandingDue {
  return { kind, what, why, dueOn, sampleId: '', testId: '', ...at };
}

function daysOn(day: string, days: number): string {
  return new Date(Date.parse(day) + days * DAY_MS).toISOString().slice(0, 10);
}
