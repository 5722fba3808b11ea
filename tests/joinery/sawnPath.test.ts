import { EndType, FillRule, inflatePathsD, intersectD, JoinType } from 'clipper2-ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { OutlineCorner, PanelShape, Part, Run } from '../../src/design/schema.ts';
import { bowedSide, cornersOf, joinedAs, middlesOf } from '../../src/editor/edit/corners.ts';
import { boxOfLoop } from '../../src/geometry/loop.ts';
import { boxOf } from '../../src/geometry/region.ts';
import type { Box, Point, Region, Ring } from '../../src/geometry/shape.ts';
import { lengthOf, lineTo } from '../../src/geometry/stretch.ts';
import { trueAreaOf } from '../../src/geometry/trueArea.ts';
import type { Piece } from '../../src/joinery/piece.ts';
import { reflectPart } from '../../src/layout/arrange/reflect.ts';
import { cornersOut, loopOfDrawn } from '../../src/layout/place/drawn.ts';
import { lookOf, outlineOf, upsideDown } from '../../src/layout/place/outlines.ts';
import { pathOfRun, sawnSides } from '../../src/layout/place/run.ts';
import { at, design, lay, run } from '../layout/sample.ts';
import { runs } from '../runs.ts';
import { areaOf, shoelace } from '../shoelace.ts';
import { joineryOf } from './joined.ts';

/** Lath is 40 wide. */
const WIDTH = 40;
const BAND = { stock: 'sheet', pieces: 2 } as const;
type Path = Extract<Run['path'], { readonly form: 'points' }>;

function planned(box: Box, path: Omit<Path, 'form'>, side: Run['side'] = 'inside', more: Partial<Run> = {}) {
  const layout = lay(design([{ ...run('trim', box), path: { form: 'points', ...path }, side, ...more }]));
  const joinery = joineryOf(layout, 60);
  const [laid] = layout.parts;
  return {
    joinery,
    checks: layout.checks,
    region: laid?.region ?? [],
    sawn: joinery.pieces.filter(({ form }) => form === 'sheet'),
    sticks: joinery.pieces.filter(({ form }) => form !== 'sheet'),
  };
}

const pathsOf = (rings: readonly Ring[]) => rings.map((ring) => ring.map(({ x, y }) => ({ x, y })));

/** What two pieces share, by the polygon library. */
function shared(a: Piece, b: Piece): number {
  const [p, q] = [a, b].map(({ placed }) => pathsOf(placed.map(({ outer }) => outer))) as [
    Point[][],
    Point[][],
  ];
  const both = intersectD(p, q, FillRule.NonZero, 8);
  return both.reduce((sum, ring) => sum + Math.abs(shoelace(ring)), 0);
}

const square = (cut?: OutlineCorner['cut'], side?: OutlineCorner['side']): OutlineCorner[] =>
  [
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
  ].map(([u = 0, v = 0]) => ({ u, v, ...(cut ? { cut } : {}), ...(side ? { side } : {}) }));

/** An n-gon on a circle, its sides bowed out by a share of their length; too little for a corner to turn back. */
const bowed = fc
  .record({
    count: fc.integer({ min: 3, max: 7 }),
    radius: fc.double({ min: 250, max: 500, noNaN: true }),
    shares: fc.array(fc.oneof(fc.constant(0), fc.double({ min: 0.01, max: 0.09, noNaN: true })), {
      minLength: 7,
      maxLength: 7,
    }),
    turn: fc.double({ min: 0, max: 90, noNaN: true }),
    backward: fc.boolean(),
    side: fc.constantFrom<Run['side']>('inside', 'outside'),
    pieces: fc.integer({ min: 1, max: 4 }),
  })
  .filter(({ shares, count }) => shares.slice(0, count).some((share) => share > 0));

