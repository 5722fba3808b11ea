import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Check } from '../../src/check/check.ts';
import type { Joint } from '../../src/design/schema.ts';
import type { Point } from '../../src/geometry/shape.ts';
import type { Joinery, Piece } from '../../src/joinery/piece.ts';
import type { Laid, LaidPart } from '../../src/layout/laid.ts';
import { runs } from '../runs.ts';
import { boxStrip, brace, frame, joint, pieceOf, piecesOf, plan, run, strip } from './make.ts';

const KINDS: readonly Joint['kind'][] = ['miter', 'butt', 'cope', 'half-lap'];

const notMade = ({ checks }: Joinery): readonly Check[] => checks.filter((c) => c.code === 'joint.not-made');
const whys = (joinery: Joinery) => notMade(joinery).map((check) => check.figures.why);

/** Length that two outlines run along each other, corner by corner: by distances alone, in this test only. */
function sharedEdge(a: readonly Point[], b: readonly Point[]): number {
  let sum = 0;
  a.forEach((p, i) => {
    const q = a[(i + 1) % a.length] as Point;
    const l = Math.hypot(q.x - p.x, q.y - p.y);
    if (l < 1e-9) return;
    const along = (c: Point) => ((c.x - p.x) * (q.x - p.x) + (c.y - p.y) * (q.y - p.y)) / l;
    const off = (c: Point) => Math.abs((c.x - p.x) * (q.y - p.y) - (c.y - p.y) * (q.x - p.x)) / l;
    b.forEach((r, j) => {
      const s = b[(j + 1) % b.length] as Point;
      if (off(r) > 1e-3 || off(s) > 1e-3) return;
      const [low, high] = [along(r), along(s)].sort((x, y) => x - y) as [number, number];
      sum += Math.max(0, Math.min(l, high) - Math.max(0, low));
    });
  });
  return sum;
}

const touching = (a: readonly Piece[], b: readonly Piece[]): number =>
  a
    .flatMap((p) => b.flatMap((q) => p.placed.map((s) => q.placed.map((t) => sharedEdge(s.outer, t.outer)))))
    .flat()
    .reduce((most, length) => Math.max(most, length), 0);

/** An arched frame as layout lays it: sill, two stiles and a circular head in equal segments. */
function arch(segments: number, more: Partial<Laid<'run'>['spec']> = {}): Laid<'run'> {
  const head = Array.from({ length: segments + 1 }, (_, i) => {
    const a = (Math.PI * i) / segments;
    return { x: 300 + 300 * Math.cos(a), y: 500 + 300 * Math.sin(a) };
  });
  return run('arch', [{ x: 0, y: 0 }, { x: 600, y: 0 }, ...head], true, 40, {
    path: { form: 'arched', rise: 300, segments },
    ...more,
  });
}

describe('the segments of an arch', () => {
  it('stay mitered, and any other choice is an error that names the frame', () => {
    const proposed = plan([arch(6)]);
    for (const kind of ['butt', 'half-lap', 'cope'] as const) {
      const joinery = plan([arch(6)], { joints: [joint(['arch', 'arch'], kind)] });
      expect(notMade(joinery)).toMatchObject([
        { severity: 'error', parts: ['arch'], figures: { kind, why: 'arch' } },
      ]);
      // Half of the turn from stile to segment and from segment to segment, 15 degrees with six of them.
      const head = joinery.pieces.filter((piece) => piece.width === 40).slice(3, 7);
      for (const piece of head) for (const end of piece.ends) expect(end.miter).toBeLessThanOrEqual(15.01);
      expect(joinery.pieces.every((piece) => piece.length > 0)).toBe(true);
    }
    expect(whys(plan([arch(6)], { joints: [joint(['arch', 'arch'], 'miter')] }))).toEqual([]);
    expect(whys(proposed)).toEqual([]);
  });
});

describe('a chosen joint that the parts do not allow', () => {
  it('is told where a miter was asked of a part that runs on', () => {
    // The case of the published example: the rail runs 30 mm past the post.
    const parts = [boxStrip('rail', 360, 150, 440, 63.5), boxStrip('post', 390, 150, 38.1, 400)];
    const joinery = plan(parts, { joints: [joint(['rail', 'post'], 'miter')] });
    expect(notMade(joinery)).toMatchObject([
      { severity: 'warning', parts: ['rail', 'post'], figures: { kind: 'miter', why: 'runs-on', count: 1 } },
    ]);
    const crossing = [boxStrip('a', 0, 100, 600, 40), boxStrip('b', 300, 0, 40, 400)];
    expect(whys(plan(crossing, { joints: [joint(['a', 'b'], 'miter')] }))).toEqual(['runs-on']);
  });

  it('is told of ends in one line, of parts along each other, apart, and of what is no strip', () => {
    const inLine = [boxStrip('a', 0, 0, 300, 50), boxStrip('b', 300, 0, 300, 50)];
    expect(whys(plan(inLine, { joints: [joint(['a', 'b'], 'miter')] }))).toEqual(['straight']);
    expect(whys(plan(inLine, { joints: [joint(['a', 'b'], 'butt', 'a')] }))).toEqual([]);
    const along = [boxStrip('a', 0, 0, 300, 50), boxStrip('b', 0, 50, 300, 50)];
    expect(whys(plan(along, { joints: [joint(['a', 'b'], 'half-lap')] }))).toEqual(['along']);
    const apart = [boxStrip('a', 0, 0, 300, 50), boxStrip('b', 0, 90, 50, 300)];
    expect(notMade(plan(apart, { joints: [joint(['a', 'b'], 'butt')] }))).toMatchObject([
      { severity: 'note', figures: { why: 'apart', count: 0 } },
    ]);
    expect(whys(plan(apart, { joints: [joint(['a', 'gone'], 'butt')] }))).toEqual(['no-strip']);
  });

  it('is told of a part to run through that is not there, of a cope to flat stock, and of a second choice', () => {
    const tee = [boxStrip('rail', 0, 0, 600, 50), boxStrip('post', 200, 50, 50, 300)];
    expect(whys(plan(tee, { joints: [joint(['rail', 'post'], 'butt', 'gone')] }))).toEqual(['through']);
    expect(whys(plan(tee, { joints: [joint(['rail', 'post'], 'cope')] }))).toEqual(['flat']);
    const twice = [joint(['rail', 'post'], 'butt'), joint(['post', 'rail'], 'half-lap')];
    expect(whys(plan(tee, { joints: twice }))).toEqual(['overruled']);
  });
});

