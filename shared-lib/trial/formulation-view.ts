import { runCalculation } from '../calculation/calculation.ts';
import { InputError } from '../calculation/input-error.ts';
import { formulationCalculation } from '../liquid/formulation.calculation.ts';
import type { Component } from '../notebook/trial-entries.ts';
import type { FormulationView } from '../notebook/trial-views.ts';

/** A trial's formulation worked out, and against that of the control where there is another. Never throws: what is wrong is a note. */
export function formulationView(components: readonly Component[], control: readonly Component[] | null): FormulationView {
  const totalParts = components.reduce((sum, { parts }) => sum + parts, 0);
  if (totalParts === 0) {
    const note = components.length === 0 ? 'No components are stated.' : 'No component has parts above 0.';
    return { totalParts, percent: components.map(() => 0), solidsPct: null, costPerKg: null, againstControl: [], notes: [note] };
  }
  const comparable = control !== null && control.some(({ parts }) => parts > 0);
  try {
    const { results, table, notes } = runCalculation(formulationCalculation, {
      components: components.map(({ name, parts, solidsPct, costPerKg }) => ({
        name,
        parts,
        ...(solidsPct !== null && { solidsPct }),
        ...(costPerKg !== null && { costPerKg }),
      })),
      ...(comparable && { control: control.map(({ name, parts }) => ({ name, parts })) }),
    });
    return {
      totalParts,
      percent: table.slice(0, components.length).map((row) => row.pct as number),
      solidsPct: results.solidsPct!.bound === 'exact' ? results.solidsPct!.value : null,
      costPerKg: results.costPerKg!.bound === 'exact' ? results.costPerKg!.value : null,
      againstControl: comparable
        ? table
            .filter((row) => typeof row.controlPct === 'number')
            .map((row) => ({
              name: row.name as string,
              controlPct: row.controlPct as number,
              pct: (row.controlPct as number) + (row.differencePct as number),
              differencePct: row.differencePct as number,
              change: row.change as FormulationView['againstControl'][number]['change'],
            }))
        : [],
      notes,
    };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { totalParts, percent: components.map(({ parts }) => (100 * parts) / totalParts), solidsPct: null, costPerKg: null, againstControl: [], notes: [error.message] };
  }
}
