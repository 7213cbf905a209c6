/** A column of a calculation's table, for the screen and the report. */
export interface TableColumn {
  /** Field name in `CalculationResult.table`; carries its unit where it has one. */
  key: string;
  title: string;
  unit?: string;
  /** Decimals to print; default: the digits that the value needs. */
  decimals?: number;
}
