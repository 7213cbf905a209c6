/** Pages of work that a second person signed. See `tables.ts`. */
export interface WitnessTables {
  witness: {
    seq: number;
    testId: string | null;
    by: string | null;
    fromSeq: number;
    toSeq: number;
    chainHash: string;
    personId: string;
    meaning: string;
    at: string;
  };
}
