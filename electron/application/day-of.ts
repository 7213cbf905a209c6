/** The day of a moment as ISO 8601, UTC. */
export function dayOf(moment: Date | string): string {
  return (typeof moment === 'string' ? moment : moment.toISOString()).slice(0, 10);
}
