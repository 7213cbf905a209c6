import { InputError } from '../calculation/input-error.ts';
import type { Flag } from '../calculation/result.ts';

/**
 * Runs `compute` on some of the readings, and puts its flags and refusals down to their places among all of them:
 * `readings[0]` of the part becomes `readings[places[0]]`.
 * @throws InputError as `compute`
 */
export function inPlace<Answer>(places: readonly number[], flags: Flag[], compute: (flags: Flag[]) => Answer): Answer {
  const moved = (where: string) => where.replace(/^readings\[(\d+)\]/, (_, index: string) => `readings[${places[Number(index)]!}]`);
  const own: Flag[] = [];
  try {
    return compute(own);
  } catch (error) {
    throw error instanceof InputError ? new InputError(moved(error.field), error.value, error.message) : error;
  } finally {
    flags.push(...own.map((flag) => ({ ...flag, where: moved(flag.where) })));
  }
}
