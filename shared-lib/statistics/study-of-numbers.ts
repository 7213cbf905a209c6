import type { Outcome } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import type { Flag, ResultValue } from '../calculation/result.ts';
import { valueWithoutInterval } from '../calculation/value-without-interval.ts';
import { formatNumber, plainDecimals } from '../quantity/format.ts';
import { gaugeAnova } from './gauge-anova.ts';
import type { GaugeAnova } from './gauge-anova.ts';
import { gaugeAverageRange } from './gauge-average-range.ts';
import { gaugeToPartInterval } from './gauge-share-interval.ts';
import { meanSquareInterval } from './mean-square-interval.ts';
import type { MeanSquareTerm } from './mean-square-interval.ts';
import { refuseAs } from './refuse-as.ts';
import type { StudyCells } from './study-cells.ts';

interface Setting {
  method: 'anova' | 'average-range';
  pooling: 'auto' | 'never';
  toleranceWidth?: number;
  unit: string;
  level: number;
}

/** √2·1 as the trade rounds it. */
const CATEGORIES = 1.41;
/** Common practice: a gauge up to this share of the total is good, beyond the second one unfit. */
const GOOD_PCT = 10;
const UNFIT_PCT = 30;

/** A measurement study of measured numbers. Standard deviations are in sigma units, without a multiplier. */
export function studyOfNumbers({ parts, appraisers, cells }: StudyCells<number>, setting: Setting): Outcome {
  const n = parts.length * appraisers.length * cells[0]![0]!.length;
  if (cells[0]![0]!.length < 2) throw new InputError('readings', null, 'Repeatability needs at least two trials of each part by each appraiser.');
  return setting.method === 'anova' ? byAnova(refuseAs('readings', n, () => gaugeAnova(cells, setting.pooling)), n, setting) : byRange(cells, n, setting);
}

function byAnova(anova: GaugeAnova, n: number, { toleranceWidth, unit, level }: Setting): Outcome {
  const { variances, terms } = anova;
  const reproducibility = variances.appraiser + variances.interaction;
  const gauge = variances.repeatability + reproducibility;
  if (!(gauge + variances.part > 0)) throw new InputError('readings', null, 'All readings are equal: nothing can be said about the method.');
  const sd = (variance: number, sum: MeanSquareTerm[]): ResultValue => {
    const { low, high } = meanSquareInterval(sum, level);
    return { value: Math.sqrt(variance), unit, low: Math.sqrt(low), high: Math.sqrt(high), level, n, bound: 'exact' };
  };
  const ratio = gauge > 0 ? gaugeToPartInterval(anova, level) : { low: 0, high: 0 };
  const pct = (value: number) => (value === Infinity ? 100 : 100 * Math.sqrt(value / (1 + value)));
  const categories = (value: number) => (value > 0 ? Math.floor(CATEGORIES / Math.sqrt(value)) : null);
  const gaugePct = 100 * Math.sqrt(gauge / (gauge + variances.part));
  const results: Record<string, ResultValue> = {
    repeatability: sd(variances.repeatability, terms.repeatability),
    reproducibility: sd(reproducibility, terms.reproducibility),
    gauge: sd(gauge, terms.gauge),
    part: sd(variances.part, terms.part),
    total: sd(gauge + variances.part, terms.total),
    gaugePct: { value: gaugePct, unit: '%', low: pct(ratio.low), high: pct(ratio.high), level, n, bound: 'exact' },
    distinctCategories: { value: categories(gauge / variances.part), unit: '', low: categories(ratio.high), high: categories(ratio.low), level, n, bound: 'exact' },
    icc: { value: variances.part / (gauge + variances.part), unit: '', low: ratio.high === Infinity ? 0 : 1 / (1 + ratio.high), high: ratio.low === Infinity ? 0 : 1 / (1 + ratio.low), level, n, bound: 'exact' },
    ...tolerance(Math.sqrt(gauge), toleranceWidth, n),
  };
  const { interaction } = anova;
  return {
    results,
    table: [
      ...([['appraiser', anova.appraiser], ['part', anova.part], ['appraiser × part', anova.interaction], ['repeat', anova.repeat]] as const).map(([source, { sumOfSquares, degreesOfFreedom, meanSquare }]) => ({
        source,
        sumOfSquares,
        df: degreesOfFreedom,
        meanSquare,
        F: source === 'appraiser × part' ? interaction.f : null,
        p: source === 'appraiser × part' ? interaction.p : null,
      })),
    ],
    flags: flagsOf(gaugePct, variances.repeatability),
    notes: [
      sentence(gaugePct, Math.sqrt(gauge), unit),
      anova.pooled ? 'Appraisers do not read single parts differently beyond scatter, so that interaction counts as repeatability.' : 'The interaction of appraiser and part is kept as a part of reproducibility.',
      'Standard deviations, without a multiplier. The interval of a share is by 10 000 draws with a fixed seed.',
    ],
  };
}

function byRange(cells: number[][][], n: number, { toleranceWidth, unit }: Setting): Outcome {
  const { repeatability, reproducibility, part } = refuseAs('readings', n, () => gaugeAverageRange(cells));
  const gauge = Math.hypot(repeatability, reproducibility);
  const total = Math.hypot(gauge, part);
  if (!(total > 0)) throw new InputError('readings', null, 'All readings are equal: nothing can be said about the method.');
  const gaugePct = (100 * gauge) / total;
  const plain = (value: number | null, of = unit) => valueWithoutInterval(value, of, n);
  return {
    results: {
      repeatability: plain(repeatability),
      reproducibility: plain(reproducibility),
      gauge: plain(gauge),
      part: plain(part),
      total: plain(total),
      gaugePct: plain(gaugePct, '%'),
      distinctCategories: plain(gauge > 0 ? Math.floor((CATEGORIES * part) / gauge) : null, ''),
      ...tolerance(gauge, toleranceWidth, n),
    },
    flags: flagsOf(gaugePct, repeatability),
    notes: [sentence(gaugePct, gauge, unit), 'By average and range, for comparison with older sheets; it gives no intervals and does not see an interaction. Prefer the analysis of variance.'],
  };
}

function tolerance(gauge: number, width: number | undefined, n: number): Record<string, ResultValue> {
  return width === undefined ? {} : { gaugeTolerancePct: valueWithoutInterval((600 * gauge) / width, '%', n) };
}

function sentence(gaugePct: number, gauge: number, unit: string): string {
  const size = `${formatNumber(gauge, plainDecimals(Number(gauge.toPrecision(2))))}${unit && ` ${unit}`}`;
  const word = gaugePct <= GOOD_PCT ? 'small' : gaugePct <= UNFIT_PCT ? 'usable for many purposes' : 'too large to tell these parts apart well';
  return `Two people reading one part scatter by ${size} (standard deviation), ${formatNumber(gaugePct, 0)} % of the total: ${word} (10 and 30 % are common practice).`;
}

function flagsOf(gaugePct: number, repeatability: number): Flag[] {
  const flags: Flag[] = [];
  if (gaugePct > UNFIT_PCT) flags.push({ code: 'gauge-large', where: 'readings', text: `The method takes up ${formatNumber(gaugePct, 0)} % of the scatter seen; differences between these parts are hard to tell.` });
  if (repeatability === 0) flags.push({ code: 'no-repeat-scatter', where: 'readings', text: 'Repeated readings are all equal; check the resolution of the instrument and that they were read afresh.' });
  return flags;
}
