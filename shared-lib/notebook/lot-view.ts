import type { MaterialKind } from './entry.ts';

export interface LotView {
  lotId: string;
  materialId: string;
  kind: MaterialKind;
  material: string;
  supplier: string;
  code: string;
  receivedOn: string | null;
  note: string;
  /** Why it is not to be relied on, as the rest of a sentence that begins with its name; absent or '' where it is, or where nobody asked. */
  doubt?: string;
}
