/** Says which basis the densities of a calculation have. */
export function paperNote(paper: number | undefined): string {
  if (paper === undefined) return 'The densities were taken as minus paper; for absolute ones give the density of the paper.';
  return paper === 0 ? 'Densities minus paper.' : `Absolute densities; the paper's ${paper} was subtracted.`;
}
