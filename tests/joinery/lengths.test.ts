import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cornersToMark, openingsToMark, otherEdge } from '../../src/joinery/lengths.ts';
import type { Joinery, Piece } from '../../src/joinery/piece.ts';
import { EN } from '../../src/plan/words/en.ts';
import { tapeWords } from '../../src/plan/words/tape.ts';
import { boxStrip, brace, frame, joint, panel, pieceOf, piecesOf, plan, run, sheet, strip } from './make.ts';

/**
 * Lengths of pieces against plane geometry: a twin clips each part by its neighbors, half-plane by half-plane
 * (I. E. Sutherland and G. W. Hodgman, Communications of the ACM 17, 1974), on the face and with no code of
 * the rooms it checks, and lays its tape along what is left.
 */
interface P {
  readonly x: number;
  readonly y: number;
}
/** What lies to the left of the way from `a` to `b` stays. */
interface Half {
  readonly a: P;
  readonly b: P;
}
const sideOf = ({ a, b }: Half, p: P): number => (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);

function clipped(ring: readonly P[], half: Half): P[] {
  return ring.flatMap((p, i) => {
    const q = ring[(i + 1) % ring.length] as P;
    const [dp, dq] = [sideOf(half, p), sideOf(half, q)];
    const t = dp / (dp - dq);
    const hit = { x: p.x + (q.x - p.x) * t, y: p.y + (q.y - p.y) * t };
    return [...(dp >= 0 ? [p] : []), ...(dp >= 0 !== dq >= 0 ? [hit] : [])];
  });
}

/** A band along x from far left to far right. */
const band = (width: number): P[] => [
  { x: -1e5, y: -width / 2 },
  { x: 1e5, y: -width / 2 },
  { x: 1e5, y: width / 2 },
  { x: -1e5, y: width / 2 },
];

/** Edge lengths of what is left of a band: between the corners that lie on its edges. */
function edgesOf(ring: readonly P[], width: number): { left: number; right: number; overall: number } {
  const along = (y: number): number => {
    const xs = ring.filter((p) => Math.abs(p.y - y) < 1e-7).map((p) => p.x);
    return xs.length === 0 ? 0 : Math.max(...xs) - Math.min(...xs);
  };
  const xs = ring.map((p) => p.x);
  return { left: along(width / 2), right: along(-width / 2), overall: Math.max(...xs) - Math.min(...xs) };
}

function expectLike(piece: Piece, ring: readonly P[], width: number): void {
  const want = edgesOf(ring, width);
  expect(piece.edges.left ?? 0).toBeCloseTo(want.left < 0.01 ? 0 : want.left, 5);
  expect(piece.edges.right ?? 0).toBeCloseTo(want.right < 0.01 ? 0 : want.right, 5);
  expect(piece.overall).toBeCloseTo(want.overall, 5);
  if (want.left > 0.01 || want.right > 0.01) {
    expect(piece.length).toBeCloseTo(Math.max(want.left, want.right), 5);
  }
}

/** Every length of a piece is read off its own outline, between two of its corners. */
function expectTaped(piece: Piece): void {
  const { outline, measured, edges, overall, length, width } = piece;
  const xs = outline.map((p) => p.x);
  const ys = outline.map((p) => p.y);
  const spread = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);
  const distances = outline.flatMap((p) => outline.map((q) => Math.hypot(q.x - p.x, q.y - p.y)));
  const isBetweenCorners = (mm: number): boolean => distances.some((d) => Math.abs(d - mm) < 2e-6);
  expect(overall).toBeCloseTo(spread(xs), 5);
  expect(length).toBeGreaterThan(0);
  expect(length).toBeLessThanOrEqual(Math.hypot(overall, width) + 1e-6);
  for (const edge of [edges.left, edges.right]) {
    if (edge === null) continue;
    expect(edge).toBeGreaterThan(0);
    expect(isBetweenCorners(edge), `${piece.id} has no edge of ${edge}`).toBe(true);
  }
  if (measured.edge === 'overall') expect(length).toBeCloseTo(spread(xs), 5);
  else expect(isBetweenCorners(length), `${piece.id} has no two corners ${length} apart`).toBe(true);
  if (measured.edge === 'left' || measured.edge === 'right') expect(length).toBe(edges[measured.edge]);
  for (const corner of cornersToMark(piece)) {
    const hit = outline.some(
      (p) => Math.hypot(p.x - Math.min(...xs) - corner.x, p.y - Math.min(...ys) - corner.y) < 1e-6,
    );
    expect(hit).toBe(true);
  }
}

const rad = (deg: number): number => (deg * Math.PI) / 180;
// Hundredths: a saw shows tenths of a degree, a caliper hundredths of a millimeter.
const size = (min: number, max: number) =>
  fc.integer({ min: min * 100, max: max * 100 }).map((hundredths) => hundredths / 100);
