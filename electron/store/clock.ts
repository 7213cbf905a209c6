import { monotonicFactory } from 'ulid';

/** Time and ids, passed in so that a demo or a test can be repeated exactly. */
export interface Clock {
  now(): Date;
  /** A fresh ULID. */
  ulid(): string;
}

/** The computer's clock; ids rise even within one millisecond. */
export function systemClock(): Clock {
  const ulid = monotonicFactory();
  return { now: () => new Date(), ulid: () => ulid() };
}
