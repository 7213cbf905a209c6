import type { ApprovalEntry } from './approval-changes.ts';
import type { ApprovalFields } from './approval-entries.ts';
import { changedFields, type FieldWords } from './changed-fields.ts';
import type { EntryNames } from './entry-names.ts';
import { because, ended, type EntrySentence } from './sentence.ts';

/** An entry about a press approval in one sentence. */
export function approvalSentence(entry: ApprovalEntry, names: EntryNames): EntrySentence | string {
  const approval = names.approval(entry.body.approvalId);
  const line = 'lineId' in entry.body ? names.approvalLine(entry.body.approvalId, entry.body.lineId) : '';
  switch (entry.kind) {
    case 'approval.drafted': {
      const { planId, version, replaces } = entry.body;
      const instead = replaces ? `, to take the place of the signed one: ${ended(replaces.reason)}` : '.';
      return `Drafted ${approval} from the plan ${names.plan(planId)}, version ${version}${instead}`;
    }
    case 'approval.changed': {
      const { said, correction } = changedFields(fieldWords(names), entry.body);
      return { text: `Changed ${approval}: ${said}${because(entry.body.reason)}`, correction };
    }
    case 'approvalLine.added':
      return `Added the line “${entry.body.title}” to ${approval}.`;
    case 'approvalLine.dropped':
      return `Dropped a line that had been added to ${approval}: ${ended(entry.body.reason)}`;
    case 'approvalLine.linked': {
      const { result, insteadOf, reason } = entry.body;
      const instead = insteadOf === undefined || insteadOf === result.testId ? '' : `, instead of ${names.test(insteadOf)}`;
      return `Took ${names.test(result.testId)} for the line “${line}” of ${approval}${instead}${because(reason)}`;
    }
    case 'approvalLine.observed': {
      const { remark, insteadOf, reason, signature } = entry.body;
      const why = insteadOf ? ` It takes the place of ${names.test(insteadOf)}${because(reason)}` : reason ? ` Observed again: ${ended(reason)}` : '';
      return `${names.person(signature.personId)} ${signature.meaning}, on ${approval}${because(remark)}${why}`;
    }
    case 'approvalLine.waived': {
      const { of, reason, signature } = entry.body;
      return `${names.person(signature.personId)} waived the line “${line}” of ${approval}, which ${inWords[of]}, because: ${ended(reason)}`;
    }
    case 'approval.signed': {
      const { replaces, signature } = entry.body;
      return `${names.person(signature.personId)} ${ended(signature.meaning)}${replaces ? ' It takes the place of the one signed before.' : ''}`;
    }
    case 'approval.withdrawn':
      return `${names.person(entry.body.signature.personId)} withdrew ${approval}: ${ended(entry.body.reason)}`;
  }
}

const inWords: Record<Extract<ApprovalEntry, { kind: 'approvalLine.waived' }>['body']['of'], string> = {
  open: 'was open',
  reopened: 'was open again after a correction',
  'falls short': 'falls short',
  'too few': 'has too few readings',
  undecided: 'is undecided',
  'not in order': 'was seen not to be in order',
};

function fieldWords(names: EntryNames): FieldWords<ApprovalFields> {
  const text = (value: string) => value;
  return {
    product: { label: 'product', text },
    customer: { label: 'customer', text },
    lotIds: { label: 'lots', text: (lotIds) => lotIds.map((lotId) => names.lot(lotId)).join(', ') },
    sampleIds: { label: 'samples', text: (sampleIds) => (sampleIds === null ? 'all of the job' : sampleIds.map((sampleId) => names.sample(sampleId)).join(', ')) },
    note: { label: 'note', text },
  };
}
