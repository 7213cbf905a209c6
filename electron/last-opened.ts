import type { SessionView } from '../shared-lib/notebook/views.ts';
import type { ApplicationClient } from './application-port.ts';

/** The notebook that was open last on this computer; `null` where there is none yet. */
export async function lastOpened(application: Pick<ApplicationClient, 'call'>): Promise<string | null> {
  const answer = await application.call('session.get', {});
  return answer.ok ? ((answer.value as SessionView).recent[0]?.handle ?? null) : null;
}
