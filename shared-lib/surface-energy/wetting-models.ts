import { acidBase } from './acid-base.ts';
import { equationOfState } from './equation-of-state.ts';
import { owensWendt } from './owens-wendt.ts';
import type { LiquidSetId, ProbeLiquid } from './probe-liquids.ts';
import type { LiquidParts } from './resolve-liquid.ts';
import type { WettingModel } from './wetting-model.ts';
import { wu } from './wu.ts';
import { zisman } from './zisman.ts';

export const wettingModelIds = ['owens-wendt', 'wu', 'zisman', 'acid-base', 'equation-of-state'] as const;
export type WettingModelId = (typeof wettingModelIds)[number];

/** A model of wetting: what it needs of its liquids and how it is built. */
export interface WettingModelKind {
  title: string;
  build: (liquids: readonly ProbeLiquid[]) => WettingModel;
  parts: LiquidParts;
  fewestLiquids: number;
  defaultSet: LiquidSetId;
  source: string;
}

export const wettingModels: Record<WettingModelId, WettingModelKind> = {
  'owens-wendt': {
    title: 'Owens–Wendt',
    build: owensWendt,
    parts: 'dispersive-polar',
    fewestLiquids: 2,
    defaultSet: 'strom',
    source: 'Owens & Wendt, J. Appl. Polym. Sci. 13 (1969) 1741; straight line for more than two liquids: Kaelble 1970, Rabel 1971',
  },
  wu: {
    title: 'Wu',
    build: wu,
    parts: 'dispersive-polar',
    fewestLiquids: 2,
    defaultSet: 'wu',
    source: 'Wu, J. Polym. Sci. C 34 (1971) 19; Wu, Polymer Interface and Adhesion, 1982',
  },
  zisman: {
    title: 'Zisman',
    build: zisman,
    parts: 'total',
    fewestLiquids: 2,
    defaultSet: 'alkanes',
    source: 'Fox & Zisman, J. Colloid Sci. 5 (1950) 514',
  },
  'acid-base': {
    title: 'acid–base',
    build: acidBase,
    parts: 'acid-base',
    fewestLiquids: 3,
    defaultSet: 'van-oss',
    source: 'van Oss, Chaudhury & Good, Chem. Rev. 88 (1988) 927',
  },
  'equation-of-state': {
    title: 'equation of state',
    build: equationOfState,
    parts: 'total',
    fewestLiquids: 1,
    defaultSet: 'van-oss',
    source:
      'Li & Neumann, J. Colloid Interface Sci. 137 (1990) 304, exponential form with β = 0.0001247; Kwok & Neumann, Adv. Colloid Interface Sci. 81 (1999) 167',
  },
};
