/** A test fluid of formamide and 2-ethoxyethanol. */
export interface TestFluid {
  /** Nominal wetting tension at 23 °C, mN/m. */
  tensionMNm: number;
  /** Formamide in the mixture, % by volume at 23 °C; the rest is 2-ethoxyethanol. */
  formamidePct: number;
}

/** Where the table stands. The scale is empirical: the pure 2-ethoxyethanol of the 30 mN/m fluid measures about 28.6 mN/m. */
export const fluidTableSource = 'ASTM D2578 Table 1, the same mixtures as in ISO 8296 and JIS K 6768 (from memory; check against the standard)';

const rows: [number, number][] = [
  [30, 0], [31, 2.5], [32, 10.5], [33, 19.0], [34, 26.5], [35, 35.0], [36, 42.5], [37, 48.5], [38, 54.0], [39, 59.0], [40, 63.5],
  [41, 67.5], [42, 71.5], [43, 74.7], [44, 78.0], [45, 80.3], [46, 83.0], [48, 87.0], [50, 90.7], [52, 93.7], [54, 96.5], [56, 99.0],
];

/** Test fluids in order of tension; above 46 mN/m the standard has even values only. */
export const fluidTable: readonly TestFluid[] = rows.map(([tensionMNm, formamidePct]) => ({ tensionMNm, formamidePct }));

/** Tensions of the table, mN/m, rising. */
export const fluidSteps: readonly number[] = fluidTable.map((fluid) => fluid.tensionMNm);
