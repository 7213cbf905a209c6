import type { Bracket } from './bracket.ts';

export type RequirementWord = 'meets' | 'falls short' | 'undecided';

/** What a bracket surely says about a required wetting tension, mN/m; a fluid at the requirement that holds meets it. */
export function againstRequirement(bracket: Bracket, requiredMNm: number): RequirementWord {
  if (bracket.low !== null && bracket.low >= requiredMNm) return 'meets';
  if (bracket.high !== null && bracket.high <= requiredMNm) return 'falls short';
  return 'undecided';
}
