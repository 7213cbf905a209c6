import type { PropertyLine } from '../../../shared-lib/notebook/views.ts';
import type { ReadingsTable, ReportContent, ReportSection } from '../../../shared-lib/report/content.ts';
import { buildUp, fade, rubs, trace, trials } from '../figure/figures.ts';
import { allStrips } from '../figure/strips.ts';

type Verdict = PropertyLine['verdict']['verdict'];

function line(key: string, title: string, text: string, unit: string, intervalText: string, n: number, limitText: string, verdict: Verdict, strip: string): PropertyLine {
  return { key, title, unit, text, intervalText, n, limitText, verdict: { property: key, limit: null, verdict, probability: null }, strip: strip ? allStrips[strip]! : null };
}

const wetting = line('wettingTension', 'Wetting tension, mean of the film', '40.4 mN/m', 'mN/m', '95 % interval 39.6 to 41.2', 6, '≥ 38 mN/m', 'meets', 'meets a lower limit');
const weakest = line('weakestPosition', 'Weakest position', 'between 38 and 40 mN/m', 'mN/m', '', 1, '≥ 36 mN/m', 'meets', 'between (brackets only)');
const spread = line('spread', 'Spread', '1.25 mN/m', 'mN/m', '95 % interval 0.8 to 2.6', 6, '', 'no limit', '');
const bond = line('mean', 'Bond strength, mean', '3.41 N/15 mm', 'N/15 mm', '95 % interval 2.90 to 4.10', 5, '≥ 2.5 N/15 mm', 'meets', 'torn specimens');
const torn = line('minimum', 'Bond strength, all torn', '≥ 3.1 N/15 mm', 'N/15 mm', '', 3, '≥ 2.5 N/15 mm', 'meets', 'at least (all torn)');
const colour = line('deltaE00', 'Colour difference ΔE₀₀', '2.7', '', '95 % interval 1.6 to 3.9', 5, '≤ 5', 'meets', 'upper limit, a doubtful reading');
const kept = line('retentionPct', 'Density kept after 300 h', '−36.2 %', '%', '95 % interval −36.9 to −35.5', 6, '≥ 38 %', 'falls short', 'falls short');
const exposure = line('exposureToLimit', 'Exposure to the limit', '410 h', 'h', '95 % interval 361 to 466', 7, '≥ 400 h', 'undecided', 'undecided');

function section(part: Partial<ReportSection>): ReportSection {
  return {
    heading: 'Q-114 · Test fluids',
    sample: { code: 'Q-114', product: 'Dumpling pouch 600 g', job: 'J-2208', roll: '3 of 8', materials: ['Film: PET 12 µm, lot OV-3311 (Osprey Vale)', 'Ink: low-migration magenta R3, lot TM-0907 (Tamarind)', 'Adhesive: two-part, lot C-118 (Corrie)'] },
    method: { title: 'Wetting tension by test fluids', standards: ['ASTM D2578', 'ISO 8296'], version: '1.2', calculation: 'wetting-fluid', calculationVersion: '1.0', shows: 'Whether the surface takes ink: the highest fluid whose film stays whole for at least two seconds.' },
    testedBy: 'Imke Rasmund',
    testedAt: '2026-03-03T08:40:00.000Z',
    conditions: [{ label: 'Temperature', value: '23.1 °C' }, { label: 'Relative humidity', value: '48 %' }, { label: 'Held at least', value: '2 s' }],
    lines: [wetting, weakest, spread],
    columns: [{ key: 'position', title: 'Position' }, { key: 'lowMNm', title: 'Held', unit: 'mN/m' }, { key: 'highMNm', title: 'Retracted', unit: 'mN/m' }, { key: 'share', title: 'Share', unit: '%', decimals: 1 }, { key: 'meets', title: 'Meets' }, { key: 'unused', title: 'Unused' }],
    table: [
      { position: 'operator side', lowMNm: 38, highMNm: 40, share: 97.25, meets: true, unused: null },
      { position: 'centre', lowMNm: 40, highMNm: 42.5, share: 100, meets: true, unused: null },
      { position: 'drive side', lowMNm: 36, highMNm: null, share: 8.5, meets: false, unused: null },
    ],
    figures: [trials],
    flags: [{ code: 'higher-held', where: 'drive side', text: 'A higher fluid (40 mN/m) held while a lower one (38 mN/m) drew back; read this position again.' }],
    notes: ['The interval comes from the likelihood of the brackets, not from their middles.'],
    cautions: [{ hazard: 'toxic', text: 'Test fluids harm the unborn child. Glove, extraction, and the safety data sheet comes first.' }],
    sources: ['ASTM D2578-17, clause 9', 'ISO 8296:2003, clause 8'],
    remark: '',
    ...part,
  };
}

