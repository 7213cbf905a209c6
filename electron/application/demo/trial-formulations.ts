import type { CallInput } from '../../../shared-lib/api.ts';
import type { DemoBench } from './demo-bench.ts';

/** One trial of the low-migration series; wax and promoter in percent of the ink. */
export interface DemoTrial {
  name: string;
  waxPct: number;
  promoterPct: number;
  /** Whose wax. */
  wax: 'Tamarind' | 'Corrie';
}

/** The present ink, nine steps of wax and promoter, and the middle one with the wax of another supplier. */
export const demoTrials: readonly DemoTrial[] = [
  { name: 'R0', waxPct: 2, promoterPct: 0, wax: 'Tamarind' },
  ...[1, 2, 3].flatMap((waxPct, row) => [0, 1, 2].map((promoterPct): DemoTrial => ({ name: `R${row * 3 + promoterPct + 1}`, waxPct, promoterPct, wax: 'Tamarind' }))),
  { name: 'R10', waxPct: 2, promoterPct: 1, wax: 'Corrie' },
];

interface Additive {
  materialId: string;
  lotId: string;
}

/** Puts down the trial set with its formulations. @returns ids of the set and of each trial by name */
export async function addTrials(bench: DemoBench): Promise<{ trialSetId: string; trialIds: Map<string, string> }> {
  const additive = async (name: string, supplier: string, description: string, code: string): Promise<Additive> => {
    const { materialId } = await bench.do('material.add', { kind: 'other', name, supplier, description });
    const { lotId } = await bench.do('lot.add', { materialId, code, receivedOn: '2026-01-08', note: '' });
    return { materialId, lotId };
  };
  const wax = {
    Tamarind: await additive('Wax dispersion 30', 'Tamarind', 'Micronised polyethylene wax, 30 % in ester', 'TM-W-118'),
    Corrie: await additive('Wax dispersion C', 'Corrie', 'Micronised polyethylene wax, 30 % in ester', 'CO-W-004'),
  };
  const promoter = await additive('Adhesion promoter', 'Tamarind', 'Low-migration grade', 'TM-P-031');
  const { trialSetId } = await bench.do('trialSet.add', {
    title: 'Low-migration ink series',
    question: 'Which low-migration formulation bonds and wets no worse than R0, and keeps its colour better?',
    product: 'dumpling pouch 600 g',
  });
  await bench.do('trialSet.setFactors', {
    trialSetId,
    factors: [
      { key: 'waxPct', label: 'Wax', unit: '%' },
      { key: 'promoterPct', label: 'Promoter', unit: '%' },
    ],
    reason: '',
  });
  await bench.do('trialSet.setResponses', {
    trialSetId,
    responses: [
      { methodId: 'lamination-bond', property: 'mean', goal: 'higher', target: 4, lowest: 2.5, highest: null, weight: 2 },
      { methodId: 'test-fluids', property: 'wettingTension', goal: 'higher', target: 40, lowest: 36, highest: null, weight: 1 },
      { methodId: 'light-exposure', property: 'retentionPct', goal: 'higher', target: 85, lowest: 60, highest: null, weight: 1 },
    ],
    reason: '',
  });
  const trialIds = new Map<string, string>();
  for (const trial of demoTrials) {
    const { trials } = await bench.do('trial.add', { trialSetId, ...formulation(trial, wax[trial.wax], promoter) });
    trialIds.set(trial.name, trials.at(-1)!.trialId);
  }
  return { trialSetId, trialIds };
}

/** Parts per 100 of ink; the wax comes as a dispersion of 30 %. */
function formulation({ name, waxPct, promoterPct, wax }: DemoTrial, waxLot: Additive, promoter: Additive): Omit<CallInput<'trial.add'>, 'trialSetId'> {
  const control = name === 'R0';
  const dispersion = Math.round((waxPct / 0.3) * 10) / 10;
  const own = (component: string, parts: number, solidsPct: number, costPerKg: number) => ({ name: component, materialId: null, lotId: null, parts, solidsPct, costPerKg });
  return {
    name,
    control,
    components: [
      control ? own('Varnish, present series', 52, 38, 3.1) : own('Varnish, low migration', 52, 40, 3.9),
      own('Yellow pigment', 11, 100, 12.4),
      { ...own(wax === 'Tamarind' ? 'Wax dispersion 30' : 'Wax dispersion C', dispersion, 30, wax === 'Tamarind' ? 6.2 : 5.1), ...waxLot },
      ...(promoterPct === 0 ? [] : [{ ...own('Adhesion promoter', promoterPct, 60, 18.5), ...promoter }]),
      own('Ester solvent', Math.round((100 - 52 - 11 - dispersion - promoterPct) * 10) / 10, 0, 1.3),
    ],
    // The present series is made otherwise: its wax is no step of this plan.
    factors: control ? {} : { waxPct, promoterPct },
    note: control ? 'Present ink' : wax === 'Corrie' ? 'As R5, with the wax of another supplier' : '',
  };
}
