import fc from 'fast-check';
import { difference, intersection } from 'polyclip-ts';
import { describe, expect, it } from 'vitest';
import type { PanelShape, Strip } from '../../../src/design/schema.ts';
import type { Point } from '../../../src/geometry/shape.ts';
import type { Laid, Layout } from '../../../src/layout/laid.ts';
import type { LayoutInput } from '../../../src/layout/layout.ts';
import { outlineOf } from '../../../src/layout/place/outlines.ts';
import { runs } from '../../runs.ts';
import { type Multi, momentsOf, multiOf, ringOf } from '../../shoelace.ts';
import {
  at,
  boxOfPart,
  codes,
  design,
  lay,
  layingAgain,
  panel,
  plainFace,
  run,
  STOCKS,
  strip,
} from '../sample.ts';

/**
 * Strips that stop at something against a clipping library that the tool does not use, and which reckons in decimals
 * without end. Curves are the chords of the outline on both sides, which stray by 0.05 mm at most, so that areas can
 * be held to a millionth of a square millimeter.
 */
const MM2 = 1e-6;

const isIn = ([outer = []]: Multi[number], p: Point): boolean => {
  let inside = false;
  outer.forEach(([ax, ay], i) => {
    const [bx, by] = outer[(i + 1) % outer.length] as [number, number];
    if (ay > p.y !== by > p.y && p.x < ax + ((bx - ax) * (p.y - ay)) / (by - ay)) inside = !inside;
  });
  return inside;
};

/** The band of a strip from its start, `length` long, by the turn of its angle alone. */
function bandFrom(start: Point, angle: number, width: number, length: number): Point[] {
  const [c, s] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)];
  const place = (x: number, y: number): Point => ({ x: start.x + x * c - y * s, y: start.y + x * s + y * c });
  return [place(0, -width / 2), place(length, -width / 2), place(length, width / 2), place(0, width / 2)];
}

const laidStrip = (layout: Layout, id = 's'): Laid<'strip'> => {
  const laid = layout.parts.find((part) => part.id === id);
  if (laid?.kind !== 'strip') throw new Error('no strip');
  return laid;
};

const STOPS: Strip['ends'] = { start: { cut: 'square' }, end: { cut: 'stop', at: 'p' } };

/** A strip of lath about a point, at an angle, whose end stops at the part `p`. */
const turned = (middle: Point, angle: number, length: number, ends = STOPS): Strip => ({
  ...strip('s', at(middle.x, middle.y, 0, 0)),
  lie: 'turned',
  angle,
  length,
  ends,
});

const BOX = at(400, 900, 300, 240);
const CENTER: Point = { x: 550, y: 1020 };
/** Convex outlines: what lies ahead of a band is met once. */
const CONVEX: readonly PanelShape[] = [
  { form: 'rectangle' },
  { form: 'round' },
  { form: 'regular', sides: 8 },
  { form: 'regular', sides: 5 },
  { form: 'corners', cut: 'rounded', size: 60 },
  { form: 'corners', cut: 'clipped', size: 70 },
  ...(['arched', 'pointed', 'basket', 'elliptical'] as const).map((form) => outlineOf(form).first(BOX)),
];

const hundredths = (min: number, max: number) =>
  fc.integer({ min: min * 100, max: max * 100 }).map((n) => n / 100);