const angle = size(-70, 70);
const left = (joinery: Joinery, part: string): Piece[] => piecesOf(joinery, part);

describe('the lengths of a piece', () => {
  it('with free miters are those of its band between the two cuts', () => {
    fc.assert(
      fc.property(size(60, 2500), size(10, 200), angle, angle, size(0, 360), (long, width, a, b, turn) => {
        const ends = { start: { cut: 'miter', angle: a }, end: { cut: 'miter', angle: b } } as const;
        const far = { x: long * Math.cos(rad(turn)), y: long * Math.sin(rad(turn)) };
        // The laid length runs from long point to long point: on the left edge where the angle is positive.
        const at = (x: number, deg: number, out: number): Half => {
          const long = { x, y: deg > 0 ? width / 2 : -width / 2 };
          const short = { x: x - out * width * Math.tan(rad(Math.abs(deg))), y: -long.y };
          const [low, high] = long.y > 0 ? [short, long] : [long, short];
          return out > 0 ? { a: low, b: high } : { a: high, b: low };
        };
        const ring = clipped(clipped(band(width), at(0, a, -1)), at(long, b, 1));
        const pieces = left(plan([strip('s', { x: 0, y: 0 }, far, width, { ends })]), 's');
        if (ring.length < 3) return void expect(pieces).toEqual([]);
        const { overall } = edgesOf(ring, width);
        // Slivers of less than the joinery's tolerance may stay or go.
        fc.pre(overall > 0.1);
        for (const piece of pieces) {
          expectLike(piece, ring, width);
          expectTaped(piece);
        }
      }),
      { numRuns: 400, endOnFailure: true },
    );
  });

  it('between two slanted stiles are those of its band between them', () => {
    fc.assert(
      fc.property(size(15, 120), size(300, 900), angle, angle, angle, (width, apart, a, b, lean) => {
        fc.pre(Math.abs(a - lean) < 65 && Math.abs(b - lean) < 65);
        const [s, e] = [
          { x: -40, y: 0 },
          { x: apart, y: apart * Math.tan(rad(lean / 2)) },
        ];
        const stile = (id: string, { x, y }: P, tilt: number) => {
          const d = { x: 900 * Math.sin(rad(tilt)), y: 900 * Math.cos(rad(tilt)) };
          return strip(id, { x: x - d.x, y: y - d.y }, { x: x + d.x, y: y + d.y }, 60);
        };
        const way = Math.atan2(e.y - s.y, e.x - s.x);
        fc.pre(Math.abs(way * 57.3 + a) < 60 && Math.abs(way * 57.3 + b) < 60);
        const parts = [stile('p', s, a), stile('q', e, b), strip('slat', s, e, width)];
        const joints = [joint(['slat', 'p'], 'butt', 'p'), joint(['slat', 'q'], 'butt', 'q')];
        const found = left(plan(parts, { joints }), 'slat');
        // In the slat's own frame: along x from s.
        const own = ({ x, y }: P): P => ({
          x: (x - s.x) * Math.cos(way) + (y - s.y) * Math.sin(way),
          y: (y - s.y) * Math.cos(way) - (x - s.x) * Math.sin(way),
        });
        const edge = (at: P, tilt: number, out: number): Half => {
          const d = { x: Math.sin(rad(tilt)), y: Math.cos(rad(tilt)) };
          const foot = { x: at.x + out * 30 * d.y, y: at.y - out * 30 * d.x };
          const head = { x: foot.x + d.x, y: foot.y + d.y };
          return out > 0 ? { a: own(head), b: own(foot) } : { a: own(foot), b: own(head) };
        };
        const ring = clipped(clipped(band(width), edge(s, a, 1)), edge(e, b, -1));
        if (found.length !== 1 || ring.length < 3) return;
        expectLike(found[0] as Piece, ring, width);
        expectTaped(found[0] as Piece);
      }),
      { numRuns: 400, endOnFailure: true },
    );
  });

  it('of a brace are those of its band within its box, with two cuts at an end', () => {
    let pointed = 0;
    fc.assert(
      fc.property(size(80, 900), size(80, 900), size(10, 160), fc.boolean(), (w, h, width, rising) => {
        const box = { x: 0, y: 0, w, h };
        const found = left(plan([brace('b', rising ? 'rising' : 'falling', box, width)]), 'b');
        const [s, e] = rising
          ? [
              { x: 0, y: 0 },
              { x: w, y: h },
            ]
          : [
              { x: 0, y: h },
              { x: w, y: 0 },
            ];
        const way = Math.atan2(e.y - s.y, e.x - s.x);
        const own = ({ x, y }: P): P => ({
          x: (x - s.x) * Math.cos(way) + (y - s.y) * Math.sin(way),
          y: (y - s.y) * Math.cos(way) - (x - s.x) * Math.sin(way),
        });
        const corners = [
          { x: 0, y: 0 },
          { x: w, y: 0 },
          { x: w, y: h },
          { x: 0, y: h },
        ].map(own);
        const ring = corners.reduce<P[]>(
          (rest, a, i) => clipped(rest, { a, b: corners[(i + 1) % 4] as P }),
          band(width),
        );
        for (const piece of found) {
          expectLike(piece, ring, width);
          expectTaped(piece);
          if (piece.ends.some((end) => end.second !== null)) {
            pointed++;
            expect(cornersToMark(piece).length).toBe(piece.outline.length);
          }
        }
      }),
      { numRuns: 400, endOnFailure: true },
    );
    expect(pointed).toBeGreaterThan(100);
  });

  it('of frames are read between corners, long point to long point on the outside', () => {
    fc.assert(
      fc.property(
        size(150, 900),
        size(150, 900),
        size(10, 70),
        fc.integer({ min: 3, max: 9 }),
        (w, h, width, n) => {
          for (const piece of left(plan([frame('f', { x: 0, y: 0, w, h }, width)]), 'f')) {
            expectTaped(piece);
            expect(piece.measured).toEqual({ edge: 'right', from: 'long-point', to: 'long-point' });
            expect(
              [piece.length, (piece.edges.left ?? 0) + 2 * width].map((l) =>
                Math.min(Math.abs(l - w), Math.abs(l - h)),
              ),
            ).toEqual([expect.closeTo(0, 6), expect.closeTo(0, 6)]);
          }
          const ring = Array.from({ length: n }, (_, i) => ({
            x: w * Math.cos((2 * Math.PI * i) / n),
            y: w * Math.sin((2 * Math.PI * i) / n),
          }));
          for (const piece of left(plan([run('p', ring, true, width / 4)]), 'p')) {
            expectTaped(piece);
            expect(piece.length).toBeCloseTo(2 * w * Math.sin(Math.PI / n), 5);
          }
        },
      ),
      { numRuns: 100, endOnFailure: true },
    );
  });

  it('of strips laid anyhow are between corners of their own outlines, and none is negative', () => {
    const at = fc.record({ x: size(0, 1000), y: size(0, 1000) });
    const ends = fc.constantFrom(-45, -20, 0, 20, 45);
    const any = fc.record({ a: at, b: at, width: size(10, 90), s: ends, e: ends, braced: fc.boolean() });
    let pieces = 0;
    fc.assert(
      fc.property(fc.array(any, { minLength: 1, maxLength: 7 }), (list) => {
        const parts = list.map(({ a, b, width, s, e, braced }, i) => {
          const box = {
            x: Math.min(a.x, b.x),
            y: Math.min(a.y, b.y),
            w: Math.abs(a.x - b.x) + 20,
            h: Math.abs(a.y - b.y) + 20,
          };
          if (braced) return brace(`s${i}`, a.x < b.x ? 'rising' : 'falling', box, width);
          const cut = { start: { cut: 'miter', angle: s }, end: { cut: 'miter', angle: e } } as const;
          return strip(`s${i}`, a, { x: b.x + 1, y: b.y + 200 }, width, { ends: cut });
        });
        for (const piece of plan(parts).pieces) {
          pieces++;
          expectTaped(piece);
          expect(tapeWords(piece, EN.tape)).not.toContain('undefined');
        }
      }),
      { numRuns: 300, endOnFailure: true },
    );
    expect(pieces).toBeGreaterThan(1000);
  });
});

