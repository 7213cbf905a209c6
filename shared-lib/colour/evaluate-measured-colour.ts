import { InputError } from '../calculation/input-error.ts';
import type { CalculationResult } from '../calculation/result.ts';
import type { BenchReadings, BenchRow, CellValue, Companion } from '../method/method.ts';
import type { ReferenceColour } from '../method/reference-colour.ts';
import { runOnBench } from '../method/run-on-bench.ts';
import { limitOn, numberIn, textIn } from '../method/sheet.ts';
import type { DifferenceFormula } from './difference-formulas.ts';
import { lightOfReference } from './light-of-reference.ts';
import { measuredColourCalculation } from './measured-colour.calculation.ts';
import type { MeasuredColour } from './measured-colour.ts';
import type { MeasurementLight } from './measurement-light.ts';
import { measurementLightOf } from './measurement-light-fields.ts';
import { spectrumOf } from './spectrum-text.ts';
import { asSpectrumInput } from './spectrum.ts';

export const referenceKeys = ['referenceL', 'referenceA', 'referenceB'] as const;
export const sampleKeys = ['L', 'a', 'b'] as const;
/** The first of these with an upper limit is the tolerance that the figures show. */
export const toleranceFormulas: readonly DifferenceFormula[] = ['deltaE00', 'deltaECMC', 'deltaE94', 'deltaEab'];

/** The sheet `colour-measured`: its rows against the reference, beside the last approved lot and the control. */
export function evaluateMeasuredColour(bench: BenchReadings): CalculationResult {
  const { conditions } = bench;
  const rows = readRows(bench.rows);
  if (rows.length === 0) throw new InputError('rows[0].spectrum', null, 'Nothing has been read yet: a spectrum, or L*, a* and b*.');
  const on = toleranceFormulas.find((formula) => (limitOn(bench, formula)?.upper ?? 0) > 0);
  const input = {
    reference: referenceOf(bench),
    sample: rows.map(({ colour }) => colour),
    sampleLight: measurementLightOf(bench, ''),
    labels: rows.map(({ label }) => label),
    ...runOf(rows, textIn(conditions, 'runUnit')),
    others: othersOf(bench),
    secondIlluminant: secondIlluminantOf(bench),
    cmc: { l: numberIn(conditions, 'cmcL') ?? 2, c: numberIn(conditions, 'cmcC') ?? 1 },
    tolerance: on ? { on, limit: limitOn(bench, on)!.upper! } : undefined,
  };
  const result = runOnBench(measuredColourCalculation, input, (field) => cellOf(field, rows));
  return { ...result, notes: [...result.notes, ...notesOf(bench)], flags: result.flags.map((flag) => ({ ...flag, where: flag.where === '' ? '' : cellOf(flag.where, rows) })) };
}

interface ReadRow {
  index: number;
  label: string;
  run: number | undefined;
  colour: MeasuredColour;
}

/** Rows that are begun; a row has a spectrum, or all of L*, a*, b*. */
function readRows(rows: readonly BenchRow[]): ReadRow[] {
  return rows.flatMap(({ values }, index): ReadRow[] => {
    const spectrum = textIn(values, 'spectrum');
    const typed = sampleKeys.filter((key) => numberIn(values, key) !== undefined);
    if (spectrum === undefined && typed.length === 0) return [];
    const cell = (key: string) => `rows[${index}].${key}`;
    if (spectrum !== undefined && typed.length > 0) throw new InputError(cell(typed[0]!), numberIn(values, typed[0]!), 'This row has a spectrum, from which L*, a* and b* follow; clear the typed ones or the spectrum.');
    const missing = sampleKeys.find((key) => spectrum === undefined && numberIn(values, key) === undefined);
    if (missing !== undefined) throw new InputError(cell(missing), null, 'This row is not complete: its other readings need this one.');
    return [{ index, label: textIn(values, 'label') ?? `${index + 1}`, run: numberIn(values, 'run'), colour: colourOf(values)! }];
  });
}

function colourOf(values: Record<string, CellValue>): MeasuredColour | null {
  const spectrum = textIn(values, 'spectrum');
  if (spectrum !== undefined) return asSpectrumInput(spectrumOf(spectrum));
  const lab = sampleKeys.map((key) => numberIn(values, key));
  return lab.every((value) => value !== undefined) ? { lab: lab as [number, number, number] } : null;
}

