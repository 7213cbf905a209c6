import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loopThrough, lotTree } from '../../../shared-lib/material/genealogy.ts';
import { lotDoubt } from '../../../shared-lib/material/lot-doubt.ts';

const next = (edges: Record<string, string[]>) => (lotId: string) => edges[lotId] ?? [];

describe('what went into a lot', () => {
  it('is listed part by part, each followed by its own', () => {
    const parts = next({ pouch: ['laminate', 'zip'], laminate: ['pet', 'ink', 'pe'], ink: ['base'] });
    expect(lotTree('pouch', parts)).toEqual([
      { lotId: 'laminate', depth: 0, again: false },
      { lotId: 'pet', depth: 1, again: false },
      { lotId: 'ink', depth: 1, again: false },
      { lotId: 'base', depth: 2, again: false },
      { lotId: 'pe', depth: 1, again: false },
      { lotId: 'zip', depth: 0, again: false },
    ]);
  });

  it('names a lot that went in twice at both places, and opens it once', () => {
    expect(lotTree('brick', next({ brick: ['a', 'b'], a: ['glue'], b: ['glue'], glue: ['resin'] }))).toEqual([
      { lotId: 'a', depth: 0, again: false },
      { lotId: 'glue', depth: 1, again: false },
      { lotId: 'resin', depth: 2, again: false },
      { lotId: 'b', depth: 0, again: false },
      { lotId: 'glue', depth: 1, again: true },
    ]);
  });

  it('ends in a loop, which two merged benches can make', () => {
    expect(lotTree('a', next({ a: ['b'], b: ['a'] }))).toEqual([
      { lotId: 'b', depth: 0, again: false },
      { lotId: 'a', depth: 1, again: true },
    ]);
  });
});

describe('a loop', () => {
  const parts = next({ roll: ['laminate'], laminate: ['pet'] });

  it.each<[string, string[], string[] | null]>([
    ['a lot of itself', ['pet'], ['pet', 'pet']],
    ['a part of what it went into', ['roll'], ['pet', 'roll', 'laminate', 'pet']],
    ['of something else', ['resin'], null],
    ['of nothing', [], null],
  ])('through %s is found', (_name, of, loop) => {
    expect(loopThrough('pet', of, parts)).toEqual(loop);
  });

  it('is found exactly when what is made can be reached from its parts', () => {
    const edge = fc.tuple(fc.integer({ min: 0, max: 7 }), fc.integer({ min: 0, max: 7 }));
    fc.assert(
      fc.property(fc.array(edge, { maxLength: 20 }), edge, (edges, [lot, part]) => {
        // Only edges downwards, so that there is no loop before.
        const known = edges.map(([a, b]) => [String(Math.max(a, b)), String(Math.min(a, b))] as const).filter(([a, b]) => a !== b);
        const partsOf = (lotId: string) => known.flatMap(([of, into]) => (of === lotId ? [into] : []));
        // Reached by widening a set until it stands still: another way than the search under test.
        const reached = new Set([String(part)]);
        for (let size = 0; size !== reached.size; ) {
          size = reached.size;
          for (const [of, into] of known) if (reached.has(of)) reached.add(into);
        }
        const loop = loopThrough(String(lot), [String(part)], partsOf);
        expect(loop !== null).toBe(reached.has(String(lot)));
        if (loop) expect([loop[0], loop.at(-1)]).toEqual([String(lot), String(lot)]);
      }),
    );
  });
});

describe('a lot', () => {
  const lot = { expiresOn: '2026-02-28', retiredAt: null, retiredReason: '' };

  it.each([
    ['2026-02-28', ''],
    ['2026-03-01', 'expired on 2026-02-28'],
  ])('that is used on %s', (day, doubt) => {
    expect(lotDoubt(lot, day)).toBe(doubt);
  });

  it('that was retired is doubtful also for what was made before', () => {
    expect(lotDoubt({ expiresOn: null, retiredAt: '2026-03-12T08:00:00.000Z', retiredReason: 'Ink beads on it.' }, '2026-01-01')).toBe('was retired on 2026-03-12 (Ink beads on it)');
  });
});
