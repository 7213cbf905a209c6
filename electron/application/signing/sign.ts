import type { Signature } from '../../../shared-lib/notebook/signature.ts';
import { requireActive } from '../queries/people.ts';
import type { OpenNotebook } from '../open-notebook.ts';
import { checkPassphrase } from './check-passphrase.ts';

/** What a call that signs carries; the passphrase goes no further than the check. */
export interface Signing {
  personId: string;
  passphrase: string;
}

/**
 * Signs: asks the person's passphrase. The signature belongs in the body of the entry that is signed, as `signature`; check
 * everything else before, and append without awaiting anything in between.
 * @param meaning a verb with its object: 'approves the press run'
 * @param field of the call in which the passphrase was typed
 * @throws as `checkPassphrase`; Refusal when the person is retired
 */
export async function sign(notebook: OpenNotebook, { personId, passphrase }: Signing, meaning: string, field = 'passphrase'): Promise<Signature> {
  requireActive(notebook.store, personId);
  await checkPassphrase(notebook, personId, passphrase, field);
  // Hashing took its time.
  requireActive(notebook.store, personId);
  return { personId, meaning, at: notebook.now() };
}
