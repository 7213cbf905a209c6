/** Half grades of visual match, 5 no difference to 1 very great (the steps of the grey scale, ISO 105-A02). */
export const matchGrades = [1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5] as const;

/** A grade as it is written: 4.5 is '4-5'. */
export function gradeText(grade: number): string {
  return Number.isInteger(grade) ? String(grade) : `${Math.floor(grade)}-${Math.ceil(grade)}`;
}
