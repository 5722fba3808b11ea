import fc from 'fast-check';
import * as clip from 'polyclip-ts';
import { describe, expect, it } from 'vitest';
import { faceOf } from '../../src/bed/faceOf.ts';
import { READINGS, spanOf } from '../../src/bed/measured.ts';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design, Part } from '../../src/design/schema.ts';
import type { Point, Quad } from '../../src/geometry/shape.ts';
import { planJoinery } from '../../src/joinery/joinery.ts';
import type { Piece } from '../../src/joinery/piece.ts';
import { alongEdges } from '../../src/layout/along.ts';
import { layOut } from '../../src/layout/layout.ts';
import { sampleBed } from '../bed/sample.ts';
import { runs } from '../runs.ts';
import { areaOf, type Multi, ringOf, shoelace } from '../shoelace.ts';
import { STOCKS } from './sample.ts';

const BED = sampleBed({ skin: { thickness: 6, material: 'plywood' } });
const { width: W, height: H } = faceOf(BED).face;
/** Width of the stock `lath`. */
const w = 40;
const degrees = (radians: number): number => (radians * 180) / Math.PI;

/** No corner is true: what is off by less than the tool tells apart is. */
const off = fc.integer({ min: -150, max: 150 }).map((n) => (n === 0 ? 1 : n) / 8);
const quads: fc.Arbitrary<Quad> = fc.tuple(off, off, off, off, off).map(([b, cx, cy, dx, dy]) => [
  { x: 0, y: 0 },
  { x: W + b, y: 0 },
  { x: W + cx, y: H + cy },
  { x: dx, y: H + dy },
]);

function made(quad: Quad, parts: readonly Part[], joints: Design['joints'] = []) {
  const rim = Object.fromEntries(READINGS.map((one) => [one, spanOf(quad, one)]));
  const { face } = faceOf({
    ...BED,
    measured: { rim, field: {}, keep: 'bottom', rise: 0, border: 'along' },
  });
  const design = { ...newDesign(BED), parts: [...parts], joints: [...joints] };
  const layout = alongEdges(layOut({ design, face, stocks: STOCKS, keepClears: [] }), face, STOCKS);
  const { shop, measure } = design;
  const joinery = planJoinery({ parts: layout.parts, joints: design.joints, stocks: STOCKS, shop, measure });
  const corners = face.real?.[0]?.corners;
  if (!corners) throw new Error('it is true');
  return { layout, joinery, corners };
}

type Way = readonly [Point, Point];
/** Where two lines cross, by Cramer's rule. */
function crossing([p, q]: Way, [r, s]: Way): Point {
  const [a, b, c] = [q.y - p.y, p.x - q.x, (q.y - p.y) * p.x + (p.x - q.x) * p.y];
  const [d, e, f] = [s.y - r.y, r.x - s.x, (s.y - r.y) * r.x + (r.x - s.x) * r.y];
  const det = a * e - b * d;
  return { x: (c * e - b * f) / det, y: (a * f - c * d) / det };
}
/** A line so far to the left of another. */
function left([p, q]: Way, by: number): Way {
  const long = Math.hypot(q.x - p.x, q.y - p.y);
  const [ox, oy] = [(-(q.y - p.y) / long) * by, ((q.x - p.x) / long) * by];
  return [
    { x: p.x + ox, y: p.y + oy },
    { x: q.x + ox, y: q.y + oy },
  ];
}
const sideOf = (quad: Quad, i: number): Way => [quad[i % 4] as Point, quad[(i + 1) % 4] as Point];
/** What a border of width `w` leaves. */
const within = (quad: Quad): Quad =>
  [3, 0, 1, 2].map((i) =>
    crossing(left(sideOf(quad, i), w), left(sideOf(quad, i + 1), w)),
  ) as unknown as Quad;
const distance = (p: Point, q: Point): number => Math.hypot(q.x - p.x, q.y - p.y);
const angleAt = (at: Point, p: Point, q: Point): number =>
  degrees(
    Math.acos(
      ((p.x - at.x) * (q.x - at.x) + (p.y - at.y) * (q.y - at.y)) / (distance(at, p) * distance(at, q)),
    ),
  );
const near = (found: readonly number[], want: readonly number[]) => {
  const sorted = (all: readonly number[]) => [...all].sort((a, b) => a - b);
  expect(found).toHaveLength(want.length);
  for (const [i, one] of sorted(found).entries()) expect(one).toBeCloseTo(sorted(want)[i] ?? Number.NaN, 4);
};
const run = (id: string, box: { x: number; y: number; w: number; h: number }, rest: object): Part =>
  ({
    ...newPart('run', { id, name: id, stock: 'lath', box }),
    corner: 'miter',
    side: 'inside',
    ...rest,
  }) as Part;
const WHOLE = { x: 0, y: 0, w: W, h: H };
const INNER = { x: w, y: w, w: W - 2 * w, h: H - 2 * w };
const frame = run('frame', WHOLE, { path: { form: 'frame' } });
const piecesOf = (all: readonly Piece[], part: string) => all.filter((one) => one.part === part);

