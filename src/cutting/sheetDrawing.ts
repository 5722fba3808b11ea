import type { DrawItem, Drawing } from '../drawing/drawing.ts';
import { circle, layer, line, polyline, rectangle, text } from '../drawing/items.ts';
import { INK, READ, TEXT, WEIGHT } from '../drawing/style.ts';
import { fittedSize, textWidth } from '../drawing/text.ts';
import { CAP_HEIGHT } from '../drawing/typeface.ts';
import { boxesMeet } from '../geometry/region.ts';
import { boxOfPoints, containsPoint } from '../geometry/ring.ts';
import type { Box, Point } from '../geometry/shape.ts';
import type { Piece } from '../joinery/piece.ts';
import { grouped } from '../list/grouped.ts';
import type { Mm } from '../measure/units.ts';
import { type CuttingText, placeOfPiece } from './drawingText.ts';
import { hatched } from './hatch.ts';
import type { CutSheet, SheetCut, SheetPlacement } from './result.ts';
import { ringsOnSheet } from './sheets/lie.ts';

export interface SheetDrawingInput {
  readonly sheet: CutSheet;
  /** Pieces by id. */
  readonly pieces: ReadonlyMap<string, Piece>;
  readonly kerf: Mm;
  readonly text: CuttingText;
  /** Room on paper; the sheet fills one side of it. */
  readonly paper: { readonly width: Mm; readonly height: Mm };
}

/** Left of the sheet and below it: its size. */
const MARGIN: Mm = 6;
/** Radius of the balloon around a cut's number. */
const BALLOON: Mm = 2.7;

interface View {
  readonly k: number;
  readonly input: SheetDrawingInput;
  /** Boxes on paper that balloons keep off. */
  readonly taken: Box[];
}

/** A sheet to scale: pieces in true outline, the numbered cuts, and the rests that are kept. */
export function sheetDrawing(input: SheetDrawingInput): Drawing {
  const { sheet, paper } = input;
  const k = Math.min(
    (paper.width - MARGIN - BALLOON) / sheet.length,
    (paper.height - MARGIN - BALLOON) / sheet.width,
  );
  const view: View = { k, input, taken: [] };
  const whole = boxOn(view, { x: 0, y: 0, w: sheet.length, h: sheet.width });
  const offcuts = sheet.offcuts.flatMap((r) => offcutItems(view, boxOn(view, r), r));
  const blanks = grouped(
    sheet.placements.map((place) => place.from ?? place),
    ({ x, y }) => `${x} ${y}`,
  );
  const pieces = [
    ...[...blanks.values()].map(([one]) =>
      rectangle(boxOn(view, one), { fill: INK.paper, stroke: INK.soft, width: WEIGHT.hair }),
    ),
    ...sheet.placements.flatMap((p) => pieceItems(view, p)),
  ];
  const items: DrawItem[] = [
    layer('sheet', [rectangle(whole, { fill: INK.tint }), ...offcuts]),
    layer('pieces', pieces),
    layer('cuts', cutItems(view)),
    rectangle(whole, { stroke: INK.line, width: WEIGHT.bold }),
    layer('size', sizeItems(view, whole)),
  ];
  return {
    width: MARGIN + BALLOON + sheet.length * k,
    height: MARGIN + BALLOON + sheet.width * k,
    title: sheet.stock,
    items,
  };
}

const boxOn = ({ k }: View, r: Box): Box => ({
  x: MARGIN + r.x * k,
  y: MARGIN + r.y * k,
  w: r.w * k,
  h: r.h * k,
});

const pointOn =
  ({ k }: View) =>
  (p: Point): Point => ({ x: MARGIN + p.x * k, y: MARGIN + p.y * k });

function sizeItems({ input }: View, whole: Box): DrawItem[] {
  const { sheet, text: words } = input;
  const look = { size: TEXT.small, anchor: 'middle' as const, color: INK.soft };
  return [
    text({ x: whole.x + whole.w / 2, y: 1.2 }, words.length(sheet.length), look),
    text({ x: MARGIN - 3, y: whole.y + whole.h / 2 }, words.length(sheet.width), { ...look, angle: 90 }),
  ];
}