/** Places in the run, where every row has one; where only some have, it is asked for. */
function runOf(rows: readonly ReadRow[], unit: string | undefined): { run?: number[]; runUnit?: string } {
  const placed = rows.filter(({ run }) => run !== undefined);
  if (placed.length === 0) return {};
  const without = rows.find(({ run }) => run === undefined);
  if (without) throw new InputError(`rows[${without.index}].run`, null, 'The other rows say where in the run they were read; this one needs it as well.');
  return { run: rows.map(({ run }) => run!), runUnit: unit ?? 'm' };
}

function referenceOf(bench: BenchReadings): { name: string; colour: MeasuredColour; light: MeasurementLight | undefined } {
  const { conditions } = bench;
  const chosen = textIn(conditions, 'reference');
  const kept = chosen === undefined ? undefined : bench.references?.[chosen];
  if (kept) return { name: kept.name, colour: colourOfReference(kept), light: lightOfReference(kept) };
  const missing = referenceKeys.find((key) => numberIn(conditions, key) === undefined);
  if (missing !== undefined) {
    const what = chosen === undefined ? 'Choose a reference colour, or type its L*, a* and b*.' : `No reference colour “${chosen}” is kept in Materials: choose one that is, or type its L*, a* and b*.`;
    throw new InputError(`conditions.${missing}`, null, what);
  }
  return { name: chosen ?? 'reference', colour: { lab: referenceKeys.map((key) => numberIn(conditions, key)!) as [number, number, number] }, light: measurementLightOf(bench, 'reference') };
}

function colourOfReference({ spectrum, lab }: ReferenceColour): MeasuredColour {
  return spectrum !== null ? asSpectrumInput(spectrumOf(spectrum)) : { lab: [lab!.L, lab!.a, lab!.b] };
}

function othersOf({ companions }: BenchReadings) {
  const other = (name: string, companion: Companion | undefined) => {
    const sample = (companion?.rows ?? []).flatMap(({ values }) => colourOf(values) ?? []);
    if (!companion || sample.length === 0) return [];
    const light = measurementLightOf({ conditions: companion.conditions }, '');
    return [{ name: `${name} ${companion.sampleCode}, ${companion.on}`, sample, ...(light ? { light } : {}) }];
  };
  return [...other('last approved lot', companions?.approved), ...other('control', companions?.control)];
}

/** Never that of the sheet itself: then the first other one that is often asked for. */
function secondIlluminantOf({ conditions }: BenchReadings): string | undefined {
  const second = textIn(conditions, 'secondIlluminant') ?? 'A';
  return second === textIn(conditions, 'illuminant') ? (second === 'A' ? 'D65' : 'A') : second;
}

/** Says what is missing beside the print, so that an absent line is no puzzle. */
function notesOf({ conditions, companions }: BenchReadings): string[] {
  const control = textIn(conditions, 'control') !== undefined;
  return [
    ...(companions && !companions.approved ? ['No earlier print of this product met its limits against this reference; there is no last approved lot to compare with.'] : []),
    ...(companions && control && !companions.control ? ['The control has no colour by this method yet; measure it to see this print beside it.'] : []),
  ];
}

function cellOf(field: string, rows: readonly ReadRow[]): string {
  const sample = /^sample(?:\[(\d+)\])?(?:\.lab(?:\[(\d)\])?|\.(?:reflectance|wavelengthsNm|scale).*)?$/.exec(field);
  if (sample) {
    const row = rows[Number(sample[1] ?? 0)]!;
    return `rows[${row.index}].${'lab' in row.colour ? sampleKeys[Number(sample[2] ?? 0)] : 'spectrum'}`;
  }
  const reference = /^reference(?:\.colour)?(?:\.lab)?\[(\d)\]/.exec(field);
  if (reference) return `conditions.${referenceKeys[Number(reference[1])]}`;
  if (field.startsWith('reference')) return 'conditions.reference';
  if (field.startsWith('sampleLight')) return 'conditions.illuminant';
  return field.startsWith('cmc') ? 'conditions.cmcL' : '';
}
