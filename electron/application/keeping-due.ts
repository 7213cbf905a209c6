import { calibrationStanding, standingOf, SOON_DAYS } from '../../shared-lib/equipment/standing.ts';
import type { TodayView } from '../../shared-lib/notebook/views.ts';
import type { NotebookStore } from '../store/notebook-store.ts';
import { calibrationDays, listFluids, listInstruments } from './queries/equipment.ts';

type Due = TodayView['due'][number];
const DAY_MS = 86_400_000;

/** What is kept and ends within 30 days or has ended: calibrations, test fluids, lots, and the time for which samples are kept. */
export function keepingDue(store: NotebookStore, today: string): Due[] {
  return [...calibrationsDue(store, today), ...fluidsDue(store, today), ...lotsDue(store, today), ...retentionsDue(store, today)];
}

function calibrationsDue(store: NotebookStore, today: string): Due[] {
  return listInstruments(store).flatMap(({ instrumentId, typed, retiredAt }) => {
    const { standing, dueOn } = calibrationStanding(calibrationDays(store, instrumentId), today);
    if (retiredAt !== null || standing === 'in order') return [];
    const why = standing === 'none' ? 'It has no calibration on record; readings taken with it are flagged.' : standing === 'ended' ? `The calibration ended on ${dueOn}; readings taken with it since are flagged.` : `The calibration ends on ${dueOn}.`;
    return [due(`Calibrate ${typed}`, why, dueOn ?? today, today, { equipmentId: instrumentId })];
  });
}

function fluidsDue(store: NotebookStore, today: string): Due[] {
  return listFluids(store).flatMap(({ fluidId, typed, expiresOn, retiredAt }) => {
    const standing = standingOf(expiresOn, today);
    if (retiredAt !== null || standing === 'in order') return [];
    const why = standing === 'ended' ? `It expired on ${expiresOn}; readings taken with it since are flagged.` : `It expires on ${expiresOn}.`;
    return [due(`Replace ${typed}`, why, expiresOn!, today, { equipmentId: fluidId })];
  });
}

function lotsDue(store: NotebookStore, today: string): Due[] {
  return store
    .all<{ lotId: string; name: string; expiresOn: string }>(
      `SELECT lotId, material.name || ', lot ' || lot.code AS name, expiresOn FROM lot JOIN material USING (materialId)
       WHERE retiredAt IS NULL AND expiresOn <= ?`,
      [daysOn(today, SOON_DAYS)],
    )
    .map(({ lotId, name, expiresOn }) =>
      due(`Use up or retire ${name}`, expiresOn < today ? `It expired on ${expiresOn}; samples made of it since are flagged.` : `It expires on ${expiresOn}.`, expiresOn, today, { lotId }),
    );
}

function retentionsDue(store: NotebookStore, today: string): Due[] {
  return store
    .all<{ sampleId: string; code: string; keptAt: string; retainedUntil: string }>(
      'SELECT sampleId, code, keptAt, retainedUntil FROM sample WHERE retiredAt IS NULL AND retainedUntil <= ?',
      [daysOn(today, SOON_DAYS)],
    )
    .map(({ sampleId, code, keptAt, retainedUntil }) =>
      due(`Dispose of sample ${code}, or keep it longer`, `It is kept until ${retainedUntil}${keptAt ? `, at ${keptAt}` : ''}.`, retainedUntil, today, { sampleId }),
    );
}

function due(what: string, why: string, dueOn: string, today: string, at: { sampleId?: string; lotId?: string; equipmentId?: string }): Due {
  return { what, why, dueOn, overdue: dueOn < today, sampleId: '', testId: '', ...at };
}

function daysOn(day: string, days: number): string {
  return new Date(Date.parse(day) + days * DAY_MS).toISOString().slice(0, 10);
}
