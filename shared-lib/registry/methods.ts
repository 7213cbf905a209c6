import { bondBuildMethod } from '../bond-strength/bond-build.method.ts';
import { laminationBondMethod } from '../bond-strength/lamination-bond.method.ts';
import { lightExposureMethod } from '../fade/light-exposure.method.ts';
import type { Method } from '../method/method.ts';
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
  lightExposureMethod,
];
