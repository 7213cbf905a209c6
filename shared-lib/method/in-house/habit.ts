import { z } from 'zod';

/** What a shop-floor test usually leaves open, in the order in which it is asked. */
export const habitQuestions = [
  { key: 'who', label: 'Who does it', ask: 'Who does it today, and does it come out the same whoever does it?', fix: 'Anyone who was shown once on a part whose result is known.', unit: '' },
  { key: 'force', label: 'Load', ask: 'How hard is it pressed, pulled or rubbed?', fix: 'A weight or a spring balance in place of the hand.', unit: 'N' },
  { key: 'strokes', label: 'Strokes', ask: 'How often: strokes, twists, folds? Counted, or until it looks enough?', fix: 'A counted number, there and back as one.', unit: '' },
  { key: 'angle', label: 'Angle', ask: 'At which angle is it pulled, held or looked at?', fix: 'One angle, with a stop or a block to lean on.', unit: '°' },
  { key: 'speed', label: 'Speed', ask: 'How fast?', fix: 'A metronome, or seconds per stroke.', unit: 'mm/s' },
  { key: 'dwell', label: 'Dwell', ask: 'How long is it left: tape on, solvent on, after printing?', fix: 'A time on the clock.', unit: 's' },
  { key: 'contact', label: 'Tape or cloth', ask: 'Which tape, cloth, solvent or counter-face?', fix: 'One article with its lot, fresh each time.', unit: '' },
  { key: 'temperature', label: 'Temperature', ask: 'At which temperature and humidity, and for how long was the film there?', fix: 'Conditioned before, and read off beside it.', unit: '°C' },
  { key: 'place', label: 'Where', ask: 'Where on the print: which colour, across or along the web?', fix: 'A named patch and direction, the same on every roll.', unit: '' },
] as const;

/** What is looked at in the end, and which built-in tests measure the same. */
export const looksAt = [
  { key: 'ink-off', label: 'whether ink comes off', measured: ['tape-adhesion', 'scratch', 'crinkle'] },
  { key: 'colour-rubbed', label: 'whether colour rubs off or smears', measured: ['rub', 'print-density'] },
  { key: 'colour-differs', label: 'whether the colour is right', measured: ['colour-measured', 'print-density'] },
  { key: 'gloss', label: 'whether it is shiny or dull', measured: ['gloss'] },
  { key: 'sticks', label: 'whether it sticks to itself or to the reverse', measured: ['blocking'] },
  { key: 'slides', label: 'whether it slides', measured: ['friction'] },
  { key: 'parts', label: 'whether the layers come apart', measured: ['lamination-bond'] },
  { key: 'wets', label: 'whether a liquid spreads or draws back', measured: ['test-fluids', 'contact-angle'] },
  { key: 'softens', label: 'whether solvent softens it', measured: ['cure-rubs'] },
  { key: 'smells', label: 'whether it smells', measured: ['odour-intensity', 'odour-triangle', 'residual-solvent'] },
  { key: 'heat', label: 'whether it stands heat', measured: ['heat-resistance', 'jaw-pick-off'] },
  { key: 'fades', label: 'whether it fades', measured: ['light-exposure'] },
  { key: 'other', label: 'something else', measured: [] },
] as const;

const looksAtKeys = looksAt.map(({ key }) => key);
const questionKeys = habitQuestions.map(({ key }) => key);

/** A test as people make it today, before it is written down. */
export const habitSchema = z.strictObject({
  title: z.string().trim().min(1).max(120),
  /** What it is to find out. */
  purpose: z.string().trim().max(1000),
  looksAt: z.enum(looksAtKeys),
  /** By question: what is done today, and whether it varies. What does not matter is absent. */
  answers: z.array(z.strictObject({ question: z.enum(questionKeys), today: z.string().trim().max(500), varies: z.boolean(), fixed: z.string().trim().max(200) })).max(habitQuestions.length),
  /** How the outcome is said today: a yes or no, a grade, a number. */
  outcome: z.enum(['yes-no', 'grade', 'number', 'count']),
});

export type Habit = z.output<typeof habitSchema>;
