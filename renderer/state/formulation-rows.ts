import type { TrialRow } from '../../shared-lib/notebook/trial-views.ts';

export interface FormulationShare {
  /** Percent of the whole; `null` where the component is not in it. */
  pct: number | null;
  /** Against the control, in percent of the whole; `null` for the control, without one, and where nothing changed. */
  differencePct: number | null;
}

/** The components of all trials, each with its share in every trial: those of the control first, in its order. */
export function formulationRows(trials: TrialRow[]): { name: string; shares: FormulationShare[] }[] {
  const inOrder = [...trials].sort((a, b) => Number(b.control) - Number(a.control));
  const names = [...new Set(inOrder.flatMap((trial) => trial.components.map(({ name }) => name)))];
  return names.map((name) => ({ name, shares: trials.map((trial) => shareOf(trial, name)) }));
}

function shareOf({ components, formulation }: TrialRow, name: string): FormulationShare {
  const shares = components.flatMap((component, index) => (component.name === name ? [formulation.percent[index] ?? 0] : []));
  const compared = formulation.againstControl.find((line) => line.name === name);
  return {
    pct: shares.length === 0 ? null : shares.reduce((sum, share) => sum + share, 0),
    differencePct: !compared || compared.change === 'same' ? null : compared.differencePct,
  };
}
