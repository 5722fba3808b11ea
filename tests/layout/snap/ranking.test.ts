import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Axis, Rule } from '../../../src/design/schema.ts';
import type { Box } from '../../../src/geometry/shape.ts';
import { snapAngle } from '../../../src/layout/snap/angle.ts';
import { alongAxis, awayFrom, isHidden } from '../../../src/layout/snap/around.ts';
import { rulerStep } from '../../../src/layout/snap/distance.ts';
import { snapPointTo } from '../../../src/layout/snap/point.ts';
import { heldBy, RANKING } from '../../../src/layout/snap/ranking.ts';
import type { Grip, SnapInput, Thing } from '../../../src/layout/snap/snapping.ts';
import { spansMeet, withSpan } from '../../../src/layout/span.ts';
import { runs } from '../../runs.ts';
import { at, boxOfPart, design, lay, panel, plainFace, recessedFace } from '../sample.ts';

/** The plain face is 1000 wide and 2000 high; the reach is 8, half of it 4. */
const style = { unit: 'mm', fraction: '16', currency: '' } as const;
const input = (box: Box, others: readonly Thing[] = [], more: Partial<SnapInput> = {}): SnapInput => ({
  moving: [{ id: 'm', box }],
  grip: { x: 'move', y: null },
  others,
  support: 'level:skin',
  face: plainFace(),
  reach: 8,
  style,
  ...more,
});
const along = (of: SnapInput, axis: Axis = 'x') => {
  const held = heldBy(of)[axis];
  return held && { ...held, reading: held.offers[0]?.reading, low: held.span.low, high: held.span.high };
};
const grip = (x: Grip, y: Grip = null) => ({ grip: { x, y } });
const edge = (of: string, side: 'low' | 'mid' | 'high', inner?: true) =>
  inner ? { of, side, inner } : { of, side };
const to = (side: 'low' | 'mid' | 'high', from: object, distance = 0) => ({
  kind: 'set',
  axis: 'x',
  edge: edge('m', side),
  from,
  distance,
});

it('ranks what the hand may have meant as tests/editor/intent/scenes/README.md does', () => {
  expect(RANKING.map((row) => row.readings)).toEqual([
    ['touch'],
    ['line'],
    ['gap', 'margin'],
    ['center'],
    ['distance'],
  ]);
});

