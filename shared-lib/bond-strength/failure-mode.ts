/** How a bond specimen came apart. */
export const FAILURE_MODES = ['adhesive', 'cohesive-adhesive', 'ink-split', 'ink-lift', 'film-tear', 'film-stretch'] as const;
export type FailureMode = (typeof FAILURE_MODES)[number];

/** In words, for screens and tables. */
export const MODE_WORDS: Record<FailureMode, string> = {
  adhesive: 'adhesive from film',
  'cohesive-adhesive': 'within the adhesive',
  'ink-split': 'within the ink',
  'ink-lift': 'ink lifted from film',
  'film-tear': 'film tore',
  'film-stretch': 'film stretched',
};

/** The film gave way before the bond: the force is only a lower bound of the bond strength. */
export function isLowerBound(mode: FailureMode): boolean {
  return mode === 'film-tear' || mode === 'film-stretch';
}
