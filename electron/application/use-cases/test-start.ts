import type { ParsedInput } from '../../../shared-lib/api.ts';
import type { BenchSheetView } from '../../../shared-lib/notebook/views.ts';
import type { CellValue, Limit } from '../../../shared-lib/method/method.ts';
import type { VerdictRule } from '../../../shared-lib/method/property-verdict.ts';
import { benchSheet } from '../bench-sheet.ts';
import { dayOf } from '../day-of.ts';
import { daysSinceTreatment } from '../days-since-treatment.ts';
import type { Draft } from '../open-notebook.ts';
import { controlOfTrialSet } from '../queries/companions.ts';
import { findSample } from '../queries/samples.ts';
import { Refusal } from '../refusal.ts';
import { startLimits } from '../start-limits.ts';
import type { Workplace } from '../workplace.ts';

/** What a test is begun with where something asks for more than the method's defaults. */
interface Wanted {
  conditions: Record<string, CellValue>;
  limits: { limits: Limit[]; rule: VerdictRule };
  /** Recorded together with the start. */
  also: (testId: string) => Draft[];
}

/** Starts a test with the method's default conditions, the days since the film was treated, the control of the sample's trial set where the method has one, and the limits last set for this method on this product. */
export function startTest(workplace: Workplace, { sampleId, methodId }: ParsedInput<'test.start'>): BenchSheetView {
  return beginTest(workplace, sampleId, methodId);
}

/** As `startTest`, with what is wanted in place of defaults and last limits. */
export function beginTest(workplace: Workplace, sampleId: string, methodId: string, wanted?: Wanted): BenchSheetView {
  const { notebook } = workplace;
  const sample = findSample(notebook.store, sampleId);
  if (!sample) throw new Refusal('not-found', 'This sample is not in the notebook.');
  const method = notebook.methods.named(methodId);
  if (!notebook.methods.current().some(({ id }) => id === methodId)) throw new Refusal('conflict', `${method.title} is retired; no new test is started by it.`);
  const limits = wanted?.limits ?? startLimits(notebook, method, sample.product);
  const conditions: Record<string, CellValue> = {};
  for (const field of method.conditions) if ('default' in field && field.default !== undefined) conditions[field.key] = field.default;
  Object.assign(conditions, daysSinceTreatment(notebook.store, method, sampleId, dayOf(workplace.now())));
  const control = method.conditions.find((field) => field.kind === 'item' && field.of === 'sample' && field.key === 'control') && controlOfTrialSet(notebook.store, sampleId);
  if (control) conditions.control = control.sampleId;
  const testId = workplace.newId();
  notebook.append([
    {
      kind: 'test.started',
      body: {
        testId,
        sampleId,
        methodId,
        methodVersion: method.version,
        conditions: { ...conditions, ...wanted?.conditions },
        ...limits,
      },
    },
    ...(wanted?.also(testId) ?? []),
  ]);
  return benchSheet(notebook, testId);
}