describe('a path whose arcs are sawn from sheet', () => {
  it('goes around a circle in pieces alike that are the ring together: pi (R² - r²)', () => {
    // The box around the corners of a circle of radius 300 about its middle.
    const corner = 300 * Math.SQRT1_2;
    const arc = { as: 'rise', rise: 300 - corner } as const;
    const { sawn, sticks, region, joinery } = planned(at(100, 100, 600, 600), {
      points: square(undefined, arc),
      closed: true,
      band: BAND,
    });
    expect(sticks).toEqual([]);
    expect(sawn).toHaveLength(8);
    expect(new Set(sawn.map(({ label }) => label)).size).toBe(1);
    const ring = Math.PI * (300 ** 2 - 260 ** 2);
    expect(trueAreaOf(sawn.flatMap(({ placed }) => placed))).toBeCloseTo(ring, 6);
    expect(trueAreaOf(region)).toBeCloseTo(ring, 6);
    expect(joinery.arches).toHaveLength(1);
    expect(joinery.arches[0]).toMatchObject({ pieces: 2 });
    const [arch] = joinery.arches;
    if (!arch || !('lengths' in arch)) throw new Error('no sawn arc');
    // A quarter of the circle each, in two pieces of 45 degrees.
    expect(arch.angle).toBeCloseTo(45, 9);
    expect(arch.lengths.outer).toBeCloseTo((Math.PI / 2) * 300, 6);
    expect(arch.lengths.middle).toBeCloseTo((Math.PI / 2) * 280, 6);
  });

  it('rounds the corners of a frame: rails and stiles as long as they are straight, all ends square', () => {
    const { sawn, sticks, region, joinery } = planned(at(100, 100, 600, 800), {
      points: square({ how: 'rounded', size: 120 }),
      closed: true,
      band: { ...BAND, pieces: 1 },
    });
    expect(sticks.map(({ length }) => Math.round(length * 1e6) / 1e6).sort()).toEqual([360, 360, 560, 560]);
    for (const { ends } of sticks) for (const { miter } of ends) expect(miter).toBeCloseTo(0, 9);
    expect(new Set(sawn.map(({ label }) => label)).size).toBe(1);
    expect(sawn).toHaveLength(4);
    // A rectangle less what its four corners lose: (4 - pi) r².
    const area = (w: number, h: number, r: number) => w * h - (4 - Math.PI) * r * r;
    expect(trueAreaOf(region)).toBeCloseTo(area(600, 800, 120) - area(520, 720, 80), 5);
    expect(joinery.checks).toEqual([]);
  });

  it('rises over an opening as an eyebrow: by the sagitta, its ends on radii', () => {
    // Rise 100 over 800: R = 800² / 800 + 50 = 850 (R = c² / 8r + r / 2).
    const { sawn, joinery } = planned(at(100, 100, 800, 100), {
      points: [
        { u: 1, v: 0, side: { as: 'rise', rise: 100 } },
        { u: 0, v: 0 },
      ],
      closed: false,
      band: { ...BAND, pieces: 3 },
    });
    const [arch] = joinery.arches;
    if (!arch || !('lengths' in arch)) throw new Error('no sawn arc');
    expect([arch.inner, arch.outer]).toEqual([expect.closeTo(810, 6), expect.closeTo(850, 6)]);
    const angle = 2 * Math.asin(400 / 850);
    expect(arch.lengths.outer).toBeCloseTo(850 * angle, 6);
    expect(arch.lengths.inner).toBeCloseTo(810 * angle, 6);
    expect(trueAreaOf(sawn.flatMap(({ placed }) => placed))).toBeCloseTo(
      ((850 ** 2 - 810 ** 2) * angle) / 2,
      6,
    );
    expect(new Set(sawn.map(({ label }) => label)).size).toBe(1);
  });

  it('fills its band with pieces that meet and do not overlap, as an independent offset of the path has it', () => {
    fc.assert(
      fc.property(bowed, ({ count, radius, shares, turn, backward, side, pieces }) => {
        const long = 2 * radius * Math.sin(Math.PI / count);
        const round = Array.from({ length: count }, (_, i) => {
          const a = ((turn + (360 * i) / count) * Math.PI) / 180;
          const share = shares[i] ?? 0;
          const bow = share > 0 ? { side: { as: 'rise', rise: share * long } as const } : {};
          return { at: { x: 800 + radius * Math.cos(a), y: 900 + radius * Math.sin(a) }, ...bow };
        });
        // Walked the other way, a side belongs to the corner that it ended at.
        const drawn = backward
          ? round.toReversed().map(({ at: place }, i, all) => {
              const after = all[(i + 1) % all.length];
              return { at: place, ...(after?.side ? { side: after.side } : {}) };
            })
          : round;
        const points = cornersOut(drawn);
        const frame = {
          x: Math.min(...round.map(({ at: p }) => p.x)),
          y: Math.min(...round.map(({ at: p }) => p.y)),
          w: Math.max(...round.map(({ at: p }) => p.x)) - Math.min(...round.map(({ at: p }) => p.x)),
          h: Math.max(...round.map(({ at: p }) => p.y)) - Math.min(...round.map(({ at: p }) => p.y)),
        };
        // The box of the outline: its corners' own with what is bowed out of them.
        const loop = loopOfDrawn(points, frame);
        const box = boxOfLoop(loop);
        const { sawn, sticks, region, joinery } = planned(
          box,
          { points, closed: true, band: { ...BAND, pieces } },
          side,
        );
        const all = joinery.pieces;
        const total = all.reduce((sum, { placed }) => sum + areaOf(placed), 0);
        expect(Math.abs(total - areaOf(region))).toBeLessThan(1e-3);
        for (const [i, a] of all.entries())
          for (const b of all.slice(i + 1)) expect(shared(a, b)).toBeLessThan(1e-3);
        expect(sawn).toHaveLength(pieces * shares.slice(0, count).filter((share) => share > 0).length);
        expect(sticks).toHaveLength(shares.slice(0, count).filter((share) => share === 0).length);
        // The band between the border and its parallel, mitered: by the library's offset of the border's polygon.
        const border = ring(loopOfDrawn(points, box));
        const by = side === 'inside' ? -WIDTH : WIDTH;
        const other = inflatePathsD([[...border]], by, JoinType.Miter, EndType.Polygon, 100, 8);
        const apart =
          Math.abs(other.reduce((sum, path) => sum + shoelace(path), 0)) - Math.abs(shoelace(border));
        expect(Math.abs(Math.abs(apart) - trueAreaOf(region))).toBeLessThan(2e-3 * trueAreaOf(region));
        expect(joinery.checks.filter(({ severity }) => severity === 'error')).toEqual([]);
      }),
      { numRuns: runs(25) },
    );
  });

  it('ends at what it meets where it is straight, and tells of an arc that is asked to', () => {
    // Level for 400, then a quarter of a circle of radius 200 up to the right.
    const points: OutlineCorner[] = [
      { u: 0, v: 0 },
      { u: 2 / 3, v: 0, side: { as: 'rise', rise: 200 - 200 * Math.SQRT1_2 } },
      { u: 1, v: 1 },
    ];
    const box = at(100, 300, 600, 200);
    const path = { points, closed: false, band: BAND };
    const free = planned(box, path);
    const stop = { cut: 'stop', at: 'face' } as const;
    const ends = { start: stop, end: { cut: 'square' } } as const;
    const stopped = planned(box, path, 'inside', { ends });
    expect(free.sticks.map(({ length }) => length)).toEqual([expect.closeTo(400, 6)]);
    expect(stopped.sticks.map(({ length }) => length)).toEqual([expect.closeTo(500, 6)]);
    expect(trueAreaOf(stopped.region) - trueAreaOf(free.region)).toBeCloseTo(100 * WIDTH, 4);
    expect(trueAreaOf(free.region)).toBeCloseTo(400 * WIDTH + (Math.PI / 4) * (200 ** 2 - 160 ** 2), 4);
    const ofEnds = (checks: typeof free.checks) => checks.filter(({ code }) => code === 'end.not-met');
    expect(ofEnds(stopped.checks)).toEqual([]);
    const both = planned(box, path, 'inside', { ends: { start: stop, end: stop } });
    expect(ofEnds(both.checks)).toMatchObject([{ figures: { why: 'arc', count: 1 } }]);
  });

  it('bows both ways along an open path, joined where the bows meet', () => {
    const points: OutlineCorner[] = [
      { u: 0, v: 0.5, side: { as: 'rise', rise: 80 } },
      { u: 0.5, v: 0.5, side: { as: 'rise', rise: -80 } },
      { u: 1, v: 0.5 },
    ];
    const { sawn, region, joinery } = planned(
      at(100, 100, 900, 160),
      { points, closed: false, band: BAND },
      'outside',
    );
    expect(sawn).toHaveLength(4);
    const total = sawn.reduce((sum, { placed }) => sum + trueAreaOf(placed), 0);
    expect(Math.abs(total - trueAreaOf(region))).toBeLessThan(1e-3);
    expect(joinery.arches).toHaveLength(2);
    for (const [i, a] of sawn.entries())
      for (const b of sawn.slice(i + 1)) expect(shared(a, b)).toBeLessThan(1e-6);
  });
});

