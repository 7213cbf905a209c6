import type { DemoBench } from './demo-bench.ts';

/** The demo notebook is no secret: its passphrases stand here and in the README. */
export const demoPassphrases = {
  IR: 'warm nip cold drum',
  TV: 'blue before yellow',
  AQ: 'measure twice sign once',
} as const;

/** Each person sets their own passphrase at the bench. */
export async function setPassphrases(bench: DemoBench): Promise<void> {
  const { people, atBench } = await bench.do('session.get', {});
  for (const { personId, initials } of people) {
    await bench.do('session.takeBench', { personId });
    await bench.do('passphrase.set', { personId, passphrase: demoPassphrases[initials as keyof typeof demoPassphrases] });
  }
  if (atBench) await bench.do('session.takeBench', { personId: atBench.personId });
}

/** The quality lead reads a test of the technician's and signs below it. */
export async function witnessTest(bench: DemoBench, testId: string): Promise<void> {
  const { people } = await bench.do('session.get', {});
  const { personId } = people.find(({ initials }) => initials === 'AQ')!;
  const page = { testId };
  const { toSeq, chainHash } = await bench.do('work.page', { page });
  await bench.do('work.witness', { page, toSeq, chainHash, personId, passphrase: demoPassphrases.AQ });
}
