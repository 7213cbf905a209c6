import type { Page } from 'playwright-core';
import type { Answer, CallInput, CallName, CallOutput } from '../../shared-lib/api.ts';

/** Calls the application as the page itself does: to prepare what a test is not about, and to see what the record holds. */
export async function callApi<Name extends CallName>(page: Page, call: Name, input: CallInput<Name>): Promise<CallOutput<Name>> {
  const answer = await page.evaluate(
    async (body) => {
      const response = await fetch('/api', {
        method: 'POST',
        headers: { 'content-type': 'application/json', authorization: `Bearer ${sessionStorage.getItem('token')}` },
        body,
      });
      return (await response.json()) as unknown;
    },
    JSON.stringify({ call, input }),
  );
  const { ok, ...rest } = answer as Answer<CallOutput<Name>>;
  if (!ok) throw new Error(`${call} was refused: ${JSON.stringify(rest)}`);
  return (rest as { value: CallOutput<Name> }).value;
}