describe('a touched edge', () => {
  const post = { id: 'a', box: at(200, 400, 40, 300) };

  it('holds against what it runs beside', () => {
    const found = along(input(at(243, 500, 100, 50), [post]));
    expect(found).toMatchObject({ reading: 'touch', low: 240 });
    expect(found?.rules).toEqual([to('low', edge('a', 'high'))]);
  });

  it('goes before a nearer center, and before a gap', () => {
    // Its middle is half a millimeter off the middle of the face, its edge three off the post.
    const found = along(input(at(449.5, 500, 100, 50), [{ id: 'a', box: at(406.5, 400, 40, 300) }]));
    expect(found).toMatchObject({ reading: 'touch', low: 446.5 });
  });

  it('is none that was farther than half the reach, where something else is nearer', () => {
    const found = along(input(at(446, 500, 100, 50), [{ id: 'a', box: at(400, 400, 40, 300) }]));
    expect(found).toMatchObject({ reading: 'center', low: 450 });
    const alone = along(input(at(246, 500, 100, 50), [post]));
    expect(alone).toMatchObject({ reading: 'touch', low: 240 });
  });

  it('needs a stretch beside it: what only meets its corner is not touched', () => {
    const found = along(input(at(243, 695, 100, 50), [post]));
    expect(found?.reading).not.toBe('touch');
  });

  it('at both ends runs between, each edge judged for itself', () => {
    const other = { id: 'b', box: at(600, 400, 40, 300) };
    const both = along(input(at(237, 500, 366, 50), [post, other], grip('both')));
    expect(both).toMatchObject({ low: 240, high: 600 });
    expect(both?.rules).toEqual([
      {
        kind: 'between',
        axis: 'x',
        part: 'm',
        low: edge('a', 'high'),
        high: edge('b', 'low'),
        insetLow: 0,
        insetHigh: 0,
      },
    ]);
    const one = along(input(at(237, 500, 146, 50), [post, other], grip('both')));
    // The other end keeps the drawn size, in steps of five: 383 less 240 is 143.
    expect(one).toMatchObject({ low: 240, high: 385 });
    expect(one?.rules).toEqual([to('low', edge('a', 'high'))]);
  });

  it('takes the inner edges of a frame that it is drawn within, the outer ones outside', () => {
    // Stock as narrow as the reach.
    const frame = { id: 'f', box: at(300, 400, 400, 400), inner: at(306, 406, 388, 388) };
    const within = along(input(at(303, 420, 394, 300), [frame], grip('both')));
    expect(within?.rules[0]).toMatchObject({ low: edge('f', 'low', true), high: edge('f', 'high', true) });
    const outside = along(input(at(702, 420, 90, 300), [frame]));
    expect(outside?.rules).toEqual([to('low', edge('f', 'high'))]);
  });

  it('of lines in one place is the part that it lies on or stands against, then the level, then the face', () => {
    const face = recessedFace();
    const field = face.levels.at(-1)?.box ?? face.box;
    const beneath = { id: 'board', box: field };
    const on = input(at(field.x + 2, 500, 77, 50), [beneath], { face, support: 'board' });
    expect(along(on)?.rules).toEqual([to('low', edge('board', 'low'))]);
    const level = input(at(field.x + 2, 500, 77, 50), [], { face, support: 'level:field' });
    expect(along(level)?.rules).toEqual([to('low', edge('level:field', 'low'))]);
    expect(along(input(at(3, 500, 77, 50), [], { support: 'face' }))?.rules[0]).toMatchObject({
      distance: 0,
    });
  });

  it('never leaves the face', () => {
    expect(along(input(at(-76, 500, 77, 50), []))?.reading).not.toBe('touch');
    expect(along(input(at(1, 500, 77, 50), []))?.reading).toBe('touch');
  });
});

describe('a continued line', () => {
  const rail = { id: 'a', box: at(100, 100, 60, 200), stock: 'pine' };

  it('goes on across a gap, and before a nearer center', () => {
    const found = along(input(at(103, 800, 90, 50), [rail]));
    expect(found).toMatchObject({ reading: 'line', low: 100 });
    expect(found?.rules).toEqual([to('low', edge('a', 'low'))]);
  });

  it('takes the center lines of strips of one stock, and of no others', () => {
    const strip = (stock: string) => ({ moving: [{ id: 'm', box: at(92, 800, 80, 50), stock }] });
    const same = along(input(at(0, 0, 1, 1), [rail], strip('pine')));
    expect(same?.rules).toEqual([to('mid', edge('a', 'mid'))]);
    const other = along(input(at(0, 0, 1, 1), [rail], strip('oak')));
    expect(other?.rules).not.toEqual([to('mid', edge('a', 'mid'))]);
  });

  it('is the nearer of two in one place', () => {
    const far = { id: 'b', box: at(100, 1700, 60, 200) };
    expect(along(input(at(103, 1300, 90, 50), [rail, far]))?.rules).toEqual([to('low', edge('b', 'low'))]);
  });

  it('is hidden by what stands between, but for what goes on as a whole', () => {
    const post = { id: 'p', box: at(50, 500, 200, 70) };
    const one = along(input(at(103, 800, 90, 50), [rail, post]));
    expect(one?.rules).not.toContainEqual(to('low', edge('a', 'low')));
    const whole = along(input(at(103, 800, 60, 50), [rail, post]));
    expect(whole).toMatchObject({ reading: 'line', low: 100 });
    const drawn = along(input(at(103, 800, 61, 50), [rail, post], grip('both')));
    expect(drawn?.rules).toContainEqual(to('low', edge('a', 'low')));
  });
});

