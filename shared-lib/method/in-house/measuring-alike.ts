import type { WrittenMethod } from './written-method.ts';

/**
 * Whether two versions read in the same way, so that a measurement study of one holds for the other: the same settings,
 * the same readings with the same scales, and the same statistic of them. Limits, replicates, help, the words around
 * them and whether the instrument is asked for may differ.
 */
export function areMeasuringAlike(a: WrittenMethod, b: WrittenMethod, property: string): boolean {
  return JSON.stringify(measuring(a, property)) === JSON.stringify(measuring(b, property));
}

function measuring({ settings, readings, properties }: WrittenMethod, key: string) {
  const property = properties.find((candidate) => candidate.key === key);
  return {
    settings: settings.filter(({ kind }) => kind !== 'instrument'),
    readings: readings.filter((reading) => reading.key === property?.reading || reading.key === property?.against),
    property: property && [property.reading, property.statistic, property.against, property.passes, property.areaCm2],
  };
}
