import { runCalculation } from '../calculation/calculation.ts';
import type { CalculationResult, Flag } from '../calculation/result.ts';
import { atLastExposure, type LastExposure } from './at-last-exposure.ts';
import { exposedPatches, type ExposedReading, type ExposureReading } from './exposed-patches.ts';
import { fadeLifeCalculation } from './fade-life.calculation.ts';
import { leastExposed } from './fade-series.ts';
import type { ExposureUnit } from './radiant-exposure.ts';

/** What is asked of every colour alike. */
export interface FadeQuestion {
  endpointOn: 'retention' | 'deltaE00';
  endpoint: { retentionPct: number; deltaE00?: number | undefined };
  exposureUnit: ExposureUnit;
  irradianceWPerM2?: number | undefined;
  /** To subtract from densities; 0 where they are read minus paper. */
  paper: number;
  level: number;
}

/** One colour of a programme: replicate patches of one print. */
export interface ColourFade {
  /** '' where the colours are not named. */
  name: string;
  patches: ExposedReading[][];
  /** Exposure 0 while only unexposed readings are there. */
  last: LastExposure;
  /** `null` while a patch has too few readings for a curve. */
  life: CalculationResult | null;
}

/**
 * How one colour has faded, and when it comes to its endpoint.
 * @param readings in the order of exposure within each patch
 * @throws InputError as `exposedPatches` and the calculation `fade-life`
 */
export function colourFade(name: string, readings: readonly ExposureReading[], question: FadeQuestion, flags: Flag[]): ColourFade {
  const patches = exposedPatches(readings, question.paper, flags);
  const last = atLastExposure(patches, question.level, flags);
  return { name, patches, last, life: last.exposure === 0 ? null : lifeOf(patches, question) };
}

/** Fade life over the readings that have the quantity asked for. */
function lifeOf(patches: ExposedReading[][], { endpointOn, endpoint, exposureUnit, irradianceWPerM2, level }: FadeQuestion): CalculationResult | null {
  const key = endpointOn === 'retention' ? 'retentionPct' : 'deltaE00';
  const read = patches.map((patch) => patch.filter((reading) => reading[key] !== null));
  if (read.some((patch) => patch.filter(({ exposure }) => exposure > 0).length < leastExposed)) return null;
  return runCalculation(fadeLifeCalculation, {
    readings: read.flat().map((reading) => ({
      exposure: reading.exposure,
      ...(reading.series === '' ? {} : { series: reading.series }),
      ...(endpointOn === 'retention' ? { retained: reading.retentionPct! } : { deltaE: reading.deltaE00! }),
    })),
    ...(endpointOn === 'retention' ? { retainedAs: 'percent', endpoint: { retentionPct: endpoint.retentionPct } } : { endpoint: { deltaE: endpoint.deltaE00 } }),
    exposureUnit,
    irradianceWPerM2,
    level,
  });
}
