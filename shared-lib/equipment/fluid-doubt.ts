import { daysInWords } from './reading-days.ts';

/** What is known of a test fluid, tape or standard whose readings are looked at. Days are ISO 8601. */
export interface FluidTrust {
  name: string;
  openedOn: string | null;
  /** The last day on which it is to be used. */
  expiresOn: string | null;
  /** ISO 8601, or `null`. */
  retiredAt: string | null;
}

/** Why readings taken with it on these days are doubtful, in one sentence; '' where they are not. @param days in order */
export function fluidDoubt({ name, openedOn, expiresOn, retiredAt }: FluidTrust, days: readonly string[]): string {
  const sentence = (doubtful: readonly string[], why: string) => `Read with ${name} on ${daysInWords(doubtful)}, ${why}.`;
  const expired = days.filter((day) => expiresOn !== null && expiresOn < day);
  if (expired.length > 0) return sentence(expired, `which expired on ${expiresOn}`);
  const retired = days.filter((day) => retiredAt !== null && retiredAt.slice(0, 10) < day);
  if (retired.length > 0) return sentence(retired, `which was taken out of use on ${retiredAt!.slice(0, 10)}`);
  const early = days.filter((day) => openedOn !== null && day < openedOn);
  return early.length > 0 ? sentence(early, `before it was opened on ${openedOn}`) : '';
}
