import type { DemoBench } from './demo-bench.ts';

interface DemoInstrument {
  name: string;
  serial: string;
  methodIds: string[];
  calibratedOn: string;
  dueOn: string;
}

const instruments: DemoInstrument[] = [
  {
    ...{ name: 'Spectrodensitometer', serial: 'SD-2207', calibratedOn: '2025-09-10', dueOn: '2026-09-09' },
    methodIds: ['print-density', 'tone-value', 'trap', 'hue-error', 'colour-measured', 'rub', 'light-exposure'],
  },
  { name: 'Gloss meter', serial: 'GM-118', methodIds: ['gloss'], calibratedOn: '2025-03-20', dueOn: '2026-03-31' },
  // It ends on the day before the last bond is read.
  { name: 'Tensile tester', serial: 'TT-03', methodIds: ['lamination-bond', 'bond-build', 'friction'], calibratedOn: '2025-03-13', dueOn: '2026-03-12' },
  { name: 'Drop goniometer', serial: 'DG-41', methodIds: ['contact-angle', 'contact-angle-acid-base'], calibratedOn: '2025-10-06', dueOn: '2026-10-05' },
  { name: 'Analytical balance', serial: 'AB-512', methodIds: ['coat-weight'], calibratedOn: '2025-11-18', dueOn: '2026-11-17' },
  { name: 'Flow cup no. 4', serial: 'FC-7', methodIds: ['viscosity-cup', 'let-down'], calibratedOn: '2025-12-02', dueOn: '2026-06-01' },
  { name: 'Gas chromatograph', serial: 'GC-2', methodIds: ['residual-solvent'], calibratedOn: '2025-12-15', dueOn: '2026-06-14' },
  { name: 'Heat sealer', serial: 'HS-19', methodIds: ['heat-resistance', 'jaw-pick-off'], calibratedOn: '2025-08-25', dueOn: '2026-08-24' },
];

/** The lab's instruments, each calibrated by its maker; from here on tests name the one that they are read with. */
export async function addInstruments(bench: DemoBench): Promise<void> {
  for (const { calibratedOn, dueOn, ...named } of instruments) {
    const { instrumentId } = await bench.do('instrument.add', { ...named, note: '' });
    await bench.do('instrument.calibrate', { instrumentId, calibratedOn, dueOn, remark: 'by the maker' });
    for (const methodId of named.methodIds) bench.readWith.set(methodId, `${named.name}, ${named.serial}`);
  }
}
