import { FAILURE_MODES, MODE_WORDS, type FailureMode } from './failure-mode.ts';

/** One key each; x for a stretched film, since s is the split ink. */
const SHORTCUTS: Record<FailureMode, string> = {
  adhesive: 'a',
  'cohesive-adhesive': 'c',
  'ink-split': 's',
  'ink-lift': 'l',
  'film-tear': 't',
  'film-stretch': 'x',
};

/** Failure modes as a choice on a bench sheet. */
export const MODE_CHOICES = FAILURE_MODES.map((mode) => ({ value: mode, label: MODE_WORDS[mode], shortcut: SHORTCUTS[mode] }));
