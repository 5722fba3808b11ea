import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DrawItem, Drawing, TextItem } from '../../src/drawing/drawing.ts';
import { boxOfPath } from '../../src/geometry/path.ts';
import type { Notch, Piece, PieceEnd } from '../../src/joinery/piece.ts';
import { pieceDrawing } from '../../src/joinery/pieceDrawing.ts';
import { runs } from '../runs.ts';
import { boxStrip, brace, frame, panel, pieceOf, piecesOf, plan, strip } from './make.ts';

const words = {
  length: (mm: number) => `${Math.round(mm)}`,
  end: (end: PieceEnd) =>
    [end.miter, end.second?.miter]
      .filter((a) => a !== undefined && a !== 0)
      .map((a) => `${Math.round(Math.abs(a ?? 0))}`),
  notch: ({ side, depth }: Notch) => `${side} ${depth}`,
  face: '',
};
const BOX = { width: 85, height: 22 };

const textsOf = (drawing: Drawing): TextItem[] => drawing.items.filter((item) => item.kind === 'text');
const woodOf = (drawing: Drawing): DrawItem[] =>
  drawing.items.filter((item) => item.kind === 'path' && item.fill !== undefined);

/** Bounds of everything drawn, text by a generous width. */
function expectInside(drawing: Drawing): void {
  for (const item of drawing.items) {
    if (item.kind === 'path') {
      const box = boxOfPath(item.path);
      expect(box.x).toBeGreaterThanOrEqual(0);
      expect(box.y).toBeGreaterThanOrEqual(0);
      expect(box.x + box.w).toBeLessThanOrEqual(drawing.width);
      expect(box.y + box.h).toBeLessThanOrEqual(drawing.height);
    }
    if (item.kind === 'text' && item.angle === undefined) {
      const w = item.text.length * item.size * 0.6;
      const left = item.at.x - (item.anchor === 'start' ? 0 : item.anchor === 'end' ? w : w / 2);
      expect(left).toBeGreaterThanOrEqual(-0.01);
      expect(left + w).toBeLessThanOrEqual(drawing.width + 0.01);
      expect(item.at.y).toBeGreaterThanOrEqual(0);
      expect(item.at.y + item.size * 0.75).toBeLessThanOrEqual(drawing.height);
    }
  }
}

/** The first notch is drawn as far along the wood as it is along the piece. */
function expectStartLeft(piece: Piece, drawing: Drawing): void {
  const box = (item: DrawItem | undefined) => boxOfPath(item?.kind === 'path' ? item.path : []);
  const [wood] = woodOf(drawing);
  const outlined = drawing.items.filter((item) => item.kind === 'path' && item.width === 0.25);
  const [own, first] = [box(wood), box(outlined[0])];
  expect(own.w / own.h).toBeCloseTo(piece.overall / piece.width, 6);
  expect((first.x - own.x) / own.w).toBeCloseTo((piece.notches[0]?.from ?? Number.NaN) / piece.overall, 6);
  expect(own.h).toBeGreaterThan(1);
}

