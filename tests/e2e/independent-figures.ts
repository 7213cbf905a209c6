/** Worked out here with Math alone, so that a fault in the program's own statistics cannot hide behind itself. */

export interface Between {
  /** `null` is open on that side; `low === high` is exact. */
  low: number | null;
  high: number | null;
}

/** Normal distribution function by Simpson's rule over the density; good to 1e-6 for |z| < 9. */
function normalCdf(z: number): number {
  if (z === Infinity || z > 9) return 1;
  if (z === -Infinity || z < -9) return 0;
  const density = (x: number) => Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
  const steps = 80;
  const h = z / steps;
  let sum = density(0) + density(z);
  for (let i = 1; i < steps; i++) sum += (i % 2 === 1 ? 4 : 2) * density(i * h);
  return 0.5 + (sum * h) / 3;
}

function logLikelihood(readings: Between[], mean: number, sd: number): number {
  return readings.reduce((sum, { low, high }) => {
    if (low !== null && low === high) return sum - 0.5 * ((low - mean) / sd) ** 2 - Math.log(sd * Math.sqrt(2 * Math.PI));
    const above = high === null ? 1 : normalCdf((high - mean) / sd);
    const below = low === null ? 0 : normalCdf((low - mean) / sd);
    return sum + Math.log(Math.max(above - below, Number.MIN_VALUE));
  }, 0);
}

/** Where a function with one peak is highest: thirds of the range are dropped until it is narrow. */
function peakOf(height: (x: number) => number, [from, to]: [number, number]): number {
  let [low, high] = [from, to];
  for (let round = 0; round < 70; round++) {
    const third = (high - low) / 3;
    if (height(low + third) < height(high - third)) low += third;
    else high -= third;
  }
  return (low + high) / 2;
}

/** Mean and spread of a normal at which the readings are likeliest, searched within the ranges given. */
export function likeliest(readings: Between[], mean: [number, number], sd: [number, number]): { mean: number; sd: number; logLikelihood: number } {
  const sdAt = (at: number) => peakOf((spread) => logLikelihood(readings, at, spread), sd);
  const bestMean = peakOf((at) => logLikelihood(readings, at, sdAt(at)), mean);
  const bestSd = sdAt(bestMean);
  return { mean: bestMean, sd: bestSd, logLikelihood: logLikelihood(readings, bestMean, bestSd) };
}

/**
 * The ends of the profile-likelihood interval of the mean, whose cut-off n·ln(1 + t²/(n − 1)) makes it the t interval
 * where every reading is exact. `t` is read from a table.
 */
export function profileEnds(readings: Between[], t: number, mean: [number, number], sd: [number, number]): { low: number; high: number } {
  const n = readings.length;
  const peak = likeliest(readings, mean, sd);
  const cut = peak.logLikelihood - (n * Math.log(1 + t ** 2 / (n - 1))) / 2;
  const end = (outside: number): number => {
    let [inner, outer] = [peak.mean, outside];
    for (let step = 0; step < 30; step++) {
      const middle = (inner + outer) / 2;
      const spread = peakOf((candidate) => logLikelihood(readings, middle, candidate), sd);
      if (logLikelihood(readings, middle, spread) > cut) inner = middle;
      else outer = middle;
    }
    return (inner + outer) / 2;
  };
  return { low: end(mean[0]), high: end(mean[1]) };
}
