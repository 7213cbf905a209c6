import type { FluidKind } from './equipment-entries.ts';

/** Instruments, and test fluids, tapes and standards. See `tables.ts`. */
export interface EquipmentTables {
  instrument: { instrumentId: string; name: string; serial: string; /** JSON: ids. */ methodIds: string; note: string; retiredAt: string | null; retiredReason: string; addedSeq: number };
  calibration: { calibrationId: string; instrumentId: string; calibratedOn: string; dueOn: string | null; remark: string; enteredBy: string; seq: number };
  fluid: {
    fluidId: string;
    kind: FluidKind;
    name: string;
    lot: string;
    /** JSON: ids. */
    methodIds: string;
    openedOn: string | null;
    expiresOn: string | null;
    note: string;
    retiredAt: string | null;
    retiredReason: string;
    addedSeq: number;
  };
}
