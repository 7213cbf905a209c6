/** What is open under a row of the bench sheet. */
export type RowPanel =
  | { kind: 'void' | 'restore' | 'remark'; row: string }
  | { kind: 'trace'; row: string; key: string; file: File };