describe('braces along real edges', () => {
  it('go from corner to corner of what the border leaves, and end along both of its sides', () => {
    fc.assert(
      fc.property(quads, fc.constantFrom('rising', 'falling'), (quad, lie) => {
        const brace = {
          ...newPart('strip', { id: 'brace', name: 'brace', stock: 'lath', box: INNER }),
          lie,
        } as Part;
        const { joinery, corners } = made(quad, [frame, brace]);
        const inner = within(corners);
        const [from, to] = lie === 'rising' ? [inner[0], inner[2]] : [inner[3], inner[1]];
        const long = distance(from, to);
        const [ux, uy] = [(to.x - from.x) / long, (to.y - from.y) / long];
        const far = (p: Point, by: number): Point => ({ x: p.x + ux * by, y: p.y + uy * by });
        const center: Way = [far(from, -99), far(to, 99)];
        const band = [...left(center, w / 2), ...[...left(center, -w / 2)].reverse()];
        const twin = clip.intersection([[ringOf(band)]] as Multi, [[ringOf(inner)]] as Multi) as Multi;
        const area = twin.reduce(
          (sum, rings) => sum + Math.abs(shoelace((rings[0] ?? []).slice(1).map(([x, y]) => ({ x, y })))),
          0,
        );
        const solid = joinery.solids.find(({ part }) => part === 'brace');
        expect(areaOf(solid?.region ?? [])).toBeCloseTo(area, 1);
        const [piece] = piecesOf(joinery.pieces, 'brace');
        // Each end is two cuts, along the side that it stands on and the one beside it.
        for (const [i, end] of (piece?.ends ?? []).entries()) {
          const at = i === 0 ? from : to;
          const k = inner.indexOf(at);
          const angles = [inner[(k + 1) % 4], inner[(k + 3) % 4]].map(
            (p) => 90 - angleAt(at, i === 0 ? to : from, p as Point),
          );
          near([Math.abs(end.miter), Math.abs(end.second?.miter ?? 0)], angles.map(Math.abs));
        }
        // A steep cut is told of the saw; nothing else is.
        const told = joinery.checks.filter(({ severity }) => severity !== 'note').map(({ code }) => code);
        expect(told.filter((code) => code !== 'joint.over-saw')).toEqual([]);
      }),
      { numRuns: runs(8) },
    );
  });
});

describe('open runs along real edges', () => {
  // Up the right edge, along the top and down the left one: its ends come to the lower edge.
  const corners = [
    { u: 1, v: 0 },
    { u: 1, v: 1 },
    { u: 0, v: 1 },
    { u: 0, v: 0 },
  ];
  const around = run('run', WHOLE, { path: { form: 'points', points: corners, closed: false } });

  it('have each leg as long as its edge, miters of half the real angles, and ends along the edge they come to', () => {
    fc.assert(
      fc.property(quads, (quad) => {
        const { joinery, corners: real } = made(quad, [around]);
        const legs = piecesOf(joinery.pieces, 'run');
        expect(legs).toHaveLength(3);
        near(legs.map(({ edges }) => Math.max(edges.left ?? 0, edges.right ?? 0)).slice(1, 2), [
          spanOf(real, 'top'),
        ]);
        const angle = (i: number) =>
          angleAt(real[i] as Point, real[(i + 1) % 4] as Point, real[(i + 3) % 4] as Point);
        const half = (i: number) => 90 - angle(i) / 2;
        const miters = legs.map(({ ends }) => ends.map(({ miter }) => Math.abs(miter)));
        near(miters[0] ?? [], [Math.abs(90 - angle(1)), half(2)]);
        near(miters[1] ?? [], [half(2), half(3)]);
        near(miters[2] ?? [], [half(3), Math.abs(90 - angle(0))]);
        const inner = within(real);
        // On the outer edge from corner to corner, on the inner one from the lower edge to the miter.
        for (const [leg, edge, [p, q]] of [
          [0, 'right', [inner[1], inner[2]]],
          [2, 'left', [inner[0], inner[3]]],
        ] as const) {
          const foot = crossing(sideOf(real, 0), [p, q]);
          const { left: one, right: two } = legs[leg]?.edges ?? { left: 0, right: 0 };
          near([one ?? 0, two ?? 0], [spanOf(real, edge), distance(foot, q)]);
        }
        const solid = joinery.solids.find(({ part }) => part === 'run');
        const ring = [real[1], real[2], real[3], real[0], crossing(sideOf(real, 0), [inner[3], inner[0]])];
        const twin = [...ring, inner[3], inner[2], crossing(sideOf(real, 0), [inner[1], inner[2]])];
        expect(areaOf(solid?.region ?? [])).toBeCloseTo(Math.abs(shoelace(twin)), 0);
      }),
      { numRuns: runs(8) },
    );
  });

  it('follow inside of a border too, on either side of their path, and end square where nothing is', () => {
    fc.assert(
      fc.property(quads, fc.constantFrom('inside', 'outside'), (quad, side) => {
        // From half way up the right stile's inner edge to its top, and along the top to the left stile.
        const points = [
          { u: 1, v: 0.5 },
          { u: 1, v: 1 },
          { u: 0, v: 1 },
        ];
        const path = side === 'inside' ? points : points.toReversed();
        const molding = run('molding', INNER, {
          path: { form: 'points', points: path, closed: false },
          side,
        });
        const { joinery, corners: real } = made(quad, [frame, molding]);
        const inner = within(real);
        const legs = piecesOf(joinery.pieces, 'molding');
        expect(legs).toHaveLength(2);
        const [up, over] = side === 'inside' ? legs : legs.toReversed();
        expect(Math.max(over?.edges.left ?? 0, over?.edges.right ?? 0)).toBeCloseTo(
          distance(inner[2], inner[3]),
          4,
        );
        const half = 90 - angleAt(inner[2], inner[1], inner[3]) / 2;
        const last = 90 - angleAt(inner[3], inner[2], inner[0]);
        near(over?.ends.map(({ miter }) => Math.abs(miter)) ?? [], [half, Math.abs(last)]);
        near(up?.ends.map(({ miter }) => Math.abs(miter)) ?? [], [half, 0]);
      }),
      { numRuns: runs(8) },
    );
  });
});

