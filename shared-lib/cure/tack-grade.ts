/** Grades of surface tack by touch and cotton fibres (common practice, named here). */
export const tackGrades = [0, 1, 2, 3, 4, 5] as const;

export const TACK_WORDS: Record<(typeof tackGrades)[number], string> = {
  0: 'dry, no fibre stays, no mark',
  1: 'a slight drag, no fibre stays',
  2: 'a few fibres stay',
  3: 'many fibres stay, the finger leaves a mark',
  4: 'sticky, ink on the finger',
  5: 'wet',
};
