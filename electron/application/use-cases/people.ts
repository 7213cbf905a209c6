import { randomBytes } from 'node:crypto';
import type { ParsedInput } from '../../../shared-lib/api.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import type { Person } from '../../../shared-lib/notebook/views.ts';
import { findPerson, listPeople, requireActive } from '../queries/people.ts';
import { Refusal } from '../refusal.ts';
import { requireReason } from '../require-reason.ts';
import { checkPassphrase } from '../signing/check-passphrase.ts';
import { hashPassphrase, SALT_BYTES } from '../signing/passphrase-hash.ts';
import type { Workplace } from '../workplace.ts';

/** Characters. NIST SP 800-63B, 5.1.1.2, asks for at least 8 and that 64 can be typed. */
const SHORTEST = 8;
const LONGEST = 200;

/** Adds a person; initials are what entries are signed with in lists, so they are given once only. */
export function addPerson(workplace: Workplace, input: ParsedInput<'person.add'>): Person {
  const { notebook } = workplace;
  const taken = listPeople(notebook.store).find((person) => person.initials.toLowerCase() === input.initials.toLowerCase());
  if (taken) throw new InputError('initials', input.initials, `${taken.name} already signs with ${taken.initials}; choose other initials.`);
  const personId = workplace.newId();
  notebook.append([{ kind: 'person.added', body: { personId, ...input } }]);
  return personNamed(workplace, personId);
}

/** Another name or role, as after a marriage or a new post. Entries keep who it was: they carry the id, and the record the change. */
export function changePerson(workplace: Workplace, { personId, name, role, reason }: ParsedInput<'person.change'>): Person {
  const before = personNamed(workplace, personId);
  if (name === before.name && role === before.role) return before;
  requireReason(reason, `${before.name} stands in the record`);
  workplace.notebook.append([
    { kind: 'person.changed', body: { personId, before: { name: before.name, role: before.role }, name, role, reason: reason.trim() } },
  ]);
  return personNamed(workplace, personId);
}

/** Takes the person off the bench for good; what they did keeps their name. */
export function retirePerson(workplace: Workplace, { personId, reason }: ParsedInput<'person.retire'>): Person {
  const { notebook } = workplace;
  const person = requireActive(notebook.store, personId);
  if (personId === notebook.atBench) throw new Refusal('conflict', `${person.name} is at the bench; somebody else takes the bench first.`);
  requireReason(reason, 'A retired person takes the bench and signs no more');
  notebook.append([{ kind: 'person.retired', body: { personId, reason: reason.trim() } }]);
  return personNamed(workplace, personId);
}

export function returnPerson(workplace: Workplace, { personId, reason }: ParsedInput<'person.return'>): Person {
  const person = personNamed(workplace, personId);
  if (!person.retired) throw new Refusal('conflict', `${person.name} is not retired.`);
  requireReason(reason, `${person.name} was retired (${person.retiredReason})`);
  workplace.notebook.append([{ kind: 'person.returned', body: { personId, reason: reason.trim() } }]);
  return personNamed(workplace, personId);
}

/** Sets a person's passphrase for signing. Where there is one it is asked for, so that nobody gives another person a new one. */
export async function setPassphrase(workplace: Workplace, { personId, passphrase, oldPassphrase }: ParsedInput<'passphrase.set'>): Promise<Person> {
  const { notebook, surroundings } = workplace;
  const person = requireActive(notebook.store, personId);
  checkLength(passphrase, person);
  if (person.hasPassphrase) await checkPassphrase(notebook, personId, oldPassphrase, 'oldPassphrase');
  const scrypt = await hashPassphrase(passphrase, (surroundings.randomBytes ?? randomBytes)(SALT_BYTES));
  notebook.append([{ kind: 'passphrase.set', body: { personId, scrypt } }]);
  return personNamed(workplace, personId);
}

function checkLength(passphrase: string, { name, initials }: Person): void {
  const length = [...passphrase].length;
  const refuse = (sentence: string) => new InputError('passphrase', null, sentence);
  if (length < SHORTEST) throw refuse(`A passphrase has at least ${SHORTEST} characters; a few words in a row are easy to keep and hard to guess.`);
  if (length > LONGEST) throw refuse(`A passphrase has at most ${LONGEST} characters.`);
  const plain = passphrase.toLowerCase().replace(/\s/g, '');
  if (plain === name.toLowerCase().replace(/\s/g, '') || new Set(plain).size < 3 || plain === initials.toLowerCase()) throw refuse('This would be guessed at once; take a few words in a row.');
}

function personNamed({ notebook }: Workplace, personId: string): Person {
  const person = findPerson(notebook.store, personId);
  if (!person) throw new Refusal('not-found', 'This person is not in the notebook.');
  return person;
}
