/** Samples and the lots that they were made from. See `tables.ts`. */
export interface SampleTables {
  sample: {
    sampleId: string;
    code: string;
    product: string;
    job: string;
    roll: string;
    note: string;
    customer: string;
    acrossMm: number | null;
    alongM: number | null;
    keptAt: string;
    retainedUntil: string | null;
    retiredAt: string | null;
    retiredReason: string;
    addedAt: string;
    addedBy: string;
    addedSeq: number;
  };
  sample_lot: { sampleId: string; lotId: string; place: number };
}
