import { UNDONE } from './undone-reason.ts';

/** What can make a lot doubtful. Days are ISO 8601. */
export interface LotTrust {
  expiresOn: string | null;
  /** When it was retired, ISO 8601, or `null`. */
  retiredAt: string | null;
  retiredReason: string;
}

/** Why a lot is not to be relied on, on `day`, as the rest of a sentence that begins with its name; '' where it is. */
export function lotDoubt({ expiresOn, retiredAt, retiredReason }: LotTrust, day: string): string {
  const expired = expiresOn !== null && expiresOn < day ? `expired on ${expiresOn}` : '';
  if (retiredAt !== null && retiredReason === UNDONE) return `was undone on ${retiredAt.slice(0, 10)}`;
  const retired = retiredAt !== null ? `was retired on ${retiredAt.slice(0, 10)} (${retiredReason.replace(/[.!?…]+$/, '')})` : '';
  return [retired, expired].filter(Boolean).join(' and ');
}
