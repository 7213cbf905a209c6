import type { Method } from '../method/method.ts';
import { hazardWords } from '../method/hazard-words.ts';
import { LIMITS_NOTE } from '../plan/limits-note.ts';
import { lineLimitTexts, lineName, replicatesText } from '../plan/line-texts.ts';
import { momentText } from '../plan/moment-text.ts';
import type { PlanContent } from '../plan/plan.ts';
import { stressText } from '../plan/stresses.ts';

/** A version of a plan as it is printed: every value as text. */
export interface PlanSheet {
  title: string;
  laboratory: string;
  /** Product, customer, version …, each with its label. */
  facts: { label: string; text: string }[];
  /** 'frozen storage, −18 °C' … */
  stresses: string[];
  lines: { method: string; standards: string; when: string; preparation: string; howMany: string; limits: string[]; reasons: string[] }[];
  dropped: { method: string; reason: string }[];
  /** Hazards of the methods, each once, with the methods that they belong to; their cautions stand on the bench sheets. */
  hazards: { hazard: string; methods: string }[];
  /** Whose limits these are, and what the lab added. */
  notes: string[];
  /** ISO 8601: when the version was made; the file carries it as its date. */
  writtenAt: string;
  record: { entries: number; chainHash: string };
}

export interface PlanSheetContext {
  version: string;
  laboratory: string;
  writtenBy: string;
  writtenAt: string;
  /** 'in use', 'replaced by version 3', 'retired'. */
  standing: string;
  record: PlanSheet['record'];
  methodOf: (methodId: string) => Method | undefined;
}

/** A version of a plan as text, ready for the page. */
export function planSheet(content: PlanContent, { methodOf, ...context }: PlanSheetContext): PlanSheet {
  const { title, product, customer, stresses, lines, dropped, note } = content;
  return {
    title,
    laboratory: context.laboratory,
    facts: [
      { label: 'Product', text: product },
      { label: 'Customer', text: customer },
      { label: 'Version', text: `${context.version}, ${context.standing}` },
      { label: 'Written', text: `${context.writtenAt.slice(0, 10)} by ${context.writtenBy}` },
    ].filter(({ text }) => text !== ''),
    stresses: stresses.map(stressText),
    lines: lines.map((line) => {
      const method = methodOf(line.methodId);
      return {
        method: method?.title ?? line.methodId,
        standards: method?.standards.join(', ') ?? '',
        when: momentText(line.moment),
        preparation: line.preparation,
        howMany: replicatesText(line, method),
        limits: lineLimitTexts(line, method),
        reasons: line.reasons.map(({ text }) => text),
      };
    }),
    dropped: dropped.map(({ methodId, moment, preparation, reason }) => ({
      method: lineName({ title: methodOf(methodId)?.title ?? methodId, momentText: momentText(moment), preparation }),
      reason,
    })),
    hazards: hazardsOf(content, methodOf),
    notes: [LIMITS_NOTE, ...(note ? [note] : [])],
    writtenAt: context.writtenAt,
    record: context.record,
  };
}

function hazardsOf({ lines }: PlanContent, methodOf: PlanSheetContext['methodOf']): PlanSheet['hazards'] {
  const methods = [...new Set(lines.map(({ methodId }) => methodId))].flatMap((methodId) => methodOf(methodId) ?? []);
  const hazards = [...new Set(methods.flatMap(({ cautions }) => cautions.map(({ hazard }) => hazard)))];
  return hazards.map((hazard) => ({
    hazard: hazardWords[hazard],
    methods: methods.filter(({ cautions }) => cautions.some((caution) => caution.hazard === hazard)).map(({ shortTitle }) => shortTitle).join(', '),
  }));
}