describe('the drawing of a piece', () => {
  it('says label, long and short lengths and both angles', () => {
    const [piece] = piecesOf(plan([frame('f', { x: 0, y: 0, w: 400, h: 600 }, 50)]), 'f');
    if (!piece) throw new Error('no piece');
    const drawing = pieceDrawing(piece, BOX, words);
    expect(drawing.title).toBe('A2');
    const texts = textsOf(drawing);
    expect(texts.map((text) => text.text).sort()).toEqual(['300', '400', '45', '45', 'A2']);
    // The long points of this frame are on the right edge, which is down.
    const at = (text: string) => texts.find((item) => item.text === text)?.at.y ?? Number.NaN;
    expect(at('400')).toBeLessThan(at('300'));
  });

  it('breaks a long piece and keeps the shape of its ends', () => {
    const ends = { start: { cut: 'miter', angle: 45 }, end: { cut: 'miter', angle: -45 } } as const;
    const piece = pieceOf(plan([strip('s', { x: 0, y: 0 }, { x: 2000, y: 0 }, 50, { ends })]), 's');
    const wood = woodOf(pieceDrawing(piece, BOX, words));
    expect(wood.length).toBe(2);
    for (const item of wood) {
      const path = item.kind === 'path' ? item.path : [];
      const box = boxOfPath(path);
      // The slope of a 45 degree cut stays 1 to 1: it takes as much length as the piece is wide.
      const xs = path.flatMap((command) => ('x' in command ? [command.x] : []));
      const middle = xs.filter((x) => x > box.x + 0.01 && x < box.x + box.w - 0.01);
      const run = Math.min(...middle.map((x) => Math.min(x - box.x, box.x + box.w - x)));
      expect(run).toBeCloseTo(box.h, 6);
    }
  });

  it('draws a panel whole, with its openings, width and length', () => {
    const outer = [
      { x: 0, y: 0 },
      { x: 300, y: 0 },
      { x: 300, y: 500 },
      { x: 0, y: 500 },
    ];
    const hole = [
      { x: 50, y: 50 },
      { x: 50, y: 150 },
      { x: 250, y: 150 },
      { x: 250, y: 50 },
    ];
    const laid = panel('p', { x: 0, y: 0, w: 300, h: 500 }, { region: [{ outer, holes: [hole] }] });
    const drawing = pieceDrawing(pieceOf(plan([laid]), 'p'), { width: 80, height: 50 }, words);
    const [wood] = woodOf(drawing);
    const moves = wood?.kind === 'path' ? wood.path.filter((command) => command.op === 'M').length : 0;
    expect(moves).toBe(2);
    expect(textsOf(drawing).map((text) => text.text)).toEqual(['500', '300', 'A1']);
  });

  it('says the angle of each of two cuts beside its own, so that a point that is not in the middle is told apart', () => {
    const piece = pieceOf(plan([brace('b', 'rising', { x: 0, y: 0, w: 400, h: 600 }, 50)]), 'b');
    const [start] = piece.ends;
    const upper = `${Math.round(Math.abs(start.miter))}`;
    const lower = `${Math.round(Math.abs(start.second?.miter ?? 0))}`;
    expect(upper).not.toBe(lower);
    const left = textsOf(pieceDrawing(piece, BOX, words)).filter((item) => item.anchor === 'end');
    const at = (text: string) => left.find((item) => item.text === text)?.at.y ?? Number.NaN;
    expect(at(upper)).toBeGreaterThan(at(lower));
    // The cut beside the upper edge leans by its miter from a square one: its corner there lies so far in.
    const shoulder = piece.outline.filter((p) => Math.abs(p.y - 50) < 1e-6).map((p) => p.x);
    const tip = piece.outline.find((p) => Math.abs(p.x) < 1e-6);
    const lean = (Math.atan2(Math.min(...shoulder), 50 - (tip?.y ?? 0)) * 180) / Math.PI;
    expect(Math.round(lean)).toBe(Number(upper));
  });

  it('keeps everything within its box', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 15, max: 3000 }),
        fc.integer({ min: 8, max: 200 }),
        fc.integer({ min: -70, max: 70 }),
        fc.integer({ min: -70, max: 70 }),
        fc.constantFrom(BOX, { width: 60, height: 16 }, { width: 170, height: 60 }),
        (length, width, a, b, box) => {
          const ends = { start: { cut: 'miter', angle: a }, end: { cut: 'miter', angle: b } } as const;
          const joinery = plan([strip('s', { x: 0, y: 0 }, { x: length, y: 0 }, width, { ends })]);
          for (const piece of joinery.pieces) expectInside(pieceDrawing(piece, box, words));
        },
      ),
    );
  });

  it('hatches notches, with running measures to their shoulders and their depth', () => {
    const parts = [
      boxStrip('up', 0, 0, 50, 900),
      boxStrip('a', -100, 200, 400, 60),
      boxStrip('b', -100, 600, 400, 40),
    ];
    const joinery = plan(parts);
    const drawing = pieceDrawing(pieceOf(joinery, 'up'), { width: 90, height: 40 }, words);
    const texts = textsOf(drawing).map((item) => item.text);
    for (const measure of ['200', '260', '600', '640', '900', 'back 9.5']) expect(texts).toContain(measure);
    // Hidden on the back: dashed. The rails are notched on the face: drawn in full.
    const dashed = (items: readonly DrawItem[]) =>
      items.filter((item) => item.kind === 'path' && item.dash !== undefined).length;
    expect(dashed(drawing.items)).toBe(2);
    const rail = pieceDrawing(pieceOf(joinery, 'a'), { width: 90, height: 40 }, words);
    expect(dashed(rail.items)).toBe(0);
    expect(textsOf(rail).map((item) => item.text)).toContain('face 9.5');
  });

  it('keeps notched pieces within it, figures upright beside each other', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 0, max: 18 }), { minLength: 1, maxLength: 12 }),
        fc.constantFrom({ width: 112, height: 25 }, { width: 84, height: 32 }, { width: 170, height: 60 }),
        (places, box) => {
          const bars = places.map((at) => boxStrip(`b${at}`, 30 + at * 100, 0, 50, 600));
          const long = boxStrip('long', 0, 300, 2000, 60);
          for (const piece of plan([long, ...bars]).pieces) {
            const drawing = pieceDrawing(piece, box, words);
            expectInside(drawing);
            expectStartLeft(piece, drawing);
            const upright = textsOf(drawing).filter((item) => item.angle === 90);
            const xs = upright.map((item) => item.at.x).sort((a, b) => a - b);
            for (const [i, x] of xs.entries()) {
              if (i > 0) expect(x - (xs[i - 1] ?? 0)).toBeGreaterThanOrEqual(upright[0]?.size ?? 0);
            }
            for (const item of upright)
              expect(item.at.y - item.text.length * item.size * 0.6).toBeGreaterThan(0);
          }
        },
      ),
      { numRuns: runs(20) },
    );
  });

  it('keeps braces and short pieces within it too', () => {
    const parts = [
      brace('b', 'rising', { x: 0, y: 0, w: 300, h: 800 }, 60),
      brace('c', 'falling', { x: 900, y: 0, w: 100, h: 130 }, 60),
      boxStrip('d', 1500, 0, 12, 40),
    ];
    for (const piece of plan(parts).pieces) expectInside(pieceDrawing(piece, BOX, words));
  });
});
