import { InputError } from '../calculation/input-error.ts';

export interface StudyCells<Reading> {
  parts: string[];
  appraisers: string[];
  /** `cells[appraiser][part][trial]`, every cell as long. */
  cells: Reading[][][];
}

/**
 * Sorts the readings of a study by appraiser, part and trial.
 * @throws InputError where a trial was entered twice or an appraiser did not read a part as often as the others.
 */
export function studyCells<Reading>(readings: readonly { part: string; appraiser: string; trial: string; reading: Reading }[]): StudyCells<Reading> {
  const distinct = (key: 'part' | 'appraiser' | 'trial') => [...new Set(readings.map((reading) => reading[key]))];
  const [parts, appraisers, trials] = [distinct('part'), distinct('appraiser'), distinct('trial')];
  if (parts.length < 2 || appraisers.length < 2) {
    throw new InputError('readings', readings.length, `A measurement study needs at least two appraisers who read the same two or more parts, not ${appraisers.length} with ${parts.length}.`);
  }
  const found = new Map<string, Reading>();
  readings.forEach(({ part, appraiser, trial, reading }, index) => {
    const key = JSON.stringify([appraiser, part, trial]);
    if (found.has(key)) throw new InputError(`readings[${index}]`, trial, `${appraiser} has two readings of part ${part}, trial ${trial}; number the trials.`);
    found.set(key, reading);
  });
  const cells = appraisers.map((appraiser) => parts.map((part) => trials.map((trial) => {
    const key = JSON.stringify([appraiser, part, trial]);
    if (!found.has(key)) throw new InputError('readings', null, `Each appraiser must read each part in every trial; ${appraiser} has no reading of part ${part}, trial ${trial}.`);
    return found.get(key)!;
  })));
  return { parts, appraisers, cells };
}
