import type { ParsedInput } from '../../../shared-lib/api.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import { positionText, type SampleLabel } from '../../../shared-lib/report/label-sheet.ts';
import { fileStem } from '../file-stem.ts';
import { notebookHeading } from '../queries/notebook-heading.ts';
import { findSample } from '../queries/samples.ts';
import type { Workplace } from '../workplace.ts';

/** Labels of samples as a PDF, in the order asked for. */
export async function sampleLabels({ notebook, surroundings }: Workplace, { sampleIds, size, skip }: ParsedInput<'samples.labels'>): Promise<{ fileName: string; bytes: string }> {
  const { title } = notebookHeading(notebook.store);
  const labels = sampleIds.map((sampleId, index): SampleLabel => {
    const sample = findSample(notebook.store, sampleId);
    if (!sample) throw new InputError(`sampleIds[${index}]`, sampleId, 'This sample is not in the notebook.');
    const { code, product, job, roll, acrossMm, alongM, retainedUntil } = sample;
    return { code, product, job, roll, position: positionText(acrossMm, alongM), retainedUntil: retainedUntil ?? '', notebook: title };
  });
  const pdf = await surroundings.renderLabels(labels, size, skip);
  const name = labels.length === 1 ? fileStem(labels[0]!.code) || 'sample' : `${labels.length}-samples`;
  return { fileName: `labels-${name}.pdf`, bytes: Buffer.from(pdf).toString('base64') };
}