describe('equal gaps', () => {
  const a = { id: 'a', box: at(200, 480, 50, 90) };
  const b = { id: 'b', box: at(273, 480, 70, 90) };

  it('are the gap of the row once more, at either end; what is set last follows', () => {
    const right = along(input(at(369, 500, 61, 50), [a, b]));
    expect(right).toMatchObject({ reading: 'gap', low: 273 + 70 + 23 });
    expect(right?.rules).toEqual([
      {
        kind: 'gap',
        axis: 'x',
        edge: edge('m', 'low'),
        from: edge('b', 'high'),
        likeEdge: edge('b', 'low'),
        likeFrom: edge('a', 'high'),
      },
    ]);
    expect(right?.offers[0]?.dimensions.map((d) => d.length)).toEqual([23, 23]);
    const left = along(input(at(111, 500, 61, 50), [a, b]));
    expect(left).toMatchObject({ reading: 'gap', high: 200 - 23 });
  });

  it('are none where a nearer part hides the row, where parts overlap, or with only two', () => {
    const hiding = { id: 'c', box: at(344, 480, 10, 90) };
    expect(along(input(at(369, 500, 61, 50), [a, b, hiding]))?.reading).not.toBe('gap');
    const over = { id: 'b', box: at(240, 480, 70, 90) };
    expect(along(input(at(301, 500, 61, 50), [a, over]))?.reading).not.toBe('gap');
    expect(along(input(at(273, 500, 61, 50), [a]))?.reading).not.toBe('gap');
  });
});

describe('the same margin', () => {
  const door = { id: 'door', box: at(100, 100, 500, 300) };

  it('on all four sides is one rule about what it lies on, round and before a center', () => {
    const drawn = input(at(133, 128, 434, 243), [door], { ...grip('both', 'both'), support: 'door' });
    const { x, y } = heldBy(drawn);
    expect(x?.span).toEqual({ low: 130, high: 570 });
    expect(y?.span).toEqual({ low: 130, high: 370 });
    expect([...(x?.rules ?? []), ...(y?.rules ?? [])]).toEqual([
      { kind: 'reveal', part: 'm', inside: 'door', inner: false, margin: 30 },
    ]);
  });

  it('is none where one side touches', () => {
    const drawn = input(at(133, 102, 434, 243), [door], { ...grip('both', 'both'), support: 'door' });
    const { x, y } = heldBy(drawn);
    expect(x?.offers[0]?.reading).toBe('center');
    expect(y?.offers[0]?.reading).toBe('touch');
  });

  it('of a pulled edge is the one that the other three sides have', () => {
    const pulled = input(at(130, 130, 434, 240), [door], { ...grip('high'), support: 'door' });
    expect(along(pulled)?.rules).toEqual([
      { kind: 'reveal', part: 'm', inside: 'door', inner: false, margin: 30 },
    ]);
    expect(along(pulled)?.high).toBe(570);
  });
});

describe('a center', () => {
  it('is that of what it lies on or stands in', () => {
    const found = along(input(at(453, 500, 100, 50)));
    expect(found).toMatchObject({ reading: 'center', low: 450 });
    const others = [
      { id: 'a', box: at(100, 480, 50, 90) },
      { id: 'b', box: at(450, 480, 70, 90) },
    ];
    const between = along(input(at(252, 500, 101, 50), others));
    expect(between?.rules).toEqual([
      { kind: 'center', axis: 'x', parts: ['m'], low: edge('a', 'high'), high: edge('b', 'low') },
    ]);
    expect(between?.offers[0]?.dimensions.map((d) => d.length)).toEqual([99.5, 99.5]);
  });

  it('of a part above is offered where that is wider and nothing hides it', () => {
    const above = { id: 'a', box: at(200, 900, 160, 50) };
    const own = at(233, 500, 92, 50);
    expect(along(input(own, [above]))?.rules).toEqual([
      { kind: 'center', axis: 'x', parts: ['m'], low: edge('a', 'low'), high: edge('a', 'high') },
    ]);
    const narrow = { id: 'a', box: at(250, 900, 60, 50) };
    expect(along(input(own, [narrow]))?.reading).not.toBe('center');
    const hiding = { id: 'b', box: at(215, 700, 30, 50) };
    expect(along(input(own, [above, hiding]))?.reading).not.toBe('center');
  });

  it('is reached by a pulled edge, which goes twice as far as the middle', () => {
    const others = [
      { id: 'a', box: at(100, 480, 50, 90) },
      { id: 'b', box: at(750, 480, 70, 90) },
    ];
    const right = along(input(at(250, 500, 405, 50), others, grip('high')));
    expect(right).toMatchObject({ reading: 'center', low: 250, high: 650 });
    const left = along(input(at(247, 500, 403, 50), others, grip('low')));
    expect(left).toMatchObject({ reading: 'center', low: 250, high: 650 });
  });
});

