import { InputError } from '../calculation/input-error.ts';
import type { BenchReadings, BenchRow, Method } from '../method/method.ts';
import { readRows } from '../method/read-rows.ts';
import { runOnRows } from '../method/run-on-rows.ts';
import { numberIn, textIn } from '../method/sheet.ts';
import { photoField, photoRemoved, removedIn } from './photo-removed.ts';
import { hoursSincePrinting, roomConditions } from './room-conditions.ts';
import { tapeAdhesionCalculation } from './tape-adhesion.calculation.ts';

/** Squares of a lattice: one less than its cuts, each way. */
const SQUARES: Record<string, number> = { 'eleven-1mm': 100, 'six-2mm': 25, 'six-3mm': 25 };

/** Tape pressed on a print and pulled off: what stays, on the finished print or before it is laminated. */
export const tapeAdhesionMethod: Method = {
  id: 'tape-adhesion',
  version: '1',
  title: 'Tape adhesion of the print',
  shortTitle: 'Tape adhesion',
  group: 'mechanical',
  standards: ['ASTM F2252', 'ASTM D3359', 'ISO 2409'],
  help: {
    shows: 'Whether the ink holds to the film, and its layers to each other, when a tape is pulled off: grade and share of the print that stays. It compares inks under one tape; it is no force.',
    how: [
      'Take the specimen flat and clean. On press and before lamination test at once: a failure found after laminating is a roll lost.',
      'Uncut print: lay the tape over solids and over overprints. Cross-cut: cut the lattice through the ink with even pressure, brush off the crumbs.',
      'Press the tape down with a roller or the thumbnail, the same way each time, until no air is left under it.',
      'After the agreed time (90 s, from 60 to 120 s, for ASTM D3359) pull it off in one go, as near to 180° as possible or at the agreed angle.',
      'Count the squares of which more than half is gone, or judge the percent of the printed area removed, or measure it in a photograph taken straight from above in even light. Look at the tape as well as the film.',
      'At least three specimens across the web; say where the ink parted.',
    ],
    spoils: [
      'Another tape, a tape past its shelf life, one that was cold or stored in light: only one tape compares.',
      'A slow or jerky pull, another angle, air under the tape.',
      'Ink that is not dry yet, or slip agent that has come to its surface: the tape then does not stick.',
      'A film that stretches or tears under the tape.',
    ],
  },
  cautions: [
    { hazard: 'blade', text: 'The lattice is cut with a bare blade: cut away from the hand on a firm base, keep the guard on, follow the shop’s rules for blades.' },
    { hazard: 'solvent', text: 'A print straight off the press still gives off solvent: ventilate, gloves; heed its safety data sheet and local codes.' },
  ],
  conditions: [
    {
      kind: 'choice',
      key: 'moment',
      label: 'Taken',
      required: true,
      default: 'print',
      choices: [
        { value: 'print', label: 'finished print', shortcut: 'f' },
        { value: 'press', label: 'on press', shortcut: 'p' },
        { value: 'before-lamination', label: 'before lamination', shortcut: 'b' },
      ],
    },
    hoursSincePrinting,
    { kind: 'item', of: 'fluid', key: 'tape', label: 'Tape', required: true, hint: 'one of Materials, Instruments and fluids, or type, width, lot, shelf life' },
    {
      kind: 'choice',
      key: 'cuts',
      label: 'Cuts',
      required: true,
      default: 'none',
      choices: [
        { value: 'none', label: 'none', shortcut: 'n' },
        { value: 'eleven-1mm', label: '11 × 11, 1 mm apart', shortcut: '1' },
        { value: 'six-2mm', label: '6 × 6, 2 mm apart', shortcut: '2' },
        { value: 'six-3mm', label: '6 × 6, 3 mm apart', shortcut: '3' },
      ],
    },
    { kind: 'number', key: 'dwellS', label: 'Tape on the print for', unit: 's', min: 0, max: 100_000, usual: { min: 60, max: 120 } },
    { kind: 'number', key: 'pullAngleDeg', label: 'Pull angle', unit: '°', min: 0, max: 180, usual: { min: 60, max: 180 } },
    ...roomConditions,
  ],
  readings: {
    rowName: 'specimen',
    fields: [
      { kind: 'text', key: 'label', label: 'Place', maxLength: 100, hint: 'colour, lane' },
      { kind: 'number', key: 'removedPct', label: 'Removed', unit: '%', min: 0, max: 100, hint: 'Of the printed area; or count squares.' },
      photoField,
      { kind: 'number', key: 'squaresRemoved', label: 'Squares removed', min: 0, max: 10_000 },
      { kind: 'number', key: 'squaresTotal', label: 'Squares in all', min: 1, max: 10_000, hint: 'Empty: those of the lattice, 100 or 25.' },
      {
        kind: 'choice',
        key: 'parted',
        label: 'The ink parted',
        choices: [
          { value: 'nowhere', label: 'nowhere', shortcut: 'n' },
          { value: 'film', label: 'from the film', shortcut: 'f' },
          { value: 'layers', label: 'between ink layers', shortcut: 'b' },
          { value: 'within', label: 'within an ink layer', shortcut: 'w' },
        ],
      },
    ],
    startRows: 3,
    minRows: 1,
    maxRows: 200,
  },
  calculation: 'tape-adhesion',
  properties: [
    { key: 'gradeD3359', title: 'Grade, ASTM D3359', unit: '', better: 'higher', kind: 'grade', limited: true, headline: true, readingsFigure: 'grades-d3359' },
    { key: 'retainedPct', title: 'Print retained', unit: '%', better: 'higher', limited: true, headline: true, readingsFigure: 'retained' },
    { key: 'gradeISO2409', title: 'Class, ISO 2409', unit: '', better: 'lower', kind: 'grade', limited: true, headline: false },
  ],
  evaluate,
};

function evaluate(bench: BenchReadings) {
  const read = readRows(bench, ['removedPct', 'photo', 'squaresRemoved', 'squaresTotal', 'parted']);
  if (read.length === 0) throw new InputError('rows[0].removedPct', null, 'No specimen has a reading yet: enter the percent removed or the squares removed.');
  const cuts = textIn(bench.conditions, 'cuts') ?? 'none';
  const photos = read.map(({ index }) => photoRemoved(bench, index));
  const specimens = read.map(({ values, index }, place) => ({ label: textIn(values, 'label') ?? `${index + 1}`, ...removedIn(values, photos[place]), squares: squaresIn(values, cuts, index) }));
  const result = runOnRows(
    tapeAdhesionCalculation,
    { specimens, cuts: cuts === 'none' ? 'none' : 'cross-cut' },
    { list: 'specimens', rows: read, first: 'removedPct', cells: { 'squares.removed': 'squaresRemoved', 'squares.total': 'squaresTotal' } },
  );
  return { ...result, flags: [...result.flags, ...photos.flatMap((photo) => photo?.flags ?? [])] };
}

function squaresIn(values: BenchRow['values'], cuts: string, index: number): { total: number; removed: number | undefined } | undefined {
  const removed = numberIn(values, 'squaresRemoved');
  const typed = numberIn(values, 'squaresTotal');
  if (removed === undefined && typed === undefined) return undefined;
  if (removed === undefined) throw new InputError(`rows[${index}].squaresRemoved`, null, 'Enter how many of the squares came off; 0 if none did.');
  const total = typed ?? SQUARES[cuts];
  if (total === undefined) throw new InputError(`rows[${index}].squaresTotal`, null, 'Enter how many squares there were, or choose the cuts above.');
  return { total, removed };
}
