import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Design, RuleOf } from '../../../src/design/schema.ts';
import type { Arranging } from '../../../src/layout/arrange/arranged.ts';
import { countFor, pitchFor, recounted } from '../../../src/layout/arrange/recount.ts';
import { layOut } from '../../../src/layout/layout.ts';
import { at, design, panel, plainFace, STOCKS, strip } from '../sample.ts';

type Even = RuleOf<'even'>;

const even = (parts: readonly string[], mode: Even['mode'], more: Partial<Even> = {}): Even => ({
  id: 'row',
  kind: 'even',
  axis: 'x',
  parts: [...parts],
  low: { of: 'face', side: 'low' },
  high: { of: 'face', side: 'high' },
  mode,
  ...more,
});

function arranging(d: Design, width = 1000): Arranging {
  const input = { design: d, face: plainFace(width), keepClears: [], stocks: STOCKS };
  return { input, layout: layOut(input) };
}

/** The design after a row was given another number of parts. */
function withCount(d: Design, rule: Even, count: number, width = 1000): Arranging {
  const { arranged, rule: item, gone } = recounted(arranging(d, width), rule, count);
  const parts = [...d.parts.filter((p) => !gone.includes(p.id)), ...arranged.add];
  const rules = [...d.rules.map((r) => (r.id === item.id ? item : r)), ...arranged.rules];
  return arranging({ ...d, parts, rules }, width);
}

const laths = (count: number) =>
  Array.from({ length: count }, (_, i) => strip(`s${i}`, at(50 + 60 * i, 100, 40, 600)));
const ids = (parts: readonly { readonly id: string }[]) => parts.map((p) => p.id);

describe('the number of parts that a largest gap asks for', () => {
  it('is the least whole number over (span - gap) / (size + gap), as for balusters and pickets', () => {
    // Common practice, no source: openings between balusters no larger than given, gaps at both ends.
    const parts = laths(3);
    const rule = even(ids(parts), 'most', { most: 100 });
    const found = countFor(arranging(design(parts, [rule])), rule, 100);
    expect(found?.count).toBe(Math.ceil((1000 - 100) / (40 + 100)));
    expect(found?.gap).toBeCloseTo((1000 - 7 * 40) / 8, 9);
  });

  it('holds once the row has that many, and with one fewer it would not', () => {
    const mode = fc.constantFrom('gaps' as const, 'most' as const, 'flush' as const, 'half' as const);
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 12 }),
        mode,
        fc.integer({ min: 8, max: 300 }),
        fc.integer({ min: 400, max: 1600 }),
        (have, kind, most, width) => {
          const parts = laths(have);
          const rule = even(ids(parts), kind, kind === 'most' ? { most } : {});
          const d = design(parts, [rule]);
          const found = countFor(arranging(d, width), rule, most);
          if (!found) return;
          const now = withCount(d, rule, found.count, width);
          const state = now.layout.rules.find((r) => r.id === 'row');
          expect(now.input.design.parts.length).toBe(found.count);
          expect(now.layout.rules.every((r) => r.holds)).toBe(true);
          expect(state?.result).toBeCloseTo(found.gap, 6);
          expect(found.gap).toBeLessThanOrEqual(most + 1e-6);
          if (found.count === 1) return;
          const fewer = withCount(d, rule, found.count - 1, width).layout.rules.find((r) => r.id === 'row');
          expect(fewer?.result ?? 0).toBeGreaterThan(most);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('is none where the parts would stand in each other first, and none for fixed centers', () => {
    const parts = [panel('a', at(0, 0, 450, 50)), panel('b', at(500, 0, 450, 50))];
    const rule = even(['a', 'b'], 'gaps');
    expect(countFor(arranging(design(parts, [rule])), rule, 20)).toBeNull();
    const fixed = even(['a', 'b'], 'centers', { pitch: 500 });
    expect(countFor(arranging(design(parts, [fixed])), fixed, 20)).toBeNull();
  });
});

describe('copies for a row', () => {
  it('are like the last, in line with it, and of its size', () => {
    const parts = [panel('a', at(0, 100, 60, 500)), panel('b', at(300, 150, 80, 400))];
    const rule = even(['a', 'b'], 'gaps');
    const { input, layout } = withCount(design(parts, [rule]), rule, 4);
    const boxes = input.design.parts.map((p) => layout.boxes.get(p.id));
    // 1000 less 60 and three times 80 leaves 700 for five gaps.
    expect(boxes).toEqual([
      at(140, 100, 60, 500),
      at(340, 150, 80, 400),
      at(560, 150, 80, 400),
      at(780, 150, 80, 400),
    ]);
  });

  it('the last parts go where fewer do', () => {
    const parts = laths(5);
    const rule = even(ids(parts), 'gaps');
    const gone = recounted(arranging(design(parts, [rule])), rule, 3);
    expect(gone.gone).toEqual(['s3', 's4']);
    expect(gone.rule.parts).toEqual(['s0', 's1', 's2']);
  });
});

it('a pitch leaves just the gap asked for, where the parts are of one size and fit', () => {
  const parts = laths(4);
  const rule = even(ids(parts), 'gaps');
  const on = arranging(design(parts, [rule]));
  expect(pitchFor(on, rule, 75)).toBeCloseTo(115, 9);
  expect(pitchFor(on, rule, 290)).toBeNull();
  const held = even(ids(parts), 'centers', { pitch: 115 });
  const { layout } = arranging(design(parts, [held]));
  const at0 = layout.boxes.get('s0');
  expect(at0?.x).toBeCloseTo((1000 - 4 * 40 - 3 * 75) / 2, 9);
  expect((layout.boxes.get('s1')?.x ?? 0) - (at0?.x ?? 0)).toBeCloseTo(115, 9);
  const mixed = [...parts.slice(0, 2), panel('p', at(500, 0, 90, 90))];
  const other = even(ids(mixed), 'gaps');
  expect(pitchFor(arranging(design(mixed, [other])), other, 75)).toBeNull();
});
