/** Something that was found. */
export interface SearchHit {
  /** Unlike any other of its group. */
  key: string;
  title: string;
  /** What else tells it apart, or ''. */
  detail: string;
  /** Where it opens: a screen and the id of the thing on it, or ''. */
  screen: 'samples' | 'bench-sheet' | 'materials' | 'material' | 'lot' | 'instruments' | 'trials' | 'methods' | 'plans' | 'approvals' | 'reports' | 'record' | 'notebook';
  id: string;
}

/** What was found of one kind, newest first; a code that was typed whole goes before. */
export interface SearchGroup {
  title: string;
  /** How many there are; `many`: this many and more, which nobody counted. */
  total: number;
  many: boolean;
  hits: SearchHit[];
}

export interface SearchView {
  /** What was looked for, so that a late answer is known from the last one. */
  search: string;
  /** Only those that hold something. */
  groups: SearchGroup[];
}
