import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BedMeasured } from '../../src/bed/bed.ts';
import { faceOf } from '../../src/bed/faceOf.ts';
import { READINGS, spanOf } from '../../src/bed/measured.ts';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design, Part } from '../../src/design/schema.ts';
import { boxOf, ringOfBox } from '../../src/geometry/region.ts';
import type { Quad } from '../../src/geometry/shape.ts';
import { planJoinery } from '../../src/joinery/joinery.ts';
import type { Joinery, Piece } from '../../src/joinery/piece.ts';
import { alongEdges } from '../../src/layout/along.ts';
import type { Layout } from '../../src/layout/laid.ts';
import { layOut } from '../../src/layout/layout.ts';
import { sampleBed } from '../bed/sample.ts';
import { runs } from '../runs.ts';
import { STOCKS } from './sample.ts';

const BED = sampleBed({ skin: { thickness: 6, material: 'plywood' } });
const { width: W, height: H } = faceOf(BED).face;
/** Width of the stock `lath`. */
const T = STOCKS.get('lath');
if (T?.form !== 'flat') throw new Error('no lath');
const w = T.width;
const degrees = (radians: number): number => (radians * 180) / Math.PI;

/** Up to where an edge lies beyond half of the strip that follows it. */
const off = fc.double({ min: -25, max: 25, noNaN: true });
/** Corners of a face that was meant to be true, the lower edge along x. */
const quads: fc.Arbitrary<Quad> = fc.tuple(off, off, off, off, off).map(([b, cx, cy, dx, dy]) => [
  { x: 0, y: 0 },
  { x: W + b, y: 0 },
  { x: W + cx, y: H + cy },
  { x: dx, y: H + dy },
]);
const measuredOf = (quad: Quad): BedMeasured => ({
  rim: Object.fromEntries(READINGS.map((one) => [one, spanOf(quad, one)])),
  field: {},
  keep: 'bottom',
  rise: 0,
  border: 'along',
});

interface Made {
  readonly layout: Layout;
  readonly joinery: Joinery;
  /** Where the real corners lie. */
  readonly corners: Quad;
}
function made(quad: Quad, parts: readonly Part[], joints: Design['joints'] = []): Made {
  const { face } = faceOf({ ...BED, measured: measuredOf(quad) });
  const design = { ...newDesign(BED), parts: [...parts], joints: [...joints] };
  const laid = layOut({ design, face, stocks: STOCKS, keepClears: [] });
  const layout = alongEdges(laid, face, STOCKS);
  const { shop, measure } = design;
  const joinery = planJoinery({ parts: layout.parts, joints: design.joints, stocks: STOCKS, shop, measure });
  return { layout, joinery, corners: face.real?.[0]?.corners ?? ringOfBox(face.box) };
}

const strip = (id: string, lie: 'up' | 'across', x: number, y: number, long: number): Part => {
  const box = lie === 'up' ? { x, y, w, h: long } : { x, y, w: long, h: w };
  return { ...newPart('strip', { id, name: id, stock: 'lath', box }), lie };
};
const pieceOf = ({ joinery }: Made, part: string): Piece => {
  const piece = joinery.pieces.find((one) => one.part === part);
  if (!piece) throw new Error(`no piece of ${part}`);
  return piece;
};

/** Interior angles at the four corners, from sides and diagonals by the law of cosines. */
function anglesOf(quad: Quad): number[] {
  const [b, t, l, r, rising, falling] = (
    ['bottom', 'top', 'left', 'right', 'rising', 'falling'] as const
  ).map((one) => spanOf(quad, one)) as [number, number, number, number, number, number];
  const angle = (p: number, q: number, across: number) =>
    Math.acos((p * p + q * q - across * across) / (2 * p * q));
  return [angle(b, l, falling), angle(b, r, rising), angle(t, r, falling), angle(t, l, rising)];
}
function expectNear(found: readonly number[], want: readonly number[]): void {
  expect(found).toHaveLength(want.length);
  for (const [i, one] of found.entries()) expect(one).toBeCloseTo(want[i] ?? Number.NaN, 4);
}
const cot = (angle: number): number => 1 / Math.tan(angle);
const BORDER = [
  strip('left', 'up', 0, 0, H),
  strip('right', 'up', W - w, 0, H),
  strip('bottom', 'across', 0, 0, W),
  strip('top', 'across', 0, H - w, W),
];
const MITERS = (
  [
    ['left', 'bottom'],
    ['left', 'top'],
    ['right', 'bottom'],
    ['right', 'top'],
  ] as const
).map((parts, i) => ({ id: `j${i}`, parts: [...parts] as [string, string], kind: 'miter' as const }));
/** Corners at both ends of each side, in the order of `anglesOf`. */
const AT = { left: [0, 3], right: [1, 2], bottom: [0, 1], top: [3, 2] } as const;
const SIDES = ['left', 'right', 'bottom', 'top'] as const;

