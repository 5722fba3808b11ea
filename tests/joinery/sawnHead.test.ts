import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Run } from '../../src/design/schema.ts';
import type { Point, Region } from '../../src/geometry/shape.ts';
import { trueAreaOf } from '../../src/geometry/trueArea.ts';
import type { Piece } from '../../src/joinery/piece.ts';
import { at, design, lay, run } from '../layout/sample.ts';
import { runs } from '../runs.ts';
import { joineryOf } from './joined.ts';

type Ring = [number, number][];
const multiOf = (region: Region): Ring[][] =>
  region.map(({ outer, holes }) => [outer, ...holes].map((ring) => ring.map(({ x, y }) => [x, y])));

function areaOf(multi: readonly Ring[][]): number {
  const ringArea = (ring: Ring) =>
    ring.reduce((sum, [px, py], i) => {
      const [qx, qy] = ring[(i + 1) % ring.length] as [number, number];
      return sum + (px * qy - qx * py) / 2;
    }, 0);
  return multi.reduce(
    (sum, rings) =>
      sum + rings.reduce((own, ring, i) => own + (i === 0 ? 1 : -1) * Math.abs(ringArea(ring)), 0),
    0,
  );
}

interface Asked {
  readonly w: number;
  readonly h: number;
  readonly rise: number;
  readonly pieces: number;
  readonly side: Run['side'];
}

/** Lath is 40 wide. */
const WIDTH = 40;

function headed({ w, h, rise, pieces, side }: Asked) {
  const path = { form: 'arched', rise, segments: 6, band: { stock: 'sheet', pieces } } as const;
  const layout = lay(design([{ ...run('arch', at(200, 200, w, h)), path, side }]));
  const joinery = joineryOf(layout, 60);
  const head = joinery.pieces.filter(({ form }) => form === 'sheet');
  return { layout, joinery, head, sticks: joinery.pieces.filter(({ form }) => form !== 'sheet') };
}

/**
 * Of a head over a span: both radii by the sagitta, R = c² / 8r + r / 2 (Building Trades Pocketbook, public domain, and
 * any handbook), and where its edges end over the edges of the stiles, by Pythagoras.
 */
function circleOf({ w, rise, side }: Asked) {
  const radius = (w * w) / (8 * rise) + rise / 2;
  const by = side === 'inside' ? -WIDTH : WIDTH;
  const over = (r: number, half: number) => ({
    r,
    half,
    angle: 2 * Math.asin(Math.min(1, half / r)),
    up: Math.sqrt(Math.max(0, r * r - half * half)),
  });
  const edges = [over(radius, w / 2), over(radius + by, w / 2 + by)].sort((a, b) => a.r - b.r);
  const [inner, outer] = edges as [(typeof edges)[0], (typeof edges)[0]];
  // Sectors less the triangles between their ends and the center, and the trapezoid between both chords.
  const segment = ({ r, angle }: typeof inner) => (r * r * (angle - Math.sin(angle))) / 2;
  const between = (outer.half + inner.half) * (outer.up - inner.up);
  return { inner, outer, area: segment(outer) - segment(inner) + between };
}

const asked = fc
  .record({
    w: fc.double({ min: 200, max: 800, noNaN: true }),
    // Up to half-round heads.
    share: fc.oneof(fc.constant(0.5), fc.double({ min: 0.05, max: 0.5, noNaN: true })),
    more: fc.double({ min: 120, max: 800, noNaN: true }),
    pieces: fc.integer({ min: 1, max: 9 }),
    side: fc.constantFrom<Run['side']>('inside', 'outside'),
  })
  .map(
    ({ w, share, more, pieces, side }): Asked => ({ w, h: w * share + more, rise: w * share, pieces, side }),
  );

/** Corners of the pieces' joints on the face. */
const cornersOf = ({ placed }: Piece): readonly Point[] => placed.flatMap(({ outer }) => outer);

