import type { Fitness } from '../method/in-house/studied.ts';
import type { Habit } from '../method/in-house/habit.ts';
import type { MethodOrigin, WrittenMethod } from '../method/in-house/written-method.ts';

/** How far a shop's own test has come on the way from a habit to a method that one can decide with. */
export type InHouseState = 'not written' | 'written' | 'studied' | 'fit to decide' | 'not fit to decide';

export interface InHouseLine {
  methodId: string;
  title: string;
  /** '' while it is a habit. */
  version: string;
  state: InHouseState;
  retired: boolean;
}

export interface InHouseView extends InHouseLine {
  /** Why the state is what it is, one sentence each. */
  why: string[];
  retiredReason: string;
  habit: Habit | null;
  /** The version that new tests take. */
  written: WrittenMethod | null;
  /** Newest first. */
  versions: MethodVersionView[];
  /** Of the version that new tests take, property by property. */
  fitness: Fitness[];
}

export interface MethodVersionView {
  version: string;
  written: WrittenMethod;
  writtenAt: string;
  writtenBy: string;
  /** What is different from the version before, and why. */
  changes: string[];
  reason: string;
  /** Where it was taken in from. */
  origin: MethodOrigin | null;
  tests: number;
  running: number;
}

/** What would happen if a method file were taken in. */
export interface MethodFileView {
  title: string;
  from: MethodOrigin;
  written: WrittenMethod;
  /** `here`: nothing would change. `new`: a method of its own. `version`: a new version of one taken in before. */
  standing: 'here' | 'new' | 'version';
  /** The same in one sentence. */
  text: string;
  /** Against the version that is here, one sentence each. */
  changes: string[];
  /** The method here that it is, or would be a version of. */
  methodId: string | null;
}
