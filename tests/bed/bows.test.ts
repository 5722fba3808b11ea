import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BedMeasured } from '../../src/bed/bed.ts';
import { type Bow, type Bows, EDGES, type EdgeName, PLACES, type Place } from '../../src/bed/bows.ts';
import { faceOf } from '../../src/bed/faceOf.ts';
import { READINGS, spanOf } from '../../src/bed/measured.ts';
import { squareWithin } from '../../src/bed/realEdges.ts';
import type { Point, Quad } from '../../src/geometry/shape.ts';
import { trueAreaOf } from '../../src/geometry/trueArea.ts';
import { inches } from '../../src/measure/units.ts';
import { runs } from '../runs.ts';
import { shoelace } from '../shoelace.ts';
import { outlineBowed, throughReadings } from './bowTwin.ts';
import { sampleBed } from './sample.ts';

const SKIN = sampleBed({ skin: { thickness: 6, material: 'plywood' } });
const { width: W, height: H } = faceOf(SKIN).face;
const measured = (change: Partial<BedMeasured>): BedMeasured => ({
  ...{ rim: {}, field: {}, keep: 'bottom', rise: 0, border: 'square' },
  ...change,
});
const faceWith = (change: Partial<BedMeasured>) => faceOf({ ...SKIN, measured: measured(change) });
const rimOf = (change: Partial<BedMeasured>) => {
  const rim = faceWith(change).face.real?.find(({ of }) => of === 'rim');
  if (!rim) throw new Error('it is true');
  return rim;
};

const off = fc.double({ min: -10, max: 10, noNaN: true });
const out = fc.double({ min: -12, max: 12, noNaN: true });
/** Of up to two readings, through which a polynomial goes that cubics tell exactly. */
const bow: fc.Arbitrary<Bow> = fc.oneof(
  fc.constant({}),
  ...[['middle'], ['first'], ['first', 'middle'], ['middle', 'last'], ['first', 'last']].map((places) =>
    fc.record(Object.fromEntries(places.map((place) => [place, out]))),
  ),
);
const bows: fc.Arbitrary<Bows> = fc.record({ bottom: bow, right: bow, top: bow, left: bow });
const quads: fc.Arbitrary<Quad> = fc.tuple(off, off, off, off, off).map(([b, cx, cy, dx, dy]) => [
  { x: 0, y: 0 },
  { x: W + b, y: 0 },
  { x: W + cx, y: H + cy },
  { x: dx, y: H + dy },
]);
const readingsOf = (quad: Quad) =>
  Object.fromEntries(READINGS.filter((one) => one !== 'middle').map((one) => [one, spanOf(quad, one)]));

/** How far points lie from the circle through three others, by its center (the bisectors' crossing). */
function offCircle(points: readonly Point[], [p, q, r]: readonly [Point, Point, Point]): number {
  const d = 2 * (p.x * (q.y - r.y) + q.x * (r.y - p.y) + r.x * (p.y - q.y));
  const [a, b, c] = [p, q, r].map(({ x, y }) => x * x + y * y) as [number, number, number];
  const x = (a * (q.y - r.y) + b * (r.y - p.y) + c * (p.y - q.y)) / d;
  const y = (a * (r.x - q.x) + b * (p.x - r.x) + c * (q.x - p.x)) / d;
  const radius = Math.hypot(p.x - x, p.y - y);
  return Math.max(...points.map((one) => Math.abs(Math.hypot(one.x - x, one.y - y) - radius)));
}

