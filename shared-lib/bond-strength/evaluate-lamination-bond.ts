import { runCalculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { CalculationResult, Flag } from '../calculation/result.ts';
import type { BenchReadings, BenchRow } from '../method/method.ts';
import { limitOn, numberIn, textIn } from '../method/sheet.ts';
import { formatNumber } from '../quantity/format.ts';
import { analyseTrace, type TraceAnalysis } from './analyse-trace.ts';
import { bondStrengthCalculation } from './bond-strength.calculation.ts';
import { modeOf, widthFlag, widthOf } from './bench-strip.ts';
import type { FailureMode } from './failure-mode.ts';
import { strengthOf } from './strength.ts';
import { checkTrace } from './trace-columns.ts';
import { overlayFigure } from './trace-figure.ts';

const LEVEL = 0.95;

interface BenchSpecimen {
  index: number;
  strength: number;
  mode: FailureMode;
  analysis: TraceAnalysis | null;
  traceName: string;
  flags: Flag[];
}

/**
 * Evaluates the bench sheet of the lamination bond: each begun row gives one strength, from its trace (mean over the
 * plateau) or its typed force; the specimens together go through `bond-strength`.
 * @throws InputError (`rows[i].KEY`) for a row that lacks a force or a failure mode, or whose trace cannot be evaluated.
 */
export function evaluateLaminationBond(bench: BenchReadings): CalculationResult {
  const specimens = bench.rows.map((row, index) => ({ row, index })).filter(({ row }) => isBegun(row)).map(({ row, index }) => readSpecimen(bench, row, index));
  if (specimens.length === 0) throw new InputError('rows[0].forceN', null, 'Specimen 1 has no force yet: type it or read a trace.');
  const required = limitOn(bench, 'minimum')?.lower ?? limitOn(bench, 'mean')?.lower ?? undefined;
  const result = runCalculation(bondStrengthCalculation, {
    specimens: specimens.map(({ strength, mode }) => ({ strengthNPer15mm: strength, mode })),
    requiredNPer15mm: required !== undefined && required > 0 ? required : undefined,
  });
  const traced = specimens.flatMap(({ analysis, index, flags, traceName }) =>
    analysis ? [{ name: `${index + 1}: ${traceName}`, analysis, doubtful: flags.length > 0 }] : [],
  );
  return {
    ...result,
    flags: [...widthFlag(bench, isBegun), ...specimens.flatMap(({ flags }) => flags), ...result.flags.map((flag) => onRow(flag, specimens))],
    notes: [...result.notes, ...traceNotes(traced.length, bench)],
    figures: [...result.figures, ...(traced.length > 0 ? [overlayFigure(traced)] : [])],
  };
}

/** A width alone, carried down from the row above, begins no specimen. */
function isBegun({ values }: BenchRow): boolean {
  return values.forceN != null || values.trace != null || values.mode != null;
}

function readSpecimen(bench: BenchReadings, { values }: BenchRow, index: number): BenchSpecimen {
  const where = `rows[${index}]`;
  const force = numberIn(values, 'forceN');
  const traceKey = textIn(values, 'trace');
  if (force === undefined && traceKey === undefined) {
    throw new InputError(`${where}.forceN`, null, `Specimen ${index + 1} has neither a force nor a trace: type the mean force or read a trace.`);
  }
  const mode = modeOf(values, index);
  const widthMm = widthOf(bench, values, index);
  const analysis = traceKey === undefined ? null : readTrace(bench, traceKey, index);
  const flags: Flag[] = (analysis?.flags ?? []).map((flag) => ({ ...flag, where: `${where}.trace`, text: `Specimen ${index + 1}: ${flag.text}` }));
  if (analysis && force !== undefined) {
    flags.push({ code: 'force-and-trace', where: `${where}.forceN`, text: `Specimen ${index + 1} has a typed force of ${formatNumber(force, 2)} N and a trace with a mean of ${formatNumber(analysis.force.mean, 2)} N; the trace counts.` });
  }
  const forceN = analysis ? analysis.force.mean : force!;
  if (forceN < 0) throw new InputError(`${where}.${analysis ? 'trace' : 'forceN'}`, forceN, `Specimen ${index + 1} has a mean force of ${formatNumber(forceN, 2)} N; a peel force cannot be below zero: check sign and column.`);
  return { index, strength: strengthOf(forceN, widthMm, 'N/15 mm'), mode, analysis, traceName: traceKey === undefined ? '' : bench.traces[traceKey]!.name, flags };
}

function readTrace(bench: BenchReadings, key: string, index: number): TraceAnalysis {
  const field = `rows[${index}].trace`;
  const trace = bench.traces[key];
  if (!trace) throw new InputError(field, key, `The trace of specimen ${index + 1} is not in the notebook; read its file again.`);
  checkTrace(trace, () => field);
  const choice = { discardStartMm: numberIn(bench.conditions, 'discardStartMm'), discardEndMm: numberIn(bench.conditions, 'discardEndMm') };
  try {
    return analyseTrace(trace, choice, LEVEL);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    throw new InputError(`conditions.${error.field}`, error.value, `Specimen ${index + 1}: ${error.message}`);
  }
}

/** `specimens[2]` of the calculation is another row of the sheet where rows before it are empty. */
function onRow(flag: Flag, specimens: BenchSpecimen[]): Flag {
  const position = /^specimens\[(\d+)\]$/.exec(flag.where)?.[1];
  if (position === undefined) return flag;
  const { index } = specimens[Number(position)]!;
  return { ...flag, where: `rows[${index}].forceN`, text: flag.text.replace(/pecimen \d+/, `pecimen ${index + 1}`) };
}

function traceNotes(traced: number, bench: BenchReadings): string[] {
  if (traced === 0) return [];
  const set = numberIn(bench.conditions, 'discardStartMm') !== undefined || numberIn(bench.conditions, 'discardEndMm') !== undefined;
  return [
    set
      ? 'A trace counts with its mean force over what is left after the stated lengths at its start and end.'
      : 'A trace counts with its mean force over the plateau, the central 80 % of the travel under load after the initial peak.',
  ];
}
