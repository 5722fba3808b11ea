import fc from 'fast-check';
import { difference, intersection } from 'polyclip-ts';
import { describe, expect, it } from 'vitest';
import type { Run } from '../../../src/design/schema.ts';
import type { Point } from '../../../src/geometry/shape.ts';
import { reflectPart } from '../../../src/layout/arrange/reflect.ts';
import type { Layout } from '../../../src/layout/laid.ts';
import { pathOfRun } from '../../../src/layout/place/run.ts';
import { drawnPath, stretchesBeside } from '../../../src/layout/place/stretches.ts';
import { joineryOf } from '../../joinery/joined.ts';
import { runs } from '../../runs.ts';
import { type Multi, momentsOf, multiOf } from '../../shoelace.ts';
import { at, boxOfPart, codes, design, lay, panel, run } from '../sample.ts';

/**
 * Runs of several legs cut in two by a roundel, against a clipping library that the tool does not use: what is left of the
 * band of the whole run. Circles are the chords of the outline on both sides. Bands of several legs are put together on a
 * grid of 1e-4 mm: over their borders of some 3 m an area may be off by 3000 * 1e-4 / 2, and is by far less.
 */
const MM2 = 0.15;
const MIDDLE: Point = { x: 500, y: 1000 };
const areaOf = (multi: Multi): number => momentsOf(multi, MIDDLE)[0];

const roundel = (x: number, y: number, size: number) => ({
  ...panel('p', at(x - size / 2, y - size / 2, size, size)),
  shape: { form: 'round' } as const,
});
const frame = (more: Partial<Run> = {}): Run => ({ ...run('r', at(200, 600, 600, 800)), ...more });
const STOP = { cut: 'stop', at: 'p' } as const;

/** What a part in its way leaves of a run, each as a run of its own, by the layout alone. */
function cutBy(whole: Run, way: ReturnType<typeof roundel>) {
  const before = lay(design([whole, way]));
  const region = before.parts.find(({ id }) => id === 'p')?.region ?? [];
  const box = boxOfPart(before, 'r');
  const path = drawnPath(whole.path, box);
  if (!path) throw new Error('no path of one border');
  const pieces = stretchesBeside({ ...whole, path }, box, 40, region).map(
    ({ only, starts, ends }, i): Run => ({
      ...whole,
      id: `r${i}`,
      name: `r${i}`,
      path: { ...path, only },
      ends: { start: starts ? STOP : whole.ends.start, end: ends ? STOP : whole.ends.end },
    }),
  );
  return { before, region, pieces, after: lay(design([...pieces, way])) };
}

/** Corners in the box of the run, walked either way; all turns are to one side. */
const PATHS: readonly Run['path'][] = [
  { form: 'frame' },
  ...[true, false].map((closed): Run['path'] => ({
    form: 'points',
    closed,
    points: [
      [0, 0.2],
      [0.5, 0],
      [1, 0.3],
      [0.9, 1],
      [0.2, 0.9],
    ].map(([u = 0, v = 0]) => ({ u, v })),
  })),
  { form: 'shape', shape: { form: 'regular', sides: 8 } },
  { form: 'shape', shape: { form: 'corners', cut: 'clipped', size: 150 } },
];

/** Whether a circle crosses the line of a corner, from the path to the far side of the stock. */
function crossesCorner(
  of: Pick<Run, 'path' | 'side'>,
  layout: Layout,
  middle: Point,
  radius: number,
): boolean {
  const laid = layout.parts.find(({ id }) => id === 'r');
  const { points } = pathOfRun(of, boxOfPart(layout, 'r'), 40);
  return points.some((near, i) => {
    const center = laid?.kind === 'run' ? (laid.legs[i]?.start ?? laid.legs.at(-1)?.end) : undefined;
    const inside = Array.from({ length: 41 }, (_, k) => {
      const p = {
        x: near.x + ((center?.x ?? 0) - near.x) * (k / 20),
        y: near.y + ((center?.y ?? 0) - near.y) * (k / 20),
      };
      return Math.hypot(p.x - middle.x, p.y - middle.y) < radius;
    });
    return inside.includes(true) && inside.includes(false);
  });
}

