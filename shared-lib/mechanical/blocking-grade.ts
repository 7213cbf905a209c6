/** Grades of blocking, from layers that fall apart to ones that tear (common practice, named here). */
export const blockingGrades = [0, 1, 2, 3, 4, 5] as const;

export const BLOCKING_WORDS: Record<(typeof blockingGrades)[number], string> = {
  0: 'layers slide apart by themselves',
  1: 'cling slightly, no mark',
  2: 'pull apart with a sound, gloss changed at most',
  3: 'specks of ink or coating on the other side',
  4: 'areas of ink or coating on the other side',
  5: 'cannot be parted without tearing',
};