function pieceItems(view: View, place: SheetPlacement): DrawItem[] {
  const piece = view.input.pieces.get(place.piece);
  const box = boxOn(view, place);
  if (!piece) return [];
  const rings = ringsOnSheet(place, piece).map((ring) => ring.map(pointOn(view)));
  const items: DrawItem[] = rings.map((ring) =>
    polyline(ring, true, { stroke: INK.line, width: WEIGHT.fine }),
  );
  const [outline = [], ...inner] = rings;
  const holes = inner.map(boxOfPoints);
  // The size of a blank's own piece says nothing where several share it.
  const size = place.from ? '' : sizeWords(view, place);
  items.push(...labelItems(view, box, { outline, holes }, piece.label, size));
  return items;
}

const sizeWords = ({ input }: View, r: { readonly w: Mm; readonly h: Mm }): string =>
  `${input.text.length(r.w)} × ${input.text.length(r.h)}`;

/** Places for a label, as shares of its box, the likeliest first. */
const SPOTS = [0.5, 0.3, 0.7, 0.2, 0.8, 0.11, 0.89];

interface Wood {
  readonly outline: readonly Point[];
  readonly holes: readonly Box[];
}

/** The first place at which the label lies on the wood: inside the outline and off every opening. */
function spotFor(box: Box, wood: Wood, w: Mm, h: Mm): Point {
  const middle = { x: box.x + box.w / 2, y: box.y + box.h / 2 };
  const spots = SPOTS.flatMap((u) => SPOTS.map((v) => ({ x: box.x + box.w * v, y: box.y + box.h * u })));
  const free = (p: Point): boolean => {
    const plate = { x: p.x - w / 2 - 0.5, y: p.y - h / 2 - 0.5, w: w + 1, h: h + 1 };
    const corners = [
      { x: plate.x, y: plate.y },
      { x: plate.x + plate.w, y: plate.y },
      { x: plate.x, y: plate.y + plate.h },
      { x: plate.x + plate.w, y: plate.y + plate.h },
    ];
    return (
      corners.every((c) => containsPoint(wood.outline, c)) && !wood.holes.some((o) => boxesMeet(o, plate))
    );
  };
  return spots.find(free) ?? middle;
}

/** Name over size, standing up where that gives larger figures. */
function labelItems(view: View, box: Box, wood: Wood, label: string, size: string): DrawItem[] {
  const flat = fittedSize(size, { size: TEXT.figure }, box.w - 1.5);
  const upright = fittedSize(size, { size: TEXT.figure }, box.h - 1.5) > flat * 1.05;
  const [along, across] = upright ? [box.h, box.w] : [box.w, box.h];
  const big = Math.min(fittedSize(label, { size: TEXT.figure, bold: true }, along - 1.5), across * 0.9);
  const small = fittedSize(size, { size: TEXT.figure }, along - 1.5);
  const two = size !== '' && small >= READ && across >= big * CAP_HEIGHT + small + 2;
  if (big < READ) return [];
  const gap = 1.1;
  const high = big * CAP_HEIGHT + (two ? gap + small * CAP_HEIGHT : 0);
  const wide = Math.max(
    textWidth(label, { size: big, bold: true }),
    two ? textWidth(size, { size: small }) : 0,
  );
  const [w, h] = upright ? [high, wide] : [wide, high];
  const middle = spotFor(box, wood, w, h);
  view.taken.push({ x: middle.x - w / 2, y: middle.y - h / 2, w, h });
  const place = (up: Mm): Point =>
    upright ? { x: middle.x - up, y: middle.y } : { x: middle.x, y: middle.y + up };
  const angle = upright ? 90 : 0;
  const items: DrawItem[] = [
    text(place(high / 2 - big * CAP_HEIGHT), label, {
      size: big,
      bold: true,
      anchor: 'middle',
      angle,
      place: placeOfPiece(label),
    }),
  ];
  if (two) {
    items.push(text(place(-high / 2), size, { size: small, anchor: 'middle', angle, color: INK.soft }));
  }
  return items;
}

