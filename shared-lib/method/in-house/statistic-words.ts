import type { Statistic, WrittenReading } from './written-method.ts';

/** What a statistic is called beside a reading: 'mean', 'share passing'. */
export const statisticWords: Record<Statistic, string> = {
  mean: 'mean',
  median: 'median',
  minimum: 'lowest',
  maximum: 'highest',
  'share-passing': 'share that passes',
  'median-grade': 'median grade',
  'change-pct': 'per cent change',
  ratio: 'ratio',
  'count-per-area': 'count per area',
};

const byKind: Record<WrittenReading['kind'], readonly Statistic[]> = {
  number: ['mean', 'median', 'minimum', 'maximum', 'share-passing', 'change-pct', 'ratio'],
  count: ['mean', 'median', 'minimum', 'maximum', 'share-passing', 'change-pct', 'ratio', 'count-per-area'],
  grade: ['median-grade', 'minimum', 'maximum', 'share-passing'],
  'yes-no': ['share-passing'],
};

/** The statistics that a kind of reading allows, the usual one first. */
export function statisticsFor(kind: WrittenReading['kind']): readonly Statistic[] {
  return byKind[kind];
}

/** The unit that a statistic of a reading has. Counts per area are per square decimetre. */
export function unitOf(statistic: Statistic, readingUnit: string): string {
  switch (statistic) {
    case 'share-passing':
    case 'change-pct':
      return '%';
    case 'ratio':
      return '';
    case 'count-per-area':
      return '/dm²';
    default:
      return readingUnit;
  }
}

/** Whether a property is a grade, which has an order and no distances. */
export function isGrade(statistic: Statistic, reading: WrittenReading): boolean {
  return reading.kind === 'grade' && statistic !== 'share-passing';
}
