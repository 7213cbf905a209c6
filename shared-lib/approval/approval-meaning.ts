/** What a signature says, as a verb with its object: 'approves the press run of job J-4418 (dumpling pouch 600 g, run 2): 6 lines: …'. */
export function approvalMeaning({ job, product, pressRun, summary }: { job: string; product: string; pressRun: string; summary: string }): string {
  const of = [product, pressRun].filter((part) => part !== '').join(', ');
  return `approves the press run of job ${job}${of ? ` (${of})` : ''}: ${summary}`;
}
