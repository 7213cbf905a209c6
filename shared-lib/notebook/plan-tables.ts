/** Plans, and what follows them. See `tables.ts`. */
export interface PlanTables {
  plan: { planId: string; /** That samples take from now on. */ version: string; title: string; product: string; retired: 0 | 1; retiredReason: string; addedSeq: number };
  plan_version: {
    planId: string;
    version: string;
    /** JSON: `PlanContent`. */
    content: string;
    /** JSON: sentences. */
    changes: string;
    reason: string;
    writtenAt: string;
    writtenBy: string;
    seq: number;
  };
  followed_plan: {
    sampleId: string;
    planId: string;
    version: string;
    printedAt: string | null;
    laminatedAt: string | null;
    followedAt: string;
    followedBy: string;
    seq: number;
  };
  /** The line of its sample's plan that a test was made for. */
  planned_test: { testId: string; sampleId: string; planId: string; lineId: string; replicates: number; seq: number };
}
