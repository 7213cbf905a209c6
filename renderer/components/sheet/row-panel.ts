import type { PhotoOrigin } from '../../state/photo-draft.svelte.ts';

/** What is open under a row of the bench sheet. */
export type RowPanel =
  | { kind: 'void' | 'restore' | 'remark'; row: string }
  | { kind: 'trace'; row: string; key: string; file: File }
  | { kind: 'spectra'; row: string; key: string; file: File }
  | { kind: 'photo'; row: string; key: string; origin: PhotoOrigin };