describe('a round distance', () => {
  it('is from the nearest edge of what it lies on or stands between, in whole steps; so is the drawn size', () => {
    const post = { id: 'a', box: at(100, 400, 40, 300) };
    const drawn = along(input(at(191.7, 500, 203, 50), [post], grip('both')));
    expect(drawn).toMatchObject({ reading: 'distance', low: 190, high: 395 });
    expect(drawn?.rules).toEqual([to('low', edge('a', 'high'), 50)]);
    const right = along(input(at(612.3, 500, 202, 50), [post], grip('both')));
    // 185.7 from the right end of the face, which is nearer than the post.
    expect(right?.rules).toEqual([to('high', edge('level:skin', 'high'), -185)]);
  });

  it('of a pulled edge that is not the nearer one leaves a round size and no rule', () => {
    const found = along(input(at(100, 500, 203, 50), [], grip('high')));
    expect(found).toMatchObject({ low: 100, high: 305, rules: [] });
  });

  it('goes by an eighth of an inch or five millimeters, and finer where that would be a jump', () => {
    expect(rulerStep({ ...style, unit: 'in', fraction: '8' }, 4)).toBeCloseTo(25.4 / 8, 9);
    expect(rulerStep({ ...style, unit: 'in', fraction: '16' }, 0.8)).toBeCloseTo(25.4 / 16, 9);
    expect(rulerStep({ ...style, unit: 'in' }, 50)).toBeCloseTo(25.4 / 8, 9);
    expect(rulerStep(style, 20)).toBe(5);
    expect(rulerStep(style, 1)).toBe(1);
  });
});

it('a group moves by its outermost edges', () => {
  const moving = [
    { id: 'm', box: at(205, 500, 50, 50) },
    { id: 'n', box: at(290, 400, 33, 50) },
  ];
  const found = along({ ...input(at(0, 0, 0, 0), [{ id: 'a', box: at(320, 300, 444, 250) }]), moving });
  expect(found?.rules).toEqual([
    { kind: 'set', axis: 'x', edge: edge('n', 'high'), from: edge('a', 'low'), distance: 0 },
  ]);
});

it('snaps a single point to edges and middles, else to whole steps', () => {
  const others = [{ id: 'a', box: at(200, 300, 100, 100) }];
  const found = snapPointTo({ x: 247, y: 612 }, { others, face: plainFace(), reach: 8, style });
  expect(found.x).toEqual({ delta: 3, guide: { from: { x: 250, y: 300 }, to: { x: 250, y: 612 } } });
  expect(found.y).toEqual({ delta: -2, guide: null });
});

