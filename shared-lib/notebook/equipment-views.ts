import type { Standing } from '../equipment/standing.ts';
import type { FluidFields, InstrumentFields } from './equipment-entries.ts';

export interface InstrumentView extends InstrumentFields {
  instrumentId: string;
  /** As it is typed on a bench sheet: 'Spectrodensitometer, SD-2207'. */
  typed: string;
  /** Titles of the methods that it serves. */
  methods: string[];
  /** Newest first. */
  calibrations: { calibrationId: string; calibratedOn: string; dueOn: string | null; remark: string; enteredBy: string }[];
  standing: Standing;
  /** '' while it is in use. */
  retired: string;
}

export interface FluidView extends FluidFields {
  fluidId: string;
  /** As it is typed on a bench sheet: 'Test fluids 30 to 60, lot TF-9'. */
  typed: string;
  methods: string[];
  standing: Standing;
  /** '' while it is in use. */
  retired: string;
}
