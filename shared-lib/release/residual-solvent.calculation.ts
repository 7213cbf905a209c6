import { defineCalculation, type Outcome } from '../calculation/calculation.ts';
import type { TableColumn } from '../calculation/table-column.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Flag, ResultValue, TableRow } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { quantifySolvent, type QuantifiedSolvent } from './quantify-solvent.ts';
import { solventsFigure, specimensFigure } from './residual-solvent-figures.ts';
import { residualSolventInput, solventsOf, type ResidualSolventInput } from './residual-solvent-input.ts';
import { shareOfLimit } from './share-of-limit.ts';
import type { SolventAmount } from './solvent-amount.ts';
import { solventTotal } from './solvent-total.ts';

const columns: TableColumn[] = [
  { key: 'solvent', title: 'Solvent' },
  { key: 'specimens', title: 'n', decimals: 0 },
  { key: 'found', title: 'Found' },
  { key: 'perSquareMetre', title: 'Amount', unit: 'mg/m²' },
  { key: 'low', title: 'Low', unit: 'mg/m²' },
  { key: 'high', title: 'High', unit: 'mg/m²' },
  { key: 'limitMgM2', title: 'Limit', unit: 'mg/m²' },
  { key: 'detectionLimit', title: 'Detection limit', unit: 'mg/m²' },
  { key: 'quantificationLimit', title: 'Quantification limit', unit: 'mg/m²' },
  { key: 'slope', title: 'Slope' },
  { key: 'intercept', title: 'Intercept' },
];

/** Residual solvents of a print by gas chromatography, each by its own calibration or multiple extraction, and in all. */
export const residualSolventCalculation = defineCalculation({
  id: 'residual-solvent',
  version: '1',
  title: 'Residual solvents by gas chromatography',
  input: residualSolventInput,
  compute,
  columns,
  cautions: [
    'Whether a print may touch food is decided by the food-contact law of the place and, where it asks for one, by a licensed laboratory; this result does not replace them.',
    'Solvents and standards: heed their safety data sheets, ventilate, keep flames away.',
  ],
  sources: [
    'EN 13628-1, EN 13628-2 (residual solvents in flexible packaging; scope seen, text from memory)',
    'ICH Q2(R1), 6.3 and 7.3 (detection and quantification limit)',
    'Inverse prediction: E. C. Fieller, J. R. Stat. Soc. B 16 (1954) 175; J. C. Miller, J. N. Miller, Statistics for Analytical Chemistry, 3rd ed. (1993), 5.6',
    'F. E. Satterthwaite, Biometrics Bull. 2 (1946) 110 (interval of a sum)',
  ],
});

function compute(given: ResidualSolventInput): Outcome {
  const flags: Flag[] = [];
  const solvents = solventsOf(given).map((solvent, index) => quantifySolvent(solvent, index, given, flags));
  const amounts = solvents.flatMap(({ found }) => found ?? []);
  if (amounts.length < solvents.length && solvents.length > 1) {
    throw new InputError('solvents', null, 'Several solvents are added up per area: each needs the area of its specimens.');
  }
  refuseUnlike(amounts);
  const total = amounts.length === 0 ? valueWithoutInterval(null, 'mg/m²', 0) : solventTotal(amounts, given.level);
  const limited = solvents.flatMap(({ limitMgM2, found }) => (limitMgM2 === undefined || !found ? [] : [{ limitMgM2, result: found.result }]));
  return {
    results: {
      total,
      shareOfLimitPct: shareOfLimit(limited) ?? valueWithoutInterval(null, '%', 0),
      ...(solvents.length === 1 ? solvents[0]!.results : {}),
    },
    table: solvents.map(row),
    flags,
    notes: notesOf(solvents, amounts, total, given),
    figures: [
      ...(amounts.length === 0 ? [] : [solventsFigure(amounts.map((amount, index) => ({ ...amount, limitMgM2: solvents[index]!.limitMgM2 })), total), specimensFigure(amounts, total)]),
      ...solvents.map(({ figure }) => figure),
    ],
  };
}

function refuseUnlike(amounts: readonly SolventAmount[]): void {
  const count = amounts[0]?.specimens.length ?? 0;
  const other = amounts.findIndex(({ specimens }) => specimens.length !== count);
  if (other === -1) return;
  const { name, specimens } = amounts[other]!;
  throw new InputError(`solvents[${other}].specimens`, specimens.length, `${name} has ${specimens.length} specimens and ${amounts[0]!.name} has ${count}; a run reads every solvent of every specimen, with area 0 where there is no peak.`);
}

const FOUND: Record<ResultValue['bound'], string> = { exact: 'found', 'at-most': 'below detection', 'at-least': 'found', between: 'in some specimens' };

function row({ name, limitMgM2, found, results }: QuantifiedSolvent): TableRow {
  const { value = null, low = null, high = null, bound = 'exact' } = found?.result ?? {};
  return {
    solvent: name || 'solvent',
    specimens: found?.specimens.length ?? 0,
    found: FOUND[bound],
    perSquareMetre: value,
    low,
    high,
    limitMgM2: limitMgM2 ?? null,
    detectionLimit: results.detectionLimitPerSquareMetre?.value ?? null,
    quantificationLimit: results.quantificationLimitPerSquareMetre?.value ?? null,
    slope: results.slope?.value ?? null,
    intercept: results.intercept?.value ?? null,
  };
}

const SIGMA_WORDS = { residual: 'of the standards about the line', intercept: 'of the intercept', blanks: 'of the blanks' };

function notesOf(solvents: QuantifiedSolvent[], amounts: SolventAmount[], total: ResultValue, { sigma, weighting }: ResidualSolventInput): string[] {
  const calibrated = solvents.some(({ results }) => results.slope);
  return [
    ...(calibrated
      ? [
          `Detection limit 3.3·σ/slope, quantification limit 10·σ/slope, σ being the scatter ${SIGMA_WORDS[sigma]}${weighting === '1/x' && sigma === 'residual' ? ' at the least of them' : ''}.`,
          'One extraction of the headspace does not bring out all of the solvent: unless the standards sat on the same film, the print may hold more (EN 13628-2).',
        ]
      : []),
    ...solvents.flatMap(({ notes }) => notes),
    ...(amounts.some(({ specimens }) => specimens.length === 1) ? ['One specimen: the interval knows the scatter of the measurement, not that of the print.'] : []),
    ...(solvents.length > 1 && total.bound !== 'exact' ? [totalNote(total)] : []),
  ];
}

function totalNote({ bound }: ResultValue): string {
  if (bound === 'at-most') return 'No solvent was found; the total is at most the sum of their detection limits.';
  return 'Not every solvent was found: the total lies between what was found and that plus the detection limits of the others.';
}
