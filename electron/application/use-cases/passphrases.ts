import { randomBytes } from 'node:crypto';
import type { ParsedInput } from '../../../shared-lib/api.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import type { Scrypt } from '../../../shared-lib/notebook/person-entries.ts';
import type { Person } from '../../../shared-lib/notebook/views.ts';
import { findPerson, listPeople, requireActive } from '../queries/people.ts';
import { Refusal } from '../refusal.ts';
import { requireAcceptable } from '../signing/acceptable-passphrase.ts';
import { checkPassphrase } from '../signing/check-passphrase.ts';
import { hashPassphrase, normalPassphrase, SALT_BYTES } from '../signing/passphrase-hash.ts';
import { sign } from '../signing/sign.ts';
import type { Workplace } from '../workplace.ts';

/** Sets a person's passphrase for signing. Where there is one it is asked for, so that nobody gives another person a new one. */
export async function setPassphrase(workplace: Workplace, { personId, passphrase, oldPassphrase }: ParsedInput<'passphrase.set'>): Promise<Person> {
  const { notebook } = workplace;
  const person = requireActive(notebook.store, personId);
  requireAcceptable(passphrase, person);
  if (person.hasPassphrase) await checkPassphrase(notebook, personId, oldPassphrase, 'oldPassphrase');
  const scrypt = await hashed(workplace, passphrase);
  notebook.append([{ kind: 'passphrase.set', body: { personId, scrypt } }]);
  return findPerson(notebook.store, personId)!;
}

/**
 * Sets a forgotten passphrase anew. A second person lets it be done and signs for it with their own passphrase; there is no
 * other way. What was signed with the forgotten one stays signed.
 */
export async function renewPassphrase(workplace: Workplace, input: ParsedInput<'passphrase.renew'>): Promise<Person> {
  const { personId, passphrase, secondPersonId, secondPassphrase } = input;
  const { notebook } = workplace;
  const { store } = notebook;
  const person = requireActive(store, personId);
  const reason = input.reason.trim();
  if (!person.hasPassphrase) throw new Refusal('conflict', `${person.name} has no passphrase yet; it is set without a second person.`);
  if (!listPeople(store).some((other) => other.personId !== personId && other.hasPassphrase && !other.retired)) throw new Refusal('conflict', nobodyElse(person));
  requireAcceptable(passphrase, person);
  if (reason === '') throw new InputError('reason', '', 'It stands in the record; say in a few words why it is set anew.');
  if (secondPersonId === '') throw new InputError('secondPersonId', '', 'Choose who lets it be set anew; that person signs for it.');
  if (secondPersonId === personId) throw new InputError('secondPersonId', null, `${person.name} cannot let this be done alone; a second person signs for it.`);
  if (normalPassphrase(passphrase) === normalPassphrase(secondPassphrase)) throw new InputError('passphrase', null, 'The second person signs with this one; take another, that nobody else knows.');
  const scrypt = await hashed(workplace, passphrase);
  const signature = await sign(notebook, { personId: secondPersonId, passphrase: secondPassphrase }, `lets the forgotten passphrase of ${person.name} be set anew`, 'secondPassphrase');
  requireActive(store, personId);
  notebook.append([{ kind: 'passphrase.renewed', body: { personId, scrypt, reason, signature } }]);
  return findPerson(store, personId)!;
}

function nobodyElse({ name }: Person): string {
  return `Nobody else has a passphrase, so that of ${name} cannot be set anew: retire ${name}, and add ${name} again with other initials. What was signed stays signed.`;
}

function hashed({ surroundings }: Workplace, passphrase: string): Promise<Scrypt> {
  return hashPassphrase(passphrase, (surroundings.randomBytes ?? randomBytes)(SALT_BYTES));
}
