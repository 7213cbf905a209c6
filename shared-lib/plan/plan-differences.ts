import type { Method } from '../method/method.ts';
import { lineLimitTexts, replicatesText } from './line-texts.ts';
import { momentText } from './moment-text.ts';
import type { DroppedLine, PlanContent, PlanLine } from './plan.ts';
import { stressText } from './stresses.ts';

type MethodOf = (methodId: string) => Method | undefined;

/** What is different between two versions of a plan, one sentence each; none when nothing is. */
export function planDifferences(before: PlanContent, after: PlanContent, methodOf: MethodOf): string[] {
  const heading = (['title', 'product', 'customer', 'note'] as const).flatMap((key) =>
    before[key] === after[key] ? [] : [`${headings[key]}: ${shown(before[key])} → ${shown(after[key])}.`],
  );
  return [...heading, ...stressChanges(before, after), ...lineChanges(before.lines, after, methodOf)];
}

const headings = { title: 'Title', product: 'Product', customer: 'Customer', note: 'Note' };

function stressChanges(before: PlanContent, after: PlanContent): string[] {
  const had = new Map(before.stresses.map((stress) => [stress.stress, stress]));
  const has = new Map(after.stresses.map((stress) => [stress.stress, stress]));
  return [
    ...after.stresses.flatMap((stress) => {
      const earlier = had.get(stress.stress);
      if (!earlier) return [`Endures now: ${stressText(stress)}.`];
      return earlier.degree === stress.degree ? [] : [`Endures ${stressText(earlier)} → ${stressText(stress)}.`];
    }),
    ...before.stresses.filter(({ stress }) => !has.has(stress)).map((stress) => `Endures no longer: ${stressText(stress)}.`),
  ];
}

function lineChanges(before: PlanLine[], { lines: after, dropped }: PlanContent, methodOf: MethodOf): string[] {
  const had = new Map(before.map((line) => [line.lineId, line]));
  const has = new Set(after.map(({ lineId }) => lineId));
  return [
    ...after.flatMap((line) => {
      const earlier = had.get(line.lineId);
      return earlier ? changesOf(earlier, line, methodOf) : [`Added ${nameOf(line, methodOf)}.`];
    }),
    ...before.filter(({ lineId }) => !has.has(lineId)).map((line) => `Dropped ${nameOf(line, methodOf)}${because(dropped.find(({ lineId }) => lineId === line.lineId))}.`),
  ];
}

function changesOf(before: PlanLine, after: PlanLine, methodOf: MethodOf): string[] {
  const method = methodOf(after.methodId);
  const parts: [string, (line: PlanLine) => string][] = [
    ['when', ({ moment }) => momentText(moment)],
    ['how many', (line) => replicatesText(line, method)],
    ['limits', (line) => lineLimitTexts(line, method).join('; ')],
    ['preparation', ({ preparation }) => preparation],
    ['conditions', ({ conditions }) => Object.entries(conditions).map(([key, value]) => `${key} ${value}`).sort().join(', ')],
    ['reasons', ({ reasons }) => reasons.map(({ text }) => text).join(' ')],
  ];
  return parts.flatMap(([what, textOf]) => {
    const [was, is] = [textOf(before), textOf(after)];
    return was === is ? [] : [`${nameOf(after, methodOf)}, ${what}: ${shown(was)} → ${shown(is)}.`];
  });
}

function nameOf({ methodId, moment, preparation }: Pick<PlanLine, 'methodId' | 'moment' | 'preparation'>, methodOf: MethodOf): string {
  return `${methodOf(methodId)?.shortTitle ?? methodId} ${momentText(moment)}${preparation ? `, ${preparation}` : ''}`;
}

function because(dropped: DroppedLine | undefined): string {
  return dropped ? ` (${dropped.reason.replace(/\.$/, '')})` : '';
}

function shown(text: string): string {
  return text === '' ? 'nothing' : text;
}
