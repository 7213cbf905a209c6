import { InputError } from '../calculation/input-error.ts';
import type { BenchReadings, Method, NumberField } from '../method/method.ts';
import { readRows } from '../method/read-rows.ts';
import { runOnRows } from '../method/run-on-rows.ts';
import { numberIn } from '../method/sheet.ts';
import { defectKinds } from './lamination-places.ts';
import { laminationRecheckCalculation } from './lamination-recheck.calculation.ts';
import { recheckFollowUp } from './recheck-follow-up.ts';

const count = (key: string, label: string): NumberField => ({ kind: 'number', key, label, min: 0, max: 100_000, usual: { min: 0, max: 200 }, required: true });
const READ = [...defectKinds, 'curlMm'];
/** Of the place alone: they begin no row. */
const WHERE = ['hours', 'acrossMm', 'alongM', 'coveragePct'];

/** One roll looked at again and again: bubbles over print, tunnels, delamination and curl, counted per area and located. */
export const laminationRecheckMethod: Method = {
  id: 'lamination-recheck',
  version: '1',
  title: 'Lamination checked again after hours and days',
  shortTitle: 'Lamination recheck',
  group: 'mechanical',
  standards: [],
  help: {
    shows: 'How many bubbles, tunnels and delaminated spots a laminate has per square metre, where on the web they lie, whether they grow with time and whether they follow the ink coverage.',
    how: [
      'Look at the laminate soon after it was made, after 24 hours and after 7 days, each time on the same roll, stored as the roll is stored.',
      'Unwind a metre or two. Lay a frame of known area, 10 × 10 cm or larger, at places across the web: bare film, light tones and full solids, edges and middle.',
      'Count in the frame, by slanting light: bubbles (round, mostly over print), tunnels (ridges across), delaminated spots. Type 0 where there is none: an empty place is a finding.',
      'Give each place its ink coverage, its distance from the operator side and its metres into the roll: a sketch of the web is drawn from them.',
      'Curl: cut a square of 10 × 10 cm, lay it down and measure how far the edges rise; above 0 towards the outer ply.',
      'Write all checks of a roll on one sheet: growth is worked out there. Finish it after each check and Today tells when the next is due.',
    ],
    spoils: [
      'Only bad places counted: the rate is then of bad places. Lay the frame before looking.',
      'The outer wraps, which saw less pressure, at one check and the inside at the next.',
      'A sample cut off and left flat: it is not under the tension of the roll.',
      'Defects in groups counted as one: they are flagged when the places differ too much.',
    ],
  },
  cautions: [
    { hazard: 'blade', text: 'Frames and squares are cut from the web with bare blades, and only from a web at rest: cut away from the hand, keep the guard on, follow the shop’s rules for blades and for stopped machines.' },
    { hazard: 'solvent', text: 'Adhesive that has not cured may sensitise skin and airways: gloves, ventilation; heed its safety data sheet and local codes.' },
    { hazard: 'food-contact', text: 'A laminate that has not cured is not fit for food contact; its release follows the adhesive maker’s statement and local law, not this count.' },
  ],
  conditions: [
    { kind: 'text', key: 'laminatedOn', label: 'Laminated on', maxLength: 10, format: 'date', hint: 'as 2026-03-09; Today then tells when to look again' },
    { kind: 'number', key: 'frameCm2', label: 'Frame', unit: 'cm²', min: 0, minExclusive: true, max: 1e7, default: 100, usual: { min: 25, max: 10_000 }, required: true },
    { kind: 'number', key: 'webWidthMm', label: 'Web width', unit: 'mm', min: 0, minExclusive: true, max: 20_000, usual: { min: 200, max: 2500 } },
    { kind: 'text', key: 'storage', label: 'Stored', maxLength: 200, hint: 'where, how warm' },
    { kind: 'number', key: 'storageTemperatureC', label: 'Storage temperature', unit: '°C', min: -50, max: 150, usual: { min: 18, max: 50 } },
  ],
  readings: {
    rowName: 'place',
    fields: [
      { kind: 'number', key: 'hours', label: 'Since lamination', unit: 'h', min: 0, max: 100_000, required: true, carryDown: true },
      { kind: 'number', key: 'acrossMm', label: 'Across', unit: 'mm', min: 0, max: 20_000, hint: 'from the operator side' },
      { kind: 'number', key: 'alongM', label: 'Along', unit: 'm', min: 0, max: 1e6, hint: 'from the outside of the roll' },
      { kind: 'number', key: 'coveragePct', label: 'Ink coverage', unit: '%', min: 0, max: 400, usual: { min: 0, max: 300 } },
      count('bubbles', 'Bubbles'),
      count('tunnels', 'Tunnels'),
      count('delaminations', 'Delaminated'),
      { kind: 'number', key: 'curlMm', label: 'Curl', unit: 'mm', min: -500, max: 500, hint: 'above 0 towards the outer ply' },
    ],
    startRows: 6,
    minRows: 1,
    maxRows: 500,
  },
  calculation: 'lamination-recheck',
  properties: [
    { key: 'defects', title: 'Defects at the last check', unit: 'per m²', better: 'lower', limited: true, headline: true },
    { key: 'growth', title: 'Last check ÷ first check', unit: '', better: 'lower', limited: true, headline: true },
    { key: 'bubbles', title: 'Bubbles', unit: 'per m²', better: 'lower', limited: true, headline: false },
    { key: 'tunnels', title: 'Tunnels', unit: 'per m²', better: 'lower', limited: true, headline: false },
    { key: 'delaminations', title: 'Delaminated spots', unit: 'per m²', better: 'lower', limited: true, headline: false },
    { key: 'coverageFactor', title: 'Factor for 10 % more ink coverage', unit: '', better: 'none', limited: false, headline: false },
    { key: 'curl', title: 'Curl', unit: 'mm', better: 'within', limited: true, headline: false },
    { key: 'lastCheckH', title: 'Last check after lamination', unit: 'h', better: 'none', limited: false, headline: false },
  ],
  evaluate,
  followUp: recheckFollowUp,
};

function evaluate(bench: BenchReadings) {
  const read = readRows(bench, READ);
  if (read.length === 0) throw new InputError('rows[0].bubbles', null, 'No place has been counted yet; type 0 where nothing was found.');
  const areaCm2 = numberIn(bench.conditions, 'frameCm2');
  const places = read.map(({ values }) => ({ ...Object.fromEntries([...WHERE, ...READ].map((key) => [key, numberIn(values, key)])), areaCm2 }));
  const input = { places, webWidthMm: numberIn(bench.conditions, 'webWidthMm') };
  return runOnRows(laminationRecheckCalculation, input, { list: 'places', rows: read, first: 'bubbles', conditions: ['webWidthMm'], cells: { areaCm2: 'conditions.frameCm2' } });
}
