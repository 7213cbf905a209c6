import type { ParsedInput } from '../../../shared-lib/api.ts';
import { InputError } from '../../../shared-lib/calculation/input-error.ts';
import type { Person } from '../../../shared-lib/notebook/views.ts';
import { listPeople } from '../queries/people.ts';
import type { Workplace } from '../workplace.ts';

/** Adds a person; initials are what entries are signed with in lists, so they are given once only. */
export function addPerson(workplace: Workplace, input: ParsedInput<'person.add'>): Person {
  const { notebook } = workplace;
  const taken = listPeople(notebook.store).find((person) => person.initials.toLowerCase() === input.initials.toLowerCase());
  if (taken) throw new InputError('initials', input.initials, `${taken.name} already signs with ${taken.initials}; choose other initials.`);
  const person: Person = { personId: workplace.newId(), ...input };
  notebook.append([{ kind: 'person.added', body: person }]);
  return person;
}
