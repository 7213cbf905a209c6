import { InputError } from '../calculation/input-error.ts';
import type { BenchReadings, Method } from '../method/method.ts';
import { readRows } from '../method/read-rows.ts';
import { runOnRows } from '../method/run-on-rows.ts';
import { numberIn, textIn } from '../method/sheet.ts';
import { crinkleCalculation } from './crinkle.calculation.ts';
import { gradeField } from './grade-field.ts';
import { photoField, photoRemoved, removedIn } from './photo-removed.ts';
import { hoursSincePrinting, roomConditions } from './room-conditions.ts';

/** A print crumpled between the fingers about ten times: does the ink stay on the moving film? */
export const crinkleMethod: Method = {
  id: 'crinkle',
  version: '1',
  title: 'Crinkle of the print between the fingers',
  shortTitle: 'Crinkle',
  group: 'mechanical',
  standards: [],
  help: {
    shows: 'Whether the ink film follows the film when it is crumpled: a brittle or badly anchored ink cracks and flakes off. Quick and telling on press; it grades, it does not measure a force.',
    how: [
      'Hold the print between thumbs and forefingers, about 3 cm apart, print up, and draw it taut.',
      'Push the hands together and turn them against each other so that the film crumples, then draw it taut again: one flex. Make about ten at a steady pace.',
      'Smooth the specimen over black or white, whichever shows the loss, and look at the creases.',
      'Grade: 5 unchanged, 4 hair cracks but nothing comes off, 3 single flakes at the creases, 2 flakes along the creases, 1 large flakes, 0 film bare in places. Or judge the percent of the area removed.',
      'Three specimens of each colour and overprint; the whites and thick overprints fail first. For freezer packs crinkle in the cold as well, and say so.',
    ],
    spoils: ['Another pair of hands: have a second person crinkle the same print now and then.', 'Another number of flexes, another pace, another film thickness.', 'Ink that is still soft with solvent, or film warmed by the hands.', 'Flakes wiped away before they were seen.'],
  },
  cautions: [{ hazard: 'solvent', text: 'A print straight off the press still gives off solvent: gloves, ventilation; heed its safety data sheet and local codes. Do not breathe in ink dust.' }],
  conditions: [
    { kind: 'number', key: 'flexes', label: 'Flexes', min: 1, max: 1000, default: 10, usual: { min: 8, max: 12 }, required: true },
    hoursSincePrinting,
    { kind: 'text', key: 'observer', label: 'Crinkled by', maxLength: 100 },
    ...roomConditions,
  ],
  readings: {
    rowName: 'specimen',
    fields: [
      { kind: 'text', key: 'label', label: 'Place', maxLength: 100, hint: 'colour, lane' },
      gradeField(false, '5 unchanged … 0 film bare in places'),
      { kind: 'number', key: 'removedPct', label: 'Removed', unit: '%', min: 0, max: 100, hint: 'Of the area that was flexed.' },
      photoField,
    ],
    startRows: 3,
    minRows: 1,
    maxRows: 200,
  },
  calculation: 'crinkle',
  properties: [
    { key: 'grade', title: 'Grade after crinkling', unit: '', better: 'higher', kind: 'grade', limited: true, headline: true, readingsFigure: 'grades' },
    { key: 'removedPct', title: 'Print removed', unit: '%', better: 'lower', limited: true, headline: true, readingsFigure: 'removed' },
  ],
  evaluate,
};

function evaluate(bench: BenchReadings) {
  const read = readRows(bench, ['grade', 'removedPct', 'photo']);
  if (read.length === 0) throw new InputError('rows[0].grade', null, 'No specimen has a grade or a percent removed yet.');
  const photos = read.map(({ index }) => photoRemoved(bench, index));
  const specimens = read.map(({ values, index }, place) => ({ label: textIn(values, 'label') ?? `${index + 1}`, grade: numberIn(values, 'grade'), ...removedIn(values, photos[place]) }));
  const result = runOnRows(crinkleCalculation, { specimens, flexes: numberIn(bench.conditions, 'flexes') }, { list: 'specimens', rows: read, first: 'grade', conditions: ['flexes'] });
  return { ...result, flags: [...result.flags, ...photos.flatMap((photo) => photo?.flags ?? [])] };
}
