import { aromaRule } from './rules/aroma.rule.ts';
import { chemicalRule } from './rules/chemical.rule.ts';
import { coldRule } from './rules/cold.rule.ts';
import { colourRule } from './rules/colour.rule.ts';
import { flexingRule } from './rules/flexing.rule.ts';
import { foodRule } from './rules/food.rule.ts';
import { greaseRule } from './rules/grease.rule.ts';
import { heatRule } from './rules/heat.rule.ts';
import { laminationRule } from './rules/lamination.rule.ts';
import { lightRule } from './rules/light.rule.ts';
import { loadRule } from './rules/load.rule.ts';
import { machineRule } from './rules/machine.rule.ts';
import { microwaveRule } from './rules/microwave.rule.ts';
import { printingRule } from './rules/printing.rule.ts';
import { rubbingRule } from './rules/rubbing.rule.ts';
import { sealingRule } from './rules/sealing.rule.ts';
import { shrinkingRule } from './rules/shrinking.rule.ts';
import { waterRule } from './rules/water.rule.ts';
import { weatherRule } from './rules/weather.rule.ts';
import type { StressRule } from './stress-rule.ts';

/** What every stress calls for, in the order in which stresses are asked for. */
export const stressRules: readonly StressRule[] = [
  printingRule,
  colourRule,
  laminationRule,
  sealingRule,
  machineRule,
  rubbingRule,
  flexingRule,
  loadRule,
  coldRule,
  heatRule,
  microwaveRule,
  waterRule,
  greaseRule,
  chemicalRule,
  foodRule,
  aromaRule,
  lightRule,
  weatherRule,
  shrinkingRule,
];
