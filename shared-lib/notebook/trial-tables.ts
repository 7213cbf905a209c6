/** Formulation trials and measurement studies. See `tables.ts`. */
export interface TrialTables {
  trial_set: {
    trialSetId: string;
    title: string;
    question: string;
    product: string;
    /** JSON: `Response[]`. */
    responses: string;
    /** JSON: `Factor[]`. */
    factors: string;
    addedAt: string;
    addedBy: string;
    addedSeq: number;
  };
  trial: {
    trialId: string;
    trialSetId: string;
    name: string;
    control: 0 | 1;
    /** JSON: `Component[]`. */
    components: string;
    /** JSON: `Record<string, number>`. */
    factors: string;
    note: string;
    addedSeq: number;
  };
  trial_sample: { trialId: string; sampleId: string; seq: number };
  study: {
    studyId: string;
    methodId: string;
    /** Of an in-house method: the version it was made by; '' of a built-in one. */
    methodVersion: string;
    property: string;
    kind: 'number' | 'grade';
    /** JSON: `StudyReading[]`. */
    readings: string;
    calculationVersion: string;
    /** JSON: `Record<string, ResultValue>`. */
    results: string;
    remark: string;
    recordedAt: string;
    recordedBy: string;
    seq: number;
  };
}
