/** The unit of a difference: '14 % higher' would read as a ratio where both are percentages. */
export function differenceUnit(unit: string): string {
  return unit === '%' ? 'percentage points' : unit;
}
