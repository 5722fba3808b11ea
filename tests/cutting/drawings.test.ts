import { describe, expect, it } from 'vitest';
import { boardDrawing } from '../../src/cutting/boardDrawing.ts';
import { planCutting } from '../../src/cutting/cutting.ts';
import { sheetDrawing } from '../../src/cutting/sheetDrawing.ts';
import type { DrawItem, GroupItem } from '../../src/drawing/drawing.ts';
import { INK } from '../../src/drawing/style.ts';
import { textWidth } from '../../src/drawing/text.ts';
import { boxOfPath } from '../../src/geometry/path.ts';
import { boardPiece, flat, sheet, sheetPiece, shop, stockMap } from './make.ts';

const WORDS = {
  length: (mm: number) => `${Math.round(mm)}`,
  angle: (deg: number) => `${deg}°`,
  offcut: (a: number, b?: number) => `rest ${Math.round(a)}${b === undefined ? '' : ` by ${Math.round(b)}`}`,
};

const flatten = (items: readonly DrawItem[]): Exclude<DrawItem, GroupItem>[] =>
  items.flatMap((i) => (i.kind === 'group' ? flatten(i.items) : [i]));
const texts = (items: readonly DrawItem[]) => flatten(items).filter((i) => i.kind === 'text');
const paths = (items: readonly DrawItem[]) => flatten(items).filter((i) => i.kind === 'path');
const layerOf = (items: readonly DrawItem[], name: string): readonly DrawItem[] =>
  items.flatMap((i) => (i.kind === 'group' && i.layer === name ? i.items : []));

describe('a drawn board', () => {
  const pieces = [
    ...[0, 1, 2].map((i) => boardPiece(`f${i}`, 500, [45, 45], { label: `F${i}`, width: 60 })),
    boardPiece('s', 300, [0, 0], { label: 'S', width: 60 }),
  ];
  const { boards } = planCutting({
    pieces,
    stocks: stockMap(flat([{ length: 2500, price: 1 }], 60)),
    owned: [],
    shop: shop({ endTrim: 10 }),
    effort: { nodes: 10_000 },
  });
  const [board] = boards;
  if (!board) throw new Error('no board');
  const drawing = boardDrawing({
    board,
    pieces: new Map(pieces.map((p) => [p.id, p])),
    width: 60,
    unused: [
      { from: 0, to: 10 },
      { from: 2490, to: 2500 },
    ],
    text: WORDS,
    paper: 200,
    longest: 2500,
  });

  it('is to scale, every piece labeled once, inside its own frame', () => {
    expect(
      texts(layerOf(drawing.items, 'pieces'))
        .map((t) => t.text)
        .sort(),
    ).toEqual(['300', '500', '500', '500', 'F0', 'F1', 'F2', 'S'].sort());
    const outlines = paths(layerOf(drawing.items, 'pieces')).filter((p) => p.fill === INK.paper);
    expect(outlines).toHaveLength(4);
    outlines.forEach((outline, i) => {
      const box = boxOfPath(outline.path);
      expect(box.x).toBeCloseTo(((board.cuts[i]?.from ?? 0) * 200) / 2500, 9);
      expect(box.w).toBeCloseTo((((board.cuts[i]?.to ?? 0) - (board.cuts[i]?.from ?? 0)) * 200) / 2500, 9);
      expect(box.h).toBeCloseTo((60 * 200) / 2500, 9);
    });
    for (const p of paths(drawing.items)) {
      const box = boxOfPath(p.path);
      expect(Math.min(box.x + 5, box.y)).toBeGreaterThanOrEqual(0);
      expect(box.y + box.h).toBeLessThanOrEqual(drawing.height);
    }
  });

  it('draws a shared miter as one cut and writes its angle once', () => {
    // Three pieces that share two miters have four of them, and the square one has two ends.
    const cuts = layerOf(drawing.items, 'cuts');
    expect(texts(cuts).map((t) => t.text)).toEqual(['45°', '45°', '45°', '45°']);
    expect(paths(cuts)).toHaveLength(6);
    expect(texts(layerOf(drawing.items, 'board')).map((t) => t.text)).toEqual([
      `rest ${Math.round(board.offcut)}`,
    ]);
  });
});

