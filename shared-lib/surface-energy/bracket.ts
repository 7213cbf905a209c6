/** What test fluids say about one wetting tension: it lies from `low` up to `high`, mN/m; `null` leaves that end open. */
export interface Bracket {
  /** Highest fluid that held with no lower fluid retracting. */
  low: number | null;
  /** Lowest fluid that retracted with no higher fluid holding. */
  high: number | null;
}

/** One fluid spread on one position and how long its film stayed whole. */
export interface FluidReading {
  fluidMNm: number;
  heldS: number;
}

export interface ReadBracket extends Bracket {
  /** A fluid held although the same or a lower one retracted; the bracket then spans all fluids that contradict. */
  contradicts: boolean;
}

/**
 * The bracket that the readings of one position give (ASTM D2578 §11.4, ISO 8296): a fluid holds when its film stays whole
 * for at least `criterionS` seconds. Readings that contradict each other widen the bracket until none lies outside it, so
 * that a contradiction never looks like a sharp result.
 */
export function bracketFromReadings(readings: readonly FluidReading[], criterionS: number): ReadBracket {
  const held = readings.filter((reading) => reading.heldS >= criterionS).map((reading) => reading.fluidMNm);
  const retracted = readings.filter((reading) => reading.heldS < criterionS).map((reading) => reading.fluidMNm);
  const lowestRetracted = Math.min(...retracted, Infinity);
  const highestHeld = Math.max(...held, -Infinity);
  const contradicts = highestHeld >= lowestRetracted;
  return {
    low: finiteOrNull(Math.max(...held.filter((fluid) => fluid < lowestRetracted), -Infinity)),
    high: finiteOrNull(Math.min(...retracted.filter((fluid) => fluid > highestHeld), Infinity)),
    contradicts,
  };
}

function finiteOrNull(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
