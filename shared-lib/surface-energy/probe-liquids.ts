/** Surface tension of a probe liquid at 20 °C and its parts, mN/m; a set holds the parts that its authors gave. */
export interface ProbeLiquid {
  totalMNm: number;
  dispersiveMNm?: number;
  polarMNm?: number;
  /** Lifshitz–van der Waals, acid (electron acceptor) and base (electron donor) parts; total = LW + 2 √(acid · base). */
  lifshitzMNm?: number;
  acidMNm?: number;
  baseMNm?: number;
}

/** A published set. Sets differ by several mN/m in the result, so a result always names the one it used. */
export interface LiquidSet {
  title: string;
  source: string;
  liquids: Record<string, ProbeLiquid>;
}

export const liquidSetIds = ['strom', 'owens-wendt', 'wu', 'van-oss', 'annamalai', 'alkanes'] as const;
export type LiquidSetId = (typeof liquidSetIds)[number];

const split = (dispersiveMNm: number, polarMNm: number): ProbeLiquid => ({
  totalMNm: dispersiveMNm + polarMNm,
  dispersiveMNm,
  polarMNm,
});

/** The total is the published one; it agrees with LW + 2 √(acid · base) to 0.05. */
const acidBase = (totalMNm: number, lifshitzMNm: number, acidMNm: number, baseMNm: number): ProbeLiquid => ({
  totalMNm,
  lifshitzMNm,
  acidMNm,
  baseMNm,
});

export const liquidSets: Record<LiquidSetId, LiquidSet> = {
  strom: {
    title: 'Ström 1987',
    source: 'Probe liquids: set of Ström, Fredriksson & Stenius, J. Colloid Interface Sci. 119 (1987) 352, as carried by an open compilation',
    liquids: {
      water: split(21.8, 51.0),
      diiodomethane: split(50.8, 0),
      'ethylene glycol': split(29.0, 19.0),
      formamide: split(39.0, 19.0),
      glycerol: split(34.0, 30.0),
    },
  },
  'owens-wendt': {
    title: 'Owens–Wendt 1969',
    source: 'Probe liquids: Owens & Wendt, J. Appl. Polym. Sci. 13 (1969) 1741 (from memory; reproduces their table)',
    liquids: { water: split(21.8, 51.0), diiodomethane: split(49.5, 1.3) },
  },
  wu: {
    title: 'Wu 1971',
    source: 'Probe liquids: Wu, J. Polym. Sci. C 34 (1971) 19 (from memory; reproduces his totals)',
    liquids: { water: split(22.1, 50.7), diiodomethane: split(44.1, 6.7) },
  },
  'van-oss': {
    title: 'van Oss 1988',
    source:
      'Probe liquids: van Oss, Chaudhury & Good, Chem. Rev. 88 (1988) 927; Good & van Oss 1992 (partly from memory; every total checked against its parts)',
    liquids: {
      water: acidBase(72.8, 21.8, 25.5, 25.5),
      glycerol: acidBase(64.0, 34.0, 3.92, 57.4),
      formamide: acidBase(58.0, 39.0, 2.28, 39.6),
      'ethylene glycol': acidBase(48.0, 29.0, 1.92, 47.0),
      'dimethyl sulfoxide': acidBase(44.0, 36.0, 0.5, 32.0),
      diiodomethane: acidBase(50.8, 50.8, 0, 0),
      '1-bromonaphthalene': acidBase(44.4, 44.4, 0, 0),
      'n-hexadecane': acidBase(27.5, 27.5, 0, 0),
      toluene: acidBase(28.5, 28.5, 0, 0.72),
      'ethyl acetate': acidBase(23.9, 23.9, 0, 6.2),
    },
  },
  annamalai: {
    title: 'Annamalai 2016',
    source: 'Probe liquids: Annamalai et al., Nanoscale 8 (2016) 5764, as given in an open teaching note',
    liquids: { water: split(29.1, 43.7), diiodomethane: split(47.4, 2.6), 'ethylene glycol': split(26.4, 21.3) },
  },
  alkanes: {
    title: 'n-Alkanes, Fox & Zisman 1950',
    source: 'Probe liquids: n-alkane tensions of Fox & Zisman, J. Colloid Sci. 5 (1950) 514 (from memory)',
    liquids: {
      'n-hexane': { totalMNm: 18.4 },
      'n-heptane': { totalMNm: 20.3 },
      'n-octane': { totalMNm: 21.8 },
      'n-nonane': { totalMNm: 22.9 },
      'n-decane': { totalMNm: 23.9 },
      'n-dodecane': { totalMNm: 25.4 },
      'n-tetradecane': { totalMNm: 26.7 },
      'n-hexadecane': { totalMNm: 27.6 },
    },
  },
};

/** Other names under which the same liquids are known. */
const otherNames = new Map([
  ['methylene iodide', 'diiodomethane'],
  ['ch2i2', 'diiodomethane'],
  ['h2o', 'water'],
  ['glycerin', 'glycerol'],
  ['glycerine', 'glycerol'],
  ['dmso', 'dimethyl sulfoxide'],
  ['dimethyl sulphoxide', 'dimethyl sulfoxide'],
  ['alpha-bromonaphthalene', '1-bromonaphthalene'],
  ['hexadecane', 'n-hexadecane'],
]);

/** The liquid of that name in a set, whatever the case of its letters; `undefined` when the set has none. */
export function findProbeLiquid(set: LiquidSetId, spoken: string): ProbeLiquid | undefined {
  const plain = spoken.trim().toLowerCase();
  const name = otherNames.get(plain) ?? plain;
  const { liquids } = liquidSets[set];
  return Object.hasOwn(liquids, name) ? liquids[name] : undefined;
}
