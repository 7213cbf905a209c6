/** The notebook itself. See `tables.ts`. */
export interface NotebookTables {
  notebook: { one: 1; title: string; laboratory: string; createdAt: string };
  /** Title and laboratory as they were said last, by when the notebook was begun: notebooks that were brought in have their own. */
  notebook_heading: { createdAt: string; title: string; laboratory: string };
}
