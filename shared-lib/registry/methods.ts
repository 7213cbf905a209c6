import { laminationBondMethod } from '../bond-strength/lamination-bond.method.ts';
import { lightExposureMethod } from '../fade/light-exposure.method.ts';
import type { Method } from '../method/method.ts';
import { testFluidsMethod } from '../surface-energy/test-fluids.method.ts';

/** Every built-in test method, in the order in which lists show them. */
export const allMethods: readonly Method[] = [testFluidsMethod, laminationBondMethod, lightExposureMethod];