describe('a piece of sheet', () => {
  const stocks = [sheet('ply', false)];
  const polygon = (points: readonly P[]) =>
    pieceOf(
      plan([panel('p', { x: 0, y: 0, w: 1, h: 1 }, { region: [{ outer: points, holes: [] }] })], { stocks }),
      'p',
    );

  it('that is a rectangle is read along its edge', () => {
    const piece = polygon([
      { x: 0, y: 0 },
      { x: 300, y: 0 },
      { x: 300, y: 200 },
      { x: 0, y: 200 },
    ]);
    expect(piece).toMatchObject({ length: 300, width: 200, overall: 300, edges: { left: 300, right: 300 } });
    expect(tapeWords(piece, EN.tape)).toBe('');
    expect(cornersToMark(piece)).toEqual([]);
  });

  it('that is a gable is told over all, with its corners to mark', () => {
    const piece = polygon([
      { x: 0, y: 0 },
      { x: 300, y: 0 },
      { x: 300, y: 500 },
      { x: 150, y: 640 },
      { x: 0, y: 500 },
    ]);
    expect(piece).toMatchObject({ length: 640, width: 300, measured: { edge: 'overall' } });
    // It lies with its foot at the left: the sides are its long edges.
    expect(piece.edges).toEqual({ left: 500, right: 500 });
    expect(cornersToMark(piece)).toEqual([
      { x: 0, y: 0 },
      { x: 0, y: 300 },
      { x: 500, y: 0 },
      { x: 500, y: 300 },
      { x: 640, y: 150 },
    ]);
  });

  it('tells where each corner of its openings lies, and none of a round one', () => {
    const square = (x: number, y: number, w: number, h: number): P[] => [
      { x, y },
      { x, y: y + h },
      { x: x + w, y: y + h },
      { x: x + w, y },
    ];
    fc.assert(
      fc.property(size(20, 200), size(20, 200), size(30, 90), size(30, 90), (x, y, w, h) => {
        const round = Array.from({ length: 64 }, (_, i) => ({
          x: 300 + 40 * Math.cos((Math.PI * i) / 32),
          y: 400 - 40 * Math.sin((Math.PI * i) / 32),
        }));
        const outer = square(0, 0, 600, 500).toReversed();
        const region = [{ outer, holes: [square(x, y, w, h), round] }];
        const box = { x: 0, y: 0, w: 600, h: 500 };
        const piece = pieceOf(plan([panel('p', box, { region })]), 'p');
        // As wide as it lies, so that it is not turned: distances from the left and the lower side.
        const corners = [
          { x, y },
          { x, y: y + h },
          { x: x + w, y },
          { x: x + w, y: y + h },
        ];
        const near = ({ x: a, y: b }: P) => ({ x: expect.closeTo(a, 6), y: expect.closeTo(b, 6) });
        expect(openingsToMark(piece)).toEqual([corners.map(near)]);
      }),
    );
  });

  it('that is a circle has no edge and no corner', () => {
    const piece = polygon(
      Array.from({ length: 64 }, (_, i) => ({
        x: 100 * Math.cos((Math.PI * i) / 32),
        y: 100 * Math.sin((Math.PI * i) / 32),
      })),
    );
    expect(piece.edges).toEqual({ left: null, right: null });
    expect([piece.length, piece.width]).toEqual([200, 200].map((d) => expect.closeTo(d, 9)));
    expect(tapeWords(piece, EN.tape)).toBe('overall');
    expect(cornersToMark(piece)).toEqual([]);
  });

  it('is as long and wide over all as its corners reach', () => {
    const ring = fc.array(fc.record({ x: size(0, 900), y: size(0, 900) }), { minLength: 3, maxLength: 9 });
    fc.assert(
      fc.property(ring, (points) => {
        const spread = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);
        const middle = { x: 450, y: 450 };
        const around = [...points].sort(
          (p, q) => Math.atan2(p.y - middle.y, p.x - middle.x) - Math.atan2(q.y - middle.y, q.x - middle.x),
        );
        const piece = polygon(around);
        const sides = [spread(around.map((p) => p.x)), spread(around.map((p) => p.y))].sort((a, b) => b - a);
        expect([piece.length, piece.width]).toEqual(sides.map((side) => expect.closeTo(side, 5)));
        expectTaped(piece);
      }),
      { numRuns: 200, endOnFailure: true },
    );
  });
});