describe('a run of several legs cut in two', () => {
  it('is what a clipping library leaves of its band', () => {
    let judged = 0;
    const hundredths = (min: number, max: number) =>
      fc.integer({ min: min * 100, max: max * 100 }).map((n) => n / 100);
    const places = fc.record({
      path: fc.constantFrom(...PATHS),
      side: fc.constantFrom('inside' as const, 'outside' as const),
      x: hundredths(200, 800),
      y: hundredths(600, 1400),
      size: hundredths(100, 500),
    });
    fc.assert(
      fc.property(places, ({ path, side, x, y, size }) => {
        const { before, region, pieces, after } = cutBy(frame({ path, side }), roundel(x, y, size));
        fc.pre(pieces.length > 0);
        // A leg that is cut across its corner runs on to the border straight, farther than the band that turns there.
        fc.pre(!crossesCorner({ path, side }, before, { x, y }, size / 2));
        // Where an end would meet it with a part of its width, that is said, and nothing is cut.
        if (codes(after).includes('end.not-met')) return;
        judged++;
        const band = before.parts.find(({ id }) => id === 'r')?.region ?? [];
        const left = difference(multiOf(band), multiOf(region)) as Multi;
        // Splinters between a corner and the circle: what begins within it is left out.
        const kept = left.filter((polygon) => areaOf([polygon]) > 2000);
        const own = after.parts.filter(({ kind }) => kind === 'run').map(({ region: one }) => multiOf(one));
        expect(own).toHaveLength(kept.length);
        const sizes = (all: readonly Multi[]) => all.map(areaOf).sort((a, b) => a - b);
        for (const [i, area] of sizes(own).entries())
          expect(Math.abs(area - (sizes(kept.map((one) => [one]))[i] ?? 0))).toBeLessThan(MM2);
      }),
      { numRuns: runs(60), seed: 19 },
    );
    expect(judged).toBeGreaterThan(20);
  });

  it('is sawn to it: lengths of both edges by Pythagoras', () => {
    // A circle of radius 100 about the middle of the left stile's outer edge; the stock is 40 wide.
    const { after } = cutBy(frame(), roundel(200, 1000, 200));
    const stiles = joineryOf(after, 60).pieces.filter(
      ({ id, ends }) => id !== 'p' && ends.some(({ cut }) => cut === 'sawn'),
    );
    expect(stiles).toHaveLength(2);
    for (const { edges } of stiles) {
      const [one = 0, other = 0] = [edges.left ?? 0, edges.right ?? 0].sort((a, b) => a - b);
      expect(other).toBeCloseTo(300, 6);
      // The chords of the circle's outline stray from it by 0.05 at most.
      expect(Math.abs(one - (360 - Math.sqrt(100 ** 2 - 40 ** 2)))).toBeLessThan(0.06);
    }
  });

  it('ends within an arch of straight segments, at the segment that comes to it', () => {
    const whole = frame({ path: { form: 'arched', rise: 150, segments: 6 } });
    for (const x of [300, 420, 500, 560, 660]) {
      const { region, after } = cutBy(whole, roundel(x, 1360, 140));
      expect(codes(after)).toEqual([]);
      const own = after.parts.find(({ kind }) => kind === 'run');
      expect(areaOf(intersection(multiOf(own?.region ?? []), multiOf(region)) as Multi)).toBeLessThan(MM2);
      const sawn = joineryOf(after, 60)
        .pieces.filter(({ id }) => id !== 'p')
        .flatMap(({ ends }) => ends)
        .filter(({ cut }) => cut === 'sawn');
      expect(sawn).toHaveLength(2);
      // What the pieces are sawn to is what the run covers.
      const pieces = joineryOf(after, 60).pieces.filter(({ id }) => id !== 'p');
      const wood = pieces.reduce(
        (sum, { outline }) => sum + areaOf(multiOf([{ outer: outline, holes: [] }])),
        0,
      );
      expect(Math.abs(wood - areaOf(multiOf(own?.region ?? [])))).toBeLessThan(MM2);
    }
  });

  it('is told where its arc is sawn or bent in one, which nothing cuts off', () => {
    for (const stock of ['sheet', null]) {
      const path = { form: 'arched', rise: 150, band: { stock, pieces: 3 } } as const;
      const { after } = cutBy(frame({ path }), roundel(500, 1380, 140));
      const told = after.checks.find(({ code }) => code === 'end.not-met');
      expect(told?.figures).toMatchObject({ at: 'p', why: 'arc', count: 2 });
    }
  });

  it('is mirrored with what is left of it', () => {
    const paths: Run['path'][] = [...PATHS.slice(0, 3), { form: 'arched', rise: 150, segments: 5 }];
    const cases = paths.flatMap((path) => (['x', 'y'] as const).map((axis) => ({ path, axis })));
    for (const { path, axis } of cases.filter(
      ({ path: { form }, axis: on }) => form !== 'arched' || on === 'x',
    )) {
      const [first] = cutBy(frame({ path }), roundel(800, 1000, 300)).pieces;
      if (!first) throw new Error('nothing is left of it');
      const way = roundel(axis === 'x' ? 200 : 800, 1000, 300);
      const [own] = lay(design([first, roundel(800, 1000, 300)])).parts;
      const [twin] = lay(design([reflectPart(first, axis) as Run, way])).parts;
      const over = ({ x, y }: Point): Point => (axis === 'x' ? { x: 1000 - x, y } : { x, y: 2000 - y });
      const mirrored = (own?.region ?? []).map(({ outer }) => ({ outer: outer.map(over), holes: [] }));
      const off = [difference, (a: Multi, b: Multi) => difference(b, a)].map((less) =>
        areaOf(less(multiOf(mirrored), multiOf(twin?.region ?? [])) as Multi),
      );
      expect(Math.max(...off), `${path.form} ${axis}`).toBeLessThan(MM2);
    }
  });
});
