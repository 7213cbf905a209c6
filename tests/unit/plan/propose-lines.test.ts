import { describe, expect, it } from 'vitest';
import { endUses } from '../../../shared-lib/plan/end-uses.ts';
import type { PlanLine, PlanStress } from '../../../shared-lib/plan/plan.ts';
import { planContentSchema } from '../../../shared-lib/plan/plan.ts';
import { proposeLines } from '../../../shared-lib/plan/propose-lines.ts';
import { stressRules } from '../../../shared-lib/plan/stress-rules.ts';
import { atLeast, atMost, onPress, within, type StressRule } from '../../../shared-lib/plan/stress-rule.ts';
import { stresses } from '../../../shared-lib/plan/stresses.ts';
import { allMethods } from '../../../shared-lib/registry/methods.ts';
import { offScale } from '../../../shared-lib/method/grade-scale.ts';

/** Every stress in each of its degrees. */
const everyDegree: PlanStress[] = stresses.flatMap(({ id, degrees }) => (degrees.length === 0 ? [{ stress: id, degree: '' }] : degrees.map((degree) => ({ stress: id, degree: degree.id }))));
const proposals = stressRules.flatMap(({ stress, proposals: all }) => all.map((proposal) => ({ stress, proposal })));
const methodOf = (methodId: string) => allMethods.find(({ id }) => id === methodId);
const named = (lines: PlanLine[]) => lines.map(({ lineId }) => lineId);

describe('the rules', () => {
  it('stand for each stress once and name no other', () => {
    expect(stressRules.map(({ stress }) => stress)).toEqual(stresses.map(({ id }) => id));
  });

  it.each(everyDegree)('call for a test where a print endures $stress $degree', (stress) => {
    const besides = stress.stress === 'lamination' ? [] : [{ stress: 'lamination', degree: 'film' }];
    const lines = proposeLines([stress, ...besides]);
    expect(lines.some(({ reasons }) => reasons.some((reason) => reason.stress === stress.stress))).toBe(true);
    // Without lamination as well: no stress may go by without a test.
    if (!(stress.stress === 'lamination')) expect(proposeLines([stress]).length, `${stress.stress} alone`).toBeGreaterThan(0);
  });

  it.each(proposals)('$stress: $proposal.methodId can be carried out as it is proposed', ({ stress, proposal }) => {
    const method = methodOf(proposal.methodId)!;
    expect(method, proposal.methodId).toBeDefined();
    expect(proposal.replicates).toBeGreaterThanOrEqual(method.readings.minRows);
    expect(proposal.replicates).toBeLessThanOrEqual(method.readings.maxRows);
    expect(proposal.reason).toMatch(/^[A-Z].{20,}\.$/);
    for (const limit of proposal.limits) {
      const property = method.properties.find(({ key }) => key === limit.property)!;
      expect(property, limit.property).toBeDefined();
      expect(property.limited, limit.property).toBe(true);
      expect(limit.source).not.toBe('');
      expect(offScale(property, limit.lower, limit.upper)).toBe('');
      // On the side that is worse: a lower end where higher is better.
      if (property.better === 'higher') expect([limit.lower !== null, limit.upper]).toEqual([true, null]);
      if (property.better === 'lower') expect([limit.lower, limit.upper !== null]).toEqual([null, true]);
    }
    for (const [key, value] of Object.entries(proposal.conditions ?? {})) {
      const field = method.conditions.find((condition) => condition.key === key)!;
      expect(field, key).toBeDefined();
      if (field.kind === 'choice') expect(field.choices.map((choice) => choice.value)).toContain(value);
      if (field.kind === 'number') expect(value).toBeGreaterThanOrEqual(field.min);
      if (field.kind === 'text') expect(String(value).length).toBeLessThanOrEqual(field.maxLength);
    }
    const known = stresses.find(({ id }) => id === stress)!.degrees.map(({ id }) => id);
    for (const degree of proposal.degrees ?? []) expect(known).toContain(degree);
    if (proposal.besides) expect(stresses.map(({ id }) => id)).toContain(proposal.besides);
  });

  it('never ask for the same test under other conditions: that would be another line', () => {
    const byLine = new Map<string, string>();
    for (const { stress, proposal } of proposals) {
      const degree = proposal.degrees?.[0] ?? stresses.find(({ id }) => id === stress)!.degrees[0]?.id ?? '';
      const chosen = [{ stress, degree }, ...(proposal.besides ? [{ stress: proposal.besides, degree: 'film' }] : [])];
      for (const line of proposeLines(chosen, stressRules.filter((rule) => rule.stress === stress))) {
        // Blue wool goes with any lamp, and a print has one kind of light.
        if (line.methodId === 'light-exposure') continue;
        const conditions = JSON.stringify(Object.entries(line.conditions).sort());
        expect(byLine.get(line.lineId) ?? conditions, line.lineId).toBe(conditions);
        byLine.set(line.lineId, conditions);
      }
    }
    expect(byLine.size).toBeGreaterThan(30);
  });

  it('never contradict each other', () => {
    for (const one of everyDegree) {
      for (const other of everyDegree) {
        if (one.stress === other.stress) continue;
        for (const { lineId, limits } of proposeLines([one, other])) {
          for (const { lower, upper } of limits) if (lower !== null && upper !== null) expect(lower, lineId).toBeLessThan(upper);
        }
      }
    }
  });
});