it('snaps to angles of the square and of other strips', () => {
  expect(snapAngle(46.5, [], 2)).toBe(45);
  expect(snapAngle(53.4, [53.13], 2)).toBe(53.13);
  expect(snapAngle(-36.5, [53.13], 1)).toBeCloseTo(-36.87, 9);
  expect(snapAngle(179, [], 2)).toBe(180);
  expect(snapAngle(50, [], 2)).toBeNull();
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
  const someGrip = fc.constantFrom('move' as const, 'low' as const, 'high' as const, 'both' as const);

  it('the rules held leave the part just where it is shown', () => {
    fc.assert(
      fc.property(box, fc.array(box, { maxLength: 5 }), someGrip, someGrip, (moving, boxes, x, y) => {
        const others = boxes.map((b, i) => ({ id: `p${i}`, box: b }));
        const held = heldBy(input(moving, others, { grip: { x, y }, reach: 12 }));
        let shown = moving;
        for (const axis of ['x', 'y'] as const) {
          const { low, high } = held[axis]?.span ?? { low: 0, high: 0 };
          shown = withSpan(shown, axis, low, high - low);
        }
        const parts = [...others.map((o) => panel(o.id, o.box)), panel('m', shown)];
        const offered = [...(held.x?.rules ?? []), ...(held.y?.rules ?? [])];
        const rules = offered.map((rule, i) => ({ ...rule, id: `r${i}` }) as Rule);
        const layout = lay(design(parts, rules), { held: new Set(['m']) });
        expect(layout.rules.every((rule) => rule.holds)).toBe(true);
        const rest = boxOfPart(layout, 'm');
        expect([rest.x, rest.y, rest.w, rest.h].map((v) => Math.round(v * 1e6))).toEqual(
          [shown.x, shown.y, shown.w, shown.h].map((v) => Math.round(v * 1e6)),
        );
        for (const axis of ['x', 'y'] as const) {
          for (const offer of held[axis]?.offers ?? []) expect(Math.abs(offer.miss)).toBeLessThanOrEqual(12);
        }
      }),
      { numRuns: 400 },
    );
  });

  it('hides what something nearer stands before, found by looking at every two', () => {
    fc.assert(
      fc.property(box, fc.array(box, { maxLength: 12 }), (moving, boxes) => {
        const on = alongAxis(
          input(
            moving,
            boxes.map((b, i) => ({ id: `p${i}`, box: b })),
          ),
          'x',
        );
        for (const one of on?.apart ?? []) {
          const stands = on?.apart.some(
            (other) =>
              other.across.low >= on.across.high === one.across.low >= on.across.high &&
              spansMeet(other.span, on.span) &&
              awayFrom(on.across, other.across) < awayFrom(on.across, one.across) - 1e-6,
          );
          expect(on && isHidden(on, one)).toBe(stands);
        }
      }),
      { numRuns: runs(100) },
    );
  });

  it('holds the same whatever else stands over or under the hand and out of its reach', () => {
    const far = fc.tuple(box, fc.boolean(), fc.integer({ min: 9, max: 500 }));
    fc.assert(
      fc.property(
        box,
        fc.array(box, { maxLength: 6 }),
        far,
        someGrip,
        (moving, boxes, [size, left, by], both) => {
          const others = boxes.map((b, i) => ({ id: `p${i}`, box: b }));
          const x = left ? moving.x - by - size.w : moving.x + moving.w + by;
          const beyond = { id: 'far', box: { ...size, x, y: moving.y + moving.h + 1 } };
          const told = (things: readonly Thing[]) => {
            const held = heldBy(input(moving, things, { grip: { x: both, y: null } })).x;
            return { ...held, next: held?.next() };
          };
          expect(told([...others, beyond])).toEqual(told(others));
        },
      ),
      { numRuns: runs(100) },
    );
  });

  it('does not depend on the order in which things are offered to it', () => {
    fc.assert(
      fc.property(box, fc.array(box, { maxLength: 6 }), someGrip, (moving, boxes, both) => {
        const others = boxes.map((b, i) => ({ id: `p${i}`, box: b }));
        const more = { grip: { x: both, y: both } };
        const told = (things: readonly Thing[]) => {
          const { x, y } = heldBy(input(moving, things, more));
          return [x, y].map((held) => ({ ...held, next: held?.next() }));
        };
        expect(told([...others].reverse())).toEqual(told(others));
      }),
    );
  });
});
