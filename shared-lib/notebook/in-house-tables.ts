/** The shop’s own methods and the habits that they come from. See `tables.ts`. */
export interface InHouseTables {
  habit: { methodId: string; title: string; /** JSON: `Habit`. */ habit: string; describedAt: string; describedBy: string; seq: number };
  in_house_method: { methodId: string; /** That new tests take. */ version: string; title: string; retired: 0 | 1; retiredReason: string; addedSeq: number };
  in_house_version: {
    methodId: string;
    version: string;
    /** JSON: `WrittenMethod`. */
    written: string;
    /** JSON: `MethodOrigin`. */
    origin: string | null;
    /** JSON: sentences. */
    changes: string;
    reason: string;
    writtenAt: string;
    writtenBy: string;
    seq: number;
  };
}
