import { describe, expect, it } from 'vitest';
import type { BenchReadings, CellValue, Method } from '../../../shared-lib/method/method.ts';
import { contactAngleAcidBaseMethod, contactAngleMethod } from '../../../shared-lib/surface-energy/contact-angle.method.ts';
import { findProbeLiquid, liquidSets } from '../../../shared-lib/surface-energy/probe-liquids.ts';
import { testFluidsMethod } from '../../../shared-lib/surface-energy/test-fluids.method.ts';
import { treatmentDecayMethod } from '../../../shared-lib/surface-energy/treatment-decay.method.ts';
import { refusal } from './refusal.ts';

type Cells = Record<string, CellValue>;
const bench = (rows: Cells[], conditions: Cells = {}): BenchReadings => ({
  conditions,
  rows: rows.map((values, index) => ({ row: `r${index + 1}`, values })),
  limits: [],
  traces: {},
});
const drops = (liquid: string, ...angles: number[]) => angles.map((angleDeg) => ({ liquid, angleDeg }));

const decayRows = [
  { days: 0, wetsMNm: 48, retractsMNm: 50 },
  { days: 2, wetsMNm: 46, retractsMNm: 48 },
  { days: 7, wetsMNm: 44, retractsMNm: 46 },
  { days: 21, wetsMNm: 42, retractsMNm: 44 },
];
const dropRows = [...drops('water', 80, 81, 82), {}, ...drops('diiodomethane', 37, 38, 39)];
const acidRows = [...dropRows, ...drops('formamide', 60, 61)];

const sheets: [Method, BenchReadings][] = [
  [testFluidsMethod, bench([{ wetsMNm: 38, retractsMNm: 40 }])],
  [contactAngleMethod, bench(dropRows, { model: 'owens-wendt', liquidSet: 'own' })],
  [contactAngleMethod, bench(dropRows, { model: 'wu', liquidSet: 'wu' })],
  [contactAngleAcidBaseMethod, bench(acidRows, { model: 'acid-base', liquidSet: 'own' })],
  [treatmentDecayMethod, bench(decayRows, { requiredMNm: 40 })],
];

describe('every method', () => {
  it.each(sheets.map(([method, sheet]) => [method.title, method, sheet] as const))('%s gives each property it names, and one to head the list', (_, method, sheet) => {
    const result = method.evaluate(sheet);
    expect(result.calculation).toBe(method.calculation);
    for (const property of method.properties) expect(Object.keys(result.results)).toContain(property.key);
    expect(method.properties.filter((property) => property.headline).length).toBeGreaterThan(0);
  });

  it('has distinct keys for its fields and distinct shortcuts for its choices', () => {
    for (const [method] of sheets) {
      for (const fields of [method.conditions, method.readings.fields]) {
        expect(new Set(fields.map((field) => field.key)).size).toBe(fields.length);
        for (const field of fields) {
          if (field.kind === 'choice') expect(new Set(field.choices.map((choice) => choice.shortcut)).size).toBe(field.choices.length);
        }
      }
    }
  });

  it('has a default among its choices', () => {
    for (const [method] of sheets) {
      for (const field of method.conditions) {
        if (field.kind === 'choice' && field.default !== undefined) expect(field.choices.map((choice) => choice.value)).toContain(field.default);
      }
    }
  });
});

describe('contact angle at the bench', () => {
  it('gathers drops by liquid in the order of first appearance', () => {
    const mixed = [...drops('water', 80), ...drops('diiodomethane', 38), ...drops('water', 82)];
    expect(contactAngleMethod.evaluate(bench(mixed)).table.map((row) => [row.liquid, row.drops])).toEqual([['water', 2], ['diiodomethane', 1]]);
  });

  it('offers liquids that its usual set has', () => {
    for (const [method, set] of [[contactAngleMethod, 'strom'], [contactAngleAcidBaseMethod, 'van-oss']] as const) {
      const liquid = method.readings.fields.find((field) => field.key === 'liquid')!;
      if (liquid.kind !== 'choice') throw new Error('liquid is a choice');
      for (const { value } of liquid.choices) expect(findProbeLiquid(set, value), value).toBeDefined();
    }
    expect(liquidSets.strom.title).toBeTruthy();
  });

  it.each([
    [[], {}, 'rows[0].angleDeg'],
    [[{}, { angleDeg: 80 }], {}, 'rows[1].liquid'],
    [drops('water', 80), {}, ''],
    [[{}, ...drops('water', 80), ...drops('diiodomethane', 38, 190)], {}, 'rows[3].angleDeg'],
    [[...drops('water', 80), ...drops('glycerol', 70)], { model: 'wu' }, 'rows[1].liquid'],
    [[...drops('water', 80), ...drops('diiodomethane', 38)], { model: 'fowkes' }, 'conditions.model'],
  ])('names the cell at fault: %j with %j', (rows, conditions, field) => {
    expect(refusal(() => contactAngleMethod.evaluate(bench(rows as Cells[], conditions as Cells))).field).toBe(field);
  });
});

describe('treatment decay at the bench', () => {
  it.each([
    [decayRows, {}, 'conditions.requiredMNm'],
    [decayRows, { requiredMNm: 400 }, 'conditions.requiredMNm'],
    [decayRows.slice(0, 2), { requiredMNm: 40 }, 'rows[2].days'],
    [[...decayRows, {}, { wetsMNm: 40 }], { requiredMNm: 40 }, 'rows[5].days'],
    [[{}, ...decayRows, { days: 30, wetsMNm: 42, retractsMNm: 40 }], { requiredMNm: 40 }, 'rows[5].retractsMNm'],
    [decayRows.map(({ days, wetsMNm }) => ({ days, wetsMNm })), { requiredMNm: 40 }, ''],
  ])('names the cell at fault: %j with %j', (rows, conditions, field) => {
    expect(refusal(() => treatmentDecayMethod.evaluate(bench(rows as Cells[], conditions as Cells))).field).toBe(field);
  });
});
