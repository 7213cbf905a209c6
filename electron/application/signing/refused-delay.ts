/** So many wrong ones cost nothing but the typing. */
const FREE = 4;
const FIRST_SECONDS = 30;
const LONGEST_SECONDS = 3600;

/**
 * Seconds still to wait after `times` wrong passphrases, the last `secondsAgo`: 30 s after the fifth, twice as long after
 * each further one, an hour at most.
 */
export function secondsToWait(times: number, secondsAgo: number): number {
  if (times <= FREE) return 0;
  const delay = Math.min(LONGEST_SECONDS, FIRST_SECONDS * 2 ** Math.min(times - FREE - 1, 20));
  return Math.max(0, Math.ceil(delay - secondsAgo));
}
