import { z } from 'zod';
import { call } from './api-call.ts';
import { calibrationSchema, fluidFieldsSchema, instrumentFieldsSchema } from './notebook/equipment-entries.ts';
import type { FluidView, InstrumentView } from './notebook/equipment-views.ts';

const id = z.string().min(1).max(64);
const reason = z.string().max(20_000).default('');

/** The calls about instruments, and about test fluids, tapes and standards. */
export const equipmentCalls = {
  'instruments.list': call<InstrumentView[]>()(z.strictObject({})),
  'instrument.add': call<InstrumentView>()(z.strictObject(instrumentFieldsSchema.shape)),
  'instrument.change': call<InstrumentView>()(z.strictObject({ instrumentId: id, ...instrumentFieldsSchema.shape, reason })),
  'instrument.calibrate': call<InstrumentView>()(z.strictObject({ instrumentId: id, ...calibrationSchema.shape })),
  'calibration.void': call<InstrumentView>()(z.strictObject({ calibrationId: id, reason })),
  'instrument.retire': call<InstrumentView>()(z.strictObject({ instrumentId: id, reason })),
  'instrument.return': call<InstrumentView>()(z.strictObject({ instrumentId: id, reason })),
  'fluids.list': call<FluidView[]>()(z.strictObject({})),
  'fluid.add': call<FluidView>()(z.strictObject(fluidFieldsSchema.shape)),
  'fluid.change': call<FluidView>()(z.strictObject({ fluidId: id, ...fluidFieldsSchema.shape, reason })),
  'fluid.retire': call<FluidView>()(z.strictObject({ fluidId: id, reason })),
  'fluid.return': call<FluidView>()(z.strictObject({ fluidId: id, reason })),
} as const;