/** Lengths and miters of a mitered border by trigonometry alone: each half of its real angle. */
function expectMitered(quad: Quad, side: (typeof SIDES)[number], piece: Piece): void {
  const angles = anglesOf(quad);
  const [p, q] = AT[side].map((i) => angles[i] ?? Number.NaN) as [number, number];
  const long = spanOf(quad, side);
  expect(piece.length).toBeCloseTo(long, 4);
  const short = Math.min(piece.edges.left ?? 0, piece.edges.right ?? 0);
  expect(short).toBeCloseTo(long - w * (cot(p / 2) + cot(q / 2)), 4);
  const miters = piece.ends.map(({ miter }) => Math.abs(miter)).sort();
  expect(miters[0]).toBeCloseTo(Math.min(...[p, q].map((angle) => 90 - degrees(angle / 2))), 4);
  expect(miters[1]).toBeCloseTo(Math.max(...[p, q].map((angle) => 90 - degrees(angle / 2))), 4);
  expect(piece.ends.map(({ cut }) => cut)).toEqual(['miter', 'miter']);
}

describe('a border along real edges', () => {
  it('of strips with miters has the lengths of the sides, and cuts half of each real angle', () => {
    fc.assert(
      fc.property(quads, (quad) => {
        const job = made(quad, BORDER, MITERS);
        for (const side of SIDES) expectMitered(quad, side, pieceOf(job, side));
        expect(job.joinery.checks.filter(({ severity }) => severity !== 'note')).toEqual([]);
      }),
      { numRuns: runs(8) },
    );
  });

  it('of one frame has them too', () => {
    fc.assert(
      fc.property(quads, (quad) => {
        const box = { x: 0, y: 0, w: W, h: H };
        const frame = newPart('run', { id: 'frame', name: 'frame', stock: 'lath', box });
        const { joinery } = made(quad, [
          { ...frame, path: { form: 'frame' }, side: 'inside', corner: 'miter' } as Part,
        ]);
        const lengths = joinery.pieces.map(({ length }) => length).sort((a, b) => a - b);
        const sides = SIDES.map((side) => spanOf(quad, side)).sort((a, b) => a - b);
        expectNear(lengths, sides);
      }),
      { numRuns: runs(8) },
    );
  });

  it('of butted strips leaves no gap: rails end at the stiles at their real angles, stiles at the real edges', () => {
    fc.assert(
      fc.property(quads, (quad) => {
        const rails = [
          strip('bottom', 'across', w, 0, W - 2 * w),
          strip('top', 'across', w, H - w, W - 2 * w),
        ];
        const job = made(quad, [...BORDER.slice(0, 2), ...rails]);
        const angles = anglesOf(quad);
        for (const side of ['bottom', 'top'] as const) {
          const [p, q] = AT[side].map((i) => angles[i] ?? Number.NaN) as [number, number];
          const outer = spanOf(quad, side) - w / Math.sin(p) - w / Math.sin(q);
          const inner = spanOf(quad, side) - w * (cot(p / 2) + cot(q / 2));
          const piece = pieceOf(job, side);
          const edges = [piece.edges.left ?? 0, piece.edges.right ?? 0].sort((a, b) => a - b);
          const want = [outer, inner].sort((a, b) => a - b);
          expectNear(edges, want);
          const miters = piece.ends.map(({ miter }) => Math.abs(miter)).sort((a, b) => a - b);
          const off = [p, q].map((angle) => Math.abs(90 - degrees(angle))).sort((a, b) => a - b);
          expectNear(miters, off);
        }
        for (const side of ['left', 'right'] as const) {
          const piece = pieceOf(job, side);
          const edges = [piece.edges.left ?? 0, piece.edges.right ?? 0];
          expect(Math.min(...edges.map((edge) => Math.abs(edge - spanOf(quad, side))))).toBeLessThan(1e-4);
        }
        // What is butted touches, and laps over nothing.
        expect(job.joinery.checks.filter(({ severity }) => severity !== 'note')).toEqual([]);
        expect(job.joinery.joints.map(({ parts, kind }) => `${kind} ${parts.join(' ')}`)).toEqual(
          ['bottom left', 'bottom right', 'top left', 'top right'].map((names) => `butt ${names}`),
        );
      }),
      { numRuns: runs(8) },
    );
  });
});