describe('arched frames along real edges', () => {
  const rise = 250;
  /** The circle through three points, by its center: where the bisectors cross. */
  function circle(p: Point, q: Point, r: Point): { center: Point; radius: number } {
    const middle = (a: Point, b: Point): Way => {
      const m = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
      return [m, { x: m.x - (b.y - a.y), y: m.y + (b.x - a.x) }];
    };
    const center = crossing(middle(p, q), middle(q, r));
    return { center, radius: distance(center, p) };
  }

  it('stand on the real edges, their arc through both springing points and the crown', () => {
    fc.assert(
      fc.property(quads, (quad) => {
        const arched = run('arch', WHOLE, { path: { form: 'arched', rise, segments: 8 } });
        const { joinery, corners: real } = made(quad, [arched]);
        // By hand: springing points square across from where they were, the crown plumb over the middle.
        const foot = (p: Point, [a, b]: Way): Point => {
          const long = distance(a, b);
          const t = ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / (long * long);
          return { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t };
        };
        const right = foot({ x: W, y: H - rise }, sideOf(real, 1));
        const leftward = foot({ x: 0, y: H - rise }, sideOf(real, 3));
        const crown = crossing(sideOf(real, 2), [
          { x: W / 2, y: 0 },
          { x: W / 2, y: 1 },
        ]);
        const { radius } = circle(right, crown, leftward);
        expect(joinery.arches).toHaveLength(1);
        const [arch] = joinery.arches;
        if (!arch || !('segments' in arch)) throw new Error('no segments');
        expect(arch.radius).toBeCloseTo(radius, 3);
        // Segments alike: each chord seen from the center under the same angle.
        const turn = 2 * Math.asin(distance(right, leftward) / 2 / radius);
        expect(arch.chord).toBeCloseTo(2 * radius * Math.sin(turn / 16), 3);
        const legs = piecesOf(joinery.pieces, 'arch');
        expect(legs).toHaveLength(11);
        const outer = legs.map(({ edges }) => Math.max(edges.left ?? 0, edges.right ?? 0));
        expect(outer[0]).toBeCloseTo(spanOf(real, 'bottom'), 4);
        expect(outer[1]).toBeCloseTo(distance(real[1], right), 3);
        expect(outer[10]).toBeCloseTo(distance(real[0], leftward), 3);
        for (const one of outer.slice(2, 10)) expect(one).toBeCloseTo(arch.chord, 3);
      }),
      { numRuns: runs(6) },
    );
  });

  it('with arcs sawn from sheet do too', () => {
    fc.assert(
      fc.property(quads, (quad) => {
        const arched = run('arch', WHOLE, {
          path: { form: 'arched', rise, segments: 8, band: { stock: 'sheet', pieces: 4 } },
        });
        const { joinery, corners: real } = made(quad, [arched]);
        const [arch] = joinery.arches;
        if (!arch || !('outer' in arch)) throw new Error('not sawn');
        const [right, leftward] = [sideOf(real, 1), sideOf(real, 3)];
        const at = ([a, b]: Way, y: number) => a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y);
        const crown = crossing(sideOf(real, 2), [
          { x: W / 2, y: 0 },
          { x: W / 2, y: 1 },
        ]);
        // Level across instead of square: at these slopes the two differ by under 0.2 mm, the radius by what that makes of it.
        const { radius } = circle({ x: at(right, H - rise), y: H - rise }, crown, {
          x: at(leftward, H - rise),
          y: H - rise,
        });
        expect(Math.abs(arch.outer - radius)).toBeLessThan(2);
        expect(arch.outer - arch.inner).toBeCloseTo(w, 6);
        const [sill] = piecesOf(joinery.pieces, 'arch');
        expect(Math.max(sill?.edges.left ?? 0, sill?.edges.right ?? 0)).toBeGreaterThan(W / 2);
        expect(joinery.checks.filter(({ severity }) => severity === 'error')).toEqual([]);
      }),
      { numRuns: runs(4) },
    );
  });
});
