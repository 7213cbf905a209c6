import type { WrittenMethod } from './written-method.ts';

/** The method as it goes from lab to lab: pictures of grades are attachments of one notebook, their sentences go along. */
export function withoutPictures(written: WrittenMethod): WrittenMethod {
  return {
    ...written,
    readings: written.readings.map((reading) => (reading.kind === 'grade' ? { ...reading, grades: reading.grades.map(({ grade, meaning }) => ({ grade, meaning })) } : reading)),
  };
}
