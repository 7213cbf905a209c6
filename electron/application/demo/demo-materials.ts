import type { CallInput } from '../../../shared-lib/api.ts';
import type { DemoBench } from './demo-bench.ts';

export interface DemoLots {
  petFresh: string;
  petOld: string;
  metallised: string;
  pe: string;
  inkR0: string;
  inkR7: string;
  adhesive: string;
  dumplingR0: string;
  dumplingR7: string;
  coffee: string;
}

type Material = CallInput<'material.add'>;
type Lot = Omit<CallInput<'lot.add'>, 'materialId'>;

/** Films, inks, adhesive and laminates of the demo, with their lots. */
export async function addMaterials(bench: DemoBench): Promise<DemoLots> {
  const add = async (material: Material, ...lots: Lot[]): Promise<string[]> => {
    const { materialId } = await bench.do('material.add', material);
    const ids: string[] = [];
    for (const lot of lots) ids.push((await bench.do('lot.add', { materialId, ...lot })).lotId);
    return ids;
  };
  const film = (name: string, description: string): Material => ({ kind: 'film', name, supplier: 'Osprey Vale', description });
  const lot = (code: string, receivedOn: string | null, note = ''): Lot => ({ code, receivedOn, note });

  const [petFresh, petOld] = await add(
    film('PET 12 µm', 'Biaxially oriented polyester, corona treated on one side'),
    lot('OV-2601-031', '2026-01-09'),
    lot('OV-2508-007', '2025-08-21', 'Stood in the outer store over the summer'),
  );
  const [metallised] = await add(film('Metallised PET 12 µm', 'Polyester with vacuum-deposited aluminium'), lot('OV-2512-114', '2025-12-15'));
  const [pe] = await add(film('PE 60 µm', 'Sealing web, low density polyethylene, treated on one side'), lot('OV-2512-118', '2025-12-15'));
  const ink = (name: string, description: string): Material => ({ kind: 'ink', name, supplier: 'Tamarind', description });
  const [inkR0] = await add(ink('Series R0', 'Present ink series, control of the trials'), lot('TM-R0-840', '2026-01-05'));
  const [inkR7] = await add(ink('Series R7', 'Low-migration trial, seventh formulation'), lot('TM-R7-003', '2026-01-12'));
  const [adhesive] = await add(
    { kind: 'adhesive', name: 'Solvent-free two-part 77', supplier: 'Corrie', description: 'Polyurethane, 100 : 60 by mass, 1.8 g/m²' },
    lot('CO-77-012', '2026-01-07'),
  );
  const laminate = (name: string, description: string): Material => ({ kind: 'laminate', name, supplier: 'Quillmere Flexibles', description });
  const [dumplingR0] = await add(laminate('Dumpling pouch laminate, R0', 'PET 12 µm / ink R0 / adhesive / PE 60 µm'), lot('L-26-014', null));
  const [dumplingR7] = await add(laminate('Dumpling pouch laminate, R7', 'PET 12 µm / ink R7 / adhesive / PE 60 µm'), lot('L-26-015', null));
  const [coffee] = await add(laminate('Coffee brick laminate', 'PET 12 µm / ink R0 / adhesive / metallised PET 12 µm / adhesive / PE 60 µm'), lot('L-26-021', null));
  return { petFresh, petOld, metallised, pe, inkR0, inkR7, adhesive, dumplingR0, dumplingR7, coffee } as DemoLots;
}
