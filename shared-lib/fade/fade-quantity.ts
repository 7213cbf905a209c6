import type { FadeModel } from './fade-model.ts';
import { growthModels } from './growth-models.ts';
import { retentionModels } from './retention-models.ts';

/** What is followed over the exposure: the density left, or the colour difference that has grown. */
export interface FadeQuantity {
  models: readonly FadeModel[];
  /** Value before exposure, as fitted. */
  unfaded: 0 | 1;
  /** A reading at exposure 0 farther than this from unfaded is doubtful. */
  startTolerance: number;
  /** Model taken when there are too few readings to choose. */
  fallback: string;
  /** Whether a value is at the limit or past it. */
  isPast: (value: number, limit: number) => boolean;
  axisTitle: string;
  /** Fitted values times this are what the reader sees: percent for a fraction. */
  shownFactor: number;
  shownUnit: string;
}

export const retainedQuantity: FadeQuantity = {
  models: retentionModels,
  unfaded: 1,
  startTolerance: 0.02,
  fallback: 'first-order',
  isPast: (value, limit) => value <= limit,
  axisTitle: 'Density retained',
  shownFactor: 100,
  shownUnit: '%',
};

export const deltaEQuantity: FadeQuantity = {
  models: growthModels,
  unfaded: 0,
  startTolerance: 1,
  fallback: 'linear-growth',
  isPast: (value, limit) => value >= limit,
  axisTitle: 'Colour difference ΔE',
  shownFactor: 1,
  shownUnit: '',
};
