import type { Calculation } from '../calculation/calculation.ts';
import { bondBuildCalculation } from '../bond-strength/bond-build.calculation.ts';
import { bondStrengthCalculation } from '../bond-strength/bond-strength.calculation.ts';
import { peelTraceCalculation } from '../bond-strength/peel-trace.calculation.ts';
import { coatWeightStrengthCalculation } from '../colour/coat-weight-strength.calculation.ts';
import { colourDifferenceCalculation } from '../colour/colour-difference.calculation.ts';
import { colourStrengthCalculation } from '../colour/colour-strength.calculation.ts';
import { densityCalculation } from '../colour/density.calculation.ts';
import { glossCalculation } from '../colour/gloss.calculation.ts';
import { hueErrorGreynessCalculation } from '../colour/hue-error-greyness.calculation.ts';
import { matchByEyeCalculation } from '../colour/match-by-eye.calculation.ts';
import { measuredColourCalculation } from '../colour/measured-colour.calculation.ts';
import { metamerismCalculation } from '../colour/metamerism.calculation.ts';
import { opacityCalculation } from '../colour/opacity.calculation.ts';
import { printContrastCalculation } from '../colour/print-contrast.calculation.ts';
import { toneValueCalculation } from '../colour/tone-value.calculation.ts';
import { trapCalculation } from '../colour/trap.calculation.ts';
import { tristimulusCalculation } from '../colour/tristimulus.calculation.ts';
import { whitenessCalculation } from '../colour/whiteness.calculation.ts';
import { cureDepthCalculation } from '../cure/cure-depth.calculation.ts';
import { cureRubsCalculation } from '../cure/cure-rubs.calculation.ts';
import { surfaceTackCalculation } from '../cure/surface-tack.calculation.ts';
import { tapeLabelLiftCalculation } from '../cure/tape-label-lift.calculation.ts';
import { fadeLifeCalculation } from '../fade/fade-life.calculation.ts';
import { fadeRetentionCalculation } from '../fade/fade-retention.calculation.ts';
import { stainingCalculation } from '../fade/staining.calculation.ts';
import { lightExposureCalculation } from '../fade/light-exposure.calculation.ts';
import { coatWeightCalculation } from '../liquid/coat-weight.calculation.ts';
import { formulationCalculation } from '../liquid/formulation.calculation.ts';
import { viscosityCupCalculation } from '../liquid/viscosity-cup.calculation.ts';
import { blockingLoadCalculation } from '../mechanical/blocking-load.calculation.ts';
import { crinkleCalculation } from '../mechanical/crinkle.calculation.ts';
import { frictionCalculation } from '../mechanical/friction.calculation.ts';
import { heatResistanceCalculation } from '../mechanical/heat-resistance.calculation.ts';
import { jawPickOffCalculation } from '../mechanical/jaw-pick-off.calculation.ts';
import { laminationRecheckCalculation } from '../mechanical/lamination-recheck.calculation.ts';
import { rubCalculation } from '../mechanical/rub.calculation.ts';
import { scratchCalculation } from '../mechanical/scratch.calculation.ts';
import { tapeAdhesionCalculation } from '../mechanical/tape-adhesion.calculation.ts';
import { inHouseCalculation } from '../method/in-house/in-house.calculation.ts';
import { verdictCalculation } from '../method/verdict.calculation.ts';
import { odourPanelCalculation } from '../release/odour-panel.calculation.ts';
import { residualSolventCalculation } from '../release/residual-solvent.calculation.ts';
import { removedAreaCalculation } from '../picture/removed-area.calculation.ts';
import { calibrationCalculation } from '../statistics/calibration.calculation.ts';
import { capabilityCalculation } from '../statistics/capability.calculation.ts';
import { censoredNormalCalculation } from '../statistics/censored-normal.calculation.ts';
import { compareTrialsCalculation } from '../statistics/compare-trials.calculation.ts';
import { controlChartCalculation } from '../statistics/control-chart.calculation.ts';
import { desirabilityCalculation } from '../statistics/desirability.calculation.ts';
import { equivalenceCalculation } from '../statistics/equivalence.calculation.ts';
import { fitCalculation } from '../statistics/fit.calculation.ts';
import { kaplanMeierCalculation } from '../statistics/kaplan-meier.calculation.ts';
import { measurementStudyCalculation } from '../statistics/measurement-study.calculation.ts';
import { regressionCalculation } from '../statistics/regression.calculation.ts';
import { sampleSizeCalculation } from '../statistics/sample-size.calculation.ts';
import { summaryCalculation } from '../statistics/summary.calculation.ts';
import { twoFactorCalculation } from '../statistics/two-factor.calculation.ts';
import { contactAngleCalculation } from '../surface-energy/contact-angle.calculation.ts';
import { fluidRecipeCalculation } from '../surface-energy/fluid-recipe.calculation.ts';
import { inkFitCalculation } from '../surface-energy/ink-fit.calculation.ts';
import { treatmentDecayCalculation } from '../surface-energy/treatment-decay.calculation.ts';
import { treatmentDoseCalculation } from '../surface-energy/treatment-dose.calculation.ts';
import { wettingFluidCalculation } from '../surface-energy/wetting-fluid.calculation.ts';

