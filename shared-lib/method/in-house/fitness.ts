import { fitnessOfGrades } from './fitness-of-grades.ts';
import { fitnessOfNumbers } from './fitness-of-numbers.ts';
import type { Fitness, StudiedProperty } from './studied.ts';

/**
 * The plain answer to 'can we decide with it?'. The scatter of a result is that of its readings by one person and the
 * difference between persons together, as in the verdict (`allowForStudy`). Against two limits it is held to their
 * distance, against one to the spread of the parts that were studied; grades are held to agreement beyond chance and to
 * whether everyone puts a part on the same side of the limit.
 * Source: D. C. Montgomery, Introduction to Statistical Quality Control, 6th ed. (2009), 8.7 (share of tolerance);
 * ISO 5725-6:1994, 4.1 (limits of repeatability and reproducibility, 2.8 s); the thresholds are common practice.
 */
export function fitnessOf(property: string, studied: StudiedProperty | { title: string; kind: null }): Fitness {
  const { title } = studied;
  if (studied.kind === null) {
    return { property, title, standing: 'not studied', text: `${title} was not studied as it is read now: nobody knows yet how far two people’s readings lie apart.`, reasons: [], improve: '' };
  }
  return { property, title, ...(studied.kind === 'grade' ? fitnessOfGrades(studied) : fitnessOfNumbers(studied)) };
}
