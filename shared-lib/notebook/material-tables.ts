import type { MaterialKind } from './entry.ts';
import type { LotDetails } from './material-entries.ts';

/** Materials and their lots. See `tables.ts`. */
export interface MaterialTables {
  material: { materialId: string; kind: MaterialKind; name: string; supplier: string; description: string; /** JSON: `Layer[]`. */ layers: string; addedSeq: number };
  lot: LotDetails & {
    lotId: string;
    materialId: string;
    code: string;
    receivedOn: string | null;
    note: string;
    retiredAt: string | null;
    retiredReason: string;
    addedSeq: number;
  };
  /** What went into a lot. */
  lot_part: { lotId: string; partId: string; place: number };
}