const readings: ReadingsTable = {
  heading: 'Q-114 · Test fluids',
  columns: [{ title: 'Position', unit: '' }, { title: 'Place on the web', unit: '' }, { title: 'Held', unit: 'mN/m' }, { title: 'Retracted', unit: 'mN/m' }, { title: 'Time held', unit: 's' }],
  rows: [
    { cells: ['1', 'operator side', '38', '40', '2.5'], voided: '', remark: '' },
    { cells: ['2', 'centre', '40', '42.5', '3'], voided: '', remark: 'Swab changed before this reading.' },
    { cells: ['3', 'drive side', '30', '', '0.5'], voided: 'fingerprint on the film', remark: '' },
    { cells: ['4', 'drive side', '36', '', '12.25'], voided: '', remark: '' },
  ],
  corrections: [{ where: 'row 2, Held', before: '44', after: '40', reason: 'bottle misread', by: 'Imke Rasmund', at: '2026-03-03T08:52:00.000Z' }],
};

/** A report that uses every feature. Invented. */
export const fullReport: ReportContent = {
  number: 'QF-2026-014',
  title: 'Low-migration ink series R1–R10 against the present ink',
  laboratory: 'Quillmere Flexibles, print laboratory',
  recipient: 'Tamarind, ink development',
  remark: 'Sent ahead of the supplier meeting. The fade exposure of R3 goes on; a further report follows at 672 h.',
  preparedBy: 'Abena Quist',
  preparedAt: '2026-03-04T09:12:00.000Z',
  replaces: { number: 'QF-2026-012', reason: 'lot number of the film corrected' },
  summary: [
    { sample: 'Q-114', product: 'Dumpling pouch 600 g', method: 'Test fluids', line: wetting },
    { sample: 'Q-114', product: 'Dumpling pouch 600 g', method: 'Test fluids', line: weakest },
    { sample: 'Q-114', product: 'Dumpling pouch 600 g', method: 'Ply bond', line: bond },
    { sample: 'Q-115', product: 'Ground coffee brick', method: 'Ply bond', line: torn },
    { sample: 'Q-115', product: 'Ground coffee brick', method: 'Colour', line: colour },
    { sample: 'Q-116', product: 'Window-shelf sachet', method: 'Fade', line: kept },
    { sample: 'Q-116', product: 'Window-shelf sachet', method: 'Fade', line: exposure },
  ],
  overall: 'falls short',
  sections: [
    section({}),
    section({ heading: 'Q-114 · Ply bond', method: { title: 'Ply bond by peel', standards: ['ISO 11339'], version: '1.0', calculation: 'bond-strength', calculationVersion: '1.1', shows: 'How firmly the plies hold together, and where they part.' }, lines: [bond, torn], figures: [buildUp, trace, rubs], flags: [], columns: [], table: [], cautions: [{ hazard: 'blade', text: 'Cut away from the hand.' }] }),
    section({ heading: 'Q-116 · Fade', lines: [kept, exposure, colour], figures: [fade], remark: 'λ 340 nm, 0.35 W/m², black panel 63 °C ± 3 °C; CO₂ free; magenta × 2 ✓; printed by 🖨️ 前田.', cautions: [{ hazard: 'uv', text: 'Do not look into the lamp.' }, { hazard: 'ozone', text: 'The exhaust must run.' }] }),
  ],
  appendix: [
    readings,
    {
      heading: 'Q-116 · Fade, wide',
      columns: Array.from({ length: 16 }, (_, index) => (index === 0 ? { title: 'Exposure', unit: '' } : { title: `Density patch ${index}`, unit: '' })),
      rows: Array.from({ length: 12 }, (_, row) => ({ cells: Array.from({ length: 16 }, (_, column) => (column === 0 ? String(row + 1) : (1.5 - row * 0.07 - column * 0.013).toFixed(2 + (column % 2)))), voided: row === 4 ? 'lamp failed over night' : '', remark: '' })),
      corrections: [],
    },
    { heading: 'Q-117 · Friction, many', columns: [{ title: 'Specimen', unit: '' }, { title: 'Static force', unit: 'N' }, { title: 'Kinetic force', unit: 'N' }], rows: Array.from({ length: 200 }, (_, row) => ({ cells: [String(row + 1), (0.6 + (row % 7) / 50).toFixed(3), (0.4 + (row % 5) / 50).toFixed(2)], voided: '', remark: '' })), corrections: [] },
  ],
  record: { entries: 1482, chainHash: '9f3c2a7be01d4c5566aa0b1c2d3e4f50617283940a1b2c3d4e5f60718293a4b5' },
  signatures: [{ role: 'Quality lead', name: 'Abena Quist' }, { role: 'Ink chemist', name: 'Teodor Vance' }, { role: 'Technician', name: 'Imke Rasmund' }, { role: 'For the recipient', name: '' }],
};
