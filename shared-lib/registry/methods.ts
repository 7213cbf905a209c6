import { bondBuildMethod } from '../bond-strength/bond-build.method.ts';
import { laminationBondMethod } from '../bond-strength/lamination-bond.method.ts';
import { coatWeightForDensityMethod } from '../colour/coat-weight-for-density.method.ts';
import { colourMeasuredMethod } from '../colour/colour-measured.method.ts';
import { colourStrengthMethod } from '../colour/colour-strength.method.ts';
import { glossMethod } from '../colour/gloss.method.ts';
import { hueErrorMethod } from '../colour/hue-error.method.ts';
import { matchByEyeMethod } from '../colour/match-by-eye.method.ts';
import { opacityMethod } from '../colour/opacity.method.ts';
import { printContrastMethod } from '../colour/print-contrast.method.ts';
import { printDensityMethod } from '../colour/print-density.method.ts';
import { spotToneValueMethod } from '../colour/spot-tone-value.method.ts';
import { toneValueMethod } from '../colour/tone-value.method.ts';
import { trapMethod } from '../colour/trap.method.ts';
import { whitenessMethod } from '../colour/whiteness.method.ts';
import { cureDepthMethod } from '../cure/cure-depth.method.ts';
import { cureRubsMethod } from '../cure/cure-rubs.method.ts';
import { surfaceTackMethod } from '../cure/surface-tack.method.ts';
import { tapeLabelLiftMethod } from '../cure/tape-label-lift.method.ts';
import { lightExposureMethod } from '../fade/light-exposure.method.ts';
import { stainingMethod } from '../fade/staining.method.ts';
import { coatWeightMethod } from '../liquid/coat-weight.method.ts';
import { letDownMethod } from '../liquid/let-down.method.ts';
import { viscosityCupMethod } from '../liquid/viscosity-cup.method.ts';
import { blockingMethod } from '../mechanical/blocking.method.ts';
import { crinkleMethod } from '../mechanical/crinkle.method.ts';
import { frictionMethod } from '../mechanical/friction.method.ts';
import { heatResistanceMethod } from '../mechanical/heat-resistance.method.ts';
import { jawPickOffMethod } from '../mechanical/jaw-pick-off.method.ts';
import { laminationRecheckMethod } from '../mechanical/lamination-recheck.method.ts';
import { rubMethod } from '../mechanical/rub.method.ts';
import { scratchMethod } from '../mechanical/scratch.method.ts';
import { tapeAdhesionMethod } from '../mechanical/tape-adhesion.method.ts';
import type { Method } from '../method/method.ts';
import { odourIntensityMethod } from '../release/odour-intensity.method.ts';
import { odourTriangleMethod } from '../release/odour-triangle.method.ts';
import { residualSolventMethod } from '../release/residual-solvent.method.ts';
import { contactAngleAcidBaseMethod, contactAngleMethod } from '../surface-energy/contact-angle.method.ts';
import { testFluidsMethod } from '../surface-energy/test-fluids.method.ts';
import { treatmentDecayMethod } from '../surface-energy/treatment-decay.method.ts';

/** Every built-in test method, in the order in which lists show them. */
export const allMethods: readonly Method[] = [
  testFluidsMethod,
  contactAngleMethod,
  contactAngleAcidBaseMethod,
  treatmentDecayMethod,
  laminationBondMethod,
  bondBuildMethod,
  laminationRecheckMethod,
  tapeAdhesionMethod,
  crinkleMethod,
  scratchMethod,
  jawPickOffMethod,
  rubMethod,
  blockingMethod,
  frictionMethod,
  heatResistanceMethod,
  cureRubsMethod,
  tapeLabelLiftMethod,
  cureDepthMethod,
  surfaceTackMethod,
  lightExposureMethod,
  stainingMethod,
  matchByEyeMethod,
  colourMeasuredMethod,
  printDensityMethod,
  toneValueMethod,
  spotToneValueMethod,
  printContrastMethod,
  trapMethod,
  hueErrorMethod,
  colourStrengthMethod,
  coatWeightForDensityMethod,
  opacityMethod,
  whitenessMethod,
  glossMethod,
  residualSolventMethod,
  odourTriangleMethod,
  odourIntensityMethod,
  coatWeightMethod,
  viscosityCupMethod,
  letDownMethod,
];
