import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Bow, Bows } from '../../src/bed/bows.ts';
import { faceOf } from '../../src/bed/faceOf.ts';
import { READINGS, spanOf } from '../../src/bed/measured.ts';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design, Part } from '../../src/design/schema.ts';
import type { Point, Quad, Region } from '../../src/geometry/shape.ts';
import { trueAreaOf } from '../../src/geometry/trueArea.ts';
import { planJoinery } from '../../src/joinery/joinery.ts';
import type { Piece } from '../../src/joinery/piece.ts';
import { alongEdges } from '../../src/layout/along.ts';
import { layOut } from '../../src/layout/layout.ts';
import { styleIn } from '../../src/plan/words/languages.ts';
import { PLAN_WORDS } from '../../src/plan/words/tables.ts';
import { curveWords } from '../../src/plan/words/tape.ts';
import { outlineBowed } from '../bed/bowTwin.ts';
import { sampleBed } from '../bed/sample.ts';
import { runs } from '../runs.ts';
import { shoelace } from '../shoelace.ts';
import { STOCKS } from './sample.ts';

const BED = sampleBed({ skin: { thickness: 6, material: 'plywood' } });
const { width: W, height: H } = faceOf(BED).face;
/** Width of the stock `lath`. */
const w = 40;

const off = fc.double({ min: -12, max: 12, noNaN: true });
const quads: fc.Arbitrary<Quad> = fc.tuple(off, off, off, off, off).map(([b, cx, cy, dx, dy]) => [
  { x: 0, y: 0 },
  { x: W + b, y: 0 },
  { x: W + cx, y: H + cy },
  { x: dx, y: H + dy },
]);
const out = fc.double({ min: -9, max: 9, noNaN: true });
const bow: fc.Arbitrary<Bow> = fc.oneof(
  fc.constant({}),
  fc.record({ middle: out }),
  fc.record({ first: out, middle: out }),
);
const bows: fc.Arbitrary<Bows> = fc.record({ bottom: bow, right: bow, top: bow, left: bow });

function made(quad: Quad, read: Bows, parts: readonly Part[], joints: Design['joints'] = []) {
  const spans = READINGS.filter((one) => one !== 'middle').map((one) => [one, spanOf(quad, one)]);
  const rim = { ...Object.fromEntries(spans), bows: read };
  const { face } = faceOf({
    ...BED,
    measured: { rim, field: {}, keep: 'bottom', rise: 0, border: 'along' },
  });
  const design = { ...newDesign(BED), parts: [...parts], joints: [...joints] };
  const laid = layOut({ design, face, stocks: STOCKS, keepClears: [] });
  const layout = face.real ? alongEdges(laid, face, STOCKS) : laid;
  const { shop, measure } = design;
  const joinery = planJoinery({ parts: layout.parts, joints: design.joints, stocks: STOCKS, shop, measure });
  return { layout, joinery, corners: face.real?.[0]?.corners };
}

const strip = (id: string, lie: 'up' | 'across', x: number, y: number, long: number): Part => {
  const box = lie === 'up' ? { x, y, w, h: long } : { x, y, w: long, h: w };
  return { ...newPart('strip', { id, name: id, stock: 'lath', box }), lie };
};
const stiles = [strip('left', 'up', 0, 0, H), strip('right', 'up', W - w, 0, H)];
const panel = newPart('panel', {
  ...{ id: 'panel', name: 'panel', stock: 'sheet' },
  box: { x: w, y: w, w: W - 2 * w, h: H - 2 * w },
});
const MITERED = [...stiles, strip('bottom', 'across', 0, 0, W), strip('top', 'across', 0, H - w, W)];
const MITERS = ['bottom', 'top'].flatMap((rail) =>
  ['left', 'right'].map((stile) => ({
    ...{ id: `${stile}-${rail}`, parts: [stile, rail] as [string, string], kind: 'miter' as const },
  })),
);
const BUTTED = [
  ...stiles,
  strip('bottom', 'across', w, 0, W - 2 * w),
  strip('top', 'across', w, H - w, W - 2 * w),
];
const FRAME = [
  {
    ...newPart('run', { id: 'frame', name: 'frame', stock: 'lath', box: { x: 0, y: 0, w: W, h: H } }),
    ...{ path: { form: 'frame' }, side: 'inside', corner: 'miter' },
  } as Part,
];

const whole = (regions: readonly Region[]): number =>
  regions.reduce((sum, region) => sum + trueAreaOf(region), 0);

