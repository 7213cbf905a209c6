import { InputError } from '../calculation/input-error.ts';
import { readDecimal } from '../quantity/decimal.ts';

/**
 * Exposures at which the patches are to be read, from a line such as '24 48 96' or '24; 48; 96'.
 * @returns in growing order, each once; none for an empty line
 * @throws InputError on `conditions.readAt` for what is no exposure above 0
 */
export function plannedExposures(line: string): number[] {
  const exposures = line
    .split(/,\s+|[\s;]+/)
    .filter((part) => part !== '')
    .map((part) => {
      const read = readDecimal(part);
      if ('problem' in read || !(read.value > 0)) {
        throw new InputError('conditions.readAt', part, `Exposures to read at are numbers above 0 with spaces between them, such as 24 48 96; '${part}' is none.`);
      }
      return read.value;
    });
  return [...new Set(exposures)].sort((a, b) => a - b);
}
