import { describe, expect, it } from 'vitest';
import type { Lab } from '../../../shared-lib/colour/lab.ts';
import { deltaEF, greyScaleContinuous, greyScaleGrade } from '../../../shared-lib/fade/grey-scale-change.ts';

const grey = (L: number): Lab => [L, 0, 0];

describe('ISO 105-A05 against the nominal steps of ISO 105-A02 (EN 20105-A02): neutral pairs', () => {
  it.each([
    [1.7, 4, '4'],
    [3.4, 3, '3'],
    [6.8, 2, '2'],
    [13.6, 1, '1'],
  ])('ΔL* %f is grade %f exactly', (step, continuous, text) => {
    const difference = deltaEF(grey(60), grey(60 - step));
    expect(difference).toBeCloseTo(step, 10);
    expect(greyScaleContinuous(difference)).toBeCloseTo(continuous, 10);
    expect(greyScaleGrade(difference).text).toBe(text);
  });

  it.each([
    [0, '5'],
    [0.8, '4-5'],
    [2.5, '3-4'],
    [4.8, '2-3'],
    [9.6, '1-2'],
  ])('ΔL* %f is grade %s', (step, text) => {
    expect(greyScaleGrade(deltaEF(grey(60), grey(60 - step))).text).toBe(text);
  });
});

describe('ISO 105-A05 formula of a public script, first pair published with it; the others recomputed apart', () => {
  it.each<[Lab, Lab, number, number, string]>([
    [[33.49205637, 18.21758719, 18.75735102], [34.12387882, 18.98491883, 19.08586749], 0.9219, 4.458, '4-5'],
    [[45, 10, -50], [48, 8, -42], 4.7253, 2.525, '2-3'],
    [[50, 20, -5], [52, 18, 6], 10.9212, 1.316, '1-2'],
  ])('%j → %j', (before, after, difference, continuous, text) => {
    const found = deltaEF(before, after);
    expect(found).toBeCloseTo(difference, 4);
    expect(greyScaleContinuous(found)).toBeCloseTo(continuous, 3);
    expect(greyScaleGrade(found).text).toBe(text);
  });
});

describe('step table of ISO 105-A05, from memory', () => {
  it.each([
    [0.4, '5', '4-5'],
    [1.25, '4-5', '4'],
    [2.1, '4', '3-4'],
    [2.95, '3-4', '3'],
    [4.1, '3', '2-3'],
    [5.8, '2-3', '2'],
    [8.2, '2', '1-2'],
    [11.6, '1-2', '1'],
  ])('the step at ΔEF %f', (edge, below, from) => {
    expect(greyScaleGrade(edge - 1e-9).text).toBe(below);
    expect(greyScaleGrade(edge).text).toBe(from);
  });
});
