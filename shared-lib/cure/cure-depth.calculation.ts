import { z } from 'zod';
import { defineCalculation, type Outcome } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { formatValue } from '../quantity/format.ts';
import { levelSchema } from '../statistics/level.ts';
import { meanOfReplicates } from '../statistics/mean-of-replicates.ts';
import { cureDepthFigure } from './cure-depth-figure.ts';
import { fitWorkingCurve, type WorkingCurve } from './working-curve.ts';

const DOSE = 'mJ/cm²';

const input = z.strictObject({
  /** Thickness that stays on the far side of the light after what is not cured has been wiped off. */
  readings: z.array(z.strictObject({ doseMJPerCm2: z.number().positive().max(1e6), curedUm: z.number().min(0).max(1e5) })).min(1).max(1000),
  /** Thickness of the drawdown: a depth that reaches it was cut short by it. */
  drawdownUm: z.number().positive().max(1e5).optional(),
  /** Thickness of the printed film that is to cure through. */
  filmUm: z.number().positive().max(1e5),
  /** Dose that the press gives. */
  workingDoseMJPerCm2: z.number().positive().max(1e6).optional(),
  level: levelSchema,
});
type Input = z.output<typeof input>;

/** Depth to which light cures an ink against its dose: a straight line against the logarithm of the dose. */
export const cureDepthCalculation = defineCalculation({
  id: 'cure-depth',
  version: '1',
  title: 'Depth of cure',
  input,
  compute: (values) => {
    const { readings, drawdownUm, filmUm, level } = values;
    const measured = readings.filter(({ curedUm }) => curedUm > 0 && (drawdownUm === undefined || curedUm < drawdownUm));
    const curve = fitWorkingCurve(measured.map(({ doseMJPerCm2, curedUm }) => [doseMJPerCm2, curedUm]), level);
    const answer = curve === null ? withoutCurve(measured.length) : fromCurve(curve, values);
    return {
      results: { curedPct: curedShare(values), ...answer.results },
      table: readings.map(({ doseMJPerCm2, curedUm }) => ({ doseMJPerCm2, curedUm, curedPct: (100 * curedUm) / filmUm, fittedUm: curve?.depthAt(doseMJPerCm2) ?? null })),
      flags: [...readingFlags(values), ...answer.flags],
      notes: [
        ...answer.notes,
        'It shows how deep this light sets this ink enough to withstand the wipe. It does not show how far the reaction has gone there, nor how well the cured layer sticks; adhesion and migration are other tests.',
      ],
      figures: [cureDepthFigure(values, curve, answer.results.doseThrough!)],
    };
  },
  columns: [
    { key: 'doseMJPerCm2', title: 'Dose', unit: DOSE },
    { key: 'curedUm', title: 'Cured depth', unit: 'µm', decimals: 1 },
    { key: 'curedPct', title: 'Of the printed film', unit: '%', decimals: 0 },
    { key: 'fittedUm', title: 'By the line', unit: 'µm', decimals: 1 },
  ],
  cautions: ['UV light: never look into the lamp, never defeat an interlock. Uncured ink sensitises the skin: gloves; its safety data sheet and local codes hold.'],
  sources: [
    'Working curve, depth = D_p·ln(dose/E_c): P. F. Jacobs, Rapid Prototyping & Manufacturing (1992), from memory',
    'Interval of a dose read off the line: E. C. Fieller, J. R. Stat. Soc. B 16 (1954) 175',
  ],
});

interface Answer extends Pick<Outcome, 'results'> {
  flags: Flag[];
  notes: string[];
}

