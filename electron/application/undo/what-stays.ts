import type { EntryKind } from '../../../shared-lib/notebook/entry.ts';

const plan = 'A plan stays with all its versions: change it, or retire it, on its page.';
const method = 'An in-house method stays with all its versions: write another version, or retire it, on its page.';
const trial = 'It stays: say it anew on the page of the trial set; the record keeps both.';
const approvalLine = 'A line of a press approval stays in the record: fill, add or drop it on the page of the approval.';
const passphrase = 'The old passphrase is not kept: set it anew.';

/** What is not undone, and what can be done instead. */
export const whatStays: Partial<Record<EntryKind, string>> = {
  'notebook.created': 'A notebook that was begun stays: its title and laboratory are changed on the screen Notebook.',
  'person.added': 'A person stays named: change their name, or retire them once somebody else is at the bench, on the screen Notebook.',
  'notebook.merged': 'What was brought in stays: bringing in another notebook is final. What is wrong in it is corrected where it is shown, or retired.',
  'conflict.settled': 'It stays settled: if the other word is right, correct it where it was entered, with a reason.',
  'material.added': 'A material stays: change what is said of it on its page.',
  'test.withdrawn': 'A withdrawn test stays so: start it again.',
  'test.finished': 'A finished test stays finished: correct what is wrong, then finish it again.',
  'report.issued': 'An issued report stays as it is: issue one that takes its place, with the reason.',
  'work.witnessed': 'A signature stays: what was signed can be corrected, and the correction is shown as later.',
  'passphrase.set': passphrase,
  'passphrase.renewed': passphrase,
  'calibration.voided': 'It stays voided: put the calibration down again.',
  'attachment.unlinked': 'It stays taken away: put the file there again.',
  'reference.added': 'A reference colour stays: retire it on the screen Materials.',
  'tolerance.set': 'A tolerance stays in the record: set it anew.',
  'habit.described': 'What was described stays: describe it anew.',
  'inHouseMethod.added': method,
  'inHouseMethod.versioned': method,
  'inHouseMethod.retired': 'A retired method stays retired: write it as a new one.',
  'trialSet.added': 'A trial set stays; what it asks and compares is changed on its page.',
  'responses.set': trial,
  'factors.set': trial,
  'trial.added': trial,
  'trial.changed': trial,
  'study.recorded': 'A measurement study stays: record another one.',
  'plan.added': plan,
  'plan.versioned': plan,
  'plan.retired': 'A retired plan stays retired: draw up a new one.',
  'plan.followed': 'The sample follows the plan until it leaves it: see its page.',
  'plan.left': 'Let the sample follow the plan again on its page.',
  'planLine.tested': 'The test counts for its plan; withdraw it on its bench sheet if it was begun by mistake.',
  'approval.drafted': 'A drafted approval stays: withdraw it on its page, with a reason.',
  'approval.signed': 'A signed press approval stays as it is: withdraw it with a reason, or draft one that takes its place.',
  'approval.withdrawn': 'It stays withdrawn: draft one that takes its place.',
  'approvalLine.added': approvalLine,
  'approvalLine.dropped': approvalLine,
  'approvalLine.linked': approvalLine,
  'approvalLine.observed': 'A signature stays: fill the line anew, with the reason.',
  'approvalLine.waived': 'A signature stays: fill the line anew, with the reason.',
};