describe('an open path', () => {
  const part = {
    ...run('trim', at(100, 300, 600, 200)),
    path: {
      form: 'points' as const,
      points: [
        { u: 0, v: 0 },
        { u: 2 / 3, v: 0, side: { as: 'rise' as const, rise: 200 - 200 * Math.SQRT1_2 } },
        { u: 1, v: 1 },
      ],
      closed: false,
    },
  };

  it.each(['x', 'y'] as const)('is bowed to the same side in its mirror image along %s', (axis) => {
    const band = regionOfPart(part);
    const mirrored = regionOfPart(reflectPart(part, axis) as typeof part);
    const over = (p: Point): Point => (axis === 'x' ? { ...p, x: 800 - p.x } : { ...p, y: 800 - p.y });
    const boxes = [band, mirrored].map((region) => boxOf(region));
    expect(boxes[1]).toEqual(boxOf(band.map(({ outer, holes }) => ({ outer: outer.map(over), holes }))));
    const both = intersectD(
      pathsOf(band.map(({ outer }) => outer.map(over))),
      pathsOf(mirrored.map(({ outer }) => outer)),
      FillRule.NonZero,
      8,
    );
    expect(both.reduce((sum, path) => sum + Math.abs(shoelace(path)), 0)).toBeCloseTo(areaOf(band), 4);
  });

  it('is bowed by a hand where the hand is, and stays so when it is closed', () => {
    const corners = cornersOf(part, part.box);
    if (!corners) throw new Error('no corners');
    const bowed = bowedSide(corners, 0, { x: 300, y: 270 });
    // Out of an open path is to the right of the way: 30 below a way to the right.
    expect(bowed.points[0]?.side).toEqual({ as: 'rise', rise: expect.closeTo(30, 9) });
    const closed = joinedAs(bowed, true);
    const middle = (of: typeof bowed) => middlesOf(of)[0];
    expect(middle(closed)).toEqual({ x: expect.closeTo(300, 6), y: expect.closeTo(270, 6) });
    expect(middle(bowed)).toEqual({ x: expect.closeTo(300, 6), y: expect.closeTo(270, 6) });
    // The other way around, where out is to the left of the way once it is closed.
    const turned = { points: bowed.points.toReversed().map(({ x, y }) => ({ x, y })), closed: false };
    const around = bowedSide(turned, 1, { x: 300, y: 270 });
    expect(middlesOf(joinedAs(around, true))[1]).toEqual({
      x: expect.closeTo(300, 6),
      y: expect.closeTo(270, 6),
    });
  });
});