describe('the end uses', () => {
  it.each(endUses)('$title names stresses and degrees that there are, each once', ({ stresses: asked }) => {
    expect(new Set(asked.map(({ stress }) => stress)).size).toBe(asked.length);
    for (const stress of asked) expect(everyDegree).toContainEqual(stress);
  });

  it.each(endUses)('$title makes a plan that can be kept', ({ id, title, stresses: asked }) => {
    const lines = proposeLines(asked);
    const plan = { title, product: '', customer: '', endUse: id, stresses: asked, lines, dropped: [], note: '' };
    expect(planContentSchema.safeParse(plan).error).toBeUndefined();
    expect(new Set(named(lines)).size).toBe(lines.length);
    // Every stress has its reason somewhere in it.
    expect(new Set(lines.flatMap(({ reasons }) => reasons.map(({ stress }) => stress)))).toEqual(new Set(asked.map(({ stress }) => stress)));
  });

  it('differ from each other in what they call for', () => {
    const called = endUses.map(({ stresses: asked }) => JSON.stringify(proposeLines(asked)));
    expect(new Set(called).size).toBe(endUses.length);
  });

  it('asks of a frozen pouch what it does not ask of an outdoor sack, and the other way round', () => {
    const of = (id: string) => named(proposeLines(endUses.find((use) => use.id === id)!.stresses));
    const [frozen, outdoor] = [of('frozen-pouch'), of('outdoor-sack')];
    const cold = (ids: string[]) => ids.filter((id) => id.includes('−18 °C'));
    expect(cold(frozen).map((id) => id.split(',')[0])).toEqual(['tape-adhesion', 'crinkle', 'lamination-bond']);
    expect(cold(outdoor)).toEqual([]);
    expect(frozen.filter((id) => /^(light-exposure|gloss)/.test(id))).toEqual([]);
    expect(outdoor.filter((id) => /^(light-exposure|gloss)/.test(id))).toHaveLength(2);
    expect(outdoor.filter((id) => /^(lamination|jaw)/.test(id))).toEqual([]);
  });
});

describe('proposeLines', () => {
  const rules: StressRule[] = [
    { stress: 'a', proposals: [{ methodId: 'm', moment: onPress, replicates: 3, limits: [atLeast('x', 5, 'A'), within('y', 1, 9, 'A')], reason: 'A.' }] },
    { stress: 'b', proposals: [{ methodId: 'm', moment: onPress, replicates: 5, limits: [atLeast('x', 4, 'B'), within('y', 2, 9, 'B'), atMost('z', 1, 'B')], reason: 'B.' }] },
    { stress: 'c', proposals: [{ besides: 'a', methodId: 'm', moment: onPress, preparation: 'soaked', replicates: 2, limits: [], reason: 'C.' }] },
  ];
  const chosen = (...ids: string[]) => ids.map((stress) => ({ stress, degree: '' }));

  it('merges what several stresses ask for: all reasons, most replicates, strictest limits and whose they are', () => {
    expect(proposeLines(chosen('b', 'a'), rules)).toEqual([
      {
        lineId: 'm, on press',
        methodId: 'm',
        moment: onPress,
        preparation: '',
        conditions: {},
        replicates: 5,
        limits: [
          { property: 'x', lower: 5, upper: null, source: 'A' },
          { property: 'y', lower: 2, upper: 9, source: 'A; B' },
          { property: 'z', lower: null, upper: 1, source: 'B' },
        ],
        reasons: [
          { stress: 'a', text: 'A.' },
          { stress: 'b', text: 'B.' },
        ],
      },
    ]);
  });

  it('keeps another preparation apart, and asks for what needs a second stress only beside it', () => {
    expect(named(proposeLines(chosen('a', 'c'), rules))).toEqual(['m, on press', 'm, on press, soaked']);
    expect(proposeLines(chosen('c'), rules)).toEqual([]);
  });

  it('proposes nothing for nothing, and nothing for a stress of another version of the program', () => {
    expect(proposeLines([])).toEqual([]);
    expect(proposeLines(chosen('radiation'))).toEqual([]);
  });

  it('puts the film first, and the rest in the order in which it falls due', () => {
    const lines = proposeLines([
      { stress: 'printing', degree: 'dried' },
      { stress: 'lamination', degree: 'film' },
    ]);
    expect(named(lines)).toEqual([
      'test-fluids, before printing',
      'tape-adhesion, on press',
      'residual-solvent, on press',
      'tape-adhesion, 24 h after printing',
      'lamination-bond, 24 h after lamination',
      'lamination-recheck, 2 days after lamination',
      'lamination-bond, 7 days after lamination',
    ]);
  });
});
