import type { ParsedInput } from '../../../shared-lib/api.ts';
import type { BenchSheetView } from '../../../shared-lib/notebook/views.ts';
import type { CellValue } from '../../../shared-lib/method/method.ts';
import { benchSheet } from '../bench-sheet.ts';
import { methodNamed } from '../method-of-test.ts';
import { findSample } from '../queries/samples.ts';
import { lastLimits } from '../queries/tests.ts';
import { Refusal } from '../refusal.ts';
import type { Workplace } from '../workplace.ts';

/** Starts a test with the method's default conditions and the limits last set for this method on this product. */
export function startTest(workplace: Workplace, { sampleId, methodId }: ParsedInput<'test.start'>): BenchSheetView {
  const { notebook } = workplace;
  const sample = findSample(notebook.store, sampleId);
  if (!sample) throw new Refusal('not-found', 'This sample is not in the notebook.');
  const method = methodNamed(methodId);
  const last = lastLimits(notebook.store, methodId, sample.product);
  const conditions: Record<string, CellValue> = {};
  for (const field of method.conditions) if ('default' in field && field.default !== undefined) conditions[field.key] = field.default;
  const testId = workplace.newId();
  notebook.append([
    {
      kind: 'test.started',
      body: {
        testId,
        sampleId,
        methodId,
        methodVersion: method.version,
        conditions,
        limits: last?.limits ?? [],
        rule: last?.rule ?? 'guarded',
      },
    },
  ]);
  return benchSheet(notebook, testId);
}
