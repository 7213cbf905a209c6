import type { ItemChoice } from '../../../shared-lib/notebook/colour-views.ts';
import type { Calibration } from '../../../shared-lib/equipment/instrument-doubt.ts';
import { calibrationStanding, standingOf, type Standing } from '../../../shared-lib/equipment/standing.ts';
import type { Tables } from '../../../shared-lib/notebook/tables.ts';
import type { NotebookStore } from '../../store/notebook-store.ts';
import { likePattern } from './like-pattern.ts';

/** SQL for what an instrument is called, and typed as. */
export const INSTRUMENT_NAME = "name || CASE serial WHEN '' THEN '' ELSE ', ' || serial END";
/** SQL for what a test fluid, tape or standard is called, and typed as. */
export const FLUID_NAME = "name || CASE lot WHEN '' THEN '' ELSE ', lot ' || lot END";

export type StoredInstrument = Tables['instrument'] & { typed: string };
export type StoredFluid = Tables['fluid'] & { typed: string };
export type StoredCalibration = Tables['calibration'];

const INSTRUMENTS = `SELECT *, ${INSTRUMENT_NAME} AS typed FROM instrument`;
const FLUIDS = `SELECT *, ${FLUID_NAME} AS typed FROM fluid`;

/** Those in use first, by name. */
export function listInstruments(store: NotebookStore): StoredInstrument[] {
  return store.all<StoredInstrument>(`${INSTRUMENTS} ORDER BY retiredAt IS NOT NULL, name, serial`);
}

export function findInstrument(store: NotebookStore, instrumentId: string): StoredInstrument | undefined {
  return store.one<StoredInstrument>(`${INSTRUMENTS} WHERE instrumentId = ?`, [instrumentId]);
}

/** Newest first. */
export function calibrationsOf(store: NotebookStore, instrumentId: string): StoredCalibration[] {
  return store.all<StoredCalibration>('SELECT * FROM calibration WHERE instrumentId = ? ORDER BY calibratedOn DESC, seq DESC', [instrumentId]);
}

export function findCalibration(store: NotebookStore, calibrationId: string): StoredCalibration | undefined {
  return store.one<StoredCalibration>('SELECT * FROM calibration WHERE calibrationId = ?', [calibrationId]);
}

/** Those in use first, by name. */
export function listFluids(store: NotebookStore): StoredFluid[] {
  return store.all<StoredFluid>(`${FLUIDS} ORDER BY retiredAt IS NOT NULL, name, lot`);
}

export function findFluid(store: NotebookStore, fluidId: string): StoredFluid | undefined {
  return store.one<StoredFluid>(`${FLUIDS} WHERE fluidId = ?`, [fluidId]);
}

/** The id of what is typed so, whatever the case. */
export function equipmentTyped(store: NotebookStore, of: 'instrument' | 'fluid', typed: string): string | undefined {
  const sql = of === 'instrument' ? `SELECT instrumentId AS id FROM instrument WHERE lower(${INSTRUMENT_NAME}) = lower(?)` : `SELECT fluidId AS id FROM fluid WHERE lower(${FLUID_NAME}) = lower(?)`;
  return store.one<{ id: string }>(sql, [typed])?.id;
}

/** What is in use and holds `search` in its name, what serves the method first, then what serves any; each with how it stands on the day `today`. */
export function equipmentChoices(store: NotebookStore, of: 'instrument' | 'fluid', search: string, methodId: string, most: number, today: string): ItemChoice[] {
  const [idKey, name, facts] = of === 'instrument' ? ['instrumentId', INSTRUMENT_NAME, "'' AS kind, NULL AS expiresOn"] : ['fluidId', FLUID_NAME, 'kind, expiresOn'];
  const found = store.all<{ id: string; typed: string; kind: string; expiresOn: string | null }>(
    `SELECT ${idKey} AS id, ${name} AS typed, ${facts} FROM ${of} WHERE retiredAt IS NULL AND ${name} LIKE ? ESCAPE '\\'
     ORDER BY instr(methodIds, '"' || ? || '"') = 0, methodIds <> '[]', typed LIMIT ?`,
    [likePattern(search), methodId, most],
  );
  return found.map(({ id, typed, kind, expiresOn }) => {
    if (of === 'instrument') return { typed, ...calibrationInWords(calibrationDays(store, id), today) };
    const standing = standingOf(expiresOn, today);
    return { typed, standing, detail: expiresOn === null ? kind : `${kind}, ${standing === 'ended' ? 'expired on' : 'expires'} ${expiresOn}` };
  });
}

/** @param calibrations newest first */
function calibrationInWords(calibrations: readonly Calibration[], today: string): { standing: Standing; detail: string } {
  const { standing, dueOn } = calibrationStanding(calibrations, today);
  if (standing === 'none') return { standing, detail: 'no calibration' };
  if (dueOn === null) return { standing, detail: `calibrated ${calibrations[0]!.calibratedOn}` };
  return { standing, detail: standing === 'ended' ? `calibration ended on ${dueOn}` : `calibrated until ${dueOn}` };
}

/** @returns the calibrations as they are weighed */
export function calibrationDays(store: NotebookStore, instrumentId: string): Calibration[] {
  return calibrationsOf(store, instrumentId).map(({ calibratedOn, dueOn }) => ({ calibratedOn, dueOn }));
}
