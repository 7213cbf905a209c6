import { describe, expect, it } from 'vitest';
import { bondStrengthCalculation } from '../../../shared-lib/bond-strength/bond-strength.calculation.ts';
import { laminationBondMethod } from '../../../shared-lib/bond-strength/lamination-bond.method.ts';
import type { BenchReadings } from '../../../shared-lib/method/method.ts';
import type { BenchSheetView, CellView } from '../../../shared-lib/notebook/views.ts';
import { assembleReport, type ReportHead, type ReportTest } from '../../../shared-lib/report/assemble.ts';
import { judgedLines } from '../../../shared-lib/report/property-line.ts';

const head: ReportHead = {
  number: 'LR-2026-001',
  title: 'Bond of R7',
  laboratory: 'Quillmere Flexibles',
  recipient: 'Tamarind',
  remark: '',
  preparedBy: 'Abena Quist',
  preparedAt: '2026-02-03T10:00:00.000Z',
  replaces: null,
  record: { entries: 12, chainHash: 'f'.repeat(64) },
  signatures: [{ role: 'Prepared by', name: 'Abena Quist' }],
};

function reportTest(code: string, forces: number[], lower: number): ReportTest {
  const cell = (value: number | string | null, typed: string, corrections = 0): CellView => ({ value, typed, corrections, warning: '' });
  const bench: BenchReadings = {
    conditions: { stripWidthMm: 15, geometry: 't-peel' },
    rows: forces.map((forceN, index) => ({ row: `r${index + 1}`, values: { forceN, mode: 'adhesive' } })),
    limits: [{ property: 'mean', lower, upper: null, source: 'customer' }],
    traces: {},
  };
  const result = laminationBondMethod.evaluate(bench);
  const sheet: BenchSheetView = {
    test: {} as BenchSheetView['test'],
    sample: {
      sampleId: 's',
      code,
      product: 'dumpling pouch 600 g',
      job: 'J-1',
      roll: 'roll 2',
      lots: [{ lotId: 'l', materialId: 'm', kind: 'film', material: 'PET 12 µm', supplier: 'Osprey Vale', code: 'OV-1', receivedOn: null, note: '' }],
    },
    conditions: { stripWidthMm: cell(15, '15'), geometry: cell('t-peel', 't'), pulledWeb: cell(null, '') },
    rows: [
      ...forces.map((force, index) => ({ row: `r${index + 1}`, cells: { forceN: cell(force, String(force).replace('.', ',')), mode: cell('adhesive', 'a') }, voided: null, remark: '' })),
      { row: 'r8', cells: { trace: cell('t1', '') }, voided: { reason: 'Slipped' }, remark: 'jaw 2' },
      { row: 'r9', cells: { forceN: cell(null, '', 1) }, voided: null, remark: '' },
      { row: 'r10', cells: {}, voided: null, remark: '' },
    ],
    limits: bench.limits,
    rule: 'guarded',
    live: { result, lines: judgedLines(laminationBondMethod, result, bench.limits, 'guarded'), columns: bondStrengthCalculation.columns },
    missing: null,
    traces: { t1: { name: 'strip.csv', points: 400 } },
    remark: '',
  };
  const corrections = [{ where: 'specimen 9, Mean force', before: '3 N', after: 'nothing', reason: 'Wrong row', by: 'Imke Rasmund', at: '2026-02-01T08:00:00.000Z' }];
  return { method: laminationBondMethod, calculation: bondStrengthCalculation, sheet, testedBy: 'Imke Rasmund', testedAt: '2026-02-01T09:00:00.000Z', corrections };
}

describe('the content of a report', () => {
  const good = reportTest('Q-1', [3, 3.1, 2.9, 3, 3.1], 2.5);
  const bad = reportTest('Q-2', [2, 2.1, 1.9, 2, 2.1], 2.5);
  const content = assembleReport(head, [good, bad]);

  it('sums up the properties with a limit of each test, the worst deciding', () => {
    expect(content.summary.map(({ sample, method, line }) => [sample, method, line.key, line.verdict.verdict])).toEqual([
      ['Q-1', 'Lamination bond', 'mean', 'meets'],
      ['Q-2', 'Lamination bond', 'mean', 'falls short'],
    ]);
    expect(content.overall).toBe('falls short');
    expect(assembleReport(head, [good]).overall).toBe('meets');
  });

  it('has a section for each test with what its result stands on', () => {
    const [section] = content.sections;
    expect(section).toMatchObject({
      heading: 'Q-1 · Lamination bond',
      sample: { code: 'Q-1', materials: ['Film: PET 12 µm, lot OV-1 (Osprey Vale)'] },
      method: { version: laminationBondMethod.version, calculation: 'bond-strength', calculationVersion: bondStrengthCalculation.version },
      conditions: [
        { label: 'Strip width', value: '15 mm' },
        { label: 'Peel geometry', value: 'T-peel' },
      ],
    });
    expect(section!.sources.length).toBeGreaterThan(0);
    expect(section!.cautions).toEqual(laminationBondMethod.cautions);
  });

  it('lists every row that was written in as it was typed, voided and cleared ones too, and no blank ones', () => {
    const [table] = content.appendix;
    expect(table!.columns.map(({ title, unit }) => `${title}|${unit}`)).toEqual(['Specimen|', 'Width|mm', 'Mean force|N', 'Trace|', 'Failure|']);
    expect(table!.rows).toHaveLength(7);
    expect(table!.rows[1]).toEqual({ cells: ['2', '', '3,1', '', 'adhesive from film'], voided: '', remark: '' });
    expect(table!.rows[5]).toEqual({ cells: ['8', '', '', 'strip.csv (400 points)', ''], voided: 'Slipped', remark: 'jaw 2' });
    expect(table!.rows[6]!.cells).toEqual(['9', '', '', '', '']);
    expect(table!.corrections).toEqual(good.corrections);
  });

  it('is plain data: it survives JSON unchanged', () => {
    expect(JSON.parse(JSON.stringify(content))).toEqual(content);
  });
});