/** Every calculation that there is, in the order of the catalogue. */
export const allCalculations: readonly Calculation[] = [
  wettingFluidCalculation,
  fluidRecipeCalculation,
  contactAngleCalculation,
  inkFitCalculation,
  treatmentDoseCalculation,
  treatmentDecayCalculation,
  peelTraceCalculation,
  bondStrengthCalculation,
  bondBuildCalculation,
  tapeAdhesionCalculation,
  crinkleCalculation,
  scratchCalculation,
  jawPickOffCalculation,
  laminationRecheckCalculation,
  blockingLoadCalculation,
  removedAreaCalculation,
  frictionCalculation,
  rubCalculation,
  heatResistanceCalculation,
  cureRubsCalculation,
  tapeLabelLiftCalculation,
  cureDepthCalculation,
  surfaceTackCalculation,
  fadeRetentionCalculation,
  fadeLifeCalculation,
  lightExposureCalculation,
  stainingCalculation,
  tristimulusCalculation,
  colourDifferenceCalculation,
  measuredColourCalculation,
  metamerismCalculation,
  matchByEyeCalculation,
  densityCalculation,
  toneValueCalculation,
  printContrastCalculation,
  trapCalculation,
  hueErrorGreynessCalculation,
  colourStrengthCalculation,
  coatWeightStrengthCalculation,
  opacityCalculation,
  whitenessCalculation,
  glossCalculation,
  residualSolventCalculation,
  odourPanelCalculation,
  coatWeightCalculation,
  viscosityCupCalculation,
  formulationCalculation,
  inHouseCalculation,
  summaryCalculation,
  compareTrialsCalculation,
  equivalenceCalculation,
  twoFactorCalculation,
  desirabilityCalculation,
  sampleSizeCalculation,
  measurementStudyCalculation,
  controlChartCalculation,
  capabilityCalculation,
  calibrationCalculation,
  censoredNormalCalculation,
  kaplanMeierCalculation,
  fitCalculation,
  regressionCalculation,
  verdictCalculation,
];

const byId = index(allCalculations);

/** The calculation with this id, or `undefined`. */
export function calculationById(id: string): Calculation | undefined {
  return byId.get(id);
}

/** @throws Error when two calculations bear one id: a mistake of the program, found at its start. */
function index(calculations: readonly Calculation[]): Map<string, Calculation> {
  const found = new Map<string, Calculation>();
  for (const calculation of calculations) {
    if (found.has(calculation.id)) throw new Error(`two calculations are called ${calculation.id}`);
    found.set(calculation.id, calculation);
  }
  return found;
}