describe('a path whose bows are straight segments', () => {
  it('has them on the arc, each as long as its chord, mitered by half of its turn', () => {
    const { sticks, joinery } = planned(at(100, 100, 800, 100), {
      points: [
        { u: 1, v: 0, side: { as: 'rise', rise: 100 } },
        { u: 0, v: 0 },
      ],
      closed: false,
      segments: 4,
    });
    // R = 850; the path is the outer edge of the stock.
    const angle = (2 * Math.asin(400 / 850)) / 4;
    expect(sticks).toHaveLength(4);
    const [first, second] = sticks;
    expect(second?.length).toBeCloseTo(2 * 850 * Math.sin(angle / 2), 6);
    expect(first?.ends.map(({ miter }) => Math.abs(miter)).sort((a, b) => a - b)).toEqual([
      expect.closeTo(0, 6),
      expect.closeTo((angle / 2) * (180 / Math.PI), 6),
    ]);
    expect(joinery.arches).toMatchObject([{ segments: 4, radius: expect.closeTo(850, 6) }]);
  });

  it('keeps an eyebrow as high as its box, whatever rise it was drawn with', () => {
    for (const high of [30, 100, 250, 700]) {
      const { region } = planned(at(100, 100, 800, high), {
        points: [
          { u: 1, v: 0, side: { as: 'rise', rise: 100 } },
          { u: 0, v: 0 },
        ],
        closed: false,
        band: { ...BAND, pieces: 3 },
      });
      const ys = region.flatMap(({ outer }) => outer.map(({ y }) => y));
      expect(Math.max(...ys)).toBeCloseTo(100 + high, 6);
    }
  });
});

const regionOfPart = (part: Part): Region => lay(design([part])).parts[0]?.region ?? [];

function ring(loop: ReturnType<typeof loopOfDrawn>): Ring {
  return loop.flatMap((side): Point[] => {
    if (side.kind !== 'arc') return [side.from];
    return Array.from({ length: 400 }, (_, i) => {
      const a = ((side.start + (side.sweep * i) / 400) * Math.PI) / 180;
      return { x: side.center.x + side.rx * Math.cos(a), y: side.center.y + side.ry * Math.sin(a) };
    });
  });
}