describe('a head that is sawn from sheet', () => {
  it('is a ring in pieces that meet and do not overlap, as large and long as the formulas of the circle have it', () => {
    fc.assert(
      fc.property(asked, (one) => {
        const { head, sticks, joinery, layout } = headed(one);
        const circle = circleOf(one);
        expect(head).toHaveLength(one.pieces);
        expect(sticks).toHaveLength(3);
        // Chords stray from their arc by 0.05 at most, so that the area does by as much along both of them.
        const slack =
          0.05 * (circle.inner.r * circle.inner.angle + circle.outer.r * circle.outer.angle) + 1e-6;
        const all = head.map(({ placed }) => multiOf(placed));
        const total = all.reduce((sum, multi) => sum + areaOf(multi), 0);
        expect(Math.abs(total - circle.area)).toBeLessThan(slack);
        // By their arcs themselves it is that of the formulas.
        const arced = trueAreaOf(head.flatMap(({ placed }) => placed));
        expect(Math.abs(arced - circle.area)).toBeLessThan(1e-6 * circle.area);
        // Each lies between the radii of its joints, so that no two share more than a joint; chords keep within.
        const center = { x: 200 + one.w / 2, y: 200 + one.h - circleOf({ ...one, side: 'inside' }).outer.r };
        const half = Math.min(circle.inner.angle, circle.outer.angle) / 2;
        head.forEach(({ placed }, i) => {
          for (const p of placed.flatMap(({ outer }) => outer)) {
            const turn = half - Math.atan2(p.x - center.x, p.y - center.y);
            const joint = (2 * half) / one.pieces;
            if (i > 0) expect(turn).toBeGreaterThan(i * joint - 1e-6);
            if (i < one.pieces - 1) expect(turn).toBeLessThan((i + 1) * joint + 1e-6);
            const out = Math.hypot(p.x - center.x, p.y - center.y);
            expect(out).toBeGreaterThan(circle.inner.r - 1e-9);
            expect(out).toBeLessThan(circle.outer.r + 1e-9);
          }
        });
        // Pieces between are the same to the saw, whichever way they lie on the face.
        expect(new Set(head.slice(1, -1).map(({ label }) => label)).size).toBe(one.pieces > 2 ? 1 : 0);
        // Stiles, sill and head lie side by side and fill the run.
        const wood = [...all, ...sticks.map(({ placed }) => multiOf(placed))];
        const sum = wood.reduce((area, multi) => area + areaOf(multi), 0);
        const whole = areaOf(multiOf(layout.parts[0]?.region ?? []));
        expect(Math.abs(sum - whole)).toBeLessThan(1e-3);
        const [arch] = joinery.arches;
        if (!arch || !('lengths' in arch)) throw new Error('no sawn arch');
        for (const edge of ['inner', 'outer'] as const) {
          expect(arch[edge]).toBeCloseTo(circle[edge].r, 6);
          expect(arch.lengths[edge]).toBeCloseTo(circle[edge].r * circle[edge].angle, 4);
        }
        expect(arch.lengths.middle).toBeGreaterThan(arch.lengths.inner - 1e-9);
        expect(arch.lengths.middle).toBeLessThan(arch.lengths.outer + 1e-9);
      }),
      { numRuns: runs(20) },
    );
  });

  it('has its joints on radii at even angles, both corners of each in both pieces, and pieces between alike', () => {
    // Rise 150 over 600: R = 375, its middle 225 below the springing; inner edge of radius 335.
    const { head, joinery } = headed({ w: 600, h: 900, rise: 150, pieces: 5, side: 'inside' });
    const center = { x: 500, y: 200 + 900 - 375 };
    // Joints turn evenly over the shorter edge, which ends over the inner edges of the stiles, 260 from the middle.
    const half = Math.asin(260 / 335);
    for (const i of [1, 2, 3, 4]) {
      const a = half - (2 * half * i) / 5;
      for (const r of [375, 335]) {
        const corner = { x: center.x + r * Math.sin(a), y: center.y + r * Math.cos(a) };
        const near = (piece: Piece | undefined) =>
          piece && Math.min(...cornersOf(piece).map((p) => Math.hypot(p.x - corner.x, p.y - corner.y)));
        expect(near(head[i - 1])).toBeLessThan(1e-9);
        expect(near(head[i])).toBeLessThan(1e-9);
      }
    }
    const labels = head.map(({ label }) => label);
    expect(labels[1]).toBe(labels[2]);
    expect(labels[2]).toBe(labels[3]);
    expect(labels[0]).not.toBe(labels[1]);
    // As long as the chord of its outer arc, as wide as stock and rise of that arc less that of the inner one.
    const [, between] = head;
    expect(between?.length).toBeCloseTo(2 * 375 * Math.sin(half / 5), 6);
    expect(between?.width).toBeCloseTo(375 - 335 * Math.cos(half / 5), 6);
    expect(between?.thickness).toBe(12);
    const [arch] = joinery.arches;
    expect(arch && 'pieces' in arch && arch.pieces).toBe(5);
    expect(arch?.angle).toBeCloseTo(((2 * half) / 5) * (180 / Math.PI), 6);
  });

  it('meets the stiles along the line between their corners, one cut for the saw', () => {
    const { sticks, joinery } = headed({ w: 600, h: 900, rise: 150, pieces: 3, side: 'inside' });
    // Over the inner edge of the stile, 260 from the middle, the inner arc is at 225 below the springing by Pythagoras.
    const shoulder = 725 + Math.sqrt(335 ** 2 - 260 ** 2);
    const drop = 950 - shoulder;
    const miter = (Math.atan2(drop, WIDTH) * 180) / Math.PI;
    const stiles = sticks.filter(({ overall }) => overall > 700 && overall < 760);
    expect(stiles).toHaveLength(2);
    for (const { edges, ends } of stiles) {
      expect(ends.map((end) => Math.abs(end.miter)).some((angle) => Math.abs(angle - miter) < 1e-6)).toBe(
        true,
      );
      expect(Math.max(edges.left ?? 0, edges.right ?? 0)).toBeCloseTo(750, 6);
      expect(Math.min(edges.left ?? 0, edges.right ?? 0)).toBeCloseTo(750 - 40 - drop, 6);
    }
    expect(joinery.checks).toEqual([]);
  });
});