describe('an end that stops at something', () => {
  it('is what a clipping library leaves of the strip this side of a random outline, from without and from within', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...CONVEX),
        fc.boolean(),
        hundredths(-180, 180),
        hundredths(-40, 40),
        hundredths(60, 500),
        (shape, within, angle, aside, length) => {
          const turn = (angle * Math.PI) / 180;
          const across = { x: -Math.sin(turn) * aside, y: Math.cos(turn) * aside };
          // From the middle outward, or from far off toward it.
          const way = (within ? 0 : -420) + length / 2;
          const middle = {
            x: CENTER.x + across.x + Math.cos(turn) * way,
            y: CENTER.y + across.y + Math.sin(turn) * way,
          };
          const layout = lay(design([{ ...panel('p', BOX), shape }, turned(middle, angle, length)]));
          expect(codes(layout).filter((code) => code === 'end.not-met')).toEqual([]);
          const border = layout.parts.find(({ id }) => id === 'p')?.region ?? [];
          const start = {
            x: middle.x - Math.cos(turn) * (length / 2),
            y: middle.y - Math.sin(turn) * (length / 2),
          };
          const far = [[ringOf(bandFrom(start, angle, 40, 900))]];
          const cut = (within ? intersection : difference)(far as never, multiOf(border) as never) as Multi;
          const nearby = { x: start.x + Math.cos(turn) * 0.01, y: start.y + Math.sin(turn) * 0.01 };
          const twin = cut.filter((polygon) => isIn(polygon, nearby));
          const own = multiOf(laidStrip(layout).region);
          expect(twin).toHaveLength(1);
          const [moments, wanted] = [momentsOf(own, CENTER), momentsOf(twin, CENTER)];
          expect(Math.abs(moments[0] - wanted[0])).toBeLessThan(MM2);
          // Moments to the same hair, by the farthest that a corner lies off.
          for (const i of [1, 2] as const) expect(Math.abs(moments[i] - wanted[i])).toBeLessThan(MM2 * 1e3);
        },
      ),
      { numRuns: runs(12) },
    );
  });

  it('ends at the first border ahead at every height of its width, also of outlines with hollows', () => {
    const hollow = ['star', 'ring', 'scalloped', 'quatrefoil', 'ribbon'] as const;
    fc.assert(
      fc.property(
        fc.constantFrom(...hollow),
        hundredths(-180, 180),
        hundredths(-60, 60),
        (form, angle, aside) => {
          const turn = (angle * Math.PI) / 180;
          const along = { x: Math.cos(turn), y: Math.sin(turn) };
          const left = { x: -along.y, y: along.x };
          const start = {
            x: CENTER.x - along.x * 400 + left.x * aside,
            y: CENTER.y - along.y * 400 + left.y * aside,
          };
          const middle = { x: start.x + along.x * 50, y: start.y + along.y * 50 };
          const shape = outlineOf(form).first(BOX);
          const layout = lay(design([{ ...panel('p', BOX), shape }, turned(middle, angle, 100)]));
          const border = layout.parts.find(({ id }) => id === 'p')?.region ?? [];
          const sides = border.flatMap(({ outer, holes }) =>
            [outer, ...holes].flatMap((ring) =>
              ring.map((p, i) => [p, ring[(i + 1) % ring.length] as Point] as const),
            ),
          );
          const place = (p: Point, axis: Point) => (p.x - start.x) * axis.x + (p.y - start.y) * axis.y;
          /** How far a ray at a height goes to the first side that it crosses, by solving both lines. */
          const ray = (y: number, all: typeof sides): number[] =>
            all.flatMap(([p, q]) => {
              const [py, qy] = [place(p, left), place(q, left)];
              if (py > y === qy > y) return [];
              return [place(p, along) + ((place(q, along) - place(p, along)) * (y - py)) / (qy - py)];
            });
          const missed = codes(layout).includes('end.not-met');
          const ring = laidStrip(layout).region[0]?.outer ?? [];
          const own = ring.map((p, i) => [p, ring[(i + 1) % ring.length] as Point] as const);
          const heights = Array.from({ length: 23 }, (_, i) => -19.9371 + i * 1.8123);
          const ahead = heights.map((y) => Math.min(...ray(y, sides).filter((x) => x > 0)));
          if (missed) return;
          heights.forEach((y, i) => {
            expect(Math.abs(Math.max(...ray(y, own)) - (ahead[i] ?? 0))).toBeLessThan(1e-6);
          });
        },
      ),
      { numRuns: runs(15) },
    );
  });

  it('reaches a circle where its edges meet it by hand, and follows it', () => {
    // A circle of radius 200 about (500, 800); edges of the strip 30 and 70 right of its middle: by Pythagoras.
    const circle = { ...panel('p', at(300, 600, 400, 400)), shape: { form: 'round' } as const };
    const foot = (right: number) => 800 + Math.sqrt(200 ** 2 - right ** 2);
    const post: Strip = {
      ...strip('s', at(530, 1200, 40, 300)),
      ends: { ...STOPS, start: STOPS.end, end: STOPS.start },
    };
    const again = layingAgain();
    const input = (parts: Parameters<typeof design>[0]): LayoutInput => ({
      design: design(parts),
      face: plainFace(),
      keepClears: [],
      stocks: STOCKS,
    });
    const first = again(input([circle, post]));
    const box = boxOfPart(first, 's');
    expect(box.y).toBeCloseTo(foot(70), 1);
    expect(box.y + box.h).toBeCloseTo(1500, 9);
    const xs = laidStrip(first).stops?.start?.line ?? [];
    expect(xs.at(0)?.y).toBeCloseTo(foot(30), 1);
    expect(xs.at(-1)?.y).toBeCloseTo(foot(70), 1);
    // A step of a drag: only the circle is another one.
    const moved = { ...circle, box: { ...circle.box, y: 550 } };
    const second = again(input([moved, post]));
    expect(boxOfPart(second, 's').y).toBeCloseTo(foot(70) - 50, 1);
    expect(second).toEqual(lay(design([moved, post])));
    expect(again(input([{ ...moved }, post])).boxes).toBe(second.boxes);
  });

  it('stops at a frame, a level, the end of a chain and its own kind, and says what it does not meet', () => {
    const frame = run('p', at(300, 500, 400, 600));
    // Battens spread in a frame stop at both of its rails: 40 mm of lath at each side.
    const both = { start: STOPS.end, end: STOPS.end };
    const batten = { ...strip('s', at(480, 480, 40, 640)), ends: both };
    expect(boxOfPart(lay(design([frame, batten])), 's')).toEqual(at(480, 540, 40, 520));
    const level = turned({ x: 500, y: 1000 }, 30, 300, { ...STOPS, end: { cut: 'stop', at: 'level:skin' } });
    const reach = laidStrip(lay(design([level]))).stops?.end;
    expect(reach?.against).toBe(false);
    expect(reach?.line.every(({ x }) => Math.abs(x - 1000) < 1e-9)).toBe(true);
    // Of two that stop at each other the first counts as it was laid; the second is cut to it.
    const other = {
      ...strip('p', at(100, 300, 600, 40), 'across'),
      ends: { ...STOPS, end: { cut: 'stop', at: 's' } as const },
    };
    const circle = lay(design([{ ...strip('s', at(650, 100, 40, 400)), ends: STOPS }, other]));
    expect(boxOfPart(circle, 's')).toEqual(at(650, 100, 40, 400));
    expect(boxOfPart(circle, 'p')).toEqual(at(100, 300, 550, 40));
    const past = (ends: Strip['ends'], x = 200) =>
      codes(lay(design([panel('p', BOX), { ...strip('s', at(x, 100, 40, 300)), ends }])));
    expect(past(STOPS)).toContain('end.not-met');
    expect(past(STOPS, 380)).toContain('end.not-met');
    expect(past(STOPS, 450)).not.toContain('end.not-met');
    expect(past({ ...STOPS, end: { cut: 'stop', at: 's' } })).toContain('end.not-met');
  });

  it('is the same for an open run and for a row of strips', () => {
    const path = {
      form: 'points',
      closed: false,
      points: [
        { u: 0, v: 0 },
        { u: 1, v: 0 },
        { u: 1, v: 1 },
      ],
    } as const;
    const open = { ...run('r', at(200, 200, 320, 300)), path, ends: STOPS };
    const layout = lay(design([{ ...panel('p', BOX), shape: { form: 'round' } }, open]));
    const laid = layout.parts.find(({ id }) => id === 'r');
    const ys = (laid?.region ?? []).flatMap(({ outer }) => outer.map((p) => p.y));
    const line = laid?.kind === 'run' ? (laid.stops?.end?.line ?? []) : [];
    // The ellipse of the box over the stock's edges, by its equation.
    const under = (x: number) => CENTER.y - 120 * Math.sqrt(1 - ((x - CENTER.x) / 150) ** 2);
    expect(line.at(0)?.y).toBeCloseTo(under(line.at(0)?.x ?? 0), 0);
    for (const p of line) expect(Math.abs(p.y - under(p.x))).toBeLessThan(0.06);
    expect(Math.max(...ys)).toBeCloseTo(Math.max(...line.map((p) => p.y)), 3);
  });
});
