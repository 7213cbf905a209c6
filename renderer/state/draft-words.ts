import type { Place } from './place.ts';

interface DraftKind {
  words: string;
  /** Where it stands. @param id what it is about, '' for something new */
  place: (id: string) => Place;
  /** It changes something that there is already, which another may have changed meanwhile. */
  changes?: true;
}

const samples = (sampleId: string): Place => ({ screen: 'samples', sampleId: sampleId || null });
const materials = (): Place => ({ screen: 'materials' });
const material = (materialId: string): Place => ({ screen: 'material', materialId });
const lot = (lotId: string): Place => ({ screen: 'lot', lotId });
const instruments = (): Place => ({ screen: 'instruments' });
const notebook = (): Place => ({ screen: 'notebook' });
const merge = (): Place => ({ screen: 'merge' });
const sheet = (testId: string): Place => ({ screen: 'bench-sheet', testId });
const trials = (trialSetId: string): Place => ({ screen: 'trials', trialSetId: trialSetId || null });
const methods = (methodId: string): Place => ({ screen: 'methods', methodId: methodId || null });
const plans = (planId: string): Place => ({ screen: 'plans', planId: planId || null });
const makePlan = (planId: string): Place => ({ screen: 'make-plan', planId: planId || null });
const approvals = (approvalId: string): Place => ({ screen: 'approvals', approvalId: approvalId || null });

/** By what a draft is named: its call mostly, then what it is about. */
const kinds: Record<string, DraftKind> = {
  'sample.add': { words: 'a new sample', place: () => samples('') },
  'sample.change': { words: 'a change of a sample', place: samples },
  'samplePlan.leave': { words: 'the reason why a sample leaves its plan', place: samples },
  'material.add': { words: 'a new material', place: materials },
  'material.describe': { words: 'a change of a material', place: material },
  'lot.add': { words: 'a new lot', place: materials },
  'lot.describe': { words: 'a change of a lot', place: lot },
  'lot.makeFrom': { words: 'what went into a lot', place: lot },
  'instrument.add': { words: 'a new instrument', place: instruments },
  'instrument.change': { words: 'a change of an instrument', place: instruments },
  'instrument.calibrate': { words: 'a calibration', place: instruments },
  'fluid.add': { words: 'a new test fluid, tape or standard', place: instruments },
  'fluid.change': { words: 'a change of a test fluid, tape or standard', place: instruments },
  'reference.add': { words: 'a reference colour', place: materials },
  'tolerance.set': { words: 'a tolerance', place: materials },
  'person.add': { words: 'a new person', place: notebook },
  'conflict.settle': { words: 'why a conflict is settled', place: merge },
  'report.issue': { words: 'a new report', place: (replaces) => ({ screen: 'new-report', replaces: replaces || null }) },
  sheet: { words: 'cells of a bench sheet', place: sheet },
  'limits.set': { words: 'the limits of a test', place: sheet, changes: true },
  'test.finish': { words: 'the remark of a test', place: sheet },
  'test.withdraw': { words: 'the reason why a test is withdrawn', place: sheet },
  'trialSet.add': { words: 'a new trial set', place: () => trials('') },
  'trial.add': { words: 'a new trial', place: trials },
  'trial.change': { words: 'a change of a trial', place: trials, changes: true },
  'factors.set': { words: 'the factors of a trial set', place: trials },
  'responses.set': { words: 'the responses of a trial set', place: trials, changes: true },
  'study.record': { words: 'a measurement study', place: methods },
  'method.write': { words: 'a written method', place: (methodId) => ({ screen: 'write-method', methodId: methodId || null }), changes: true },
  'method.retire': { words: 'the reason why a method is retired', place: methods },
  'habit.describe': { words: 'a habit', place: (methodId) => ({ screen: 'standardise', methodId: methodId || null }), changes: true },
  'plan.write': { words: 'a plan', place: makePlan, changes: true },
  'planLine.change': { words: 'a line of a plan', place: makePlan, changes: true },
  'plan.retire': { words: 'the reason why a plan is retired', place: plans },
  'approval.draft': { words: 'a new press approval', place: () => approvals('') },
  'approval.change': { words: 'changes of a press approval', place: approvals },
  'approvalLine.add': { words: 'a new line of a press approval', place: approvals },
  'approvalLine.fill': { words: 'what fills a line of a press approval', place: approvals },
  'approvalLines.waive': { words: 'the reason of a waiver', place: approvals },
};

function kindOf(name: string): DraftKind | undefined {
  return kinds[name.split(' ')[0]!];
}

/** What a draft of that name is, e.g. 'a new sample'. */
export function draftWords(name: string): string {
  return kindOf(name)?.words ?? 'a form';
}

/** Where a draft of that name stands; `null` where this version of the program has no such place. */
export function draftPlace(name: string): Place | null {
  return kindOf(name)?.place(name.split(' ')[1] ?? '') ?? null;
}

/** Whether it changes something that there is already. */
export function draftChanges(name: string): boolean {
  return kindOf(name)?.changes ?? false;
}
