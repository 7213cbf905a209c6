/** The person meant by one key: the number in the list, or the first letter of the initials when only one person has it. */
export function personByKey<Known extends { initials: string }>(people: Known[], key: string): Known | null {
  if (/^[1-9]$/.test(key)) return people[Number(key) - 1] ?? null;
  if (key.length !== 1) return null;
  const meant = people.filter((person) => person.initials.toLowerCase().startsWith(key.toLowerCase()));
  return meant.length === 1 ? meant[0]! : null;
}