/** Ready heads with the length of their curve: tables of arches, check-values-2.md, section 16; in inches. */
const HEADS = [
  // Equilateral, its radius the span; a lancet and a drop arch.
  { shape: { form: 'pointed', rise: 31.1769 }, span: 36, length: 75.3982 },
  { shape: { form: 'pointed', rise: 40.2492 }, span: 36, length: 90.8354 },
  { shape: { form: 'pointed', rise: 25.4558 }, span: 36, length: 66.4718 },
  // Three centers by French's construction.
  { shape: { form: 'basket', rise: 20 }, span: 60, length: 79.5966 },
  // Four centers, joined at 60 degrees.
  { shape: { form: 'four-centered', rise: 18, radius: 12 }, span: 48, length: 64.316 },
  // Ogee by Bloxam's four centers.
  { shape: { form: 'ogee', rise: 36, radius: 18 }, span: 36, length: 83.4566 },
  { shape: { form: 'elliptical', rise: 20 }, span: 60, length: 79.3272 },
] as const;

describe('a path along a ready shape', () => {
  const band = { stock: 'sheet', pieces: 2 } as const;
  const shaped = (shape: PanelShape, more: object = {}): Run['path'] => ({ form: 'shape', shape, ...more });

  it.each(HEADS)('is as long as its head is by the handbook: $shape.form', ({ shape, span, length }) => {
    const box = { x: 0, y: 0, w: span, h: shape.rise };
    const path = shaped(shape, { open: true, band });
    // An ellipse is told by straight segments, each a little shorter than its arc.
    const { points, closed } = pathOfRun({ path }, box, 1);
    const straight = points.slice(1).map((p, i) => lineTo(points[i] ?? p, p));
    const sides = shape.form === 'elliptical' ? straight : (sawnSides({ path }, box)?.sides ?? []);
    expect(closed).toBe(false);
    const near = shape.form === 'elliptical' ? length / 300 : 1e-3;
    expect(Math.abs(sides.reduce((sum, side) => sum + lengthOf(side), 0) - length)).toBeLessThan(near);
    expect(sides[0]?.from).toMatchObject({ x: span, y: 0 });
    expect(sides.at(-1)?.to).toMatchObject({ x: 0, y: expect.closeTo(0, 9) });
  });

  it('fills its band with pieces that meet and do not overlap, and comes back from its mirror image', () => {
    const forms = [
      'pointed',
      'basket',
      'four-centered',
      'ogee',
      'regular',
      'quatrefoil',
      'corners',
      'star',
    ] as const;
    fc.assert(
      fc.property(
        fc.constantFrom(...forms),
        fc.integer({ min: 500, max: 900 }),
        fc.integer({ min: 900, max: 1300 }),
        fc.boolean(),
        fc.boolean(),
        (form, w, h, open, down) => {
          const box = at(100, 100, w, h);
          const first = outlineOf(form).first(box);
          const shape = down ? upsideDown(first) : first;
          const isHead = lookOf(shape) !== null;
          const path = shaped(shape, { band, ...(open && isHead ? { open } : {}) });
          const part: Run = { ...run('trim', box), path };
          const joinery = joineryOf(lay(design([part])), 60);
          const [laid] = lay(design([part])).parts;
          const pieces = joinery.pieces;
          const total = pieces.reduce((sum, { placed }) => sum + areaOf(placed), 0);
          expect(Math.abs(total - areaOf(laid?.region ?? []))).toBeLessThan(1e-3);
          for (const [i, a] of pieces.entries())
            for (const b of pieces.slice(i + 1)) expect(shared(a, b)).toBeLessThan(1e-3);
          expect(joinery.checks.filter(({ severity }) => severity === 'error')).toEqual([]);
          // Within the box: the stock lies inside of the path.
          const seen = boxOf(laid?.region ?? []);
          expect(seen?.w).toBeCloseTo(w, 6);
          expect(seen?.h).toBeCloseTo(h, 6);
          for (const axis of ['x', 'y'] as const) {
            const back = reflectPart(reflectPart(part, axis), axis);
            expect(back).toEqual(part);
            const mirrored = lay(design([reflectPart(part, axis) as Run])).parts[0]?.region ?? [];
            expect(trueAreaOf(mirrored)).toBeCloseTo(trueAreaOf(laid?.region ?? []), 4);
          }
        },
      ),
      { numRuns: runs(6) },
    );
  });
});
