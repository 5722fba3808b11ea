import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Rule } from '../../../src/design/schema.ts';
import type { Box } from '../../../src/geometry/shape.ts';
import { snapAngle } from '../../../src/layout/snap/angle.ts';
import { rulerStep } from '../../../src/layout/snap/fraction.ts';
import { bestSnap, snapCandidates } from '../../../src/layout/snap/snap.ts';
import type { SnapCandidate, SnapInput } from '../../../src/layout/snap/snapping.ts';
import { withSpan } from '../../../src/layout/span.ts';
import { at, boxOfPart, design, lay, panel, plainFace, recessedFace } from '../sample.ts';

const style = { unit: 'mm', fraction: '16', currency: '' } as const;
const input = (box: Box, others: SnapInput['others'] = [], more: Partial<SnapInput> = {}): SnapInput => ({
  moving: [{ id: 'm', box }],
  handle: { x: 'move', y: null },
  others,
  face: plainFace(),
  tolerance: 8,
  style,
  stockWidths: [],
  ...more,
});
const best = (of: SnapInput) => bestSnap(of).x;

describe('snapping', () => {
  it('edges onto edges of parts, with a guide through both', () => {
    const found = best(input(at(205, 500, 100, 50), [{ id: 'a', box: at(200, 900, 333, 50) }]));
    expect(found).toEqual({
      kind: 'edge',
      axis: 'x',
      delta: -5,
      rule: {
        kind: 'set',
        axis: 'x',
        edge: { of: 'm', side: 'low' },
        from: { of: 'a', side: 'low' },
        distance: 0,
      },
      guides: [{ from: { x: 200, y: 500 }, to: { x: 200, y: 950 } }],
      dimensions: [],
    });
  });

  it('of two lines in one place the nearer part gives the rule', () => {
    const others = [
      { id: 'a', box: at(200, 1500, 333, 50) },
      { id: 'b', box: at(200, 560, 333, 50) },
    ];
    expect(best(input(at(205, 500, 100, 50), others))?.rule).toMatchObject({ from: { of: 'b' } });
    expect(best(input(at(205, 500, 100, 50), [...others].reverse()))?.rule).toMatchObject({
      from: { of: 'b' },
    });
  });

  it('the inside of a level and of a frame', () => {
    const face = recessedFace();
    expect(best(input(at(103, 500, 77, 50), [], { face }))?.rule).toMatchObject({
      from: { of: 'level:field', side: 'low' },
    });
    const rimOnly = { ...face, levels: face.levels.slice(0, 1) };
    expect(best(input(at(103, 500, 77, 50), [], { face: rimOnly }))?.rule).toMatchObject({
      from: { of: 'level:rim', side: 'low', inner: true },
    });
    const frame = { id: 'f', box: at(300, 400, 400, 400), inner: at(340, 440, 320, 320) };
    expect(best(input(at(343, 500, 77, 50), [frame]))?.rule).toMatchObject({
      from: { of: 'f', side: 'low', inner: true },
    });
  });

  it('a pulled edge centers its part on something, going twice as far as the middle', () => {
    const others = [{ id: 'a', box: at(230, 900, 40, 50) }];
    const found = best(input(at(207, 500, 82, 50), others, { handle: { x: 'high', y: null } }));
    expect(found).toMatchObject({ kind: 'center', delta: 4 });
    expect(found?.rule).toMatchObject({ kind: 'center', parts: ['m'], low: { of: 'a', side: 'low' } });
    const left = best(input(at(209, 500, 84, 50), others, { handle: { x: 'low', y: null } }));
    expect(left).toMatchObject({ kind: 'center', delta: -2 });
    const two = {
      handle: { x: 'high', y: null },
      moving: ['m', 'n'].map((id) => ({ id, box: at(207, 500, 82, 50) })),
    };
    expect(best(input(at(0, 0, 1, 1), others, two as Partial<SnapInput>))?.kind).not.toBe('center');
  });

  it('a pulled edge ends at a third of the space between its neighbors', () => {
    const others = [
      { id: 'a', box: at(100, 500, 50, 50) },
      { id: 'b', box: at(751, 500, 50, 50) },
    ];
    const found = best(input(at(203, 500, 150, 50), others, { handle: { x: 'high', y: null } }));
    // From 150 to 751: a third of the way is 350 1/3.
    expect(found).toMatchObject({ kind: 'division' });
    expect(353 + (found?.delta ?? 0)).toBeCloseTo(150 + 601 / 3, 9);
    expect(found?.rule).toMatchObject({
      kind: 'set',
      edge: { of: 'm', side: 'high' },
      from: { of: 'a', side: 'high' },
    });
  });

  it('centers on the face', () => {
    const found = best(input(at(453, 500, 100, 50)));
    expect(found?.delta).toBe(-3);
    expect(found?.rule).toEqual({
      kind: 'center',
      axis: 'x',
      parts: ['m'],
      low: { of: 'face', side: 'low' },
      high: { of: 'face', side: 'high' },
    });
  });

  it('equal gaps between neighbors on both sides, with both dimensions', () => {
    const others = [
      { id: 'a', box: at(100, 480, 50, 90) },
      { id: 'b', box: at(450, 480, 70, 90) },
    ];
    const found = best(input(at(252, 500, 101, 50), others));
    expect(found?.kind).toBe('gap');
    expect(found?.delta).toBeCloseTo(249.5 - 252, 9);
    expect(found?.rule).toEqual({
      kind: 'center',
      axis: 'x',
      parts: ['m'],
      low: { of: 'a', side: 'high' },
      high: { of: 'b', side: 'low' },
    });
    expect(found?.dimensions.map((d) => d.length)).toEqual([99.5, 99.5]);
  });

  it('of an edge in the hand the gap that the other edge has', () => {
    // Room from 150 to 750, 100 left free on one side: the other edge goes to where 100 are free.
    const others = [
      { id: 'a', box: at(100, 480, 50, 90) },
      { id: 'b', box: at(750, 480, 70, 90) },
    ];
    const handle = { x: 'high', y: null } as const;
    const right = best(input(at(250, 500, 405, 50), others, { handle }));
    expect(right).toMatchObject({ kind: 'gap', delta: -5, rule: { kind: 'center', parts: ['m'] } });
    expect(right?.dimensions.map((d) => d.length)).toEqual([100, 100]);
    const left = best(input(at(247, 500, 403, 50), others, { handle: { x: 'low', y: null } }));
    expect(left).toMatchObject({ kind: 'gap', delta: 3, rule: { kind: 'center', parts: ['m'] } });
    // Nothing is left of a part whose edge would have to pass the other.
    const far = input(at(600, 500, 20, 50), others, { handle, tolerance: 1000 });
    expect(
      snapCandidates(far).some((c) => c.kind === 'gap' && c.rule?.kind === 'center' && c.delta < 0),
    ).toBe(false);
  });

  it('the gap of a row once more, at either end', () => {
    const others = [
      { id: 'a', box: at(200, 480, 50, 90) },
      { id: 'b', box: at(273, 480, 70, 90) },
    ];
    const right = best(input(at(369, 500, 61, 50), others));
    expect(right?.kind).toBe('gap');
    expect(right?.delta).toBe(273 + 70 + 23 - 369);
    expect(right?.rule).toMatchObject({
      kind: 'center',
      parts: ['b'],
      low: { of: 'a', side: 'high' },
      high: { of: 'm', side: 'low' },
    });
    const left = best(input(at(111, 500, 61, 50), others));
    expect(left?.delta).toBe(200 - 23 - 61 - 111);
    expect(left?.rule).toMatchObject({ kind: 'center', parts: ['a'], low: { of: 'm', side: 'high' } });
  });

  it('even division of the face among a row that nearly stands there', () => {
    // Four parts of 100 in 1000: gaps of 120.
    const others = [120, 340, 780].map((x, i) => ({ id: `p${i}`, box: at(x + (i - 1) * 2, 480, 100, 90) }));
    const found = snapCandidates(input(at(556, 500, 100, 50), others)).find(
      (c) => c.kind === 'division' && c.rule?.kind === 'even',
    );
    expect(found?.delta).toBeCloseTo(4, 9);
    expect(found?.rule).toMatchObject({ kind: 'even', parts: ['p0', 'p1', 'm', 'p2'], mode: 'gaps' });
  });

  it('a third of the space', () => {
    const found = snapCandidates(input(at(285, 500, 100, 50))).find((c) => c.kind === 'division');
    expect(found?.delta).toBeCloseTo(1000 / 3 - 335, 9);
    expect(found?.rule).toMatchObject({ kind: 'set', edge: { of: 'm', side: 'mid' } });
  });

  it('the last equal margin offers a reveal', () => {
    const box = { id: 'a', box: at(100, 100, 500, 300) };
    const resized = input(at(130, 130, 434, 240), [box], { handle: { x: 'high', y: null } });
    const found = best(resized);
    expect(found).toMatchObject({
      kind: 'reveal',
      delta: 6,
      rule: { kind: 'reveal', part: 'm', inside: 'a', inner: false, margin: 30 },
    });
    const other = best({ ...resized, moving: [{ id: 'm', box: at(130, 150, 434, 240) }] });
    expect(other?.rule).toMatchObject({
      kind: 'set',
      edge: { of: 'm', side: 'high' },
      from: { of: 'a', side: 'high' },
      distance: -30,
    });
  });

  it('room for a strip, and the width of one', () => {
    const wide = { stockWidths: [38] };
    const beside = [{ id: 'a', box: at(300, 480, 50, 90) }];
    expect(best(input(at(391, 500, 61, 50), beside, wide))).toMatchObject({
      kind: 'stock',
      delta: -3,
      rule: { from: { of: 'a', side: 'high' }, distance: 38 },
    });
    const resized = best(input(at(611, 500, 41, 50), [], { ...wide, handle: { x: 'high', y: null } }));
    expect(resized).toMatchObject({
      kind: 'stock',
      delta: -3,
      rule: { edge: { of: 'm', side: 'high' }, from: { of: 'm', side: 'low' }, distance: 38 },
    });
  });

  it('whole steps of the ruler when there is nothing else: a place, no rule', () => {
    const found = best(input(at(612.3, 500, 41, 50)));
    expect(found).toMatchObject({ kind: 'fraction', rule: null, dimensions: [{ length: 610 }] });
    expect(found?.delta).toBeCloseTo(-2.3, 9);
    expect(rulerStep({ ...style, unit: 'in' }, 4)).toBeCloseTo(6.35, 9);
    expect(rulerStep({ ...style, unit: 'in', fraction: '16' }, 0.01)).toBeCloseTo(25.4 / 16, 9);
    expect(rulerStep({ ...style, unit: 'in' }, 50)).toBeCloseTo(25.4, 9);
    expect(rulerStep(style, 1)).toBe(1);
  });

  it('angles of the square and of other strips', () => {
    expect(snapAngle(46.5, [], 2)).toBe(45);
    expect(snapAngle(53.4, [53.13], 2)).toBe(53.13);
    expect(snapAngle(-36.5, [53.13], 1)).toBeCloseTo(-36.87, 9);
    expect(snapAngle(179, [], 2)).toBe(180);
    expect(snapAngle(50, [], 2)).toBeNull();
  });

  it('a group moves by its outermost edges', () => {
    const moving = [
      { id: 'm', box: at(205, 500, 50, 50) },
      { id: 'n', box: at(290, 400, 33, 50) },
    ];
    const found = best({ ...input(at(0, 0, 0, 0), [{ id: 'a', box: at(320, 900, 444, 50) }]), moving });
    expect(found).toMatchObject({
      delta: -3,
      rule: { edge: { of: 'n', side: 'high' }, from: { of: 'a', side: 'low' } },
    });
  });
});