describe('a drawn board that is narrow on paper', () => {
  const pieces = [700, 900, 250].map((length, i) =>
    boardPiece(`n${i}`, length, [0, 0], { label: `N${i}`, width: 20 }),
  );
  const { boards } = planCutting({
    pieces,
    stocks: stockMap(flat([{ length: 2500, price: 1 }], 20)),
    owned: [],
    shop: shop({ endTrim: 10 }),
    effort: { nodes: 10_000 },
  });

  it('tells the label and the length of every piece below it, apart from each other', () => {
    const [board] = boards;
    if (!board) throw new Error('no board');
    const drawing = boardDrawing({
      board,
      pieces: new Map(pieces.map((p) => [p.id, p])),
      width: 20,
      unused: [],
      text: WORDS,
      paper: 180,
      longest: 3600,
    });
    const told = texts(layerOf(drawing.items, 'pieces'));
    expect(told.map((t) => t.text).sort()).toEqual(['250', '700', '900', 'N0', 'N1', 'N2']);
    const boxes = told.map((t) => {
      const w = textWidth(t.text, t);
      return { x: t.at.x - w / 2, y: t.at.y, w, h: t.size };
    });
    boxes.forEach((a, i) => {
      expect(a.y).toBeGreaterThanOrEqual(0);
      for (const b of boxes.slice(i + 1)) {
        expect(a.x + a.w <= b.x || b.x + b.w <= a.x || a.y + a.h <= b.y || b.y + b.h <= a.y).toBe(true);
      }
    });
  });
});

describe('a drawn sheet', () => {
  const arched = (() => {
    const head = Array.from({ length: 9 }, (_, i) => {
      const a = (Math.PI * i) / 8;
      return { x: 250 + 250 * Math.cos(a), y: 500 + 200 * Math.sin(a) };
    });
    const hole = [
      { x: 50, y: 100 },
      { x: 450, y: 100 },
      { x: 450, y: 300 },
      { x: 50, y: 300 },
    ];
    return {
      ...sheetPiece('a', 500, 700),
      outline: [{ x: 0, y: 0 }, { x: 500, y: 0 }, ...head],
      holes: [hole],
    };
  })();
  const pieces = [arched, ...Array.from({ length: 6 }, (_, i) => sheetPiece(`p${i}`, 610 - 70 * i, 380))];
  const { sheets } = planCutting({
    pieces,
    stocks: stockMap(sheet([{ length: 2440, width: 1220, price: 1 }])),
    owned: [],
    shop: shop({ edgeTrim: 10 }),
    effort: { nodes: 50_000 },
  });
  const [cut] = sheets;
  if (!cut) throw new Error('no sheet');
  const drawing = sheetDrawing({
    sheet: cut,
    pieces: new Map(pieces.map((p) => [p.id, p])),
    kerf: 3,
    text: WORDS,
    paper: { width: 190, height: 120 },
  });

  it('numbers every cut, and no number covers another', () => {
    const cuts = layerOf(drawing.items, 'cuts');
    const numbers = texts(cuts);
    expect(numbers.map((t) => Number(t.text))).toEqual(cut.sequence.map((c) => c.number));
    for (const a of numbers) {
      for (const b of numbers) {
        if (a !== b) expect(Math.hypot(a.at.x - b.at.x, a.at.y - b.at.y)).toBeGreaterThan(2);
      }
    }
  });

  it('keeps labels on the wood: not over an opening', () => {
    const items = layerOf(drawing.items, 'pieces');
    const label = texts(items).find((t) => t.text === 'a');
    const holes = paths(items).filter((p) => p.path.length === 5 && p.fill === undefined);
    expect(label).toBeDefined();
    expect(holes.length).toBeGreaterThan(0);
    if (!label) return;
    const half = textWidth('a', label) / 2;
    const place = cut.placements.find((p) => p.piece === 'a');
    expect(place).toBeDefined();
    const k = boxOfPath(paths(layerOf(drawing.items, 'sheet'))[0]?.path ?? []).w / cut.length;
    // The opening covers the middle of the lower half of the piece.
    const [along, across] = place?.turned ? [label.at.y, label.at.x] : [label.at.x, label.at.y];
    const x = (along - 6) / k - (place?.turned ? place.y : (place?.x ?? 0));
    const y = place?.turned ? place.x + place.w - (across - 6) / k : (across - 6) / k - (place?.y ?? 0);
    const inside = x + half / k > 50 && x - half / k < 450 && y > 100 && y < 300;
    expect(inside).toBe(false);
  });

  it('fits its paper', () => {
    expect(drawing.width).toBeLessThanOrEqual(190 + 1e-9);
    expect(drawing.height).toBeLessThanOrEqual(120 + 1e-9);
    for (const p of paths(drawing.items)) {
      const box = boxOfPath(p.path);
      expect(box.x + box.w).toBeLessThanOrEqual(drawing.width + 1e-9);
      expect(box.y + box.h).toBeLessThanOrEqual(drawing.height + 1e-9);
    }
  });
});
