import type { EntryNames } from './entry-names.ts';
import type { PlanEntry } from './plan-changes.ts';
import { because, ended } from './sentence.ts';

/** An entry about a plan in one sentence. */
export function planSentence(entry: PlanEntry, names: EntryNames): string {
  switch (entry.kind) {
    case 'plan.added': {
      const { title, lines, dropped } = entry.body.content;
      const without = dropped.length === 0 ? '' : `, without ${counted(dropped.length, 'proposed test')}`;
      return `Made the plan “${title}” of ${counted(lines.length, 'test')}${without}.`;
    }
    case 'plan.versioned': {
      const { content, version, changes, reason } = entry.body;
      return `Made version ${version} of the plan “${content.title}”: ${[ended(reason), ...changes].join(' ')}`;
    }
    case 'plan.retired':
      return `Retired the plan ${names.plan(entry.body.planId)}: ${ended(entry.body.reason)}`;
    case 'plan.followed': {
      const { sampleId, planId, version, printedAt, laminatedAt, reason } = entry.body;
      const times = [...(printedAt ? [`printed ${moment(printedAt)}`] : []), ...(laminatedAt ? [`laminated ${moment(laminatedAt)}`] : [])];
      return `Sample ${names.sample(sampleId)} follows the plan ${names.plan(planId)}, version ${version}${times.map((time) => `, ${time}`).join('')}${because(reason)}`;
    }
    case 'plan.left':
      return `Sample ${names.sample(entry.body.sampleId)} follows its plan no more: ${ended(entry.body.reason)}`;
    case 'planLine.tested':
      return `Took ${names.test(entry.body.testId)} as a test of the plan ${names.plan(entry.body.planId)}.`;
  }
}

function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}

function moment(instant: string): string {
  return `${instant.slice(0, 10)} ${instant.slice(11, 16)} UTC`;
}
