import { habitQuestions, looksAt, type Habit } from './habit.ts';
import { keyFromLabel } from './key-from-label.ts';
import type { WrittenMethod, WrittenReading, WrittenSetting } from './written-method.ts';
import { saidWithUnit, writtenSetting } from './written-setting.ts';

/** What turns a habit into a method. */
export interface StandardisingAdvice {
  /** What still varies, with how to hold it. */
  fix: { label: string; today: string; advice: string }[];
  /** Questions that nobody has answered. */
  open: string[];
  /** What to read: a number beats a grade, a grade beats a yes or no. */
  measure: string;
  /** Ids of built-in methods that measure the same. */
  measuredBy: readonly string[];
  replicates: { n: number; why: string };
}

/** Order statistics bracket a median from six readings on; a share is shown to be at least 90 % by 29 that all pass (0.9²⁹ < 5 %). */
const replicatesFor: Record<Habit['outcome'], { n: number; why: string }> = {
  number: { n: 5, why: 'Five give a mean with an interval that is worth having, and let an odd one be seen.' },
  count: { n: 5, why: 'Five give a mean with an interval that is worth having, and let an odd one be seen.' },
  grade: { n: 6, why: 'Six are the fewest grades from which the median has a 95 % interval.' },
  'yes-no': { n: 29, why: 'If all of 29 pass, one can be 95 % sure that at least 90 % of the material does; a yes or no says little each time.' },
};

/** What to fix, what to measure and how often. Pure: from the answers alone. */
export function standardisingAdvice({ answers, looksAt: looked, outcome }: Habit): StandardisingAdvice {
  const answered = (key: string) => answers.find(({ question }) => question === key);
  return {
    fix: habitQuestions.flatMap(({ key, label, fix }) => {
      const answer = answered(key);
      return answer?.varies ? [{ label, today: answer.today, advice: fix }] : [];
    }),
    open: habitQuestions.filter(({ key }) => !answered(key)).map(({ label }) => label),
    measure: measureAdvice(outcome),
    measuredBy: looksAt.find(({ key }) => key === looked)!.measured,
    replicates: replicatesFor[outcome],
  };
}

function measureAdvice(outcome: Habit['outcome']): string {
  switch (outcome) {
    case 'number':
    case 'count':
      return 'It is a number already: state its unit and how finely it is read.';
    case 'grade':
      return 'A grade depends on who looks. Where a number can be had (percent removed, density lost, a force, strokes until it happens), read that; else give every grade a sentence and a picture.';
    case 'yes-no':
      return 'A yes or no throws most of the finding away. Read a number (percent removed, strokes until it happens) or a grade with a sentence for each step.';
  }
}

/** The method as it can be written from the habit, for a person to go on with. Its answers become settings. */
export function writtenFromHabit(habit: Habit): WrittenMethod {
  const { title, purpose, answers, outcome } = habit;
  const settings: WrittenSetting[] = [];
  for (const { key, label, unit } of habitQuestions) {
    const answer = answers.find(({ question }) => question === key);
    if (!answer || key === 'who') continue;
    settings.push(writtenSetting(keyFromLabel(label, settings.map((setting) => setting.key), 'setting'), label, answer.fixed, unit));
  }
  const reading = readingFor(outcome);
  const statistic = ({ number: 'mean', count: 'mean', grade: 'median-grade', 'yes-no': 'share-passing' } as const)[outcome];
  return {
    title,
    shortTitle: '',
    shows: purpose || title,
    how: answers.flatMap(stepOf),
    spoils: [],
    standards: [],
    cautions: [],
    settings,
    rowName: 'specimen',
    replicates: replicatesFor[outcome].n,
    readings: [reading],
    properties: [
      {
        key: 'result',
        title: 'Result',
        reading: reading.key,
        statistic,
        against: null,
        passes: null,
        areaCm2: null,
        better: outcome === 'yes-no' || outcome === 'grade' ? 'higher' : 'none',
        headline: true,
        limit: null,
      },
    ],
  };
}

/** What is to be held from now on; what is done today where nothing was said of it. */
function stepOf({ question, today, fixed }: Habit['answers'][number]): string[] {
  const { label, unit } = habitQuestions.find(({ key }) => key === question)!;
  const held = saidWithUnit(fixed, unit) || today;
  return question !== 'who' && held ? [`${label}: ${held}`] : [];
}

function readingFor(outcome: Habit['outcome']): WrittenReading {
  switch (outcome) {
    case 'number':
      return { kind: 'number', key: 'reading', label: 'Reading', unit: '', lowest: null, highest: null, orMore: false };
    case 'count':
      return { kind: 'count', key: 'count', label: 'Count', unit: '', orMore: false };
    case 'grade':
      return {
        kind: 'grade',
        key: 'grade',
        label: 'Grade',
        grades: ['the worst', 'bad', 'poor', 'fair', 'good', 'nothing to be seen'].map((meaning, grade) => ({ grade, meaning })),
      };
    case 'yes-no':
      return { kind: 'yes-no', key: 'outcome', label: 'Outcome', yes: 'passes', no: 'fails' };
  }
}
