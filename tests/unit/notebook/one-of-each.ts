import type { DraftEntry } from '../../../shared-lib/notebook/entry.ts';
import { thumbTwistRub } from '../method/in-house/written-methods.ts';

const meta = { by: 'p1', occurredAt: '2025-05-03T10:42:07.000Z' };
const cell = { testId: 't1', row: 'r1', key: 'tensionMNm' };
export const contentSha256 = 'a'.repeat(64);
export const pdfSha256 = 'b'.repeat(64);
export const traceSha256 = 'c'.repeat(64);

/** One draft of every kind, in an order in which a notebook takes them. */
export const oneOfEach: DraftEntry[] = [
  { kind: 'notebook.created', body: { title: 'Low-migration series', laboratory: 'Quillmere Flexibles' }, ...meta },
  { kind: 'person.added', body: { personId: 'p1', name: 'Imke Rasmund', initials: 'IR', role: 'technician' }, ...meta },
  {
    kind: 'habit.described',
    body: {
      methodId: 'ih1',
      habit: { title: 'Thumb-twist rub', purpose: 'does it smear?', looksAt: 'colour-rubbed', answers: [{ question: 'force', today: 'by feel', varies: true, fixed: '10' }], outcome: 'grade' },
    },
    ...meta,
  },
  { kind: 'inHouseMethod.added', body: { methodId: 'ih1', version: '1', written: thumbTwistRub, origin: null }, ...meta },
  {
    kind: 'inHouseMethod.versioned',
    body: {
      methodId: 'ih1',
      version: '2',
      written: { ...thumbTwistRub, replicates: 5 },
      origin: { methodId: 'ih9', version: '2', laboratory: 'Tamarind', notebook: 'Inks', writtenBy: 'Teodor Vance', writtenOn: '2025-04-02' },
      changes: ['Replicates: 6 → 5.'],
      reason: 'six take too long',
    },
    ...meta,
  },
  { kind: 'inHouseMethod.retired', body: { methodId: 'ih1', reason: 'a rub tester was bought' }, ...meta },
  { kind: 'material.added', body: { materialId: 'm1', kind: 'film', name: 'PET film', supplier: 'Osprey Vale', description: 'PET 12 µm' }, ...meta },
  { kind: 'lot.added', body: { lotId: 'l1', materialId: 'm1', code: '4711', receivedOn: '2025-04-30', note: '' }, ...meta },
  { kind: 'sample.added', body: { sampleId: 's1', code: 'S-014', product: 'dumpling pouch 600 g', job: 'J1', roll: '3', note: '', lotIds: ['l1'] }, ...meta },
  {
    kind: 'test.started',
    body: {
      testId: 't1',
      sampleId: 's1',
      methodId: 'wetting-tension',
      methodVersion: '1',
      conditions: { temperatureC: 23, side: null },
      limits: [{ property: 'tension', lower: 38, upper: null, source: 'specification' }],
      rule: 'guarded',
    },
    ...meta,
  },
  { kind: 'limits.set', body: { testId: 't1', limits: [{ property: 'tension', lower: 36, upper: 44, source: 'customer' }], rule: 'simple', reason: 'new specification' }, ...meta },
  { kind: 'condition.entered', body: { testId: 't1', key: 'humidity', value: 50, typed: '50' }, ...meta },
  { kind: 'condition.corrected', body: { testId: 't1', key: 'humidity', before: 50, value: 48, typed: '48', reason: 'misread' }, ...meta },
  { kind: 'reading.entered', body: { ...cell, value: 38.5, typed: '38,5' }, ...meta },
  { kind: 'reading.corrected', body: { ...cell, before: 38.5, value: 36, typed: '36', reason: 'wrong bottle' }, ...meta },
  { kind: 'row.voided', body: { testId: 't1', row: 'r1', reason: 'touched by hand' }, ...meta },
  { kind: 'row.restored', body: { testId: 't1', row: 'r1', reason: 'it was row 2' }, ...meta },
  { kind: 'row.remarked', body: { testId: 't1', row: 'r1', remark: 'near the edge' }, ...meta },
  { kind: 'attachment.added', body: { sha256: traceSha256, name: 'peel-1.csv', mediaType: 'text/csv', size: 12 }, ...meta },
  {
    kind: 'trace.read',
    body: {
      traceId: 'tr1',
      testId: 't1',
      row: 'r2',
      key: 'trace',
      sha256: traceSha256,
      reading: {
        delimiter: ';',
        decimal: ',',
        headerLines: 2,
        displacementColumn: 0,
        displacementUnit: 'mm',
        forceColumn: 1,
        forceUnit: 'N',
        block: 0,
      },
      points: 400,
      reason: '',
    },
    ...meta,
  },
  {
    kind: 'test.finished',
    body: {
      testId: 't1',
      calculation: 'wetting-fluid',
      calculationVersion: '1',
      results: { tension: { value: 37, unit: 'mN/m', low: 36, high: 38, level: null, n: 1, bound: 'between' } },
      verdicts: [{ property: 'tension', limit: { property: 'tension', lower: 36, upper: 44, source: 'customer' }, verdict: 'meets', probability: null }],
      remark: '',
    },
    ...meta,
  },
  {
    kind: 'report.issued',
    body: {
      reportId: 'rep1',
      number: 'LD-2025-001',
      title: 'Series R1',
      recipient: 'Tamarind',
      remark: '',
      testIds: ['t1'],
      contentSha256,
      pdfSha256,
      replaces: null,
    },
    ...meta,
  },
  { kind: 'trialSet.added', body: { trialSetId: 'ts1', title: 'Low-migration inks', question: 'Which is no worse than R0?', product: 'dumpling pouch 600 g' }, ...meta },
  {
    kind: 'responses.set',
    body: {
      trialSetId: 'ts1',
      responses: [{ methodId: 'lamination-bond', property: 'mean', goal: 'higher', target: 3.5, lowest: 2, highest: null, weight: 1 }],
      reason: '',
    },
    ...meta,
  },
  { kind: 'factors.set', body: { trialSetId: 'ts1', factors: [{ key: 'waxPct', label: 'Wax', unit: '%' }], reason: 'varied on purpose' }, ...meta },
  {
    kind: 'trial.added',
    body: {
      trialId: 'tri1',
      trialSetId: 'ts1',
      name: 'R0',
      control: true,
      components: [{ name: 'Binder', materialId: 'm1', lotId: 'l1', parts: 60, solidsPct: 40, costPerKg: null }],
      factors: { waxPct: 1.5 },
      note: '',
    },
    ...meta,
  },
  {
    kind: 'trial.changed',
    body: { trialId: 'tri1', name: 'R0', control: true, components: [], factors: {}, note: 'from the shelf', reason: 'lot was misread' },
    ...meta,
  },
  { kind: 'sample.linked', body: { trialId: 'tri1', sampleId: 's1' }, ...meta },
  { kind: 'sample.unlinked', body: { trialId: 'tri1', sampleId: 's1', reason: 'printed with R1' }, ...meta },
  {
    kind: 'study.recorded',
    body: {
      studyId: 'st1',
      methodId: 'wetting-tension',
      property: 'tension',
      kind: 'number',
      readings: [
        { part: '1', appraiser: 'IR', trial: '1', value: 38 },
        { part: '1', appraiser: 'TV', trial: '1', value: 39 },
      ],
      calculationVersion: '1',
      results: { gauge: { value: 0.5, unit: 'mN/m', low: null, high: null, level: null, n: 2, bound: 'exact' } },
      remark: '',
    },
    ...meta,
  },
  { kind: 'attachment.linked', body: { sha256: traceSha256, attachedTo: 'lot', attachedId: 'l1', caption: 'as delivered' }, ...meta },
  { kind: 'attachment.unlinked', body: { sha256: traceSha256, attachedTo: 'lot', attachedId: 'l1', reason: 'belongs to lot 4712' }, ...meta },
  {
    kind: 'photo.measured',
    body: {
      photoId: 'ph1',
      testId: 't1',
      row: 'r2',
      key: 'photo',
      sha256: traceSha256,
      planeSha256: traceSha256,
      reading: { channel: 'grey', region: { kind: 'rectangle', x: 0, y: 0, width: 40, height: 30 }, removed: 'lighter', threshold: 128, light: 'as-is', smooth: false },
      reason: '',
    },
    ...meta,
  },
];