/** Mean depth at the working dose as a share of the printed film; a depth beyond the film counts as all of it. */
function curedShare({ readings, filmUm, workingDoseMJPerCm2: dose, level }: Input): ResultValue {
  const doses = new Set(readings.map(({ doseMJPerCm2 }) => doseMJPerCm2));
  const at = dose ?? (doses.size === 1 ? readings[0]!.doseMJPerCm2 : undefined);
  const shares = readings.filter(({ doseMJPerCm2 }) => doseMJPerCm2 === at).map(({ curedUm }) => Math.min(100, (100 * curedUm) / filmUm));
  if (shares.length === 0) return valueWithoutInterval(null, '%', 0);
  const mean = meanOfReplicates(shares, '%', level, 0);
  const high = mean.high === null ? null : Math.min(100, mean.high);
  if (shares.every((share) => share === 100)) return { value: 100, unit: '%', low: null, high: null, level: null, n: shares.length, bound: 'exact' };
  return { ...mean, high };
}

function withoutCurve(measured: number): Answer {
  return {
    results: { doseThrough: valueWithoutInterval(null, DOSE, measured), penetrationDepth: valueWithoutInterval(null, 'µm', measured), criticalDose: valueWithoutInterval(null, DOSE, measured), doseMargin: valueWithoutInterval(null, '', measured) },
    flags: [],
    notes: ['No line of depth against dose: it needs depths at two different doses or more that rise with the dose and are not cut short by the drawdown.'],
  };
}

function fromCurve(curve: WorkingCurve, { readings, filmUm, workingDoseMJPerCm2: working }: Input): Answer {
  const doseThrough = curve.doseFor(filmUm);
  const ratio = (dose: number | null) => (dose === null || working === undefined ? null : working / dose);
  const doses = readings.map(({ doseMJPerCm2 }) => doseMJPerCm2);
  if (!Number.isFinite(doseThrough.value) || doseThrough.value! > 1e9) {
    throw new InputError('filmUm', filmUm, `filmUm (${filmUm}) lies so far beyond the depths measured that no dose for it can be given; measure deeper.`);
  }
  const outside = doseThrough.value! > Math.max(...doses) || doseThrough.value! < Math.min(...doses);
  return {
    results: {
      doseThrough,
      penetrationDepth: curve.penetrationDepth,
      criticalDose: curve.criticalDose,
      doseMargin: working === undefined ? valueWithoutInterval(null, '', curve.n) : { ...doseThrough, unit: '', value: ratio(doseThrough.value), low: ratio(doseThrough.high), high: ratio(doseThrough.low) },
    },
    flags: outside ? [{ code: 'extrapolated', where: 'filmUm', text: `The dose that cures ${filmUm} µm through, ${formatValue(doseThrough).text}, lies outside the doses measured: it follows from the line alone.` }] : [],
    notes: [
      'Depth against the logarithm of the dose by least squares; the dose is read off the line, with Fieller’s interval.',
      ...(doseThrough.low === null || doseThrough.high === null ? ['No interval of the dose: three readings or more, and a slope that is sure, are needed.'] : []),
    ],
  };
}

function readingFlags({ readings, drawdownUm, workingDoseMJPerCm2: working }: Input): Flag[] {
  const short = readings.filter(({ curedUm }) => drawdownUm !== undefined && curedUm >= drawdownUm).length;
  const none = readings.filter(({ curedUm }) => curedUm === 0).length;
  const found: Flag[] = [];
  if (short > 0) found.push({ code: 'cut-short', where: 'drawdownUm', text: `${short} reading${short === 1 ? ' is' : 's are'} as deep as the drawdown, which cut the depth short: left out of the line. Use a thicker drawdown.` });
  if (none > 0) found.push({ code: 'nothing-cured', where: 'readings', text: `At ${none} reading${none === 1 ? '' : 's'} nothing stayed: the dose lay below the critical one, and the line does not go there.` });
  if (working !== undefined && !readings.some(({ doseMJPerCm2 }) => doseMJPerCm2 === working)) found.push({ code: 'working-dose-not-read', where: 'workingDoseMJPerCm2', text: `No depth was measured at the working dose of ${working} ${DOSE}, so the share cured there is not given.` });
  return found;
}