describe('on release', () => {
  const box = fc
    .tuple(
      fc.integer({ min: 0, max: 900 }),
      fc.integer({ min: 0, max: 900 }),
      fc.integer({ min: 20, max: 100 }),
      fc.integer({ min: 20, max: 100 }),
    )
    .map(([x, y, w, h]) => at(x, y, w, h));

  const placed = (moving: Box, grip: 'move' | 'low' | 'high', { axis, delta }: SnapCandidate): Box => {
    const start = axis === 'x' ? moving.x : moving.y;
    const size = axis === 'x' ? moving.w : moving.h;
    if (grip === 'move') return withSpan(moving, axis, start + delta, size);
    if (grip === 'low') return withSpan(moving, axis, start + delta, size - delta);
    return withSpan(moving, axis, start, size + delta);
  };

  it('every offered rule holds the part just where it was shown', () => {
    fc.assert(
      fc.property(
        box,
        fc.array(box, { maxLength: 5 }),
        fc.constantFrom('move' as const, 'low' as const, 'high' as const),
        fc.constantFrom('x' as const, 'y' as const),
        (moving, boxes, grip, axis) => {
          const others = boxes.map((b, i) => ({ id: `p${i}`, box: b }));
          const found = snapCandidates(
            input(moving, others, {
              handle: { x: axis === 'x' ? grip : null, y: axis === 'y' ? grip : null },
              stockWidths: [38, 63],
              tolerance: 12,
            }),
          );
          for (const candidate of found) {
            expect(Math.abs(candidate.delta)).toBeLessThanOrEqual(12);
            if (!candidate.rule) continue;
            const shown = placed(moving, grip, candidate);
            const parts = [...others.map((o) => panel(o.id, o.box)), panel('m', shown)];
            const layout = lay(design(parts, [{ ...candidate.rule, id: 'r' } as Rule]), {
              held: new Set(['m']),
            });
            expect(layout.rules[0]?.holds).toBe(true);
            const rest = boxOfPart(layout, 'm');
            expect([rest.x, rest.y, rest.w, rest.h].map((v) => Math.round(v * 1e6))).toEqual(
              [shown.x, shown.y, shown.w, shown.h].map((v) => Math.round(v * 1e6)),
            );
          }
        },
      ),
      { numRuns: 150 },
    );
  });

  it('does not depend on the order in which things are offered to it', () => {
    fc.assert(
      fc.property(box, fc.array(box, { maxLength: 6 }), (moving, boxes) => {
        const others = boxes.map((b, i) => ({ id: `p${i}`, box: b }));
        const both = { handle: { x: 'move', y: 'move' } } as const;
        const straight = bestSnap(input(moving, others, both));
        expect(bestSnap(input(moving, [...others].reverse(), both))).toEqual(straight);
      }),
    );
  });
});
