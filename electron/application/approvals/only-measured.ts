import type { ApprovalLine, EarlierResult } from '../../../shared-lib/notebook/approval-views.ts';

/** What is known of a line that a person would fill by what was seen. */
interface Known {
  /** The plan sets a limit. */
  limited: boolean;
  result: ApprovalLine['result'];
  earlier: readonly EarlierResult[];
  offers: ApprovalLine['offers'];
}

const GOES_ON = 'take another result, or have a named person waive the line.';

/**
 * Why what a person saw does not fill a line, in one sentence; '' where it may. What was measured is not seen away: a line with a
 * limit is looked at only while there is no result at all, and none is while its result falls short or is undecided.
 */
export function onlyMeasured({ limited, result, earlier, offers }: Known): string {
  const known = [...(result ? [{ ...result, verdict: result.verdict ?? 'no limit' }] : []), ...earlier, ...(limited ? offers : [])];
  const bad = known.find(({ verdict }) => verdict === 'falls short' || verdict === 'undecided');
  if (bad) return `The result on ${bad.sampleCode} ${bad.verdict === 'undecided' ? 'is undecided' : 'falls short'}, and what was seen does not stand against it: ${GOES_ON}`;
  return limited && known.length > 0 ? `There is a result on ${known[0]!.sampleCode}, and the plan sets a limit: take the result, or have a named person waive the line.` : '';
}
