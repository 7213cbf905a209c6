import { CommandProblem } from './command-problem.ts';
import type { CommandApplication } from './open-application.ts';

/** Puts the person with these initials at the bench. @throws CommandProblem when there is none */
export async function takeBench(application: CommandApplication, initials: string): Promise<void> {
  const { people } = await application.call('session.get', {});
  const person = people.find((one) => one.initials === initials);
  if (!person) throw new CommandProblem(`Nobody here has the initials ${initials}; there are ${people.map((one) => one.initials).join(', ')}.`);
  await application.call('session.takeBench', { personId: person.personId });
}