describe('a half-lap where one strip ends', () => {
  const parts = [boxStrip('rail', 0, 0, 600, 50), boxStrip('post', 200, 0, 50, 300)];

  it('leaves the face of the one that was chosen to run through', () => {
    for (const [through, other] of [
      ['rail', 'post'],
      ['post', 'rail'],
    ] as const) {
      const joinery = plan(parts, { joints: [joint(['rail', 'post'], 'half-lap', through)] });
      expect(notMade(joinery)).toEqual([]);
      expect(joinery.joints).toMatchObject([{ kind: 'half-lap', through, decided: true }]);
      expect(pieceOf(joinery, through).notches).toMatchObject([{ side: 'back', depth: 9.5 }]);
      expect(pieceOf(joinery, other).notches).toMatchObject([{ side: 'face', depth: 9.5 }]);
      expect(joinery.checks.filter((c) => c.code === 'joint.overlap')).toEqual([]);
    }
  });
});

const place = fc.integer({ min: 0, max: 400 });
const anyStick = fc.record({
  x: place,
  y: place,
  l: fc.integer({ min: 60, max: 500 }),
  w: fc.constantFrom(20, 40, 50, 89),
  how: fc.constantFrom('across', 'up', 'turned', 'rising', 'falling', 'frame'),
  turn: fc.constantFrom(0, 30, 45, 60, 90, 135, 180, 270),
  stock: fc.constantFrom('lath', 'casing'),
});

function stick(id: string, s: typeof anyStick extends fc.Arbitrary<infer T> ? T : never): LaidPart {
  const { x, y, l, w, stock } = s;
  const more = { stock };
  if (s.how === 'across') return boxStrip(id, x, y, l + w, w, more);
  if (s.how === 'up') return boxStrip(id, x, y, w, l + w, more);
  if (s.how === 'frame') return frame(id, { x, y, w: l + 2 * w, h: l + 2 * w }, w, more);
  if (s.how !== 'turned') return brace(id, s.how as 'rising', { x, y, w: l, h: l + w }, w, more);
  const a = (s.turn * Math.PI) / 180;
  return strip(id, { x, y }, { x: x + l * Math.cos(a), y: y + l * Math.sin(a) }, w, more);
}

/** What the wood shows of a joint that is said to be made: by the pieces alone. */
function expectInWood(joinery: Joinery, chosen: Joint): void {
  const [a, b] = chosen.parts.map((id) => piecesOf(joinery, id)) as [Piece[], Piece[]];
  const found = joinery.joints.find((j) => j.decided);
  expect(found).toMatchObject({ kind: chosen.kind });
  if (chosen.through !== undefined && chosen.kind !== 'miter' && found?.through) {
    expect(found.through).toBe(chosen.through);
  }
  if (chosen.kind === 'half-lap') {
    const deepest = (pieces: readonly Piece[]) =>
      Math.max(...pieces.flatMap((piece) => piece.notches.map((notch) => notch.depth)));
    expect(deepest(a) + deepest(b)).toBeCloseTo(19, 9);
    return;
  }
  expect(touching(a, b)).toBeGreaterThan(0.01);
  const ends = [...a, ...b].flatMap((piece) => piece.ends.map((end) => ({ piece, end })));
  // An end of two cuts names the one that it meets first, which may be the next leg of its own frame.
  const meeting = ends.filter(
    ({ piece, end }) => end.cut === 'point' || (end.with ?? piece.part) !== piece.part,
  );
  expect(meeting.length).toBeGreaterThanOrEqual(chosen.kind === 'miter' ? 2 : 1);
}

describe('every chosen joint', () => {
  it('is made, as the pieces show, or a check says why it is not', () => {
    let made = 0;
    let told = 0;
    fc.assert(
      fc.property(
        anyStick,
        anyStick,
        fc.constantFrom(...KINDS),
        fc.constantFrom('p', 'q', undefined),
        (s, u, kind, through) => {
          const chosen = joint(['p', 'q'], kind, through);
          const joinery = plan([stick('p', s), stick('q', u)], { joints: [chosen] });
          const checks = notMade(joinery);
          if (checks.length > 0) {
            told++;
            for (const check of checks) expect(check.parts).toEqual(['p', 'q']);
          } else {
            made++;
            expectInWood(joinery, chosen);
          }
        },
      ),
      { numRuns: runs(200) },
    );
    // Neither answer is the easy way out.
    expect(Math.min(made, told)).toBeGreaterThan(0.06 * runs(200));
  });
});