describe('along edges that bow', () => {
  // An end is cut straight where its edge bows: over 40 mm that strays by under 0.1 mm, of which two thirds are missed.
  for (const [name, parts, joints, most] of [
    ['strips with miters', MITERED, MITERS, 1],
    ['strips that are butted', BUTTED, [], (8 * 2 * 40 * 0.1) / 3],
    ['a frame', FRAME, [], 1],
  ] as const)
    it(`${name}, and a panel inside of them, cover the face and nothing else`, () => {
      fc.assert(
        fc.property(quads, bows, (quad, read) => {
          const { joinery, corners } = made(quad, read, [...parts, panel], [...joints]);
          if (!corners) return;
          const twin = Math.abs(shoelace(outlineBowed(corners, read, 800)));
          expect(Math.abs(whole(joinery.solids.map(({ region }) => region)) - twin)).toBeLessThan(most);
          expect(joinery.checks.filter(({ severity }) => severity !== 'note')).toEqual([]);
        }),
        { numRuns: runs(8) },
      );
    });

  it('a panel over the whole face has its outline', () => {
    fc.assert(
      fc.property(quads, bows, (quad, read) => {
        const all = { ...panel, box: { x: 0, y: 0, w: W, h: H } };
        const { joinery, corners } = made(quad, read, [all]);
        if (!corners) return;
        const twin = Math.abs(shoelace(outlineBowed(corners, read, 800)));
        expect(Math.abs(whole(joinery.solids.map(({ region }) => region)) - twin)).toBeLessThan(1);
      }),
      { numRuns: runs(8) },
    );
  });

  it('a stile is cut straight and told to be scribed by what its edge bows, where most of it', () => {
    const truth: Quad = [
      { x: 0, y: 0 },
      { x: W, y: 0 },
      { x: W, y: H },
      { x: 0, y: H },
    ];
    const pieceOf = (read: Bows, part: string): Piece => {
      const { joinery } = made(truth, read, BUTTED);
      const piece = joinery.pieces.find((one) => one.part === part);
      if (!piece) throw new Error(`no ${part}`);
      return piece;
    };
    // A string along the left edge: 6 mm hollow at the middle. The most comes off there.
    const hollow = pieceOf({ left: { middle: -6 } }, 'left');
    expect(hollow.scribed).toHaveLength(1);
    expect(hollow.scribed?.[0]).toMatchObject({ edge: 'left' });
    expect(hollow.scribed?.[0]?.most).toBeCloseTo(6, 6);
    expect(hollow.scribed?.[0]?.at).toBeCloseTo(H / 2, 3);
    expect(hollow.length).toBeCloseTo(H, 3);
    // 6 mm bellied: the board reaches over the belly, and the most comes off at its ends.
    const belly = pieceOf({ left: { middle: 6 } }, 'left');
    expect(belly.scribed?.[0]?.most).toBeCloseTo(6, 6);
    expect([0, H].some((end) => Math.abs((belly.scribed?.[0]?.at ?? -1) - end) < 1e-3)).toBe(true);
    // Its depth at a quarter, by the parabola: 6 (1 - 4 t (1 - t)).
    const line = belly.scribed?.[0]?.line ?? [];
    const off = (p: Point) => w - p.y;
    for (const p of line) {
      const t = p.x / H;
      expect(off(p)).toBeCloseTo(6 * (1 - 4 * t * (1 - t)), 3);
    }
    // Told as a carpenter would: where most of it comes off.
    const { tape } = PLAN_WORDS.en;
    const style = newDesign().measure;
    const told = (read: Bows, part: string) => curveWords(pieceOf(read, part), tape, styleIn('en', style));
    expect(told({ left: { middle: 6.35 } }, 'left')).toBe(
      'once cut, scribe its upper edge to the bed: up to 1/4" comes off at both ends',
    );
    expect(told({ left: { middle: -6.35 } }, 'left')).toMatch(/up to 1\/4" comes off 39" from its left end$/);
    // What rails come to is where the stiles' straight inner edges lie: a belly carries them out.
    const rail = pieceOf({ left: { middle: 6 } }, 'bottom');
    expect(rail.length).toBeCloseTo(W - 2 * w + 6, 3);
    expect(pieceOf({ left: { middle: -6 } }, 'bottom').length).toBeCloseTo(W - 2 * w, 3);
    expect(pieceOf({ right: { middle: -6 } }, 'right').scribed?.[0]?.edge).toBe('right');
    expect(pieceOf({ top: { middle: -6 } }, 'top').scribed?.[0]?.edge).toBe('left');
    expect(pieceOf({ bottom: { middle: -6 } }, 'bottom').scribed?.[0]?.edge).toBe('right');
  });
});