/** Where the inner edge of a border of width `w` along the left edge is at a height: a plumb line cut by hand. */
function leftInner([a, , , d]: Quad, y: number): number {
  const lean = (d.x - a.x) / (d.y - a.y);
  return a.x + (y - a.y) * lean + w * Math.hypot(1, lean);
}

describe('what stands inside a border along real edges', () => {
  const [y0, y1] = [400, 1500];
  const filler = strip('filler', 'up', w, y0, y1 - y0);
  const panel = newPart('panel', {
    ...{ id: 'panel', name: 'panel', stock: 'sheet' },
    box: { x: 2 * w, y: y0, w: 300, h: y1 - y0 },
  });

  it('stays square, and a filler between is ripped to a taper with both widths told', () => {
    fc.assert(
      fc.property(quads, (quad) => {
        const job = made(quad, [...BORDER, filler, panel]);
        const laid = job.layout.parts.find(({ id }) => id === 'panel');
        const box = boxOf(laid?.region ?? []);
        expectNear(box ? [box.x, box.y, box.w, box.h] : [], [2 * w, y0, 300, y1 - y0]);
        const told = job.layout.checks.find(({ code }) => code === 'part.ripped');
        if (!told) {
          const flat = (all: Quad) => all.flatMap(({ x, y }) => [x, y]);
          return expectNear(flat(job.corners), flat(ringOfBox({ x: 0, y: 0, w: W, h: H })));
        }
        const [low, high] = [y0, y1].map((y) => 2 * w - leftInner(job.corners, y)) as [number, number];
        expect(told?.figures.from_mm).toBeCloseTo(low, 4);
        expect(told?.figures.to_mm).toBeCloseTo(high, 4);
        expect(told?.severity).toBe(Math.max(low, high) > w + 0.01 ? 'warning' : 'note');
        const piece = pieceOf(job, 'filler');
        expect(piece.width).toBeCloseTo(Math.max(low, high), 4);
        const long = Math.hypot(y1 - y0, low - high);
        expect(Math.max(piece.edges.left ?? 0, piece.edges.right ?? 0, piece.length)).toBeLessThan(
          long + 1e-6,
        );
      }),
      { numRuns: runs(8) },
    );
  });

  it('a rail across is cut to both borders, and stays level', () => {
    fc.assert(
      fc.property(quads, (quad) => {
        const y = 900;
        const job = made(quad, [...BORDER, strip('rail', 'across', w, y, W - 2 * w)]);
        const [a, b, c, d] = job.corners;
        const mirrored: Quad = [
          { x: -b.x, y: b.y },
          { x: -a.x, y: a.y },
          { x: -d.x, y: d.y },
          { x: -c.x, y: c.y },
        ];
        const at = (height: number) => -leftInner(mirrored, height) - leftInner(job.corners, height);
        const piece = pieceOf(job, 'rail');
        expect(piece.edges.right).toBeCloseTo(at(y), 4);
        expect(piece.edges.left).toBeCloseTo(at(y + w), 4);
      }),
      { numRuns: runs(8) },
    );
  });
});

it('keeps everything where nothing is off', () => {
  const { face } = faceOf({
    ...BED,
    measured: { rim: {}, field: {}, keep: 'left', rise: 0, border: 'along' },
  });
  expect(face).toEqual(faceOf(BED).face);
});
