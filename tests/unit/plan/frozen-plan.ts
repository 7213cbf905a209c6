import type { PlanContent } from '../../../shared-lib/plan/plan.ts';

/** A small plan, as a lab would keep it. */
export const frozenPlan: PlanContent = {
  title: 'Frozen dumpling pouch',
  product: 'dumpling pouch 600 g',
  customer: 'Marrowfield Foods',
  endUse: 'frozen-pouch',
  stresses: [{ stress: 'cold', degree: 'frozen' }],
  lines: [
    {
      lineId: 'tape-adhesion printing+24',
      methodId: 'tape-adhesion',
      moment: { from: 'printing', hours: 24 },
      preparation: '',
      conditions: { moment: 'print' },
      replicates: 3,
      limits: [{ property: 'retainedPct', lower: 95, upper: null, source: 'common practice' }],
      reasons: [{ stress: 'printing', text: 'Ink that comes off with tape comes off in use.' }],
    },
    {
      lineId: 'lamination-bond lamination+168',
      methodId: 'lamination-bond',
      moment: { from: 'lamination', hours: 168 },
      preparation: '',
      conditions: {},
      replicates: 5,
      limits: [{ property: 'minimum', lower: 1, upper: null, source: 'common practice' }],
      reasons: [{ stress: 'lamination', text: 'A bond that is too weak opens in the freezer.' }],
    },
  ],
  dropped: [{ lineId: 'crinkle printing+24', methodId: 'crinkle', moment: { from: 'printing', hours: 24 }, preparation: '', reason: 'The customer does not ask for it' }],
  note: '',
};