describe('how the tape lies', () => {
  const slat = (a: number, b: number, long = 500, width = 50): Piece => {
    const ends = { start: { cut: 'miter', angle: a }, end: { cut: 'miter', angle: b } } as const;
    return pieceOf(plan([strip('s', { x: 0, y: 0 }, { x: long, y: 0 }, width, { ends })]), 's');
  };

  it('is said by its edge and its corners', () => {
    expect(tapeWords(slat(0, 0), EN.tape)).toBe('');
    expect(tapeWords(slat(45, -45), EN.tape)).toBe('upper edge, long point to short point');
    expect(tapeWords(slat(45, 45), EN.tape)).toBe('upper edge, long point to long point');
    expect(tapeWords(slat(0, -30), EN.tape)).toBe('lower edge, square end to long point');
  });

  it('leaves a triangle its one edge', () => {
    const piece = slat(45, 45, 100, 60);
    expect(piece.edges).toEqual({ left: expect.closeTo(100, 9), right: null });
    expect(otherEdge(piece)).toBeNull();
    expect(piece.outline).toHaveLength(3);
  });

  it('is on the show face where an end is beveled', () => {
    const ends = { start: { cut: 'square' }, end: { cut: 'return' } } as const;
    const joinery = plan([boxStrip('m', 0, 0, 500, 60, { stock: 'casing', ends })]);
    const [body] = piecesOf(joinery, 'm');
    expect(body && tapeWords(body, EN.tape)).toBe('upper edge, square end to long point, on the show face');
  });
});
