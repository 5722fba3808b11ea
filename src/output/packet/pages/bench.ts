import { isSheet } from '../../../design/made.ts';
import { dimension } from '../../../drawing/dimension.ts';
import type { DrawItem } from '../../../drawing/drawing.ts';
import { line, shape, text } from '../../../drawing/items.ts';
import { DASH, INK, TEXT, WEIGHT } from '../../../drawing/style.ts';
import { shortened, textWidth } from '../../../drawing/text.ts';
import { boxArea } from '../../../geometry/box.ts';
import { subtract, union } from '../../../geometry/clip.ts';
import { pathOfRegion } from '../../../geometry/path.ts';
import { areaOf, boxOf } from '../../../geometry/region.ts';
import type { Box, Region } from '../../../geometry/shape.ts';
import { SAME_LENGTH } from '../../../geometry/tolerance.ts';
import { groupPieces } from '../../../joinery/label.ts';
import type { Piece } from '../../../joinery/piece.ts';
import type { LaidPart } from '../../../layout/laid.ts';
import { pick } from '../../../list/at.ts';
import { grouped, groupOf } from '../../../list/grouped.ts';
import { formatLength, formatReading } from '../../../measure/format.ts';
import type { Kg, Mm } from '../../../measure/units.ts';
import { partNames } from '../../../plan/words/words.ts';
import { type Block, entry, paragraph, space } from '../flow.ts';
import type { Content, Packet } from '../leaf.ts';
import { centered, spotIn } from '../nameOn.ts';
import { bodyOf } from '../sheet.ts';
import { viewOf } from '../view.ts';

/** Room of the drawing of a frame, and around it for its measures; and of the terms beside it. */
const WIDE: Mm = 74;
const TALL: Mm = 50;
const AROUND = { left: 2, right: 14, top: 12, bottom: 2 } as const;
const TERM: Mm = 24;
/** Least pieces of what is put together on the bench: two lie flat and square by themselves. */
const LEAST = 3;

/** What is put together before it goes up, with its pieces; several where they are alike to the letter. */
interface Made {
  readonly ids: readonly string[];
  readonly region: Region;
  /** From the lowest to the highest. */
  readonly pieces: readonly Piece[];
  /** Of one of them, all told. */
  readonly mass: Kg;
}

/** A panel or sign with all that lies on it, and on that again. */
function carriedBy(id: string, parts: readonly LaidPart[]): LaidPart[] {
  const own = parts.filter(({ on }) => on === id);
  return own.flatMap((part) => [part, ...carriedBy(part.id, parts)]);
}

/** Closed frames, and panels and signs with what lies on them, each kind of them once. */
function allMade({ plan }: Packet): Made[] {
  const own = grouped(plan.joinery.pieces, ({ part }) => part);
  const solids = grouped(plan.joinery.solids, ({ part }) => part);
  const { parts } = plan.layout;
  const madeOf = (part: LaidPart, all: readonly LaidPart[]): Made => {
    const ids = new Set(all.map(({ id }) => id));
    const mass = plan.load.byPart.reduce((sum, one) => (ids.has(one.part) ? sum + one.mass : sum), 0);
    const pieces = all.flatMap(({ id }) => groupOf(own, id)).sort((a, b) => a.z1 - b.z1);
    const region = groupOf(solids, part.id).flatMap((solid) => solid.region);
    return { ids: [part.id], region, pieces, mass };
  };
  const told = parts.flatMap((part): Made[] => {
    if (part.kind === 'run' && part.closed) return [madeOf(part, [part])];
    if (!isSheet(part)) return [];
    const carried = carriedBy(part.id, parts);
    return carried.some(({ id }) => own.has(id)) ? [madeOf(part, [part, ...carried])] : [];
  });
  const alike = grouped(
    told.filter(({ pieces }) => pieces.length >= LEAST),
    ({ region, pieces }) => {
      const { w, h } = boxOf(region) ?? { w: 0, h: 0 };
      return [w.toFixed(2), h.toFixed(2), ...pieces.map(({ label }) => label)].join('|');
    },
  );
  return [...alike.values()].map((all) => ({ ...all[0], ids: all.flatMap(({ ids }) => ids) }));
}

