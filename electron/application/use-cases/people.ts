import type { ParsedInput } from '../../../shared-lib/api.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import type { Person } from '../../../shared-lib/notebook/views.ts';
import { findPerson, listPeople, requireActive } from '../queries/people.ts';
import { Refusal } from '../refusal.ts';
import { requireReason } from '../require-reason.ts';
import type { Workplace } from '../workplace.ts';

/** Adds a person; initials are what entries are signed with in lists, so they are given once only. */
export function addPerson(workplace: Workplace, input: ParsedInput<'person.add'>): Person {
  const { notebook } = workplace;
  const taken = listPeople(notebook.store).find((person) => isSame(person.initials, input.initials));
  if (taken) throw new InputError('initials', input.initials, `${taken.name} already signs with ${taken.initials}; choose other initials.`);
  requireNameFree(workplace, input.name);
  const personId = workplace.newId();
  notebook.append([{ kind: 'person.added', body: { personId, ...input } }]);
  return personNamed(workplace, personId);
}

/** Another name or role, as after a marriage or a new post. Entries keep who it was: they carry the id, and the record the change. */
export function changePerson(workplace: Workplace, { personId, name, role, reason }: ParsedInput<'person.change'>): Person {
  const before = personNamed(workplace, personId);
  if (name === before.name && role === before.role) return before;
  if (!isSame(name, before.name)) requireNameFree(workplace, name);
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
  const namesake = activeNamed(workplace, person.name);
  if (namesake) throw new Refusal('conflict', `${namesake.name} is in the notebook again, with the initials ${namesake.initials}; retire that one first.`);
  requireReason(reason, `${person.name} was retired (${person.retiredReason})`);
  workplace.notebook.append([{ kind: 'person.returned', body: { personId, reason: reason.trim() } }]);
  return personNamed(workplace, personId);
}

/** Two people of one name could be taken for each other below a signature. One who is retired may be added again. */
function requireNameFree(workplace: Workplace, name: string): void {
  const namesake = activeNamed(workplace, name);
  if (namesake) throw new InputError('name', name, `${namesake.name} is in the notebook already, with the initials ${namesake.initials}; give a name that tells the two apart.`);
}

function activeNamed({ notebook }: Workplace, name: string): Person | undefined {
  return listPeople(notebook.store).find((person) => !person.retired && isSame(person.name, name));
}

/** The same to whoever reads it, however it is typed. */
function isSame(one: string, other: string): boolean {
  const [plain, otherPlain] = [one, other].map((text) => text.normalize('NFKC').toLowerCase().replace(/\s+/g, ' ').trim());
  return plain === otherPlain;
}

function personNamed({ notebook }: Workplace, personId: string): Person {
  const person = findPerson(notebook.store, personId);
  if (!person) throw new Refusal('not-found', 'This person is not in the notebook.');
  return person;
}
