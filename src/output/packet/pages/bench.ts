import { dimension } from '../../../drawing/dimension.ts';
import type { DrawItem } from '../../../drawing/drawing.ts';
import { diagonalsOf, lines, shape, text } from '../../../drawing/items.ts';
import { DASH, INK, TEXT, WEIGHT } from '../../../drawing/style.ts';
import { textWidth, wrapped } from '../../../drawing/text.ts';
import { boxArea } from '../../../geometry/box.ts';
import { seenOfEach } from '../../../geometry/clip.ts';
import { pathOfRegion } from '../../../geometry/path.ts';
import { areaOf, boxOf } from '../../../geometry/region.ts';
import type { Box, Region } from '../../../geometry/shape.ts';
import { SAME_LENGTH } from '../../../geometry/tolerance.ts';
import { groupPieces } from '../../../joinery/label.ts';
import type { Piece } from '../../../joinery/piece.ts';
import { pick } from '../../../list/at.ts';
import { formatLength } from '../../../measure/format.ts';
import type { Mm } from '../../../measure/units.ts';
import { type Assembled, assembled } from '../assembled.ts';
import { type Block, entry, paragraph, space, stacked } from '../flow.ts';
import type { Content, Packet } from '../leaf.ts';
import { centered, spotIn } from '../nameOn.ts';
import { type PageView, viewOf } from '../view.ts';

/** Room of the drawing of a frame, one height or another, and around it for its measures; and of the terms beside it. */
const WIDE: Mm = 74;
const HEIGHTS = [50, 75, 100] as const;
const AROUND = { left: 2, right: 14, top: 12, bottom: 2 } as const;
const TERM: Mm = 24;

/** From corner to corner of what has four square ones on the outside; null for any other. */
function diagonalOf({ region }: Assembled): Mm | null {
  const box = boxOf(region);
  const outer = region.length === 1 ? region.flatMap((polygon) => [{ ...polygon, holes: [] }]) : [];
  const isSquare = box !== null && Math.abs(areaOf(outer) - boxArea(box)) < SAME_LENGTH * (box.w + box.h);
  return isSquare ? Math.hypot(box.w, box.h) : null;
}

/** The marks of the pieces that have room for one on what is seen of them. */
function marksIn(pieces: readonly Piece[], regions: readonly Region[]): DrawItem[] {
  const size = TEXT.note;
  const taken: Box[] = [];
  const seen = seenOfEach(regions);
  return pieces.flatMap(({ label }, i) => {
    const spot = spotIn(pick(seen, i), { w: textWidth(label, { size }) + 0.6, h: size }, taken);
    if (!spot) return [];
    taken.push(spot.box);
    return [centered(spot, label, size)];
  });
}

/** The pieces of what is put together as they are drawn so high, with the marks that have room. */
interface Marked {
  readonly high: Mm;
  readonly view: PageView;
  readonly regions: readonly Region[];
  readonly marks: readonly DrawItem[];
}

/** As high as it takes for every piece to show its mark, or for the most that do. */
function markedHigh(packet: Packet, model: Box, pieces: readonly Piece[]): Marked {
  const viewed = (high: Mm) => viewOf(model, { x: 0, y: -high, w: WIDE, h: high }, packet.unit, AROUND);
  const marked = (high: Mm, view = viewed(high)): Marked => {
    const regions = pieces.map(({ placed }) => view.region(placed));
    return { high, view, regions, marks: marksIn(pieces, regions) };
  };
  const [least, ...higher] = HEIGHTS;
  return higher.reduce((best, high) => {
    const view = viewed(high);
    // Drawn no larger, no more of them have room.
    if (best.marks.length === pieces.length || best.view.scale === view.scale) return best;
    const next = marked(high, view);
    return next.marks.length > best.marks.length ? next : best;
  }, marked(least));
}

/** What is put together with its marks, its outer size and both diagonals. */
function drawing(
  { told }: Packet,
  made: Assembled,
  model: Box,
  { view, regions, marks }: Marked,
): DrawItem[] {
  const { x, y, w, h } = view.box;
  const look = { stroke: INK.soft, width: WEIGHT.thin, dash: DASH.center };
  return [
    ...(diagonalOf(made) === null ? [] : [lines(diagonalsOf(view.box), look)]),
    ...regions.map((region) =>
      shape(pathOfRegion(region), {
        ...{ stroke: INK.line, width: WEIGHT.middle, fill: INK.paper },
        fillRule: 'evenodd',
      }),
    ),
    ...marks,
    ...dimension({ x, y: y + h }, { x: x + w, y: y + h }, 4, told(model.w)),
    ...dimension({ x: x + w, y: y + h }, { x: x + w, y }, 4, told(model.h)),
  ];
}

/** The drawing with its name, pieces and diagonal beside it. */
function madeBlock(packet: Packet, made: Assembled, width: Mm): Block {
  const { terms, say, measure } = packet;
  const { bench } = terms;
  const model = boxOf(made.region) ?? { x: 0, y: 0, w: WIDE, h: HEIGHTS[0] };
  const marked = markedHigh(packet, model, made.pieces);
  const items = drawing(packet, made, model, marked);
  const pieces = groupPieces(made.pieces).map(({ label, pieces: [piece], quantity }) =>
    bench.piece(quantity, label, formatLength(piece.shown.length, measure)),
  );
  const diagonal = diagonalOf(made);
  const square = diagonal === null ? bench.byFace : bench.diagonal(formatLength(diagonal, measure));
  const facts = [
    [bench.pieces, pieces.join('; ')],
    [bench.square, square],
    [bench.weight, say.mass(made.mass)],
  ] as const;
  const w = width - WIDE - 6;
  const style = { size: TEXT.body, bold: true };
  const title = wrapped(`${made.count === 1 ? '' : `${made.count} x `}${made.name}`, style, w);
  const told = facts.flatMap(([term, words]) => entry(term, words, w, TERM));
  const head = 3 + title.length * TEXT.body * 1.3 + 2;
  return {
    height: Math.max(marked.high, head + told.reduce((sum, { height }) => sum + height, 0)) + 5,
    draw: (at) => {
      const x = at.x + WIDE + 6;
      return [
        { kind: 'group', move: at, items },
        ...title.map((row, i) => text({ x, y: at.y - 3 - TEXT.body - i * TEXT.body * 1.3 }, row, style)),
        ...stacked(told, { x, y: at.y - head }, w),
      ];
    },
  };
}

/** What is put together on the bench before it goes up: doors, frames, signs, with what makes them square. */
export function bench(packet: Packet): Content[] {
  const { terms, body } = packet;
  const { w } = body;
  const all = assembled(packet);
  if (all.length === 0) return [];
  return [
    {
      title: terms.titles.bench,
      blocks: [
        ...paragraph(terms.bench.lead, w),
        space(2),
        ...entry(terms.bench.glue, terms.bench.glueOf, w, TERM),
        ...entry(terms.bench.clamps, terms.bench.clampsOf, w, TERM),
        ...all.map((made) => madeBlock(packet, made, w)),
      ],
    },
  ];
}