describe('edges that bow', () => {
  it('pass through every reading, and the face has the area of an outline built by itself', () => {
    fc.assert(
      fc.property(quads, bows, (quad, read) => {
        const change = { rim: { ...readingsOf(quad), bows: read } };
        const { face } = faceWith(change);
        const rim = face.real?.[0];
        if (!rim) return;
        const twin = outlineBowed(rim.corners, read, 400);
        const [level] = face.levels;
        expect(trueAreaOf(level?.region ?? [])).toBeCloseTo(Math.abs(shoelace(twin)), 0);
        for (const [i, edge] of EDGES.entries())
          for (const place of ['first', 'middle', 'last'] as const) {
            const told = read[edge]?.[place];
            if (told === undefined) continue;
            const [from, to] = [rim.corners[i], rim.corners[(i + 1) % 4]] as [Point, Point];
            const want = throughReadings(from, to, edge, { [place]: told }, PLACES[place]);
            const near = Math.min(...(rim.edges[i] ?? []).map((p) => Math.hypot(p.x - want.x, p.y - want.y)));
            // Where all of an edge is read as straight, it has no points between its corners.
            const straight = Object.values(read[edge] ?? {}).every((mm) => Math.abs(mm ?? 0) < 1e-6);
            if (!straight) expect(near).toBeLessThan(1e-6);
          }
      }),
      { numRuns: runs(60) },
    );
  });

  it('of three readings lie within a hair of the one polynomial through all of them', () => {
    const near = fc.double({ min: -1.5, max: 1.5, noNaN: true });
    fc.assert(
      fc.property(out, near, near, fc.constantFrom(...EDGES), (middle, a, b, edge) => {
        const read = { first: 0.75 * middle + a, middle, last: 0.75 * middle + b };
        const rim = rimOf({ rim: { top: W + 3, bows: { [edge]: read } } });
        const i = EDGES.indexOf(edge);
        const [from, to] = [rim.corners[i], rim.corners[(i + 1) % 4]] as [Point, Point];
        const [low, high] = edge === 'top' || edge === 'left' ? [to, from] : [from, to];
        const [dx, dy] = [high.x - low.x, high.y - low.y];
        for (const p of rim.edges[i] ?? []) {
          const t = ((p.x - low.x) * dx + (p.y - low.y) * dy) / (dx * dx + dy * dy);
          const want = throughReadings(from, to, edge, read, t);
          expect(Math.hypot(p.x - want.x, p.y - want.y)).toBeLessThan(0.04);
        }
      }),
      { numRuns: runs(10) },
    );
  });

  it('of one reading is the circle through it and both corners, within what no string tells', () => {
    for (const edge of EDGES)
      for (const middle of [inches(1 / 8), -inches(1 / 8), inches(1 / 2), -inches(1 / 2)]) {
        const rim = rimOf({ rim: { bows: { [edge]: { middle } } } });
        const i = EDGES.indexOf(edge);
        const [from, to] = [rim.corners[i], rim.corners[(i + 1) % 4]] as [Point, Point];
        const mid = throughReadings(from, to, edge, { middle }, 1 / 2);
        expect(offCircle(rim.edges[i] ?? [], [from, mid, to])).toBeLessThan(0.003);
      }
  });

  it('of a side are what the middle is wider by: one of them read gives the other', () => {
    const middle = W + inches(3 / 8);
    const left = inches(1 / 8);
    const rim = rimOf({ rim: { middle, bows: { left: { middle: left } } } });
    expect(rim.bows.right?.middle).toBeCloseTo(inches(1 / 4), 6);
    expect(rim.bow).toBe(0);
    // Neither: both count as straight, and what they bow by together is told.
    const { face, checks } = faceWith({ rim: { middle } });
    expect(face.real?.[0]?.bow).toBeCloseTo(inches(3 / 8), 6);
    expect(checks.map(({ code }) => code)).toContain('bed.bowed');
    // Both, and the middle is not as wide as they have it: it was read wrong.
    const fights = faceWith({ rim: { middle, bows: { left: { middle: 0 }, right: { middle: 0 } } } });
    const told = fights.checks.find(({ code }) => code === 'bed.not-closing');
    expect(told?.figures.reading).toBe('middle');
    expect(told?.figures.would_mm).toBeCloseTo(W, 6);
    const agrees = faceWith({
      rim: { middle, bows: { left: { middle: left }, right: { middle: inches(1 / 4) } } },
    });
    expect(agrees.checks.map(({ code }) => code)).not.toContain('bed.not-closing');
  });

  it('are told at the place of each reading, and beside a square layout by what shows half way', () => {
    const show = (edge: EdgeName, at: Partial<Record<Place, number>>) => {
      const { checks } = faceWith({ rim: { bows: { [edge]: at } } });
      return checks.find(({ code }) => code === 'bed.edge');
    };
    for (const edge of EDGES) {
      const belly = show(edge, { middle: 4 });
      expect(belly?.figures).toMatchObject({ of: 'rim', edge, middle_mm: 4 });
      // The layout begins at the string: what bellies out shows.
      expect(belly?.figures.shows_mm).toBeCloseTo(4, 4);
      expect(belly?.severity).toBe('note');
      // The largest square within begins where the left and the lower edge lie farthest in.
      const hollow = show(edge, { middle: -4 });
      const moved = edge === 'left' || edge === 'bottom';
      expect(hollow?.figures.shows_mm).toBeCloseTo(moved ? 0 : -4, 4);
      expect(hollow?.severity).toBe(moved ? 'note' : 'warning');
      expect(show(edge, { first: -2, last: 3 })?.figures).toMatchObject({ first_mm: -2, last_mm: 3 });
    }
  });

  it('leave a largest square within that no edge comes into', () => {
    fc.assert(
      fc.property(quads, bows, (quad, read) => {
        const rim = faceWith({ rim: { ...readingsOf(quad), bows: read } }).face.real?.[0];
        if (!rim) return;
        const { w, h } = squareWithin(rim);
        const twin = outlineBowed(rim.corners, read, 200);
        const within = twin.filter(({ x, y }) => x > 0.06 && y > 0.06 && x < w - 0.06 && y < h - 0.06);
        expect(within).toEqual([]);
      }),
      { numRuns: runs(60) },
    );
  });
});
