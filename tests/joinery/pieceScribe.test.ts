import { describe, expect, it } from 'vitest';
import type { DrawItem, PathItem } from '../../src/drawing/drawing.ts';
import { boxOfPath } from '../../src/geometry/path.ts';
import type { Piece, Scribed } from '../../src/joinery/piece.ts';
import { pieceDrawing } from '../../src/joinery/pieceDrawing.ts';
import { pieceOf, plan, strip } from './make.ts';

const words = {
  length: (mm: number) => `${Math.round(mm * 10) / 10}`,
  end: () => [],
  notch: () => '',
  face: '',
};

const WIDTH = 50;
/** The saw's drawing and the packet's. */
const BOXES = [
  { width: 78, height: 32 },
  { width: 85, height: 22 },
] as const;

function board(length: number, scribed: readonly Scribed[]): Piece {
  const ends = { start: { cut: 'miter', angle: 45 }, end: { cut: 'miter', angle: -45 } } as const;
  const laid = [strip('s', { x: 0, y: 0 }, { x: length, y: 0 }, WIDTH, { ends })];
  return { ...pieceOf(plan(laid), 's'), scribed };
}

/** A wedge: nothing comes off at the start, `most` at the end. */
const wedge = (edge: Scribed['edge'], length: number, most: number): Scribed => ({
  ...{ edge, most, at: length },
  line: [
    { x: 0, y: edge === 'left' ? WIDTH : 0 },
    { x: length, y: edge === 'left' ? WIDTH - most : most },
  ],
});

const paths = (items: readonly DrawItem[]): PathItem[] => items.filter((item) => item.kind === 'path');
const boxesOf = (items: readonly PathItem[]) => items.map(({ path }) => boxOfPath(path));

describe('the drawing of a piece that is scribed to the bed', () => {
  it.each(BOXES)('shows at its edge what comes off, and how much (%o)', (box) => {
    for (const length of [120, 900, 2400])
      for (const edge of ['left', 'right'] as const)
        for (const most of [0.8, 3.2, 9]) {
          const piece = board(length, [wedge(edge, length, most)]);
          const { items } = pieceDrawing(piece, box, words);
          const wood = boxesOf(paths(items).filter(({ fill, dash }) => fill !== undefined && !dash));
          const off = boxesOf(paths(items).filter(({ fill, dash }) => fill !== undefined && dash));
          expect(off.length).toBeGreaterThan(0);
          const [low, high] = [
            Math.min(...wood.map(({ y }) => y)),
            Math.max(...wood.map(({ y, h }) => y + h)),
          ];
          for (const one of off) {
            // It begins at the edge that is scribed, lies on the wood, and can be seen.
            if (edge === 'left') expect(one.y + one.h).toBeCloseTo(high, 3);
            else expect(one.y).toBeCloseTo(low, 3);
            const held = wood.find((w) => one.x >= w.x - 1e-3 && one.x + one.w <= w.x + w.w + 1e-3);
            expect(held).toBeDefined();
          }
          // By proportion: a wedge is deepest at the far end, and no less deep than to scale.
          const deepest = Math.max(...off.map(({ h }) => h));
          const last = off.reduce((a, b) => (a.x + a.w > b.x + b.w ? a : b));
          expect(last.h).toBeCloseTo(deepest, 6);
          // The edge of a mitered end stops short of the point by no more than the width of the board.
          const reach = 1 - (WIDTH + most) / length;
          expect(deepest).toBeGreaterThanOrEqual(((most * (high - low)) / WIDTH) * reach - 1e-3);
          expect(deepest).toBeGreaterThan(0.4);
          // Its figure stands on the wood, on the near side of the middle.
          const figure = items.find((item) => item.kind === 'text' && item.text === words.length(most));
          if (figure?.kind !== 'text') throw new Error(`no figure: ${length} ${edge} ${most}`);
          expect(figure.at.y).toBeGreaterThan(low);
          expect(figure.at.y + figure.size * 0.75).toBeLessThan(high);
          if (edge === 'left') expect(figure.at.y).toBeGreaterThan((low + high) / 2 - figure.size);
          else expect(figure.at.y).toBeLessThan((low + high) / 2);
        }
  });

  it('is the drawing it was where nothing comes off', () => {
    const piece = board(900, []);
    const { scribed: _, ...plain } = piece;
    expect(pieceDrawing(piece, BOXES[0], words)).toEqual(pieceDrawing(plain, BOXES[0], words));
  });
});
