import { absorbedShare } from './absorbed-share.ts';

/** Densities minus paper through the filter of the second ink. */
export interface TrapDensities {
  first: number;
  /** Second ink alone on the substrate. */
  second: number;
  overprint: number;
}

/** Apparent trap, 0–1: (D12 − D1)/D2 (Preucil 1958; Chung & Hsu, A Study of Ink Trapping). */
export function trapPreucil({ first, second, overprint }: TrapDensities): number {
  return (overprint - first) / second;
}

/** Trap after Brunner, 0–1: (1 − 10^−D12)/(1 − 10^−(D1+D2)) (from memory). */
export function trapBrunner({ first, second, overprint }: TrapDensities): number {
  return absorbedShare(overprint) / absorbedShare(first + second);
}

/** Trap after Ritz, 0–1: (1 − 10^−(D12−D1))/(1 − 10^−D2) (from memory). */
export function trapRitz({ first, second, overprint }: TrapDensities): number {
  return absorbedShare(overprint - first) / absorbedShare(second);
}