/** From corner to corner of what has four square ones on the outside; null for any other. */
function diagonalOf({ region }: Made): Mm | null {
  const box = boxOf(region);
  const outer = region.length === 1 ? region.flatMap((polygon) => [{ ...polygon, holes: [] }]) : [];
  const isSquare = box !== null && Math.abs(areaOf(outer) - boxArea(box)) < SAME_LENGTH * (box.w + box.h);
  return isSquare ? Math.hypot(box.w, box.h) : null;
}

/** The frame with its marks, its outer size and both diagonals. */
function drawing(packet: Packet, frame: Made, room: Box): DrawItem[] {
  const model = boxOf(frame.region) ?? room;
  const view = viewOf(model, room, packet.unit, AROUND);
  const { x, y, w, h } = view.box;
  const [low, high] = [
    [
      { x, y },
      { x: x + w, y: y + h },
    ],
    [
      { x, y: y + h },
      { x: x + w, y },
    ],
  ] as const;
  const look = { stroke: INK.soft, width: WEIGHT.thin, dash: DASH.center };
  const size = TEXT.note;
  const regions = frame.pieces.map(({ placed }) => view.region(placed));
  const outlines = regions.map((region) =>
    shape(pathOfRegion(region), { stroke: INK.line, width: WEIGHT.middle, fill: INK.paper }),
  );
  const taken: Box[] = [];
  const marks = frame.pieces.flatMap(({ label }, i): DrawItem[] => {
    const seen = subtract(pick(regions, i), union(regions.slice(i + 1)));
    const spot = spotIn(seen, { w: textWidth(label, { size }) + 0.6, h: size }, taken);
    if (!spot) return [];
    taken.push(spot.box);
    return [centered(spot, label, size)];
  });
  const told = (mm: Mm) => formatReading(mm, packet.measure);
  return [
    ...(diagonalOf(frame) === null ? [] : [line(...low, look), line(...high, look)]),
    ...outlines,
    ...marks,
    ...dimension({ x, y: y + h }, { x: x + w, y: y + h }, 4, told(model.w)),
    ...dimension({ x: x + w, y: y + h }, { x: x + w, y }, 4, told(model.h)),
  ];
}

/** The drawing with its name, pieces and diagonal beside it. */
function frameBlock(packet: Packet, frame: Made): Block {
  const { terms, say, measure } = packet;
  const { bench } = terms;
  const names = partNames(frame.ids, say);
  const pieces = groupPieces(frame.pieces).map(({ label, pieces: [piece], quantity }) =>
    bench.piece(quantity, label, formatLength(piece.shown.length, measure)),
  );
  const diagonal = diagonalOf(frame);
  const square = diagonal === null ? bench.byFace : bench.diagonal(formatLength(diagonal, measure));
  const facts = [
    [bench.pieces, pieces.join('; ')],
    [bench.square, square],
    [bench.weight, say.mass(frame.mass)],
  ] as const;
  const count = frame.ids.length;
  const title = `${count === 1 ? '' : `${count} x `}${names.join(', ')}`;
  return {
    height: TALL + 5,
    draw: (at, width) => {
      const [x, w] = [at.x + WIDE + 6, width - WIDE - 6];
      const style = { size: TEXT.body, bold: true };
      let y = at.y - 12;
      return [
        ...drawing(packet, frame, { x: at.x, y: at.y - TALL, w: WIDE, h: TALL }),
        text({ x, y: at.y - 7 }, shortened(title, style, w), style),
        ...facts.flatMap(([term, words]) => {
          return entry(term, words, w, TERM).flatMap((block) => {
            const items = block.draw({ x, y }, w);
            y -= block.height;
            return items;
          });
        }),
      ];
    },
  };
}

/** What is put together on the bench before it goes up: frames, with what makes them square. */
export function bench(packet: Packet): Content[] {
  const { terms, sheet } = packet;
  const { w } = bodyOf(sheet);
  const frames = allMade(packet);
  if (frames.length === 0) return [];
  return [
    {
      title: terms.titles.bench,
      blocks: [
        ...paragraph(terms.bench.lead, w),
        space(2),
        ...entry(terms.bench.glue, terms.bench.glueOf, w, TERM),
        ...entry(terms.bench.clamps, terms.bench.clampsOf, w, TERM),
        ...frames.map((frame) => frameBlock(packet, frame)),
      ],
    },
  ];
}