function offcutItems(view: View, box: Box, r: { readonly w: Mm; readonly h: Mm }): DrawItem[] {
  const items = hatched(box, 2.2);
  const words = view.input.text.offcut(r.w, r.h);
  const upright = box.h > box.w * 1.4;
  const size = fittedSize(words, { size: TEXT.small }, (upright ? box.h : box.w) - 2);
  if (size < READ || Math.min(box.w, box.h) < size * 1.6) return items;
  const wide = textWidth(words, { size }) + 1.6;
  const high = size + 1;
  const middle = { x: box.x + box.w / 2, y: box.y + box.h / 2 };
  const plate = upright
    ? { x: middle.x - high / 2, y: middle.y - wide / 2, w: high, h: wide }
    : { x: middle.x - wide / 2, y: middle.y - high / 2, w: wide, h: high };
  view.taken.push(plate);
  const drop = (size * CAP_HEIGHT) / 2;
  items.push(
    rectangle(plate, { fill: INK.paper }),
    text(upright ? { x: middle.x + drop, y: middle.y } : { x: middle.x, y: middle.y - drop }, words, {
      size,
      anchor: 'middle',
      angle: upright ? 90 : 0,
      color: INK.soft,
    }),
  );
  return items;
}

/** Shares of a cut's length at which its number may stand, the likeliest first. */
const PLACES = [0.5, 0.25, 0.75, 0.12, 0.88, 0.37, 0.63, 0.05, 0.95];

function cutItems(view: View): DrawItem[] {
  const { sequence } = view.input.sheet;
  const lines: DrawItem[] = [];
  const balloons: DrawItem[] = [];
  for (const cut of sequence) {
    const [a, b] = sawLine(view, cut);
    lines.push(line(a, b, { stroke: INK.accent, width: WEIGHT.middle }));
    const places = PLACES.map((s) => ({ x: a.x + (b.x - a.x) * s, y: a.y + (b.y - a.y) * s }));
    const at = places.find((p) => view.taken.every((t) => !near(p, t))) ?? places[0] ?? a;
    view.taken.push({ x: at.x - BALLOON, y: at.y - BALLOON, w: 2 * BALLOON, h: 2 * BALLOON });
    const words = String(cut.number);
    const size = fittedSize(words, { size: TEXT.small, bold: true }, BALLOON * 1.8);
    balloons.push(
      arrow(at, cut.kind, Math.min(cut.fence * view.k, 2.6 * BALLOON)),
      circle(at, BALLOON, { fill: INK.paper, stroke: INK.accent, width: WEIGHT.fine }),
      text({ x: at.x, y: at.y - (size * CAP_HEIGHT) / 2 }, words, {
        size,
        bold: true,
        anchor: 'middle',
        color: INK.accent,
      }),
    );
  }
  return [...lines, ...balloons];
}

/** From the number of a cut toward the edge that its fence is measured from: left of a cut that stands, else below. */
function arrow(at: Point, kind: SheetCut['kind'], long: Mm): DrawItem {
  const head = BALLOON * 0.45;
  const [x, y] = kind === 'rip' ? [0, -1] : [-1, 0];
  const tip = { x: at.x + x * long, y: at.y + y * long };
  const wing = (side: number): Point => ({
    x: tip.x - x * head + y * side * head * 0.6,
    y: tip.y - y * head + x * side * head * 0.6,
  });
  return polyline([at, tip, wing(1), wing(-1), tip], false, {
    stroke: INK.accent,
    width: WEIGHT.fine,
    fill: INK.accent,
  });
}

const near = (p: Point, t: Box): boolean =>
  p.x > t.x - BALLOON && p.x < t.x + t.w + BALLOON && p.y > t.y - BALLOON && p.y < t.y + t.h + BALLOON;

/** Middle of the kerf, from end to end. */
function sawLine(view: View, cut: SheetCut): [Point, Point] {
  const of = boxOn(view, cut.of);
  const rip = cut.kind === 'rip';
  const whole = rip ? cut.of.h : cut.of.w;
  const at = Math.min(cut.fence + view.input.kerf / 2, whole) * view.k;
  return rip
    ? [
        { x: of.x, y: of.y + at },
        { x: of.x + of.w, y: of.y + at },
      ]
    : [
        { x: of.x + at, y: of.y },
        { x: of.x + at, y: of.y + of.h },
      ];
}
