import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PanelShape } from '../../src/design/schema.ts';
import type { Box, Point } from '../../src/geometry/shape.ts';
import { cornersToMark } from '../../src/joinery/lengths.ts';
import type { Piece } from '../../src/joinery/piece.ts';
import { pieceDrawing } from '../../src/joinery/pieceDrawing.ts';
import { type Curve, profileOf } from '../../src/joinery/profile.ts';
import { type NamedShape, OUTLINES, ringsOfNamed } from '../../src/layout/place/outlines.ts';
import { runs } from '../runs.ts';
import { panel, pieceOf, plan } from './make.ts';

type Form = keyof typeof OUTLINES;
const ringsOf = (box: Box, shape: PanelShape) => ringsOfNamed(shape as NamedShape, box);

/** A panel of this shape as it comes out of the sheet. */
function pieceWith(form: Form, w: number, h: number, more: object = {}): Piece {
  const box = { x: 0, y: 0, w, h };
  const { first } = OUTLINES[form] as { first: (box: Box) => PanelShape };
  const [outer = [], ...holes] = ringsOf(box, { ...first(box), ...more } as PanelShape);
  const square = pieceOf(plan([panel('p', box)]), 'p');
  const sawn = { ...square.ends[0], cut: 'sawn' } as const;
  return { ...square, outline: outer, holes, ends: [sawn, sawn] };
}

const onCurve = (p: Point, { center, radius }: Curve) =>
  Math.abs(Math.hypot(p.x - center.x, p.y - center.y) - radius);

describe('the arcs that an outline is drawn by', () => {
  it('has radius, rise and center of the circular segment: r = c2 / 8h + h / 2', () => {
    // The segment formula of trade handbooks (Machinery's Handbook, Areas and Dimensions of Plane Figures; from memory).
    fc.assert(
      fc.property(
        fc.double({ min: 200, max: 2000, noNaN: true }),
        fc.double({ min: 0.05, max: 0.45, noNaN: true }),
        (w, share) => {
          const [rise, h] = [w * share, w];
          const { curves, free } = profileOf(pieceWith('arched', w, h, { rise }));
          const radius = w ** 2 / (8 * rise) + rise / 2;
          expect(free).toBe(false);
          expect(curves).toHaveLength(1);
          const [arc] = curves;
          expect(arc?.radius).toBeCloseTo(radius, 1);
          expect(arc?.rise).toBeCloseTo(rise, 2);
          expect(arc?.center.x).toBeCloseTo(w / 2, 1);
          expect(arc?.center.y).toBeCloseTo(h - radius, 1);
          expect([arc?.from.y, arc?.to.y].map((y) => Math.abs((y ?? 0) - (h - rise)) < 0.01)).toEqual([
            true,
            true,
          ]);
        },
      ),
      { numRuns: runs(40) },
    );
  });

  it('tells circles whole, with their openings', () => {
    const { curves } = profileOf(pieceWith('ring', 400, 400, { width: 60 }));
    expect(curves.map(({ radius }) => Math.round(radius * 10) / 10)).toEqual([200, 140]);
    expect(curves.map(({ hollow }) => hollow)).toEqual([false, true]);
    for (const { from, to, rise, radius } of curves) {
      expect(Math.hypot(from.x - to.x, from.y - to.y)).toBeLessThan(0.001);
      expect(rise).toBeCloseTo(2 * radius, 2);
    }
  });

  it('leaves no point of an outline untold that is no corner to mark and lies on no straight side', () => {
    const forms = Object.keys(OUTLINES) as Form[];
    let free = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(...forms),
        fc.integer({ min: 150, max: 900 }),
        fc.integer({ min: 150, max: 900 }),
        (form, w, h) => {
          const piece = pieceWith(form, w, h);
          const found = profileOf(piece);
          if (found.free) {
            free += 1;
            expect(['elliptical', 'round', 'ring', 'waved', 'scalloped', 'quatrefoil']).toContain(form);
            return;
          }
          const ends = found.curves.flatMap(({ from, to }) => [from, to]);
          const known = [
            ...cornersToMark(piece),
            ...ends,
            ...[0, w].flatMap((x) => [0, h].map((y) => ({ x, y }))),
          ];
          const told = (p: Point) =>
            found.curves.some((curve) => onCurve(p, curve) < 0.06) ||
            known.some((q) => Math.hypot(p.x - q.x, p.y - q.y) < 0.01);
          if (cornersToMark(piece).length > 0 || found.curves.length > 0) {
            expect(piece.outline.filter((p) => !told(p))).toEqual([]);
          }
        },
      ),
      { numRuns: runs(60) },
    );
    expect(free).toBeGreaterThan(0);
  });
});

describe('the drawing of what is sawn to an outline', () => {
  const words = { length: (mm: number) => mm.toFixed(0), end: () => [], notch: () => '', face: '' };
  const textsOf = (piece: Piece) =>
    pieceDrawing(piece, { width: 85, height: 32 }, words).items.flatMap((item) =>
      item.kind === 'text' ? [item] : [],
    );

  it('tells width, height and shoulders along the axes, and the radius', () => {
    const texts = textsOf(pieceWith('arched', 1200, 260, { rise: 80 }));
    const angles = new Map(texts.map(({ text, angle }) => [text, angle ?? 0]));
    // r = 1200^2 / (8 x 80) + 80 / 2
    expect([...angles.keys()].sort()).toEqual(['1200', '180', '260', 'A1', 'R 2290'].sort());
    expect([...angles.values()].every((angle) => Math.abs(angle % 90) < 1e-9)).toBe(true);
  });
});
