import { z } from 'zod';
import { call } from './api-call.ts';
import { habitSchema } from './method/in-house/habit.ts';
import { writtenMethodSchema } from './method/in-house/written-method.ts';
import type { MethodData } from './method/method.ts';
import type { InHouseLine, InHouseView, MethodFileView } from './notebook/in-house-views.ts';

const id = z.string().min(1).max(64);
const text = z.string().max(20_000);
/** A method file as text; what is larger than any method is refused in words. */
const file = z.string().max(2_000_000);

/** The calls about in-house methods. */
export const inHouseCalls = {
  /** One version of a method; left out: that which new tests take. */
  'method.get': call<MethodData>()(z.strictObject({ methodId: z.string().max(100), version: z.string().max(40).optional() })),

  'inHouseMethods.list': call<InHouseLine[]>()(z.strictObject({})),
  'inHouseMethod.get': call<InHouseView>()(z.strictObject({ methodId: id })),
  /** `methodId`: of the habit that it is written from. */
  'inHouseMethod.add': call<InHouseView>()(z.strictObject({ written: writtenMethodSchema, methodId: id.optional() })),
  /** Makes a version; tests that run keep theirs. */
  'inHouseMethod.change': call<InHouseView>()(z.strictObject({ methodId: id, written: writtenMethodSchema, reason: text })),
  'inHouseMethod.retire': call<InHouseView>()(z.strictObject({ methodId: id, reason: text })),
  /** `methodId` left out: a new habit. */
  'habit.describe': call<InHouseView>()(z.strictObject({ methodId: id.optional(), habit: habitSchema })),

  'methodFile.write': call<{ fileName: string; text: string }>()(z.strictObject({ methodId: id, version: z.string().max(40).optional() })),
  /** What taking the file in would do; records nothing. */
  'methodFile.inspect': call<MethodFileView>()(z.strictObject({ file })),
  'methodFile.takeIn': call<InHouseView>()(z.strictObject({ file })),
} as const;
