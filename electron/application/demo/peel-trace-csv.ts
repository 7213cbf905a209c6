import type { Random } from '../../../shared-lib/statistics/random.ts';

const LENGTH_MM = 80;
const STEP_MM = 0.2;

/**
 * A T-peel trace as a testing machine would write it: slack, the initial peak, a plateau with a slow waver and noise that
 * remembers, then the end of the peel. Semicolons and decimal commas.
 * @param meanN force on the plateau
 */
export function peelTraceCsv(random: Random, meanN: number, specimen: number): string {
  const lines = [`Specimen;${specimen}`, 'Speed;100 mm/min', 'Extension (mm);Force (N)'];
  const phase = 2 * Math.PI * random.uniform();
  let wander = 0;
  for (let step = 0; step <= LENGTH_MM / STEP_MM; step++) {
    const extension = step * STEP_MM;
    wander = 0.85 * wander + 0.022 * random.normal();
    const plateau = 1 + 0.03 * Math.sin(extension / 6 + phase) + wander;
    const force = meanN * plateau * shape(extension);
    lines.push(`${comma(extension, 1)};${comma(Math.max(0, force + 0.004 * random.normal()), 3)}`);
  }
  return `${lines.join('\r\n')}\r\n`;
}

/** Relative to the plateau: slack to 1 mm, peak at 4 mm, settled at 8 mm, coming apart over the last 2 mm. */
function shape(extension: number): number {
  if (extension < 1) return 0;
  if (extension < 4) return (1.25 * (extension - 1)) / 3;
  if (extension < 8) return 1.25 - (0.25 * (extension - 4)) / 4;
  return Math.min(1, Math.max(0, (LENGTH_MM - extension) / 2));
}

function comma(value: number, decimals: number): string {
  return value.toFixed(decimals).replace('.', ',');
}
